//! From a dwelling to its plan: the candidate remedies of every opening, the cheapest lawful whole, and what it means.

mod answer;
mod assemble;
mod at_panel;
mod built_cables;
mod built_routes;
mod candidate;
mod candidates;
mod changes;
mod device;
mod facts;
mod frontier;
mod leakage;
mod network;
mod next_best;
mod obstacles;
mod offers;
mod planned;
mod repairs;
mod room_in_box;
mod route_prices;
mod standing;
mod stated_routes;
mod steering;
mod ways;
mod worth;

pub use answer::{
    BasisAnswer, BudgetAnswer, ChangeAnswer, CircuitAnswer, DutyAnswer, EditionsAnswer, FillAnswer, FillLineAnswer,
    FindingAnswer, FindingsAnswer, JobAnswer, LawAnswer, LegAnswer, MoneyAnswer, NextAnswer, NextBestAnswer,
    NotBuiltAnswer, OfferAnswer, OffersAnswer, OpeningAnswer, OpeningChanges, OptionsAnswer, PlanAnswer, PlanStatus,
    PointAnswer, RefusedRouteAnswer, RemedyAnswer, RequiresAnswer, RouteAnswer, RuleSaid, RuledOut, Saying,
    SteeringAnswer, StepUpAnswer, TotalsAnswer, ValueSaid, WhyAnswer, WishAnswer, editions_answer, findings_answer,
    how_known, next_best_answers, offers_answer, options_answer, options_of_box, plan_answer, why_answer, work_first,
};
pub use assemble::{Assembled, assemble};
pub use candidate::{Candidate, Shortfall, Step};
pub use device::{AtPanel, BoxWork, Device};
pub use facts::{Facts, OpeningFacts, opening_of};
pub use network::{BuyableRoute, Network, NotBuilt, Origin, RefusedRoute, WayEnd};
pub use next_best::NextBest;
pub use offers::{Offer, OfferKind, Offers, Point};
pub use planned::{PlanFault, Planned, Proof, Protector};
pub use standing::Standing;
pub use steering::{Steered, Wish};
pub use ways::{Leg, Way};
