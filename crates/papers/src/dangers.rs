//! What is dangerous and is put right whatever else is chosen, on the proposal and in the work order.

use crate::document::{Block, Cell, Table, Text};
use crate::job::Job;
use crate::words::{listed, sentence, unquoted};
use estimate::{Cents, Material, Task};
use remedies::in_words::place_of_danger;
use remedies::{DangerAnswer, DangerWork};

/// On the proposal: each work with its place, its reason and its price, and what an allowance is.
pub(crate) fn proposed(job: &Job) -> Vec<Block> {
    if job.plan.dangers.is_empty() {
        return Vec::new();
    }
    let lead = "Whichever offer you choose, this is put right. It is in every price on this paper.";
    let columns = [("Where", 1.2), ("What is done, and why", 5.0), ("Price", 1.2)];
    let row = |danger: &DangerAnswer| -> Vec<Cell> {
        let mut words = format!("{} {}", sentence(&danger.says), sentence(&unquoted(&danger.because)));
        if let Some(rests_on) = &danger.rests_on {
            words.push_str(&format!(" The price is an allowance; it rests on {rests_on}."));
        }
        vec![Text::bold(place_of_danger(danger)).into(), words.into(), price(danger).into()]
    };
    let table = Table {
        columns: columns.map(|(head, wide)| (head.to_owned(), wide)).to_vec(),
        rows: job.plan.dangers.iter().map(row).collect(),
        row_height: 0.0,
    };
    let mut blocks = vec![
        Block::Heading(2, "Repair what is dangerous".to_owned()),
        Block::Paragraph(lead.into()),
        Block::Table(table),
    ];
    if job.plan.dangers.iter().any(|danger| danger.allowance) {
        let allowance = "An allowance is a sum set aside for work of which nobody can know how far it goes before boxes are \
                         open. What goes beyond it is shown to you and priced before it is mended.";
        blocks.push(Block::Small(allowance.into()));
    }
    blocks
}

/// The parts of the price that are for what is dangerous, each with its sum.
pub(crate) fn parts(job: &Job) -> Vec<(String, i64)> {
    let part = |danger: &DangerAnswer| {
        let allowance = if danger.allowance { " (allowance)" } else { "" };
        (
            format!("Repair what is dangerous, {}: {}{allowance}", place_of_danger(danger), danger.says),
            danger.price.total_cents,
        )
    };
    job.plan.dangers.iter().map(part).collect()
}

/// What the price holds nothing for: dangers without a price, and work for which the price book has none.
pub(crate) fn excluded(job: &Job) -> Vec<String> {
    let dangers = job.plan.not_priced.iter().map(|one| {
        format!(
            "putting right what was found at {} {}: {} Not priced: {};",
            one.at,
            one.id,
            sentence(&unquoted(&one.says)),
            one.why
        )
    });
    let said = |name: &str| {
        let task = Task::from_name(name).map(Task::meaning);
        let says = task.or_else(|| Material::from_name(name).map(Material::meaning)).unwrap_or(name);
        says.trim().trim_end_matches('.').to_owned()
    };
    let without = job
        .estimate
        .without_price
        .iter()
        .map(|name| format!("no price in the price book for “{}”: what it costs comes on top;", said(name)));
    let allowances = job.plan.dangers.iter().any(|danger| danger.allowance);
    let beyond = allowances.then(|| "what goes beyond what an allowance rests on;".to_owned());
    dangers.chain(without).chain(beyond).collect()
}

/// In the work order, before anything else: each work with its reason and what is reckoned for it.
pub(crate) fn ordered(job: &Job) -> Vec<Block> {
    if job.plan.dangers.is_empty() {
        return Vec::new();
    }
    let mut blocks = vec![Block::Heading(2, "Repair what is dangerous, first".to_owned())];
    for danger in &job.plan.dangers {
        let mut items = vec![("Danger".to_owned(), Text::bold(sentence(&unquoted(&danger.because))))];
        if !danger.boxes.is_empty() {
            items.push(("Boxes".to_owned(), listed(&danger.boxes).into()));
        }
        if let Some(rests_on) = &danger.rests_on {
            let beyond = "Where it goes further, stop and have it priced.";
            items.push(("Reckoned".to_owned(), format!("An allowance for {rests_on}. {beyond}").into()));
        }
        items.push(("Afterwards".to_owned(), afterwards(danger.work).into()));
        let title = sentence(&danger.says);
        let place = if danger.at == "box" { format!("box {}", danger.id) } else { place_of_danger(danger) };
        let task = Block::Task(place, title.trim_end_matches('.').to_owned());
        blocks.push(Block::Together(vec![task, Block::Items(items)]));
    }
    blocks
}

/// How it is seen that a danger is gone: common practice, no source.
const fn afterwards(work: DangerWork) -> &'static str {
    match work {
        DangerWork::TakeOutFalseGround => {
            "Read hot, neutral and ground again, under load too: no ground reads any more."
        }
        DangerWork::FindOpenNeutral | DangerWork::MendNeutral | DangerWork::TakeOutNeutralFuse => {
            "Read hot to neutral at every box of the circuit, under load too: it is line voltage, and holds."
        }
        DangerWork::ClearLiveMetal => "Read the metal to an independent earth: nothing, with every load switched on.",
        DangerWork::FitSmallerBreaker | DangerWork::FitSmallerFuse => {
            "Enter the new rating in the directory, and see that the circuit carries what is plugged in."
        }
    }
}

fn price(danger: &DangerAnswer) -> Text {
    Text::bold(Cents(danger.price.total_cents).to_string())
}
