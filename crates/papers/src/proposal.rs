//! The proposal: what was found, in plain words, and what can be done about it, offer beside offer, to be signed.

use crate::as_found::{asks_for_care, boxes_in_words, shows_a_plan, where_shown};
use crate::dangers;
use crate::document::{Block, Cell, Face, Paper, Table, Text};
use crate::job::Job;
use crate::words::{in_a_row, listed, once_for_all, room_title, sentence, unquoted, wall_openings};
use dwelling::GroundFact;
use estimate::Cents;
use remedies::{OfferAnswer, OffersAnswer, OpeningAnswer, OwnerPriceAnswer, PlanStatus};

/// What the owner is not asked to know: a word, by what it is recognized in what is said, and what it means. Only what is said is
/// explained.
const WORDS: &[(&str, &[&str], &str)] = &[
    (
        "Ground",
        &["ground"],
        "the third wire. It carries the current of a fault back to the panel, so that the breaker opens and no metal case stays live.",
    ),
    ("Live", &["live"], "under voltage: to touch it can kill."),
    (
        "Hot, neutral",
        &["neutral", "hot and", "the hot"],
        "the two wires that feed what is plugged in: the hot brings the current, the neutral takes it back.",
    ),
    (
        "Three-slot receptacle",
        &["three-slot", "third hole", "grounding receptacle"],
        "an outlet with a round third hole. Without a ground behind it, it promises what is not there.",
    ),
    (
        "GFCI",
        &["gfci", "protected"],
        "a device that switches off within a moment when current takes a way it should not, such as through a person. It protects people without a ground, and is no ground.",
    ),
    ("AFCI", &["afci"], "a device that switches off when a wire sparks, before it starts a fire."),
    (
        "Marked",
        &["marked"],
        "with a label that the code asks for where a GFCI stands in for the ground: “No Equipment Ground” and, where the GFCI sits elsewhere, “GFCI Protected”. It stays on the plate.",
    ),
    (
        "Wall opening",
        &["wall opening"],
        "a hole cut into a finished wall or ceiling to bring a wire, and closed again.",
    ),
    ("Opening", &["this opening"], "a box in a wall or ceiling with what sits in it: an outlet, a switch, a lamp."),
    ("Upstream", &["upstream"], "nearer to the panel along the wire."),
    ("Line voltage", &["line voltage"], "as much as there is between hot and neutral: 120 volts."),
    ("Screw shell", &["screw shell"], "the thread of a lamp holder, into which the bulb is turned."),
    ("Jumper", &["jumper"], "a short wire that joins two terminals."),
    ("Multiwire set", &["multiwire"], "two circuits that share one neutral."),
    ("Ω", &["Ω"], "ohm: how hard it is for current to get through. A sound ground has less than 1 Ω."),
    ("Authority", &["authority"], "the inspector's office, which decides what the code means here."),
];

/// What no price of an offer holds. Common practice, no source.
const EXCLUDED: &[&str] = &[
    "painting, wallpaper and tile: openings are closed, not finished;",
    PERMIT,
    "clearing lead paint or asbestos, where it is found;",
    "faults that nobody could see before boxes and walls were open: they are shown to you and priced before they are mended;",
    "anything that is not listed here.",
];

/// What is not held only where the price book has no fee.
const PERMIT: &str = "the permit's fee;";

/// The proposal of a job.
#[must_use]
pub fn proposal(job: &Job) -> Paper {
    let found = found(job);
    let rest: Vec<Block> = [dangers::proposed(job), offers(job), unsettled(job), terms(job)].concat();
    let mut blocks = vec![Block::Heading(1, format!("Proposal: {}", job.plan.job.name))];
    let meaning = meaning(&[found.as_slice(), rest.as_slice()].concat());
    blocks.extend([found, meaning, rest].concat());
    blocks.extend(boxes_in_words(job));
    let plans = job.floors_before.iter().filter(|sheet| shows_a_plan(sheet));
    blocks.extend(plans.map(|sheet| Block::Sheet(sheet.svg.clone(), sheet.title.clone())));
    Paper { blocks, ..job.paper("Proposal") }
}

fn found(job: &Job) -> Vec<Block> {
    let receptacles: Vec<&OpeningAnswer> =
        job.plan.openings.iter().filter(|opening| opening.holds.is_receptacle()).collect();
    let bare = receptacles.iter().filter(|opening| opening.ground == GroundFact::None).count();
    let grounded = job.plan.totals.grounded_before;
    let others = receptacles.len().saturating_sub(bare + grounded);
    let promising = receptacles
        .iter()
        .filter(|opening| opening.holds.takes_grounding_plug() && opening.ground != GroundFact::Connected)
        .count();
    let have = |number: usize| match number {
        0 => "none has".to_owned(),
        1 => "1 has".to_owned(),
        many => format!("{many} have"),
    };
    let mut parts = vec![format!("{} a sound ground", have(grounded))];
    parts.extend((bare > 0).then(|| format!("{} no ground", have(bare))));
    let doubtful = "a ground that is loose, poor, cut off, false or not known";
    parts.extend((others > 0).then(|| format!("{} {doubtful}", have(others))));
    let all = receptacles.len();
    let mut says = format!("Of {all} receptacles (outlets), {}.", in_a_row(&parts));
    if promising > 0 {
        let not =
            if promising == 1 { "it were grounded, and it is not" } else { "they were grounded, and they are not" };
        says.push_str(&format!(" {} the third hole, as if {not}, or not surely.", have(promising)));
    }
    let mut blocks = vec![Block::Heading(2, "What was found".to_owned()), Block::Paragraph(says.into())];
    for opening in &job.plan.openings {
        let place = format!("{}, {}: ", room_title(job.dwelling, &opening.room), opening.box_id);
        for finding in opening.findings.iter().filter(|finding| finding.danger) {
            blocks.push(Block::Caution(Text::bold(place.as_str()).and(Face::Plain, unquoted(&finding.says))));
        }
    }
    for finding in job.plan.findings.iter().filter(|finding| finding.danger) {
        let place = format!("{} {}: ", finding.at, finding.id);
        blocks.push(Block::Caution(
            Text::bold(sentence(&place).trim_end_matches('.')).and(Face::Plain, unquoted(&finding.says)),
        ));
    }
    blocks.extend(asks_for_care(job));
    blocks.extend(where_shown(job));
    blocks
}

fn offers(job: &Job) -> Vec<Block> {
    let mut blocks = vec![Block::Heading(2, "What can be done".to_owned())];
    match &job.plan.offers {
        Some(offers) => {
            blocks.push(Block::Table(side_by_side(job, offers)));
            let taken = format!("The papers that go with this proposal are made for offer {}.", offers.taken);
            blocks.push(Block::Small(taken.into()));
            for (number, offer) in offers.offers.iter().enumerate() {
                blocks.push(Block::Together(vec![
                    Block::Heading(3, format!("Offer {}: {}", number + 1, offer.name)),
                    Block::Items(gives(job, offers, (number, offer))),
                ]));
            }
        }
        None => blocks.push(Block::Items(vec![
            ("Price".to_owned(), Text::bold(money(job.plan.totals.owner.total_cents))),
            ("Working days".to_owned(), job.plan.totals.owner.days.to_string().into()),
            (
                "Gives".to_owned(),
                format!(
                    "{} of {} receptacles a real ground",
                    job.plan.totals.grounded_after, job.plan.totals.receptacles
                )
                .into(),
            ),
            ("Walls".to_owned(), wall_openings(job.plan.totals.wall_openings).into()),
        ])),
    }
    blocks.extend(not_proved(job).map(|says| Block::Caution(says.into())));
    if job.plan.totals.demo_prices {
        let invented = "The prices are invented demo figures, not an offer to anybody: put in your own price book.";
        blocks.push(Block::Caution(Text::bold(invented)));
    }
    blocks
}

/// What was not looked into to the end: nobody is told that a price is the least where that is not known.
fn not_proved(job: &Job) -> Option<&'static str> {
    let stopped = job.plan.offers.as_ref().is_some_and(|offers| !offers.complete);
    match (job.plan.totals.nothing_below_cents, stopped) {
        (None, false) => None,
        (None, true) => Some("The search for offers was stopped at its limit: there may be better ones beside these."),
        (Some(_), _) => {
            Some("The search was stopped at its limit: the same may be had for less, and better offers may exist.")
        }
    }
}

fn money(cents: i64) -> String {
    Cents(cents).to_string()
}

fn side_by_side(job: &Job, offers: &OffersAnswer) -> Table {
    let mut columns = vec![(String::new(), 1.5)];
    columns.extend(offers.offers.iter().enumerate().map(|(at, offer)| (format!("{}. {}", at + 1, offer.name), 1.2)));
    let of = job.plan.totals.receptacles;
    let row = |head: &str, told: &dyn Fn(&OfferAnswer) -> Text| {
        let mut cells = vec![Text::bold(head).into()];
        cells.extend(offers.offers.iter().map(|offer| told(offer).into()));
        cells
    };
    let rows = vec![
        row("Price", &|offer| Text::bold(money(offer.owner_cents))),
        row("Really grounded", &|offer| format!("{} of {of}", offer.grounded).into()),
        row("Protected and marked, without a ground", &|offer| offer.markings.to_string().into()),
        row("The others, without a ground", &|offer| {
            of.saturating_sub(offer.grounded).saturating_sub(offer.markings).to_string().into()
        }),
        row("Walls opened", &|offer| offer.wall_openings.to_string().into()),
        row("Working days", &|offer| offer.days.to_string().into()),
    ];
    Table { columns, rows, row_height: 0.0 }
}

/// What an offer gives and what it does not.
fn gives(job: &Job, offers: &OffersAnswer, (number, offer): (usize, &OfferAnswer)) -> Vec<(String, Text)> {
    let point = offers.frontier.iter().find(|point| {
        point.total_cents == offer.price.total_cents
            && point.worth == offer.worth
            && point.wall_openings == offer.wall_openings
    });
    let receptacles = job.plan.openings.iter().filter(|opening| opening.holds.is_receptacle());
    let receptacles: Vec<&str> = receptacles.map(|opening| opening.box_id.as_str()).collect();
    let mut items = vec![("Price".to_owned(), Text::bold(money(offer.owner_cents)))];
    if let Some(point) = point {
        let bare: Vec<&str> =
            receptacles.into_iter().filter(|id| !point.grounded.iter().any(|grounded| grounded == id)).collect();
        items.push(("Grounded".to_owned(), by_room(job, &point.grounded).into()));
        items.push(("No ground".to_owned(), by_room(job, &bare).into()));
    }
    if let Some(step) = &offer.step_up {
        let mut parts = vec![match step.owner_costs_more_cents {
            more if more < 0 => format!("{} less", money(-more)),
            more => format!("{} more", money(more)),
        }];
        if !step.grounds.is_empty() {
            parts.push(format!("grounds {} besides", listed(&step.grounds)));
        }
        if !step.gives_up.is_empty() {
            parts.push(format!("does not ground {}", listed(&step.gives_up)));
        }
        match step.more_wall_openings {
            0 => {}
            -1 => parts.push("1 wall opening less".to_owned()),
            1 => parts.push("1 wall opening more".to_owned()),
            fewer if fewer < 0 => parts.push(format!("{} fewer", wall_openings(-fewer))),
            more => parts.push(format!("{} more", wall_openings(more))),
        }
        items.push((format!("Over offer {number}"), parts.join("; ").into()));
    }
    items
}

/// Boxes by their rooms, as people who live there can find them.
fn by_room<T: AsRef<str>>(job: &Job, boxes: &[T]) -> String {
    let mut told = Vec::new();
    for (room, openings) in job.rooms() {
        let here = openings.iter().map(|opening| opening.box_id.as_str());
        let here: Vec<&str> = here.filter(|id| boxes.iter().any(|known| known.as_ref() == *id)).collect();
        if !here.is_empty() {
            told.push(format!("{} {}", room_title(job.dwelling, room), listed(&here)));
        }
    }
    if told.is_empty() { "none".to_owned() } else { told.join("; ") }
}

fn unsettled(job: &Job) -> Vec<Block> {
    if job.plan.status == PlanStatus::Complete {
        return Vec::new();
    }
    let lead = "These have to be found out or asked first, and can change the work and its price:";
    let list = once_for_all(&job.plan.in_the_way).iter().map(|line| sentence(line).into()).collect();
    let heading = Block::Heading(2, "Not settled yet".to_owned());
    vec![Block::Together(vec![heading, Block::Paragraph(lead.into()), Block::Bullets(list)])]
}

fn terms(job: &Job) -> Vec<Block> {
    let row = |name: String, cents: i64| vec![Cell::Tick, name.into(), money(cents).into()];
    let choice = match &job.plan.offers {
        Some(offers) => (offers.offers.iter().enumerate())
            .map(|(at, offer)| row(format!("Offer {}: {}", at + 1, offer.name), offer.owner_cents))
            .collect(),
        None => vec![row("The plan above".to_owned(), job.plan.totals.owner.total_cents)],
    };
    let owner = &job.plan.totals.owner;
    let heading = match &job.plan.offers {
        Some(offers) if offers.offers.len() > 1 => format!("What makes up the price of offer {}", offers.taken),
        _ => "What makes up the price".to_owned(),
    };
    let excluded = EXCLUDED.iter().filter(|words| owner.permit_cents == 0 || **words != PERMIT);
    let not_held: Vec<String> =
        dangers::excluded(job).into_iter().chain(excluded.map(|words| (*words).to_owned())).collect();
    let mut blocks = vec![
        Block::Together(vec![
            Block::Heading(2, heading),
            Block::Table(Table {
                columns: vec![("Part".to_owned(), 4.0), ("Sum".to_owned(), 1.2)],
                rows: parts_of_the_price(owner, dangers::parts(job)),
                row_height: 0.0,
            }),
        ]),
        Block::Together(vec![
            Block::Heading(2, "Not in the price".to_owned()),
            Block::Bullets(not_held.into_iter().map(Text::from).collect()),
        ]),
    ];
    let mut before = vec![Block::Heading(2, "Before you sign".to_owned())];
    let kept = ["licensed electrician", "lead", "asbestos"];
    let told = job.plan.cautions.iter().filter(|caution| kept.iter().any(|word| caution.contains(word)));
    before.extend(told.map(|caution| Block::Caution(sentence(caution).into())));
    blocks.push(Block::Together(before));
    blocks.push(Block::Together(vec![
        Block::Heading(2, "Signed".to_owned()),
        Block::Table(Table {
            columns: vec![("Choose".to_owned(), 1.0), ("One offer".to_owned(), 4.0), ("Price".to_owned(), 2.0)],
            rows: choice,
            row_height: 0.0,
        }),
        Block::Fields(vec!["Valid until".into(), "Work begins".into(), "Price agreed".into()]),
        Block::Fields(vec!["Owner".into(), "Signature".into(), "Day".into()]),
        Block::Fields(vec!["Contractor, licence".into(), "Signature".into(), "Day".into()]),
    ]));
    blocks
}

/// The parts of what the owner pays for the plan, their sum last.
fn parts_of_the_price(owner: &OwnerPriceAnswer, dangers: Vec<(String, i64)>) -> Vec<Vec<Cell>> {
    let for_dangers: i64 = dangers.iter().map(|(_, cents)| cents).sum();
    let days = if owner.days == 1 { "1 working day".to_owned() } else { format!("{} working days", owner.days) };
    let parts = [
        (format!("Trips, {days}"), owner.trips_cents),
        ("For what nobody could see before".to_owned(), owner.contingency_cents),
        ("The permit's fee".to_owned(), owner.permit_cents),
        ("To the least that a job is done for".to_owned(), owner.to_minimum_cents),
        ("Rounded up".to_owned(), owner.rounding_cents),
    ];
    let work = [("Material and labour".to_owned(), owner.work_cents - for_dangers)];
    let rows = work
        .into_iter()
        .chain(dangers)
        .chain(parts)
        .filter(|(_, cents)| *cents > 0)
        .map(|(part, cents)| vec![part.into(), money(cents).into()]);
    let sum = vec![Text::bold("Together").into(), Text::bold(money(owner.total_cents)).into()];
    rows.chain([sum]).collect()
}

/// The words that are used in what is said, and in what explains them.
fn meaning(said: &[Block]) -> Vec<Block> {
    let said = Paper { title: String::new(), dwelling: String::new(), date: None, blocks: said.to_vec() };
    let said = said.words();
    let lower = said.to_lowercase();
    let is_said = |signs: &&[&str]| signs.iter().any(|sign| lower.contains(sign) || said.contains(sign));
    let used = WORDS.iter().filter(|(_, signs, _)| is_said(signs));
    let items = used.map(|(word, _, says)| ((*word).to_owned(), (*says).into())).collect();
    vec![Block::Together(vec![Block::Heading(2, "What the words mean".to_owned()), Block::Items(items)])]
}
