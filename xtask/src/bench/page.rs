//! What was measured, as a page in Markdown.

use super::measure::{Shown, Times};
use super::portfolio::Run;
use super::{FRONTIER_MOST, Measured, Offered, Wanted};
use crate::dwellings::Plan;
use std::fmt::Write as _;

/// Where the page is kept.
pub const KEPT_AT: &str = "docs/benchmarks.md";

/// The page.
pub fn page(
    wanted: &Wanted,
    sizes: &[Measured],
    growth: &[Measured],
    offered: &[Offered],
    portfolio: &[Run],
) -> String {
    let cores = std::thread::available_parallelism().map_or(1, std::num::NonZero::get);
    let mut page = format!(
        "# Benchmarks\n\n\
         Measured by `cargo run --release -p xtask -- bench` on a machine of {cores} cores, one run of each dwelling, one\n\
         thread unless the table says otherwise. The dwellings are made up by `cargo xtask dwellings`, all four kinds in\n\
         equal parts. *Solving* is the search for the cheapest whole alone; *planning* is everything from the text of the\n\
         survey to the answer as values. The 95 % column is the time that 95 of a hundred dwellings stay within. Where a survey\n\
         holds a plan of the floors, the planner builds ways of its own beside those that are written down: many more links.\n\
         *Proved* counts the dwellings in which the search reached its end within a plan's limit.\n"
    );
    if wanted.rivals.is_some() {
        page.push_str(&beside_rivals(wanted, sizes));
    }
    page.push_str(&by_size(growth));
    page.push_str(&frontier(offered));
    if !portfolio.is_empty() {
        page.push_str(&many(portfolio));
    }
    page
}

fn beside_rivals(wanted: &Wanted, sizes: &[Measured]) -> String {
    let mut part = format!(
        "\n## Beside general-purpose solvers\n\n\
         The same problems, solved by the two models of `tools/exactness` on one thread: a mixed-integer linear program that\n\
         separates directed cuts, and a constraint program. They minimise cents alone, which is easier than what thirdwire\n\
         minimises; the time to write their models down is left out; each had {} s for a dwelling. *Slower* is their time over\n\
         thirdwire's, median over median and 95 % over 95 %. *Same cents* counts answers of exactly thirdwire's cents:\n\
         fewer where thirdwire proved nothing, or where the first, in floating point and in one go, ended within its tolerances.\n\
         Whether an optimum is right is for the comparison in the tests to say.\n\n\
         | boxes | floors drawn | solver | dwellings | finished | same cents | median | 95 % | slower, median | slower, 95 % |\n\
         | ---: | --- | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n",
        wanted.seconds
    );
    for size in sizes {
        let (median, most) = (size.solving.median(), size.solving.percentile(95));
        let count = size.solving.count();
        let _ = writeln!(
            part,
            "| {} | {} | thirdwire | {count} | {} | | {} | {} | | |",
            size.batch.boxes,
            drawn(size.batch.plan),
            size.proved,
            Shown(median),
            Shown(most)
        );
        for rival in &size.rivals {
            let (its_median, its_most) = (rival.solving.median(), rival.solving.percentile(95));
            let _ = writeln!(
                part,
                "| {} | {} | {} | {} | {} | {} | {} | {} | {:.1} × | {:.1} × |",
                size.batch.boxes,
                drawn(size.batch.plan),
                rival.name,
                rival.solving.count(),
                rival.finished,
                rival.same,
                Shown(its_median),
                Shown(its_most),
                its_median / median,
                its_most / most
            );
        }
    }
    part
}

fn by_size(growth: &[Measured]) -> String {
    let mut part = String::from(
        "\n## Growth with size\n\n\
         | boxes | floors drawn | links | dwellings | proved | solving, median | 95 % | most | planning, median | 95 % | most |\n\
         | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: | ---: |\n",
    );
    for size in growth {
        let columns =
            |times: &Times| [times.median(), times.percentile(95), times.most()].map(|at| Shown(at).to_string());
        let (solving, planning) = (columns(&size.solving).join(" | "), columns(&size.planning).join(" | "));
        let (count, proved) = (size.solving.count(), size.proved);
        let (boxes, plan) = (size.batch.boxes, drawn(size.batch.plan));
        let _ = writeln!(part, "| {boxes} | {plan} | {} | {count} | {proved} | {solving} | {planning} |", size.links);
    }
    part
}

const fn drawn(plan: Plan) -> &'static str {
    match plan {
        Plan::Drawn => "yes",
        Plan::NotDrawn => "no",
    }
}

fn frontier(offered: &[Offered]) -> String {
    let mut part = format!(
        "\n## The frontier of offers\n\n\
         A frontier is *whole* where the search for it reached its end; one that takes more than {} s is stopped and counts\n\
         as that.\n\n\
         | boxes | floors drawn | dwellings | whole | points, median | median | 95 % | most |\n\
         | ---: | --- | ---: | ---: | ---: | ---: | ---: | ---: |\n",
        FRONTIER_MOST.as_secs()
    );
    for one in offered {
        let [median, high, most] = [one.taking.median(), one.taking.percentile(95), one.taking.most()].map(Shown);
        let (boxes, plan, count) = (one.batch.boxes, drawn(one.batch.plan), one.taking.count());
        let (whole, points) = (one.whole, one.points);
        let _ = writeln!(part, "| {boxes} | {plan} | {count} | {whole} | {points} | {median} | {high} | {most} |");
    }
    part
}

fn many(portfolio: &[Run]) -> String {
    let mut part = String::from(
        "\n## Many dwellings in one go\n\n\
         Dwellings of 40 boxes as one JSON survey a line through `thirdwire plan --stream`, from starting the program to its\n\
         end, answers as JSON. *Memory* is the most that the program held.\n\n\
         | dwellings | floors drawn | threads | time | dwellings a second | memory |\n\
         | ---: | --- | --- | ---: | ---: | ---: |\n",
    );
    for run in portfolio {
        let threads = run.threads.map_or("one for each core".to_owned(), |threads| threads.to_string());
        let memory = run.most_memory.map_or("not told".to_owned(), |kilobytes| format!("{} MB", kilobytes / 1_024));
        let a_second = run.dwellings as f64 / run.seconds;
        let (count, plan, time) = (run.dwellings, drawn(run.plan), Shown(run.seconds));
        let _ = writeln!(part, "| {count} | {plan} | {threads} | {time} | {a_second:.0} | {memory} |");
    }
    part
}
