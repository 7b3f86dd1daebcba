//! Solves one instance in the `.stp` format: `solve FILE.stp [--seconds S] [--nodes N] [--certify LEAVES]`; `-` reads
//! standard input. With `--certify` an optimum is also proved by cuts on the instance itself, and the proof is checked.
#![allow(clippy::disallowed_methods, clippy::print_stdout, clippy::print_stderr)]

use std::io::Read;
use std::process::ExitCode;
use std::time::{Duration, Instant};

use optimizer::steiner::{Cost, Methods, SteinerLimits, certify, check_bound, check_tree, read, solve_steiner};

fn main() -> ExitCode {
    match run() {
        Ok(()) => ExitCode::SUCCESS,
        Err(what) => {
            eprintln!("{what}");
            ExitCode::FAILURE
        }
    }
}

fn run() -> Result<(), String> {
    let (mut file, mut seconds, mut nodes, mut leaves) = (None, 60.0, None, 0);
    let mut words = std::env::args().skip(1);
    while let Some(word) = words.next() {
        let mut number =
            || words.next().and_then(|word| word.parse::<f64>().ok()).ok_or(format!("{word} needs a number"));
        match word.as_str() {
            "--seconds" => seconds = number()?,
            "--certify" => leaves = number()? as usize,
            "--nodes" => nodes = Some(number()? as u64),
            _ => file = Some(word),
        }
    }
    let file = file.ok_or("usage: solve FILE.stp [--seconds S] [--nodes N] [--certify LEAVES]")?;
    let mut text = String::new();
    if file == "-" {
        std::io::stdin().read_to_string(&mut text).map_err(|error| error.to_string())?;
    } else {
        text = std::fs::read_to_string(&file).map_err(|error| format!("{file}: {error}"))?;
    }
    let reading = read(&text).map_err(|fault| format!("{file}:{}: {}", fault.line, fault.what))?;
    let start = Instant::now();
    let deadline = start + Duration::from_secs_f64(seconds.clamp(0.0, 1e9));
    let mut stop = || Instant::now() >= deadline;
    let answer =
        solve_steiner(&reading.instance, &mut SteinerLimits { nodes, stop: &mut stop, methods: Methods::default() })
            .map_err(|fault| format!("{fault:?}"))?;
    let shown = |cost: Option<Cost>| match cost {
        Some(cost) if reading.decimals > 0 => {
            let unit = (10 as Cost).pow(reading.decimals);
            format!("{}.{:0width$}", cost / unit, cost % unit, width = reading.decimals as usize)
        }
        Some(cost) => cost.to_string(),
        None => "none".to_owned(),
    };
    let state = if answer.is_proved() { "optimal" } else { "best" };
    println!(
        "{state} cost {} bound {} nodes {} seconds {:.3}",
        shown(answer.tree.as_ref().map(|tree| tree.cost)),
        shown(answer.bound),
        answer.nodes,
        start.elapsed().as_secs_f64()
    );
    if let Some(tree) = answer.tree.as_ref().filter(|_| leaves > 0 && answer.is_proved()) {
        check_tree(&reading.instance, tree).map_err(|refusal| format!("the tree is refused: {refusal:?}"))?;
        let certificate = certify(&reading.instance, tree, leaves);
        match certificate.map(|certificate| check_bound(&reading.instance, tree.cost, &certificate)) {
            Some(Ok(())) => println!("certified, and the certificate is accepted"),
            Some(Err(refusal)) => return Err(format!("the certificate is refused: {refusal:?}")),
            None => println!("by enumeration and reductions, not certified"),
        }
    }
    Ok(())
}
