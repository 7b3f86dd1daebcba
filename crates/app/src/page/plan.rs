//! The page of a plan: what stands in the way, what happens at the panel, then room by room in walking order.

use super::dangers;
use super::feeding;
use super::findings;
use super::ink::{ALARM, ASK, DO, HEADLINE, QUIET, ink};
use super::lines::{rule, with_right, wrapped};
use super::next_best;
use super::offers;
use super::options::fill;
use super::words::{as_found, at_panel, money, order, repairs};
use anstyle::Style;
use dwelling::{Dwelling, Room};
use remedies::{
    NextBestAnswer, OpeningAnswer, OwnerPriceAnswer, PlanAnswer, PlanStatus, RouteAnswer, SteeringAnswer, Step,
    WishAnswer,
};

/// The page.
#[must_use]
pub fn render(answer: &PlanAnswer, dwelling: &Dwelling, full: bool) -> String {
    let mut page = String::new();
    if let Some(answered) = &answer.offers {
        offers::render(&mut page, answered, &answer.totals);
    }
    head(&mut page, answer);
    feeding::assumed(&mut page, &answer.feeding);
    dangers::of_plan(&mut page, answer);
    at_the_panel(&mut page, answer);
    let mut notes = Notes::default();
    let shown = Shown { full, next_best: answer.next_best.as_deref().unwrap_or_default() };
    routes(&mut page, answer, &mut notes);
    for room in &dwelling.rooms {
        let openings: Vec<&OpeningAnswer> = answer.openings.iter().filter(|opening| opening.room == room.id).collect();
        if !openings.is_empty() {
            room_page(&mut page, room, &openings, &shown, &mut notes);
        }
    }
    let heading =
        if answer.status == PlanStatus::Complete { "Worth checking while you are there" } else { "Find out next" };
    findings::find_out(&mut page, heading, &answer.find_out);
    foot(&mut page, answer);
    page
}

/// What is shown of the openings.
struct Shown<'a> {
    full: bool,
    next_best: &'a [NextBestAnswer],
}

/// Conditions that come again and again: written out below the first room that has them, referred to by letter.
#[derive(Default)]
struct Notes {
    notes: Vec<String>,
    written: usize,
}

impl Notes {
    /// The letters of these conditions, such as `a c d`.
    fn letters(&mut self, conditions: &[String]) -> String {
        let letters = conditions.iter().map(|condition| {
            let known = self.notes.iter().position(|note| note == condition);
            letter(known.unwrap_or_else(|| {
                self.notes.push(condition.clone());
                self.notes.len() - 1
            }))
        });
        letters.collect::<Vec<_>>().join(" ")
    }

    /// Writes out those that are new.
    fn write_new(&mut self, page: &mut String) {
        for (index, note) in self.notes.iter().enumerate().skip(self.written) {
            wrapped(page, &format!("      {:>3}  ", letter(index)), note, QUIET);
        }
        self.written = self.notes.len();
    }
}

/// The letter of a note: a to z, then aa, ab and so on.
fn letter(index: usize) -> String {
    let last = char::from(b'a' + u8::try_from(index % 26).unwrap_or(0));
    if index < 26 { last.to_string() } else { format!("{}{last}", letter(index / 26 - 1)) }
}

/// Adds the sections that allow something and the letters of its conditions.
fn basis(page: &mut String, lead: &str, cites: &[String], conditions: &[String], notes: &mut Notes) {
    let mut parts = Vec::new();
    if !cites.is_empty() {
        parts.push(format!("[{}]", cites.join(", ")));
    }
    if !conditions.is_empty() {
        parts.push(format!("conditions {}", notes.letters(conditions)));
    }
    if !parts.is_empty() {
        wrapped(page, lead, &parts.join("  "), QUIET);
    }
}

fn head(page: &mut String, answer: &PlanAnswer) {
    let job = &answer.job;
    let mut facts: Vec<String> = answer.law.place.iter().cloned().collect();
    facts.push(format!("NEC {}", job.edition));
    facts.extend(job.dwelling_use.map(|dwelling_use| dwelling_use.name().to_owned()));
    facts.extend(job.built.map(|year| format!("built {year}")));
    let right = facts.join(" · ");
    with_right(page, &ink(HEADLINE, &job.name), job.name.chars().count(), &right);
    rule(page, QUIET);
    for by in &answer.law.changed_by {
        wrapped(page, "as changed by ", by, Style::new());
    }
    let totals = &answer.totals;
    let (word, style) = match answer.status {
        PlanStatus::Complete => ("COMPLETE", DO),
        PlanStatus::Provisional => ("PROVISIONAL", ASK),
        PlanStatus::Blocked => ("BLOCKED", ALARM),
    };
    let meaning = match answer.status {
        PlanStatus::Complete => "every opening lawful, served and as asked for",
        PlanStatus::Provisional => "find these out, or ask, before you rely on it",
        PlanStatus::Blocked => "something needed cannot be had with what the survey offers, or was not checked",
    };
    page.push_str(&format!("{}  {meaning}\n", ink(style, word)));
    for (boxes, what) in grouped(&answer.in_the_way) {
        wrapped(page, "  - ", &format!("{boxes}{what}"), style);
    }
    let patches = match totals.wall_openings {
        0 => "no wall opened".to_owned(),
        many => wall_openings(many),
    };
    page.push_str(&format!(
        "\n{}   {} material + {} labour ({}), {patches}\n",
        ink(HEADLINE, money(totals.price.total_cents)),
        money(totals.price.material_cents),
        money(totals.price.labour_cents),
        hours(totals.price.minutes),
    ));
    page.push_str(&format!("{}\n", ink(HEADLINE, owner_total(&totals.owner))));
    wrapped(page, "  ", &owner_in_parts(&totals.owner), Style::new());
    page.push_str(&format!(
        "Truly grounded: {} of {} receptacles, {} before.\n{}\n",
        totals.grounded_after,
        totals.receptacles,
        totals.grounded_before,
        proof(answer)
    ));
    if let Some(steering) = &answer.steering {
        steered(page, steering);
    }
    if totals.demo_prices {
        page.push_str(&format!(
            "{}\n",
            ink(ASK, "Prices are invented demo figures: use your own (`thirdwire prices`).")
        ));
    }
}

/// What the owner pays, and for how many days.
fn owner_total(owner: &OwnerPriceAnswer) -> String {
    let days = if owner.days == 1 { "1 day".to_owned() } else { format!("{} days", owner.days) };
    format!("{} to the owner, {days}", money(owner.total_cents))
}

/// What is in that besides the work.
fn owner_in_parts(owner: &OwnerPriceAnswer) -> String {
    let parts = [
        (owner.trips_cents, "trips"),
        (owner.contingency_cents, "contingency"),
        (owner.permit_cents, "permit"),
        (owner.to_minimum_cents, "to the minimum charge"),
        (owner.rounding_cents, "rounded up"),
    ];
    let besides = parts.iter().filter(|(cents, _)| *cents > 0).map(|(cents, what)| format!("{} {what}", money(*cents)));
    let besides: Vec<String> = std::iter::once(format!("{} work", money(owner.work_cents))).chain(besides).collect();
    besides.join(" + ")
}

/// What the owner laid down and what it costs.
fn steered(page: &mut String, steering: &SteeringAnswer) {
    let in_words = |wish: &WishAnswer| match wish.asked {
        "ground" => format!("{} grounded", wish.of),
        "keep" => format!("{} kept", wish.of),
        _ => format!("{} not opened", wish.of),
    };
    let mut had: Vec<String> = steering.wishes.iter().filter(|wish| wish.had).map(in_words).collect();
    if let Some(budget) = steering.budget.filter(|budget| budget.had) {
        had.push(format!("the most ground for {} ({} left)", money(budget.cents), money(budget.left_cents)));
    }
    if had.is_empty() {
        wrapped(page, "As you asked: ", "nothing of it can be had; this is the plan without it.", ALARM);
        return;
    }
    let more = match steering.costs_more_cents {
        0 => "as much as".to_owned(),
        more if more < 0 => format!("{} less than", money(-more)),
        more => format!("{} more than", money(more)),
    };
    let walls = match steering.more_wall_openings {
        0 => String::new(),
        more if more < 0 => format!(", with {} less", wall_openings(-more)),
        more => format!(", with {} more", wall_openings(more)),
    };
    let without = money(steering.unsteered.total_cents);
    let told = format!("{}. That costs {more} the plan without it ({without}){walls}.", had.join(", "));
    wrapped(page, "As you asked: ", &told, Style::new());
}

/// Lines that begin with a box and a colon, those that say the same put together: `L-1, L-2: find out …`.
fn grouped(lines: &[String]) -> Vec<(String, String)> {
    let mut found: Vec<(Vec<&str>, &str)> = Vec::new();
    for line in lines {
        let (at, what) = line.split_once(": ").unwrap_or(("", line));
        match found.iter_mut().find(|(_, said)| *said == what) {
            Some((boxes, _)) => boxes.push(at),
            None => found.push((vec![at], what)),
        }
    }
    let told = |boxes: Vec<&str>| if boxes == [""] { String::new() } else { format!("{}: ", boxes.join(", ")) };
    found.into_iter().map(|(boxes, what)| (told(boxes), what.to_owned())).collect()
}

fn proof(answer: &PlanAnswer) -> String {
    let unplanned = answer.openings.iter().filter(|opening| opening.step == Step::Unresolved).count();
    if unplanned > 0 {
        return format!("{unplanned} openings are not planned: the price is for the rest.");
    }
    match answer.totals.nothing_below_cents {
        Some(bound) if bound <= 0 => "Best found in the time given; how much less is possible is not known.".to_owned(),
        None if answer.offers.as_ref().is_some_and(|offers| offers.taken > 1) => {
            "No cheaper whole grounds as much with as few wall openings, among what was offered.".to_owned()
        }
        None if answer.steering.iter().any(|steering| steering.budget.is_some_and(|budget| budget.had)) => {
            "No lawful whole within that sum grounds more, by what is plugged in, among what was offered.".to_owned()
        }
        None if answer.steering.iter().any(|steering| steering.wishes.iter().any(|wish| wish.had)) => {
            "No cheaper lawful whole that gives what you asked exists among what was offered.".to_owned()
        }
        None => "No cheaper lawful whole exists among what was offered.".to_owned(),
        Some(bound) => format!("Best found; none can cost less than {}.", money(bound)),
    }
}

fn wall_openings(count: i64) -> String {
    if count == 1 { "1 wall opening".to_owned() } else { format!("{count} wall openings") }
}

fn hours(minutes: u32) -> String {
    format!("{} h {:02} min", minutes / 60, minutes % 60)
}

fn at_the_panel(page: &mut String, answer: &PlanAnswer) {
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "At the panel")));
    for circuit in &answer.circuits {
        let left = format!("  circuit {:<8} {}", circuit.circuits.join("+"), at_panel(circuit.at_panel));
        let width = left.chars().count();
        let changed = circuit.price.total_cents > 0;
        let style = if changed { DO } else { QUIET };
        let right = if changed { money(circuit.price.total_cents) } else { String::new() };
        with_right(page, &ink(style, &left), width, &right);
        for reason in &circuit.not_offered {
            wrapped(page, "                   ", reason, QUIET);
        }
    }
    for finding in answer.findings.iter().filter(|finding| finding.danger) {
        wrapped(page, "  ", &format!("{} {}", finding.at, finding.id), Style::new());
        findings::one(page, finding, true);
    }
}

fn routes(page: &mut String, answer: &PlanAnswer, notes: &mut Notes) {
    if answer.routes.is_empty() && answer.routes_refused.is_empty() && answer.ways_not_built.is_empty() {
        return;
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Grounds to bring")));
    for route in &answer.routes {
        let what = match route.kind {
            dwelling::RouteKind::Egc => format!("{} ground", sizes(route)),
            dwelling::RouteKind::NewCable => format!("new cable with {} ground", sizes(route)),
        };
        let left = format!("  {:<15} {what}, {} → {}, {}", route.id, route.from, route.to, route.length);
        with_right(page, &ink(DO, &left), left.chars().count(), &money(route.price.total_cents));
        let openings = match route.openings {
            0 => "no wall opened".to_owned(),
            many => wall_openings(i64::from(many)),
        };
        let work = format!("{}, {openings}; grounds {}", hours(route.price.minutes), route.grounds.join(", "));
        wrapped(page, "                  ", &work, Style::new());
        if let Some(note) = &route.note {
            wrapped(page, "                  note: ", note, QUIET);
        }
        built_way(page, route);
        basis(page, "                  ", &route.cites, &route.conditions, notes);
    }
    for refused in &answer.routes_refused {
        let cites = if refused.cites.is_empty() { String::new() } else { format!(" [{}]", refused.cites.join(", ")) };
        let style = if refused.could_change { ASK } else { QUIET };
        wrapped(page, "  not used: ", &format!("{}: {}{cites}", refused.id, refused.why), style);
    }
    for missing in &answer.ways_not_built {
        wrapped(page, "  no way built: ", &format!("{}: {}", missing.of.join(", "), missing.why), QUIET);
    }
    notes.write_new(page);
}

/// The sizes along a route, from its start: what it shares with a larger circuit's ground is as large as that.
fn sizes(route: &RouteAnswer) -> String {
    let mut sizes: Vec<&str> = route.legs.iter().map(|leg| leg.size.as_str()).collect();
    sizes.push(&route.size);
    sizes.dedup();
    sizes.join(", then ")
}

/// The stretches of a way that the tool built, one below the other.
fn built_way(page: &mut String, route: &RouteAnswer) {
    if let Some(other) = &route.branches_from {
        let shared = format!("branches off from the way {other}, which pays for what they share");
        wrapped(page, "                  ", &shared, QUIET);
    }
    for leg in &route.legs {
        let size = if leg.size == route.size { String::new() } else { format!("{}: ", leg.size) };
        wrapped(page, "                  - ", &format!("{size}{} ({})", leg.says, leg.difficulty), QUIET);
    }
}

fn room_page(page: &mut String, room: &Room, openings: &[&OpeningAnswer], shown: &Shown, notes: &mut Notes) {
    let title = room.title.as_deref().unwrap_or(&room.id);
    page.push_str(&format!("\n{}\n", ink(HEADLINE, title)));
    let mut untouched = Vec::new();
    for opening in openings {
        if !shown.full && nothing_to_say(opening) {
            untouched.push(opening.box_id.as_str());
        } else {
            opening_page(page, opening, shown, notes);
        }
    }
    if !untouched.is_empty() {
        wrapped(page, "  nothing to do: ", &untouched.join(", "), QUIET);
    }
    notes.write_new(page);
}

fn nothing_to_say(opening: &OpeningAnswer) -> bool {
    let quiet = opening.findings.iter().all(|finding| !finding.danger) && opening.open_questions.is_empty();
    let untouched = opening.step == Step::Leave && opening.routes_joined.is_empty();
    untouched && quiet && opening.shortfalls.is_empty() && opening.price.total_cents == 0
}

fn opening_page(page: &mut String, opening: &OpeningAnswer, shown: &Shown, notes: &mut Notes) {
    let full = shown.full;
    let style = if opening.step == Step::Unresolved { ALARM } else { DO };
    let order = order(opening);
    let left = format!("  {:<7} {}", opening.box_id, ink(style, &order));
    let width = 10 + order.chars().count() + opening.box_id.chars().count().saturating_sub(7);
    with_right(page, &left, width, &money(opening.price.total_cents));
    let found = as_found(opening.holds, opening.ground);
    let circuit = opening.circuit.as_ref().map_or("circuit unknown".to_owned(), |id| format!("circuit {id}"));
    wrapped(page, "          ", &format!("found: {found} ({circuit})"), QUIET);
    for finding in opening.findings.iter().filter(|finding| full || finding.danger) {
        findings::one(page, finding, full);
    }
    if opening.do_not_disturb {
        wrapped(
            page,
            "        ! ",
            "DO NOT DISTURB the conductors in this box: their insulation is too brittle",
            ALARM,
        );
    }
    if let Some(note) = &opening.note {
        wrapped(page, "          note: ", note, QUIET);
    }
    if !opening.repairs.is_empty() {
        wrapped(page, "          first ", &repairs(opening), DO);
    }
    wrapped(page, "          ", &opening.why, Style::new());
    for next in shown.next_best.iter().filter(|next| next.box_id == opening.box_id) {
        next_best::lines(page, "          ", next, full);
    }
    if !opening.load_side_feeds.is_empty() {
        wrapped(page, "          load side feeds ", &opening.load_side_feeds.join(", "), Style::new());
    }
    if !opening.markings.is_empty() {
        let plate = if opening.step == Step::MarkProtected { " on a new nonmetallic plate" } else { "" };
        let words = opening.markings.join("” and “");
        wrapped(page, "          mark it ", &format!("“{words}”{plate}"), Style::new());
    }
    for by in &opening.changed_by {
        wrapped(page, "          changed by ", by, Style::new());
    }
    for shortfall in &opening.shortfalls {
        wrapped(page, "        ! ", shortfall, ALARM);
    }
    for question in &opening.open_questions {
        wrapped(page, "        ? ", question, ASK);
    }
    let conditions = if opening.step == Step::Leave { &[][..] } else { &opening.conditions };
    basis(page, "          ", &opening.cites, conditions, notes);
    if full {
        for out in &opening.ruled_out {
            wrapped(page, &format!("          not {}: ", out.remedy), &out.why_not, QUIET);
        }
        if let Some(count) = &opening.fill {
            fill(page, count);
        }
    }
}

fn foot(page: &mut String, answer: &PlanAnswer) {
    let at_openings = |opening: &OpeningAnswer| -> Vec<String> {
        opening.cautions.iter().map(|caution| format!("{}: {caution}", opening.box_id)).collect()
    };
    let told: Vec<String> = answer.openings.iter().flat_map(at_openings).collect();
    if !told.is_empty() {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "Cautions at openings")));
        for (boxes, caution) in grouped(&told) {
            wrapped(page, "  ! ", &format!("{boxes}{caution}"), Style::new());
        }
    }
    if !answer.assumptions.is_empty() {
        page.push_str(&format!("\n{}\n", ink(HEADLINE, "Taken for granted")));
        for assumed in &answer.assumptions {
            wrapped(page, "  - ", assumed, Style::new());
        }
    }
    page.push_str(&format!("\n{}\n", ink(HEADLINE, "Cautions")));
    for caution in answer.cautions.iter().chain(&answer.law.warnings) {
        wrapped(page, "  ! ", caution, Style::new());
    }
    for disputed in &answer.basis.disputed {
        wrapped(page, "  ? ", &format!("read in two ways, ask the authority: {disputed}"), ASK);
    }
    if !answer.basis.from_memory.is_empty() {
        let list = answer.basis.from_memory.join("; ");
        wrapped(page, "  ", &format!("Rests on memory, check with the authority: {list}"), QUIET);
    }
}
