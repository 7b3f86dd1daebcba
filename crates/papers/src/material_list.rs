//! The material list: what is bought, counter by counter, and what is brought to each room.

use crate::document::{Block, Cell, Paper, Table, Text};
use crate::job::Job;
use crate::labels::labels;
use crate::words::{circuits_named, listed, room_title};
use estimate::{Counter, Material};
use remedies::in_words::{at_panel, capital};
use remedies::{BoxWork, EstimateAnswer, LineOf, OpeningAnswer, PieceAnswer, TakeoffAnswer};
use std::collections::BTreeMap;

/// The material list of a job.
#[must_use]
pub fn material_list(job: &Job) -> Paper {
    let mut blocks = vec![
        Block::Heading(1, format!("Material list: {}", job.plan.job.name)),
        Block::Paragraph(
            "First what is bought, counter by counter; then what is brought to each room before work begins there. Feet are \
             bought with their waste, and in packs as the price book has them."
                .into(),
        ),
        Block::Heading(2, "To buy".to_owned()),
    ];
    if job.estimate.material.is_empty() {
        blocks.push(Block::Paragraph("Nothing is bought for this plan.".into()));
    }
    for counter in Counter::ALL {
        let here: Vec<&TakeoffAnswer> = job.estimate.material.iter().filter(|one| one.counter == *counter).collect();
        if !here.is_empty() {
            let heading = Block::Heading(3, counter.title().to_owned());
            let note = note_on(job, *counter, &here);
            let all =
                [heading, Block::Table(to_buy(&here))].into_iter().chain(note.map(|words| Block::Small(words.into())));
            blocks.push(Block::Together(all.collect()));
        }
    }
    let staged = by_room(job, job.estimate);
    if !staged.is_empty() {
        blocks.push(Block::Heading(2, "To bring to each room".to_owned()));
        blocks.push(Block::Small(
            "A route's material stands at the room it leads to; what is by the foot is cut where the route begins."
                .into(),
        ));
    }
    for (room, things) in staged {
        blocks.push(Block::Together(vec![Block::Heading(3, room), Block::Table(to_stage(&things))]));
    }
    Paper { blocks, ..job.paper("Material list") }
}

/// What the counter asks besides, or what another paper of the set counts in another way.
fn note_on(job: &Job, counter: Counter, things: &[&TakeoffAnswer]) -> Option<String> {
    let parts = match counter {
        Counter::Breakers => ratings(job),
        Counter::Labels => labels_in_words(job),
        Counter::Boxes => boxes_of_metal(job),
        _ => Vec::new(),
    };
    (!things.is_empty() && !parts.is_empty()).then(|| parts.join(" "))
}

/// The ratings of the new breakers: nobody sells one without.
fn ratings(job: &Job) -> Vec<String> {
    let new = job.plan.circuits.iter().filter(|circuit| circuit.at_panel.starts_with("breaker"));
    new.map(|circuit| {
        let mut ratings: Vec<String> = circuit.circuits.iter().map(|id| job.rating_of(id)).collect();
        ratings.dedup();
        let what = capital(&circuits_named(&circuit.circuits));
        format!("{what}: {} of {}, made for panel {}.", at_panel(circuit.at_panel), listed(&ratings), circuit.panel)
    })
    .collect()
}

/// How many of the sheet's labels carry the wordings that are counted here.
fn labels_in_words(job: &Job) -> Vec<String> {
    let sheet = labels(job);
    let wordings: usize = sheet.iter().map(|label| label.markings.len()).sum();
    if wordings == sheet.len() {
        return Vec::new();
    }
    let said = format!(
        "Counted by their words: the sheet “Labels” has both words of one plate on one label, {} in all for these {wordings}.",
        sheet.len()
    );
    vec![said]
}

/// The new boxes that must be of metal.
fn boxes_of_metal(job: &Job) -> Vec<String> {
    let new = |opening: &&OpeningAnswer| matches!(opening.box_work, BoxWork::Replace | BoxWork::ReplaceWide);
    let metal = |opening: &&OpeningAnswer| {
        job.dwelling.box_named(&opening.box_id).is_some_and(|at| job.dwelling.metal_enters(at))
    };
    let boxes = job.plan.openings.iter().filter(new).filter(metal).map(|opening| opening.box_id.as_str());
    let boxes: Vec<&str> = boxes.collect();
    if boxes.is_empty() {
        return Vec::new();
    }
    vec![format!("Of metal at {}, with a connector for the metal around the wires (314.3).", listed(&boxes))]
}

fn to_buy(things: &[&TakeoffAnswer]) -> Table {
    let row = |thing: &&TakeoffAnswer| {
        vec![
            Cell::Tick,
            Text::bold(quantity(thing.of, thing.needed)).into(),
            named(thing.says).into(),
            bought(thing).into(),
        ]
    };
    let columns = [("Got", 0.5), ("Needed", 1.0), ("What", 5.0), ("Buy", 2.2)];
    Table {
        columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(),
        rows: things.iter().map(row).collect(),
        row_height: 0.0,
    }
}

fn to_stage(things: &[(Material, u32)]) -> Table {
    let row = |(thing, count): &(Material, u32)| {
        let of = if thing.is_by_the_foot() { LineOf::Feet } else { LineOf::Pieces };
        vec![Cell::Tick, Text::bold(quantity(of, u64::from(*count))).into(), named(thing.meaning().trim()).into()]
    };
    let columns = [("There", 0.6), ("Quantity", 1.0), ("What", 7.0)];
    Table {
        columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(),
        rows: things.iter().map(row).collect(),
        row_height: 0.0,
    }
}

/// What a thing is, without the foot that the price book counts it by.
fn named(says: &str) -> String {
    let words = says.trim_end_matches('.');
    words.strip_prefix("A foot of ").unwrap_or(words).to_owned()
}

fn quantity(of: LineOf, count: u64) -> String {
    match of {
        LineOf::Feet => format!("{count} ft"),
        LineOf::Pieces | LineOf::Work => count.to_string(),
    }
}

/// The packs, or the pieces and feet where there are none.
fn bought(thing: &TakeoffAnswer) -> String {
    let unit = if thing.of == LineOf::Feet { " ft" } else { "" };
    let pack = |pack: &remedies::PackAnswer| match (pack.size, thing.of) {
        (1, LineOf::Pieces) => format!("{} single", pack.count),
        (size, _) => format!("{} {} of {size}{unit}", pack.count, if pack.count == 1 { "pack" } else { "packs" }),
    };
    if let [one] = thing.packs.as_slice()
        && one.size == 1
    {
        return quantity(thing.of, thing.bought);
    }
    let packs: Vec<String> = thing.packs.iter().map(pack).collect();
    if packs.is_empty() { quantity(thing.of, thing.bought) } else { packs.join(" and ") }
}

/// By room in walking order, what is needed there; what is in no known room last, under its panel's name.
fn by_room(job: &Job, estimate: &EstimateAnswer) -> Vec<(String, Vec<(Material, u32)>)> {
    let rooms = job.dwelling.rooms.iter().map(|room| room.id.as_str());
    let in_rooms = rooms
        .map(|room| (room_title(job.dwelling, room), things_of(estimate, |piece| piece.room.as_deref() == Some(room))));
    let elsewhere = ("At the panel".to_owned(), things_of(estimate, |piece| piece.room.is_none()));
    in_rooms.chain([elsewhere]).filter(|(_, things)| !things.is_empty()).collect()
}

fn things_of(estimate: &EstimateAnswer, here: impl Fn(&PieceAnswer) -> bool) -> Vec<(Material, u32)> {
    let mut sums: BTreeMap<Material, u32> = BTreeMap::new();
    for line in estimate.pieces.iter().filter(|piece| here(piece)).flat_map(|piece| &piece.lines) {
        if let Some(thing) = Material::from_name(line.line).filter(|_| line.of != LineOf::Work) {
            *sums.entry(thing).or_default() += line.quantity;
        }
    }
    let mut things: Vec<(Material, u32)> = sums.into_iter().collect();
    things.sort_by_key(|(thing, _)| (thing.counter(), *thing));
    things
}
