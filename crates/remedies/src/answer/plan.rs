//! The plan of a dwelling, as an answer.

use super::assumed_order::{AssumedOrderAnswer, assumed_orders};
use super::basis::BasisAnswer;
use super::certificate::CertificateAnswer;
use super::dangers::{DangerAnswer, NotPricedAnswer, dangers_left};
use super::findings::{FindingAnswer, NextAnswer, find_out, finding_answer, ids};
use super::law::LawAnswer;
use super::lines::LineAnswer;
use super::links::LinkAnswer;
use super::next_best::NextBestAnswer;
use super::offers::OffersAnswer;
use super::opening::{MoneyAnswer, OpeningAnswer, cites_of, opening_answer};
use super::owner::OwnerPriceAnswer;
use super::pricing_notes::pricing_notes;
use super::routes::{NotBuiltAnswer, RefusedRouteAnswer, RouteAnswer, refused};
use super::steering::SteeringAnswer;
use crate::at_panel::bears_all_outlets;
use crate::device::AtPanel;
use crate::leakage::milliamperes;
use crate::planned::{Planned, Proof};
use diagnosis::Site;
use diagnosis::feeding::{FeedingOrder, Orders, feeding_orders};
use dwelling::{BoxIndex, DwellingUse, GroundFact, Overcurrent, names};
use estimate::Cents;
use rulebook::Citation;
use rulebook::federal::lead_caution;
use schemars::JsonSchema;
use serde::Serialize;

names! {
    /// How far a plan can be relied on.
    PlanStatus {
        /// Every opening is lawful, served and as asked for, on facts that are known.
        Complete = "complete",
        /// Something must be found out or asked first.
        Provisional = "provisional",
        /// Something that is needed or asked for cannot be had with what was offered.
        Blocked = "blocked",
    }
}

/// The cheapest lawful whole for a dwelling.
#[derive(Clone, Debug, PartialEq, Serialize, JsonSchema)]
pub struct PlanAnswer {
    /// The version of this answer's shape.
    pub format: u32,
    /// The job.
    pub job: JobAnswer,
    /// The code in force.
    pub law: LawAnswer,
    /// How far the plan can be relied on.
    pub status: PlanStatus,
    /// What stands in the way or is not known, each once.
    pub in_the_way: Vec<String>,
    /// What was found at panels and circuits; what was found at boxes stands with the openings.
    pub findings: Vec<FindingAnswer>,
    /// What to find out next, the most deciding first.
    pub find_out: Vec<NextAnswer>,
    /// What is dangerous and is put right whatever else is chosen, each with its own price; what is put right at an opening
    /// stands with the opening.
    pub dangers: Vec<DangerAnswer>,
    /// What was found dangerous and the price holds nothing for.
    pub not_priced: Vec<NotPricedAnswer>,
    /// What is done at the panel end of each circuit or multiwire set.
    pub circuits: Vec<CircuitAnswer>,
    /// What is done at each opening, by room in walking order.
    pub openings: Vec<OpeningAnswer>,
    /// The routes that are bought.
    pub routes: Vec<RouteAnswer>,
    /// The links of the network of grounds that these routes are made of, by number: for `thirdwire verify`.
    pub links: Vec<LinkAnswer>,
    /// The routes that cannot be bought, and why.
    pub routes_refused: Vec<RefusedRouteAnswer>,
    /// What the tool could build no way of from the floor plan, and why; empty where no room is drawn.
    pub ways_not_built: Vec<NotBuiltAnswer>,
    /// What it costs.
    pub totals: TotalsAnswer,
    /// What the owner laid down and what that costs; null where nothing was.
    pub steering: Option<SteeringAnswer>,
    /// The next best at each receptacle and what it would cost the whole; null where it was not asked for.
    pub next_best: Option<Vec<NextBestAnswer>>,
    /// The certificate that nothing costs less; null where it was not asked for, or shows less than the plan says.
    pub certificate: Option<CertificateAnswer>,
    /// What can be offered; null where it was not asked for.
    pub offers: Option<OffersAnswer>,
    /// The feeding orders that the plan assumes since nobody knows them, or that contradict what was seen.
    pub feeding: Vec<AssumedOrderAnswer>,
    /// What the plan takes for granted where the survey does not say.
    pub assumptions: Vec<String>,
    /// Cautions that go with all of the work.
    pub cautions: Vec<String>,
    /// What the plan's citations rest on.
    pub basis: BasisAnswer,
}

/// The job.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct JobAnswer {
    /// What it is called.
    pub name: String,
    /// The year the dwelling was built.
    pub built: Option<u16>,
    /// The kind of dwelling.
    #[serde(rename = "use")]
    pub dwelling_use: Option<DwellingUse>,
    /// The edition of the code.
    pub edition: u16,
}

/// What is done at the panel end of a circuit or multiwire set.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct CircuitAnswer {
    /// The circuit, or both circuits of a multiwire set.
    pub circuits: Vec<String>,
    /// The panel.
    pub panel: String,
    /// What is put there: `as-it-is`, a breaker or a device beside the panel.
    pub at_panel: &'static str,
    /// The breakers or fuses of these circuits afterwards, in amperes; null where not known.
    pub amperes_afterwards: Vec<Option<u32>>,
    /// What it protects from: `gfci`, `afci`, both or neither.
    pub protects: Vec<&'static str>,
    /// Its boxes.
    pub boxes: Vec<String>,
    /// What it costs.
    pub price: MoneyAnswer,
    /// The lines of that price.
    pub lines: Vec<LineAnswer>,
    /// What could not be offered here, and why.
    pub not_offered: Vec<String>,
}

/// What a plan costs and gives.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct TotalsAnswer {
    /// The price of all material and labour: what the plan is the cheapest in.
    pub price: MoneyAnswer,
    /// What the owner pays.
    pub owner: OwnerPriceAnswer,
    /// Openings made in finished surfaces.
    pub wall_openings: i64,
    /// Receptacles with a real ground before, loose and poor ones left out.
    pub grounded_before: usize,
    /// Receptacles with a real ground afterwards.
    pub grounded_after: usize,
    /// Receptacles in all.
    pub receptacles: usize,
    /// Whether the price is of invented demo figures.
    pub demo_prices: bool,
    /// Whether the search went to its end: no cheaper lawful whole that gives as much exists among what was offered.
    pub cheapest: bool,
    /// Where it did not: nothing can cost less than this, in cents.
    pub nothing_below_cents: Option<i64>,
}

/// The plan as an answer.
#[must_use]
pub fn plan_answer(plan: &Planned, law: &LawAnswer, demo_prices: bool) -> PlanAnswer {
    let dwelling = plan.facts.dwelling;
    let openings: Vec<OpeningAnswer> =
        walking_order(plan).into_iter().map(|index| opening_answer(plan, index)).collect();
    let orders = feeding_orders(dwelling);
    let (status, in_the_way) = standing(plan, law, &openings, &orders);
    let totals = totals(plan, &openings, demo_prices);
    let at_boxes = |site: &Site| matches!(site, Site::Box(_));
    let findings = &plan.facts.diagnosis.findings;
    let cites: Vec<Citation> = dwelling.box_indices().flat_map(|index| cites_of(plan, index)).collect();
    let ways = plan.ways();
    let route_cites = ways.iter().flat_map(|way| &way.cites);
    PlanAnswer {
        format: 1,
        job: JobAnswer {
            name: dwelling.job.name.clone(),
            built: dwelling.job.built,
            dwelling_use: dwelling.job.dwelling_use,
            edition: plan.facts.code.edition.year(),
        },
        law: law.clone(),
        status,
        in_the_way,
        findings: findings.iter().filter(|f| !at_boxes(&f.at)).map(|f| finding_answer(dwelling, f)).collect(),
        find_out: find_out(dwelling, &plan.facts.diagnosis),
        dangers: DangerAnswer::all(plan),
        not_priced: NotPricedAnswer::all(plan),
        circuits: (0..plan.facts.trees.len()).map(|tree| circuit_answer(plan, tree)).collect(),
        openings,
        routes: ways.iter().map(|way| RouteAnswer::of(plan, way)).collect(),
        links: LinkAnswer::all(plan),
        routes_refused: refused(plan),
        ways_not_built: NotBuiltAnswer::all(plan),
        totals,
        steering: SteeringAnswer::of(plan),
        next_best: None,
        certificate: None,
        offers: None,
        feeding: assumed_orders(plan, &orders),
        assumptions: assumptions(plan),
        cautions: cautions(dwelling.job.built),
        basis: BasisAnswer::of(cites.iter().chain(route_cites)),
    }
}

/// The boxes by room in the order the rooms are walked, and in survey order within a room.
fn walking_order(plan: &Planned) -> Vec<BoxIndex> {
    let mut order: Vec<BoxIndex> = plan.facts.dwelling.box_indices().collect();
    order.sort_by_key(|index| plan.facts.dwelling.device_box(*index).room);
    order
}

fn standing(
    plan: &Planned,
    law: &LawAnswer,
    openings: &[OpeningAnswer],
    orders: &[FeedingOrder],
) -> (PlanStatus, Vec<String>) {
    let dwelling = plan.facts.dwelling;
    let mut list = Vec::new();
    let mut status = PlanStatus::Complete;
    for danger in dangers_left(plan) {
        status = PlanStatus::Provisional;
        list.push(danger);
    }
    for doubt in &law.doubts {
        status = PlanStatus::Provisional;
        list.push(doubt.clone());
    }
    for order in orders.iter().filter(|order| matches!(order.orders, Orders::Clash(_))) {
        status = PlanStatus::Provisional;
        let circuits: Vec<&str> = order.circuits.iter().map(|circuit| dwelling.circuit(*circuit).id.as_str()).collect();
        let what = "what was seen of the feeding order contradicts itself: look again";
        list.push(format!("circuit {}: {what}", circuits.join(" and ")));
    }
    for way in plan.ways() {
        if let Some(disputed) = &way.disputed {
            status = PlanStatus::Provisional;
            list.push(format!("{}: ask the authority: {disputed}", way.id));
        }
    }
    for opening in openings {
        for question in &opening.open_questions {
            status = status.max(PlanStatus::Provisional);
            list.push(format!("{}: {question}", opening.box_id));
        }
        for shortfall in &opening.shortfalls {
            status = PlanStatus::Blocked;
            list.push(format!("{}: {shortfall}", opening.box_id));
        }
    }
    for (wish, why_not) in plan.steered.iter().flat_map(|steered| &steered.wishes).filter(|(_, why)| !why.is_empty()) {
        status = PlanStatus::Blocked;
        let wish = wish.flag(dwelling);
        list.extend(why_not.iter().map(|why| format!("`{wish}` cannot be had: {why}")));
    }
    if let Some(steering) = SteeringAnswer::of(plan)
        && let Some(budget) = steering.budget.filter(|budget| !budget.had)
    {
        status = PlanStatus::Blocked;
        let (sum, missing) = (Cents(budget.cents), Cents(-budget.left_cents));
        list.push(format!("`--budget {sum}` cannot be had: the cheapest lawful whole costs {missing} more"));
    }
    (status, list)
}

fn circuit_answer(plan: &Planned, index: usize) -> CircuitAnswer {
    let (dwelling, tree) = (plan.facts.dwelling, &plan.facts.trees[index]);
    let chosen = plan.chosen_at_panel(index);
    let protects = [("gfci", crate::candidate::GFCI), ("afci", crate::candidate::AFCI)];
    CircuitAnswer {
        circuits: tree.circuits.iter().map(|circuit| dwelling.circuit(*circuit).id.clone()).collect(),
        panel: dwelling.panel(tree.panel).id.clone(),
        at_panel: chosen.choice.name(),
        amperes_afterwards: tree
            .circuits
            .iter()
            .map(|circuit| plan.rating_afterwards(*circuit).map(electrical::Amperes::get))
            .collect(),
        protects: protects.iter().filter(|(_, mark)| chosen.gives.covers(*mark)).map(|(name, _)| *name).collect(),
        boxes: ids(dwelling, &plan.assembled.boxes[index]),
        price: MoneyAnswer::of(chosen.price),
        lines: LineAnswer::all(&plan.book, chosen.lines.iter().copied()),
        not_offered: not_offered(plan, index),
    }
}

/// What protection at the panel could not be offered, and why.
fn not_offered(plan: &Planned, index: usize) -> Vec<String> {
    let tree = &plan.facts.trees[index];
    let panel = plan.facts.dwelling.panel(tree.panel);
    let offered = |choice: &AtPanel| *choice != AtPanel::AsItIs && choice.is_gfci();
    if plan.assembled.at_panel[index].iter().any(|candidate| offered(&candidate.choice)) {
        return too_leaky(plan, index).into_iter().collect();
    }
    let mut list = Vec::new();
    match (&panel.made_for_it, panel.overcurrent) {
        (_, Some(Overcurrent::Fuses)) => list.push("a fuse panel takes no protective breaker".to_owned()),
        (None, _) => list.push("which protective breakers are made for the panel is not known: find out".to_owned()),
        (Some(_), _) if tree.is_multiwire() => {
            list.push("a multiwire set needs a two-pole protective breaker, and none is made for the panel".to_owned());
        }
        (Some(_), _) => list.push("no GFCI breaker is made for the panel".to_owned()),
    }
    match panel.room_beside {
        _ if tree.is_multiwire() => {
            list.push("a single-pole device beside the panel does not work on a shared neutral".to_owned());
        }
        Some(true) if !bears_all_outlets(&plan.facts, tree) => {
            list.push("a device beside the panel would protect more outlets than its instructions allow".to_owned());
        }
        Some(true) => {}
        Some(false) => list.push("there is no room for a device beside the panel".to_owned()),
        None => list.push("whether there is room for a device beside the panel is not known: look".to_owned()),
    }
    list
}

/// Why a GFCI for the whole circuit was ruled out, where it was for what would leak behind it.
fn too_leaky(plan: &Planned, index: usize) -> Option<String> {
    let behind = plan.leakage_of_circuit(index);
    (behind > plan.facts.limits.most_leakage).then(|| {
        let share = match plan.facts.dwelling.job.leakage_percent {
            Some(percent) => format!("; {percent} percent of that are planned at most"),
            None => String::new(),
        };
        format!(
            "a GFCI for the whole circuit would have up to {} of leakage behind it, 0.5 mA for each thing plugged in, and \
             may trip from 4 mA without a fault{share}",
            milliamperes(behind)
        )
    })
}

fn totals(plan: &Planned, openings: &[OpeningAnswer], demo_prices: bool) -> TotalsAnswer {
    let receptacles = || openings.iter().filter(|opening| opening.holds.is_receptacle());
    let grounded =
        |opening: &&OpeningAnswer| opening.ground == GroundFact::Connected && opening.holds.takes_grounding_plug();
    TotalsAnswer {
        price: MoneyAnswer::of(plan.total()),
        owner: OwnerPriceAnswer::of(plan.book.owner_price(plan.total())),
        wall_openings: plan.solution.cost.openings,
        grounded_before: receptacles().filter(grounded).count(),
        grounded_after: receptacles().filter(|opening| opening.grounded).count(),
        receptacles: receptacles().count(),
        demo_prices,
        cheapest: plan.proof == Proof::Cheapest,
        nothing_below_cents: nothing_below(plan),
    }
}

/// A bound on the money, where the search was stopped and what it falls short of is settled.
fn nothing_below(plan: &Planned) -> Option<i64> {
    let Proof::NothingBelow(bound) = plan.proof else { return None };
    let weights = plan.solution.cost.cents - plan.total().total().0;
    Some((bound.cents - weights).max(0))
}

/// The defaults that the plan rests on, where it makes use of them.
fn assumptions(plan: &Planned) -> Vec<String> {
    let job = &plan.facts.dwelling.job;
    let feeds = plan.facts.dwelling.box_indices().any(|at| !plan.behind_load(at).is_empty());
    let trees = 0..plan.facts.trees.len();
    let beside =
        |tree: usize| matches!(plan.chosen_at_panel(tree).choice, AtPanel::DeadFrontGfci | AtPanel::DeadFrontDual);
    let mut list = Vec::new();
    if job.outlets_behind_one_device.is_none() && (feeds || trees.clone().any(beside)) {
        list.push(
            "the instructions of a feed-through device are taken to set no limit on how many outlets it protects: read them, \
             and state one as `outlets_behind_one_device`"
                .to_owned(),
        );
    }
    let fitted = |at: BoxIndex| plan.chosen(at).device.is_gfci() || !plan.behind_load(at).is_empty();
    let at_panel = |tree: usize| plan.chosen_at_panel(tree).choice.is_gfci();
    if job.leakage_percent.is_none() && (plan.facts.dwelling.box_indices().any(fitted) || trees.clone().any(at_panel)) {
        list.push(format!(
            "standing leakage behind one GFCI is planned up to just below {}, 0.5 mA for each thing plugged in: a smaller \
             share can be stated as `leakage_percent`",
            plan.facts.limits.leakage_in_words()
        ));
    }
    list.extend(pricing_notes(plan));
    list
}

/// The cautions that every plan carries; common practice, no source, where no section is named.
fn cautions(built: Option<u16>) -> Vec<String> {
    let mut list = vec![
        "switch off, lock or tag, and prove dead with a tester that is proved live before and after".to_owned(),
        "old insulation is brittle: flex it no more than needed, and stop where it cracks".to_owned(),
        "old plaster, tile and insulation may hold asbestos: find out before cutting".to_owned(),
        "mend reversals, jumpers and neutrals that touch metal before a GFCI or AFCI goes in: it opens at once otherwise"
            .to_owned(),
        "protection is planned for every corrected opening, whether its receptacle is new or stays: the authority may ask \
         for less where it stays"
            .to_owned(),
        "follow the instructions of the listed product, above all for line and load terminals and for the panel"
            .to_owned(),
        "local codes and the authority having jurisdiction decide; the work is a licensed electrician's".to_owned(),
    ];
    list.extend(lead_caution(built));
    list
}
