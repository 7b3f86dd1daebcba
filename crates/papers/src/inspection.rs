//! The inspection packet: the code in force, each opening with its duties and remedy, the panel, box counts and checks.

use crate::as_found::shows_a_plan;
use crate::directory::{as_fitted, protection};
use crate::document::{Block, Face, Paper, Table, Text};
use crate::job::Job;
use crate::labels::where_protected;
use crate::words::{circuits_in_words, listed, once_for_all, room_title, sentence, sizes_of};
use calculations::{CheckRow, SubjectKind, Verdict};
use drawings::SheetAnswer;
use dwelling::{GroundFact, PanelIndex, circuit_trees};
use remedies::in_words::{as_found, at_panel, order};
use remedies::{OpeningAnswer, PlanStatus};
use rulebook::Need;

/// The inspection packet of a job.
#[must_use]
pub fn inspection_packet(job: &Job) -> Paper {
    let mut blocks = law(job);
    blocks.extend(expected_at_testers(job));
    blocks.extend(at_the_panels(job));
    blocks.push(Block::Heading(2, "Each opening: what is asked of it, and what is done".to_owned()));
    blocks.push(Block::Paragraph(
        "What is asked of a receptacle is asked where it is replaced or corrected. One that is left as it is stays as it was \
         found."
            .into(),
    ));
    for (room, openings) in job.rooms() {
        let heading = Block::Heading(3, room_title(job.dwelling, room));
        blocks.push(Block::Together(vec![heading, Block::Table(openings_table(&openings))]));
    }
    blocks.extend(box_counts(job));
    blocks.extend(checks(job));
    blocks.extend(basis(job));
    blocks.extend(job.drawn.one_line.iter().map(|sheet| Block::Sheet(sheet.svg.clone(), said_of(sheet))));
    blocks.extend(job.floors_after.iter().filter(|sheet| shows_a_plan(sheet)).map(|sheet| {
        let boxes = listed(&sheet.boxes);
        Block::Sheet(sheet.svg.clone(), format!("{}. Boxes on this plan: {boxes}.", sheet.title))
    }));
    Paper { blocks, ..job.paper("Inspection packet") }
}

/// What a sheet says of itself to those who hear it read.
fn said_of(sheet: &SheetAnswer) -> String {
    let says = sheet.svg.split_once("<desc id=\"says\">").and_then(|(_, rest)| rest.split_once("</desc>"));
    let says = says.map_or("", |(says, _)| says);
    let says = says.replace("&quot;", "\"").replace("&lt;", "<").replace("&gt;", ">").replace("&amp;", "&");
    format!("{}. {says}", sheet.title)
}

fn law(job: &Job) -> Vec<Block> {
    let (plan, law) = (job.plan, &job.plan.law);
    let mut items: Vec<(&str, String)> = vec![("Edition", format!("NEC {}", plan.job.edition))];
    items.extend(law.place.iter().map(|place| ("Place", place.clone())));
    items.extend(law.permit_date.iter().map(|day| ("Permit", day.clone())));
    items.extend(law.changed_by.iter().map(|by| ("Changed by", by.clone())));
    if law.changed_by.is_empty() {
        items.push(("Changed by", "no local amendment and no answer of the authority was stated".to_owned()));
    }
    items.extend(plan.job.built.map(|year| ("Built", year.to_string())));
    let status = match plan.status {
        PlanStatus::Complete => "complete: every opening lawful, served and as asked for",
        PlanStatus::Provisional => "provisional: what is listed here is to be found out or asked first",
        PlanStatus::Blocked => "blocked: what is listed here cannot be had with what was offered",
    };
    items.push(("Plan", status.to_owned()));
    let items = items.into_iter().map(|(label, words)| (label.to_owned(), words.into())).collect();
    let mut blocks = vec![Block::Heading(1, format!("Inspection packet: {}", plan.job.name)), Block::Items(items)];
    let open = once_for_all(&plan.in_the_way);
    let open: Vec<Text> = open.iter().chain(&law.warnings).map(|line| Text::from(sentence(line))).collect();
    if !open.is_empty() {
        blocks.push(Block::Bullets(open));
    }
    let defers = "The authority having jurisdiction decides. The work is done by, or with, a licensed electrician.";
    blocks.push(Block::Caution(defers.into()));
    blocks
}

fn expected_at_testers(job: &Job) -> Vec<Block> {
    let bare = job.plan.openings.iter().filter(|opening| !opening.markings.is_empty());
    let bare: Vec<&str> = bare.map(|opening| opening.box_id.as_str()).collect();
    if bare.is_empty() {
        return Vec::new();
    }
    let says = format!(
        "At {} a plug-in tester shows “open ground”. That is expected: they have no equipment ground, are protected by a \
         GFCI and marked as 406.4(D)(2) asks. A tester's button cannot trip the GFCI there; its own button does.",
        listed(&bare)
    );
    vec![Block::Heading(2, "What a tester shows".to_owned()), Block::Paragraph(says.into())]
}

/// Where the one-line is, what stands at each panel before and after, and what is brought.
fn at_the_panels(job: &Job) -> Vec<Block> {
    let mut blocks = vec![
        Block::Heading(2, "At the panels".to_owned()),
        Block::Paragraph(
            format!(
                "The one-line of every panel with its circuits as trees, before and after the work, is on the last \
                 pages{}.",
                if job.floors_after.iter().any(shows_a_plan) { ", before the plans of the floors" } else { "" }
            )
            .into(),
        ),
    ];
    let trees = circuit_trees(job.dwelling);
    for (number, panel) in job.dwelling.panels.iter().enumerate() {
        let columns = [("Circuit", 0.7), ("As found", 2.0), ("After the work", 2.4)];
        let mut rows = Vec::new();
        for tree in trees.iter().filter(|tree| tree.panel == PanelIndex(number)) {
            let circuits: Vec<_> = tree.circuits.iter().map(|circuit| job.dwelling.circuit(*circuit)).collect();
            let Some(first) = circuits.first() else { continue };
            let ids: Vec<String> = circuits.iter().map(|circuit| circuit.id.clone()).collect();
            let ratings: Vec<String> = ids.iter().map(|id| job.rating_of(id)).collect();
            let afterwards: Vec<String> = ids.iter().map(|id| job.rating_afterwards(id)).collect();
            rows.push(vec![
                Text::bold(circuits_in_words(&ids)).into(),
                format!("{}, {}", listed(&ratings), as_fitted(first)).into(),
                format!("{}, {}", listed(&afterwards), protection(job, first)).into(),
            ]);
        }
        let columns = columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec();
        blocks.push(Block::Heading(3, format!("Panel {}", panel.id)));
        blocks.push(Block::Table(Table { columns, rows, row_height: 0.0 }));
    }
    if !job.plan.routes.is_empty() {
        let routes = job.plan.routes.iter().map(|route| {
            let words = format!(
                "{} from {} to {}, {}; grounds {} [{}]",
                sizes_of(route),
                route.from,
                route.to,
                route.length,
                listed(&route.grounds),
                listed(&route.cites)
            );
            (route.id.clone(), Text::from(words))
        });
        let lead = Block::Paragraph("Grounding conductors and cables that are brought:".into());
        blocks.push(Block::Together(vec![lead, Block::Items(routes.collect())]));
    }
    blocks
}

fn openings_table(openings: &[&OpeningAnswer]) -> Table {
    let columns =
        [("Box", 0.75), ("Found", 1.3), ("Asked of it", 2.2), ("Done, and what allows it", 2.3), ("Afterwards", 1.7)];
    let rows = openings.iter().map(|opening| {
        let duties: Vec<String> = (opening.requires.named().into_iter())
            .filter(|(_, duty)| duty.need != Need::NotRequired)
            .map(|(name, duty)| {
                let doubt = match duty.need {
                    Need::Disputed => " (disputed)",
                    Need::NotChecked => " (not checked)",
                    Need::Required | Need::NotRequired => "",
                };
                format!("{name}{doubt} [{}]", listed(&duty.cites))
            })
            .collect();
        let duties = if duties.is_empty() { "nothing".to_owned() } else { duties.join("; ") };
        let cites = if opening.cites.is_empty() { String::new() } else { format!(" [{}]", listed(&opening.cites)) };
        let by = opening.changed_by.iter().map(|by| format!("; changed by {by}")).collect::<String>();
        let ground = match (opening.grounded, opening.ground) {
            (true, _) => "grounded",
            (false, GroundFact::None) => "no ground",
            (false, _) => "no ground that is proved",
        };
        let guard = opening
            .protected_by
            .as_deref()
            .map_or("no GFCI".to_owned(), |by| where_protected(Some(by)).replacen("tested", "GFCI", 1));
        let arcs = match opening.arc_protected_by.as_deref() {
            None => "no AFCI".to_owned(),
            Some(by) if Some(by) == opening.protected_by.as_deref() => "AFCI there too".to_owned(),
            Some(by) => where_protected(Some(by)).replacen("tested", "AFCI", 1),
        };
        let marks: Vec<String> = opening.markings.iter().map(|words| format!("“{words}”")).collect();
        let marks = if marks.is_empty() { String::new() } else { format!("; marked {}", marks.join(" and ")) };
        vec![
            Text::bold(opening.box_id.as_str()).into(),
            as_found(opening.holds, opening.ground).into(),
            duties.into(),
            format!("{}{cites}{by}", order(opening)).into(),
            format!("{ground}; {guard}; {arcs}{marks}").into(),
        ]
    });
    let rows = rows.collect();
    Table { columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(), rows, row_height: 0.0 }
}

fn box_counts(job: &Job) -> Vec<Block> {
    let counted: Vec<_> =
        job.plan.openings.iter().filter_map(|opening| Some((&opening.box_id, opening.fill.as_ref()?))).collect();
    if counted.is_empty() {
        return Vec::new();
    }
    let columns = [("Box", 0.7), ("Counted", 4.6), ("Taken", 0.9), ("Volume", 0.9), ("Fits", 0.7)];
    let rows = counted.into_iter().map(|(id, fill)| {
        let lines: Vec<String> =
            fill.lines.iter().map(|line| format!("{}: {} [{}]", line.what, line.volume, line.cite)).collect();
        let counted = fill.not_checked.as_ref().map_or(lines.join("; "), |missing| format!("not checked: {missing}"));
        let fits = match fill.fits {
            Some(true) => "yes",
            Some(false) => "NO",
            None => "not checked",
        };
        let known = |volume: &Option<String>| volume.clone().unwrap_or_else(|| "unknown".to_owned());
        vec![
            Text::bold(id.as_str()).into(),
            counted.into(),
            known(&fill.taken).into(),
            known(&fill.volume).into(),
            fits.into(),
        ]
    });
    let rows = rows.collect();
    let columns = columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec();
    vec![
        Block::Heading(2, "Box counts of the boxes that are worked on".to_owned()),
        Block::Table(Table { columns, rows, row_height: 0.0 }),
    ]
}

/// The checks that do not simply pass, in full; those that do, by number.
fn checks(job: &Job) -> Vec<Block> {
    let count = |verdict: Verdict| job.checks.iter().filter(|row| row.verdict == verdict).count();
    let lead = format!(
        "Of {} checks of box fill, breakers, conductors, grounding conductors, fault current, voltage drop and leakage after the \
         work, {} come out as required. The others:",
        job.checks.len(),
        count(Verdict::Ok)
    );
    // The same words are said once for all that they are of; advice once for each source, with the words of each.
    let mut told: Vec<(&CheckRow, Vec<String>, Vec<String>)> = Vec::new();
    for row in job.checks.iter().filter(|row| row.verdict != Verdict::Ok) {
        let advice = row.verdict == Verdict::Advice;
        let same = |(known, _, _): &&mut (&CheckRow, Vec<String>, Vec<String>)| {
            let words = if advice { known.source == row.source } else { known.says == row.says };
            known.check == row.check && known.verdict == row.verdict && words
        };
        // The column beside it says that it was not checked.
        let says = row.says.strip_prefix("not checked: ").unwrap_or(&row.says);
        let says = if advice { format!("{}: {says}", subject(row)) } else { says.to_owned() };
        match told.iter_mut().find(same) {
            Some((_, subjects, all)) => {
                subjects.push(subject(row));
                all.extend(advice.then_some(says));
            }
            None => told.push((row, vec![subject(row)], vec![says])),
        }
    }
    let columns = [("What", 0.9), ("Of", 1.6), ("How it came out", 0.9), ("What it says", 3.0), ("By", 2.0)];
    let mut blocks = vec![Block::Heading(2, "Calculations".to_owned()), Block::Paragraph(lead.into())];
    told.sort_by_key(|(row, _, _)| match row.verdict {
        Verdict::NotOk => 0,
        Verdict::NotChecked => 1,
        Verdict::Advice | Verdict::Ok => 2,
    });
    let rows = told.into_iter().map(|(row, subjects, says)| {
        let face = if row.verdict == Verdict::NotOk { Face::Bold } else { Face::Plain };
        let memory = if row.source.from_memory { " (from memory)" } else { "" };
        vec![
            row.check.name().replace('-', " ").into(),
            subjects_in_words(row, &subjects).into(),
            Text(vec![(face, row.verdict.name().replace('-', " "))]).into(),
            says.join("; ").into(),
            format!("{}{memory}", row.source.cite).into(),
        ]
    });
    let rows = rows.collect();
    let columns = columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec();
    blocks.push(Block::Table(Table { columns, rows, row_height: 0.0 }));
    blocks
}

fn subject(row: &CheckRow) -> String {
    match row.subject.kind {
        SubjectKind::Circuit => format!("circuit {}", row.subject.id),
        SubjectKind::Run | SubjectKind::Box | SubjectKind::Route | SubjectKind::Gfci => row.subject.id.clone(),
    }
}

/// What a check is of; a run by the box that it feeds.
fn subjects_in_words(row: &CheckRow, subjects: &[String]) -> String {
    match (row.subject.kind, subjects.len()) {
        (SubjectKind::Run, 1) => format!("run to {}", listed(subjects)),
        (SubjectKind::Run, _) => format!("runs to {}", listed(subjects)),
        _ => listed(subjects),
    }
}

/// What is taken for granted, without how a survey states it otherwise.
fn without_keys(words: &str) -> &str {
    let Some((before, _)) = words.split_once('`') else { return words };
    let ends = [", ", ": "].iter().filter_map(|mark| before.rfind(mark)).max();
    ends.map_or(words, |at| &words[..at])
}

/// Sections such as `NEC 2020, 250.146`, those of one text behind its name.
fn said_once(sections: &[String]) -> String {
    let mut texts: Vec<(&str, Vec<&str>)> = Vec::new();
    for section in sections {
        let (text, section) = section.split_once(", ").unwrap_or(("", section));
        match texts.iter_mut().find(|(known, _)| *known == text) {
            Some((_, list)) => list.push(section),
            None => texts.push((text, vec![section])),
        }
    }
    let told = texts.iter().map(|(text, list)| {
        let list = list.join("; ");
        if text.is_empty() { list } else { format!("{text}: {list}") }
    });
    told.collect::<Vec<String>>().join("; ")
}

fn basis(job: &Job) -> Vec<Block> {
    let basis = &job.plan.basis;
    let disputed = basis.disputed.iter().map(|both| Text::bold("Read in two ways: ").and(Face::Plain, both.as_str()));
    // What the price rests on is nothing that an inspector asks for.
    let taken = (job.plan.assumptions.iter().filter(|words| !words.contains('$')))
        .map(|words| Text::bold("Taken for granted: ").and(Face::Plain, without_keys(words)));
    let mut list: Vec<Text> = disputed.chain(taken).collect();
    if !basis.from_memory.is_empty() {
        let sections = said_once(&basis.from_memory);
        list.push(Text::bold("From memory, check with the authority: ").and(Face::Plain, sections));
    }
    let panels = job.plan.circuits.iter().flat_map(|circuit| {
        circuit.not_offered.iter().map(|why| {
            let said =
                format!("circuit {}, {}: {why}", circuits_in_words(&circuit.circuits), at_panel(circuit.at_panel));
            Text::bold("Not offered: ").and(Face::Plain, said)
        })
    });
    list.extend(panels);
    if list.is_empty() {
        return Vec::new();
    }
    vec![Block::Together(vec![Block::Heading(2, "What this rests on".to_owned()), Block::Bullets(list)])]
}
