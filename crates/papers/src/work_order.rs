//! The work order: what is done at the panel, along each way, and at each box, room by room in walking order.

use crate::connections::connections;
use crate::dangers;
use crate::document::{Block, Drawing, Face, Paper, Table, Text};
use crate::job::Job;
use crate::notes::Notes;
use crate::wirings::{Shared, gallery, shared};
use crate::words::{
    circuits_in_words, circuits_named, listed, once_for_all, one, room_title, sentence, sizes_of, unquoted,
    wall_openings,
};
use dwelling::{DwellingUse, GroundFact, Overcurrent, Panel, RouteKind};
use remedies::in_words::{as_found, at_panel, capital, device, device_at, order, repairs};
use remedies::{ALLOWED, BoxWork, Device, OpeningAnswer, PlanStatus, RouteAnswer, Step};

/// How dead is proved: common practice, no source; the last steps are what old wiring asks for besides.
const PROVE_DEAD: &[&str] = &[
    "Switch off the breaker or take out the fuse; of a multiwire set both at once. Lock it, or tag it and keep the fuse.",
    "Prove the tester on a source that is known to be live.",
    "At the box, test hot to neutral, and each of them to an independent earth: a lead from a sound ground. Where there is \
     no ground, a test between the slots alone shows nothing if the neutral is open.",
    "Take the device out of the box by its yoke and test every conductor in the box: another circuit may pass through it.",
    "Prove the tester again on the same live source. Only then is it dead.",
];

/// How the cautions begin that hold only where there is no ground.
pub(crate) const WITHOUT_GROUND: &[&str] = &[
    "as long as there is no ground here",
    "experts differ on whether equipment that must be grounded",
    "a surge protector diverts to the ground",
];

/// The work order of a job.
#[must_use]
pub fn work_order(job: &Job) -> Paper {
    let mut notes = Notes::default();
    let mut blocks = head(job);
    blocks.extend(power_off(job));
    blocks.extend(dangers::ordered(job));
    blocks.extend(panel_work(job));
    blocks.extend(ways(job, &mut notes));
    let drawings = shared(job);
    for (room, openings) in job.rooms() {
        blocks.extend(room_work(job, room, &openings, (&drawings, &mut notes)));
    }
    blocks.extend(notes.written_out());
    blocks.extend(gallery(&drawings));
    Paper { blocks, ..job.paper("Work order") }
}

fn head(job: &Job) -> Vec<Block> {
    let plan = job.plan;
    let mut facts = vec![format!("NEC {}", plan.job.edition)];
    facts.extend(plan.law.place.iter().cloned());
    facts.extend(plan.job.dwelling_use.map(|kind| in_words(kind).to_owned()));
    facts.extend(plan.job.built.map(|year| format!("built {year}")));
    let openings = wall_openings(plan.totals.wall_openings);
    let minutes = plan.totals.price.minutes;
    facts.push(format!("{} h {:02} min reckoned, {openings}", minutes / 60, minutes % 60));
    let mut blocks =
        vec![Block::Heading(1, format!("Work order: {}", plan.job.name)), Block::Paragraph(facts.join(" · ").into())];
    // What an allowance is held for is done first, and ordered below.
    let unsettled: Vec<String> = plan.in_the_way.iter().filter(|line| !line.contains(ALLOWED)).cloned().collect();
    if plan.status != PlanStatus::Complete && !unsettled.is_empty() {
        let what = "Do not start on these before they are settled: find out, or ask the authority having jurisdiction.";
        blocks.push(Block::Caution(Text::bold(what)));
        let open = once_for_all(&unsettled);
        blocks.push(Block::Bullets(open.iter().map(|line| sentence(line).into()).collect()));
    }
    blocks.push(Block::Heading(2, "Before any work".to_owned()));
    let cautions = plan.cautions.iter().chain(&plan.law.warnings);
    blocks.extend(cautions.map(|caution| Block::Caution(sentence(caution).into())));
    blocks
}

const fn in_words(kind: DwellingUse) -> &'static str {
    match kind {
        DwellingUse::OneFamily => "one-family dwelling",
        DwellingUse::TwoFamily => "two-family dwelling",
        DwellingUse::Apartment => "flat",
    }
}

fn power_off(job: &Job) -> Vec<Block> {
    let dwelling = job.dwelling;
    let mut rows = Vec::new();
    for circuit in &job.plan.circuits {
        let worked: Vec<&str> = job.plan.openings.iter().filter(|opening| job.is_worked_on(opening)).map(id).collect();
        let boxes: Vec<&str> = circuit.boxes.iter().map(String::as_str).filter(|at| worked.contains(at)).collect();
        let is_mended =
            job.plan.dangers.iter().any(|danger| danger.circuits.iter().any(|id| circuit.circuits.contains(id)));
        if boxes.is_empty() && circuit.at_panel == "as-it-is" && !is_mended {
            continue;
        }
        let panel = dwelling.panels.iter().find(|panel| panel.id == circuit.panel);
        let opens = opens_it(panel);
        let mut ratings: Vec<String> = circuit.circuits.iter().map(|id| job.rating_of(id)).collect();
        ratings.dedup();
        let rated = match (ratings.as_slice(), circuit.circuits.len()) {
            ([both], 2) => format!("2 {opens}s of {both}"),
            _ => listed(&ratings.iter().map(|rating| format!("{rating} {opens}")).collect::<Vec<String>>()),
        };
        let together = if circuit.circuits.len() > 1 { " – both at once: they share a neutral" } else { "" };
        rows.push(vec![
            Text::bold(circuits_in_words(&circuit.circuits)).into(),
            format!("{rated}, panel {}{together}", circuit.panel).into(),
            if boxes.is_empty() { "the panel".into() } else { listed(&boxes).into() },
            crate::document::Cell::Tick,
            crate::document::Cell::Words(Text::default()),
        ]);
    }
    let columns = [("Circuit", 0.8), ("Switch off", 2.3), ("Work at", 3.2), ("Dead", 0.5), ("Initials", 0.8)];
    let columns = columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec();
    vec![
        Block::Heading(2, "Power off, and prove dead".to_owned()),
        Block::Steps(PROVE_DEAD.iter().map(|step| (*step).into()).collect()),
        Block::Table(Table { columns, rows, row_height: 20.0 }),
    ]
}

/// What switches a circuit of a panel off.
fn opens_it(panel: Option<&Panel>) -> &'static str {
    match panel.and_then(|panel| panel.overcurrent) {
        Some(Overcurrent::Breakers) => "breaker",
        Some(Overcurrent::Fuses) => "fuse",
        None => "breaker or fuse",
    }
}

fn id(opening: &OpeningAnswer) -> &str {
    &opening.box_id
}

fn panel_work(job: &Job) -> Vec<Block> {
    let changed: Vec<_> = job.plan.circuits.iter().filter(|circuit| circuit.at_panel != "as-it-is").collect();
    let mut blocks = vec![Block::Heading(2, "At the panel".to_owned())];
    for circuit in &changed {
        let mut items = vec![("Put in", rated_breaker(job, circuit))];
        if circuit.circuits.len() > 1 {
            let shared = "Both hots of the set on its two poles, their shared neutral on its neutral terminal; the splices \
                          of the shared neutral stay pigtailed, so that no device holds it together.";
            items.push(("Connect", shared.into()));
        } else if circuit.at_panel.starts_with("breaker") {
            items.push(("Connect", "The circuit's hot and its neutral on the breaker, the breaker's lead on the neutral bar, as its instructions say.".into()));
        } else {
            let opens = opens_it(job.dwelling.panels.iter().find(|panel| panel.id == circuit.panel));
            let connect = format!(
                "Line terminals to the hot from the {opens} and to the neutral bar, load terminals to the circuit's hot and \
                 neutral, as its instructions say. The {opens} stays."
            );
            items.push(("Connect", connect.into()));
        }
        items.push(("Protects", listed(&circuit.boxes).into()));
        items.push((
            "Afterwards",
            "Press its test button: it opens. Enter it in the directory (paper “Circuit directory”).".into(),
        ));
        blocks.push(Block::Together(vec![
            Block::Task(circuits_in_words(&circuit.circuits), capital(at_panel(circuit.at_panel))),
            items_of(items),
        ]));
    }
    if changed.is_empty() {
        let else_ = if job.plan.dangers.iter().any(|danger| danger.at != "box") { "else " } else { "" };
        blocks.push(Block::Paragraph(format!("Nothing {else_}is changed at the panel.").into()));
    }
    blocks
}

fn rated_breaker(job: &Job, circuit: &remedies::CircuitAnswer) -> Text {
    let ratings: Vec<String> = circuit.circuits.iter().map(|id| job.rating_afterwards(id)).collect();
    if circuit.at_panel.starts_with("dead-front") {
        // What stands beside a panel is listed for itself, and bears what comes through the breaker or fuse.
        let device = one(at_panel(circuit.at_panel));
        let words = "in a box of its own, without slots, listed for use as such, for at least";
        return format!("{}, {words} {}.", capital(&device), listed(&ratings)).into();
    }
    let mut all = ratings.clone();
    all.dedup();
    format!("{} of {}, made and listed for this panel.", capital(&one(at_panel(circuit.at_panel))), listed(&all)).into()
}

fn items_of(items: Vec<(&str, Text)>) -> Block {
    Block::Items(items.into_iter().map(|(label, text)| (label.to_owned(), text)).collect())
}

fn ways(job: &Job, notes: &mut Notes) -> Vec<Block> {
    if job.plan.routes.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![Block::Heading(2, "Conductors to bring".to_owned())];
    for (position, route) in job.plan.routes.iter().enumerate() {
        let has_map = job.drawn.ways.iter().any(|map| map.ways.contains(&route.id));
        let mut items = vec![("Way", way_in_words(route, position + 1, has_map))];
        items.push(("Opens", wall_openings(i64::from(route.openings)).into()));
        items.push(("Grounds", listed(&route.grounds).into()));
        items.extend(route.note.as_ref().map(|note| ("Note", note.as_str().into())));
        items.push(("Rests on", notes.basis(&route.cites, &route.conditions)));
        let sizes = sizes_of(route);
        let what = match route.kind {
            RouteKind::Egc => format!("{sizes} copper grounding conductor"),
            RouteKind::NewCable => format!("New cable with a grounding conductor of {sizes}"),
        };
        let title = format!("{what}, {} to {}, {}", route.from, route.to, route.length);
        blocks.push(Block::Together(vec![Block::Task(route.id.clone(), title), items_of(items)]));
        // The maps of ways that share a stretch stand behind the last of them, and are of all of them.
        let maps = job.drawn.ways.iter().filter(|map| map.ways.last() == Some(&route.id));
        let maps: Vec<Drawing> =
            maps.map(|map| Drawing { svg: map.figure.svg.clone(), says: map.figure.says.clone() }).collect();
        if !maps.is_empty() {
            blocks.push(Block::Drawings(maps));
        }
    }
    blocks
}

/// A way stretch by stretch, each by the name that it has on the map.
fn way_in_words(route: &RouteAnswer, position: usize, has_map: bool) -> Text {
    let mut parts = Vec::new();
    if let Some(other) = &route.branches_from {
        parts.push(format!("Branches off from the way {other}."));
    }
    let size = |leg: &remedies::LegAnswer| {
        if leg.size == route.size { String::new() } else { format!("{} here: ", leg.size) }
    };
    parts.extend(
        route
            .legs
            .iter()
            .enumerate()
            .map(|(number, leg)| format!("R{position}.{}: {}{}.", number + 1, size(leg), leg.says)),
    );
    if parts.is_empty() {
        let map = if has_map { "Its map is a straight line between the two" } else { "There is no map of it" };
        parts.push(format!(
            "As stated in the survey, from {} to {}. {map}, and its length is the survey's.",
            route.from, route.to
        ));
    }
    parts.join(" ").into()
}

fn room_work(
    job: &Job,
    room: &str,
    openings: &[&OpeningAnswer],
    (drawings, notes): (&[Shared], &mut Notes),
) -> Vec<Block> {
    let worked: Vec<&&OpeningAnswer> = openings.iter().filter(|opening| job.is_worked_on(opening)).collect();
    let mut blocks = vec![Block::Heading(2, room_title(job.dwelling, room))];
    let mut circuits: Vec<String> = Vec::new();
    for opening in &worked {
        let set = job.plan.circuits.iter().find(|circuit| circuit.boxes.contains(&opening.box_id));
        let told = set
            .map_or("the one of it, which is not known: find it first".to_owned(), |set| circuits_named(&set.circuits));
        if !circuits.contains(&told) {
            circuits.push(told);
        }
    }
    if !circuits.is_empty() {
        let off = Text::bold("Off and proved dead: ").and(Face::Plain, format!("{}.", circuits.join("; ")));
        blocks.push(Block::Paragraph(off));
    }
    for (boxes, caution) in cautions_of(&worked) {
        blocks.push(Block::Caution(Text::bold(format!("{boxes}: ")).and(Face::Plain, sentence(&caution))));
    }
    let mut tasks = worked.iter().map(|opening| {
        let items = box_work(job, opening, (drawings, notes));
        Block::Together(vec![Block::Task(opening.box_id.clone(), capital(&order(opening))), items_of(items)])
    });
    // The cautions of a room stay with its first box, and what is left alone with its last.
    blocks.extend(tasks.next());
    blocks = vec![Block::Together(blocks)];
    blocks.extend(tasks);
    let left: Vec<&str> =
        openings.iter().filter(|opening| !job.is_worked_on(opening)).map(|opening| id(opening)).collect();
    if !left.is_empty()
        && let Some(last) = blocks.pop()
    {
        let small = Block::Small(format!("No work at {}.", listed(&left)).into());
        blocks.push(Block::Together(vec![last, small]));
    }
    blocks
}

/// The cautions of boxes that are worked on, each with the boxes that it is for.
fn cautions_of(openings: &[&&OpeningAnswer]) -> Vec<(String, String)> {
    let mut told: Vec<(String, Vec<&str>)> = Vec::new();
    for opening in openings {
        // What is said of openings without a ground is not said of those that get one.
        let holds =
            |caution: &&String| !(opening.grounded && WITHOUT_GROUND.iter().any(|lead| caution.starts_with(lead)));
        for caution in opening.cautions.iter().filter(holds) {
            match told.iter_mut().find(|(words, _)| words == caution) {
                Some((_, boxes)) => boxes.push(id(opening)),
                None => told.push((caution.clone(), vec![id(opening)])),
            }
        }
    }
    told.into_iter().map(|(caution, boxes)| (listed(&boxes), caution)).collect()
}

/// What is done at a box, in the order in which it is done.
fn box_work(
    job: &Job,
    opening: &OpeningAnswer,
    (drawings, notes): (&[Shared], &mut Notes),
) -> Vec<(&'static str, Text)> {
    let mut items: Vec<(&'static str, Text)> = Vec::new();
    let circuit = opening.circuit.as_ref().map_or("circuit unknown".to_owned(), |id| format!("circuit {id}"));
    items.push(("Found", format!("{} ({circuit})", as_found(opening.holds, opening.ground)).into()));
    if opening.do_not_disturb {
        items.push((
            "Danger",
            Text::bold("Do not disturb the conductors in this box: their insulation is too brittle."),
        ));
    }
    for finding in opening.findings.iter().filter(|finding| finding.danger) {
        items.push(("Danger", Text::bold(unquoted(&finding.says))));
    }
    items.extend(
        opening.open_questions.iter().map(|question| ("Settle first", Text::from(sentence(&unquoted(question))))),
    );
    items.extend(opening.shortfalls.iter().map(|missing| ("Not had", Text::from(sentence(missing)))));
    if !opening.repairs.is_empty() {
        items.push(("First", Text::bold(sentence(&repairs(opening)))));
    }
    items.extend(take_out(opening).map(|words| ("Take out", words.into())));
    items.extend(change_of_box(job, opening).map(|words| ("Box", words.into())));
    items.extend(put_in(opening).map(|words| ("Put in", words.into())));
    items.extend(connections(job, opening));
    if let Some(words) = ground(opening) {
        items.push(("Ground", words.into()));
    }
    let is_here = |shared: &&Shared| shared.boxes.iter().any(|wiring| wiring.box_id == opening.box_id);
    if let Some(shared) = drawings.iter().find(is_here) {
        let words = Text::from("wired as drawing ").and(Face::Bold, shared.letter.as_str());
        items.push(("Drawing", words.and(Face::Plain, ", at the end of this paper")));
    }
    if !opening.markings.is_empty() {
        let words: Vec<String> = opening.markings.iter().map(|marking| format!("“{marking}”")).collect();
        let plate = if opening.step == Step::MarkProtected { ", on a new nonmetallic plate" } else { "" };
        items.push(("Mark", Text::bold(words.join(" and ")).and(Face::Plain, format!("{plate} (paper “Labels”)."))));
    }
    items.extend(protection(opening).map(|words| ("Protected by", words.into())));
    items.extend(opening.note.as_ref().map(|note| ("Note", Text::from(note.as_str()))));
    if opening.step != Step::Leave && !(opening.cites.is_empty() && opening.conditions.is_empty()) {
        items.push(("Rests on", notes.basis(&opening.cites, &opening.conditions)));
    }
    items
}

fn take_out(opening: &OpeningAnswer) -> Option<String> {
    let held = opening.holds.in_words();
    match opening.device {
        Device::Kept if opening.box_work != BoxWork::Keep => Some(format!("the {held}; it goes back in")),
        Device::Kept => None,
        _ => Some(format!("the {held}")),
    }
}

fn change_of_box(job: &Job, opening: &OpeningAnswer) -> Option<String> {
    let at = job.dwelling.box_named(&opening.box_id)?;
    let body = &job.dwelling.device_box(at).body;
    let size = body.size.as_ref().map_or_else(String::new, |size| format!(" ({size})"));
    let old = match body.metal {
        Some(true) => format!("the old metal box{size}"),
        Some(false) => format!("the old nonmetallic box{size}"),
        None => format!("the old box{size}"),
    };
    let room = opening
        .fill
        .as_ref()
        .and_then(|fill| Some(format!("; counted afterwards: {} of {}", fill.taken.as_ref()?, fill.volume.as_ref()?)));
    let room = room.unwrap_or_default();
    let of_metal = if job.dwelling.metal_enters(at) {
        ", of metal, its connector outside: metal around the wires ends in it (314.3)"
    } else {
        ""
    };
    match opening.box_work {
        BoxWork::Keep => opening.fill.as_ref().map(|_| format!("it stays{room}")),
        BoxWork::Replace => Some(format!("cut out {old}, fit a 20 in³ single-gang old-work box{of_metal}{room}")),
        BoxWork::ReplaceWide => {
            Some(format!("cut out {old}, fit a two-gang old-work box with a cover for one device{of_metal}{room}"))
        }
        BoxWork::Extend => Some(format!("leave {old}, fit a surface extension box on it{room}")),
    }
}

fn put_in(opening: &OpeningAnswer) -> Option<String> {
    if opening.device == Device::Kept {
        return None;
    }
    let new = !matches!(opening.device, Device::TwoSlot | Device::Blank);
    let mut kinds = Vec::new();
    if new && opening.requires.tamper_resistant.required {
        kinds.push("tamper-resistant");
    }
    if new && opening.requires.weather_resistant.required {
        kinds.push("weather-resistant");
    }
    let kinds = if kinds.is_empty() { String::new() } else { format!(", {}", kinds.join(" and ")) };
    Some(format!("{}{kinds}", device(opening.device)))
}

fn ground(opening: &OpeningAnswer) -> Option<String> {
    let routes: Vec<String> = opening.routes_joined.iter().map(|route| format!("“{route}”")).collect();
    let routes = routes.join(" and ");
    Some(match opening.step {
        Step::GroundArrives => format!(
            "nothing to connect: it arrives by {}; test it",
            opening.ground_by.as_ref().map_or("what is joined already".to_owned(), |route| format!("“{route}”"))
        ),
        Step::RestoreKept | Step::RestoreFitted if opening.ground == GroundFact::Poor => {
            "a ground arrives and is poor: find the joint along its way that is bad, mend it, and measure it again under load"
                .to_owned()
        }
        Step::RestoreKept | Step::RestoreFitted => {
            "bring the grounding conductor that is in the box back into use: to the receptacle, and to the box where it is metal"
                .to_owned()
        }
        _ if !opening.routes_joined.is_empty() => format!("join the conductor of {routes} here, with all grounding conductors of the box"),
        _ if opening.step.is_protected_without_ground() => {
            "none: connect no grounding conductor between this and other receptacles without a ground".to_owned()
        }
        _ => return None,
    })
}

fn protection(opening: &OpeningAnswer) -> Option<String> {
    let by = opening.protected_by.as_deref()?;
    Some(match by.split_once(": ") {
        Some((panel, what)) => device_at(what, panel),
        None if by == "itself" => "its own GFCI".to_owned(),
        None => format!("the device in {by}"),
    })
}
