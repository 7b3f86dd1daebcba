//! What the code asks of an opening: every rule, by edition, each value with its section and how it is known.

mod adoptions;
mod amendment;
mod cited;
mod code;
mod day;
mod duty;
mod edition;
mod explain;
pub mod federal;
mod fill;
mod ground_connection;
mod in_words;
mod judgement;
mod lists;
mod local;
mod metal_path;
mod opening;
mod policy;
mod remedy;
mod rule;
mod rule_page;
mod rules;
mod sources;
pub mod spacing;
pub mod tables;
mod taking_out;
mod wall_line;

pub use adoptions::{ASK_THE_AUTHORITY, Adopted, Adoption, Record, Since, adopted, adoptions, code_for};
pub use amendment::{Amendment, AmendmentFault, Change, Dated, check_amendments};
pub use cited::{ByEdition, Citation, Cited, Known, NotChecked, Reading, Value};
pub use code::CodeInForce;
pub use day::{Day, NotADay};
pub use duty::{Duty, Need};
pub use edition::Edition;
pub use explain::{Said, SaidThing, ValueUsed, explain};
pub use fill::{
    BoxContents, BoxFill, Conductors, Counted, DeviceSpace, FillContents, FillLine, FillVerdict, Fit, StrapInBox,
    count, fill_with, fit_after,
};
pub use ground_connection::{CONNECTION_VALUES, ConnectionPlace, GroundConnection, SourceFacts, ground_connection};
pub use in_words::InWords;
pub use judgement::{Condition, DutyVerdict, Judgement, Lawful, RemedyVerdict, judge};
pub use lists::List;
pub use metal_path::{MetalPath, PathFacts, metal_path};
pub use opening::{BuiltInto, Opening, Supply};
pub use policy::{Answer, Policy, Question};
pub use remedy::{Marking, Remedy};
pub use rule::{Decides, Rule, Says, Statement, Words};
pub use rule_page::{RulePage, ValueRow, all_values, rule_page};
pub use rules::{RULES, rule};
pub use taking_out::{Staying, TakingOut};
pub use wall_line::{Spacing, WallMeasure, spacing as wall_spacing};
