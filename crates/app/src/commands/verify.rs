//! Verifies a plan that somebody holds in hand against its survey.

use crate::answering::{SurveySource, dwelling_of, read_file, write_json, write_text};
use crate::command_error::{CommandError, MISTAKES};
use crate::commands::prices::price_book;
use crate::json_difference::differences;
use crate::law::{CodeFlags, settle};
use crate::offer_pick::{FIRST, OfferPick};
use crate::page;
use crate::planning::{Asked, to_plan_on};
use dwelling::Dwelling;
use estimate::PriceBook;
use remedies::{PlanClaim, Planned};
use schemars::JsonSchema;
use serde::Serialize;
use serde_json::Value;
use std::path::PathBuf;
use std::process::ExitCode;

/// Verify a plan against its survey: its choices, its lawfulness, its figures and its words
///
/// Rebuilds the plan from the choices in its JSON alone, holds them against the rules and the separate checker, derives all
/// else anew and compares it with what the plan says. Name the same prices and the same code as when it was made.
#[derive(Debug, clap::Args)]
#[command(
    after_help = "Example:\n  thirdwire plan my-house.toml --json > plan.json\n  thirdwire verify plan.json my-house.toml"
)]
pub struct Args {
    /// The plan: what `thirdwire plan --json` wrote
    #[arg(value_name = "PLAN")]
    plan: PathBuf,
    #[command(flatten)]
    source: SurveySource,
    /// The price book with which it was made (see `thirdwire prices`)
    #[arg(long, value_name = "FILE")]
    prices: Option<PathBuf>,
    #[command(flatten)]
    code: CodeFlags,
    /// Answer as JSON (its schema: `thirdwire schema verify`)
    #[arg(long)]
    json: bool,
}

/// Whether a plan holds.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct VerificationAnswer {
    /// Whether it does: nothing was found against it.
    pub holds: bool,
    /// What was looked at, in this order; what stands after the first that failed could not be.
    pub checked: Vec<&'static str>,
    /// What keeps it from being a plan of this survey.
    pub faults: Vec<String>,
    /// Where it says something else than follows from its choices.
    pub differs: Vec<DifferenceAnswer>,
    /// Whether its certificate, that nothing costs less, holds for the separate checker; null where it has none. That
    /// nothing costs less is then checked by planning anew alone.
    pub certificate: Option<bool>,
    /// Where it holds: what it shows that nothing costs less than, in cents.
    pub certified_cents: Option<i64>,
}

/// A place at which a plan says something else than follows from its choices.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct DifferenceAnswer {
    /// The place in its JSON.
    pub at: String,
    /// The box or other id that it is about.
    pub of: Option<String>,
    /// What the plan says there, as JSON.
    pub plan_says: String,
    /// What follows from its choices, as JSON.
    pub follows: String,
}

const COMPLETE: &str = "every panel end and every opening is there once, and each choice is among what is lawful there";
const ACCEPTED: &str = "the separate checker accepts the choices together";
const CHEAPEST: &str = "planned anew, nothing that gives as much costs less";
const CERTIFIED: &str =
    "the separate checker accepts the certificate: nothing that gives as much costs less than it shows";
const SAYS_SO: &str = "every figure and every word follows from the choices";

/// Runs it.
pub fn run(args: &Args) -> Result<ExitCode, CommandError> {
    let plan = read_file(&args.plan)?;
    let text = args.source.read()?;
    let dwelling = to_plan_on(dwelling_of(&text, args.json)?);
    let book = price_book(args.prices.as_deref(), args.json)?;
    let law = settle(&args.code, &dwelling.job, &text.folder, args.json)?;
    let claimed = serde_json::from_slice::<Value>(&plan.bytes);
    let claimed = claimed.and_then(|value| Ok((serde_json::from_value::<PlanClaim>(value.clone())?, value)));
    let answer = match claimed {
        Ok((claim, value)) => verified(&claim, &value, &dwelling, law, &book)?,
        Err(error) => refused(Vec::new(), vec![format!("`{}` is no plan: {error}", plan.name)]),
    };
    if args.json {
        write_json(&answer)?;
    } else {
        write_text(&page::verify::render(&answer))?;
    }
    Ok(if answer.holds { ExitCode::SUCCESS } else { ExitCode::from(MISTAKES) })
}

fn refused(checked: Vec<&'static str>, faults: Vec<String>) -> VerificationAnswer {
    VerificationAnswer { holds: false, checked, faults, differs: Vec::new(), certificate: None, certified_cents: None }
}

fn verified(
    claim: &PlanClaim,
    value: &Value,
    dwelling: &Dwelling,
    law: crate::law::Law,
    book: &PriceBook,
) -> Result<VerificationAnswer, CommandError> {
    let wishes = match claim.wishes(dwelling) {
        Ok(wishes) => wishes,
        Err(faults) => return Ok(refused(Vec::new(), faults)),
    };
    let asked = Asked {
        other_orders: true,
        wishes,
        budget: claim.budget(),
        offer: claim.offer().map(OfferPick::Number),
        next_best: claim.tells_next_best(),
        certificate: false,
    };
    let (mut planned, offers) = match asked.planned(dwelling, law.code, book) {
        Err(CommandError::Usage(none)) => return Ok(refused(Vec::new(), vec![none])),
        made => made?,
    };
    let anew = (planned.solution.cost, planned.standing());
    if let Err(faults) = planned.take_claimed(claim) {
        return Ok(refused(vec![COMPLETE, ACCEPTED], faults));
    }
    let mut faults = Vec::new();
    let fixed = asked.budget.is_some() || asked.offer.is_some_and(|offer| offer != FIRST);
    if planned.solution.cost > anew.0 || (fixed && gives_less(&planned, &anew.1)) {
        let (held, made) = (planned.total().total(), anew.1.price.total());
        faults.push(format!(
            "it is not the plan that it says to be: planned anew, that costs {made}, and this one {held}"
        ));
    }
    let certified = claim.certificate().map(|certificate| certificate.shown(&planned));
    if let Some(Err(fault)) = &certified {
        faults.push(fault.clone());
    }
    let answer = asked.answer(&planned, offers, &law.answer, book)?;
    let mut follows = serde_json::to_value(answer).map_err(|error| CommandError::Fault(error.to_string()))?;
    // Many certificates show the same: that of the plan was checked for itself.
    follows["certificate"] = value.get("certificate").cloned().unwrap_or_default();
    let differs: Vec<DifferenceAnswer> = differences(value, &follows)
        .into_iter()
        .map(|one| DifferenceAnswer { at: one.at, of: one.of, plan_says: one.left, follows: one.right })
        .collect();
    Ok(VerificationAnswer {
        holds: faults.is_empty() && differs.is_empty(),
        checked: [COMPLETE, ACCEPTED, CHEAPEST]
            .into_iter()
            .chain(certified.as_ref().map(|_| CERTIFIED))
            .chain([SAYS_SO])
            .collect(),
        faults,
        differs,
        certificate: certified.as_ref().map(Result::is_ok),
        certified_cents: certified.and_then(Result::ok),
    })
}

/// Whether a plan grounds or leaves closed less than what it says to be does.
fn gives_less(planned: &Planned, anew: &remedies::Standing) -> bool {
    let held = planned.standing();
    held.grounded.len() < anew.grounded.len() || held.wall_openings > anew.wall_openings
}
