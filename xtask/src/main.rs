//! The project's own chores: `cargo xtask tidy` holds the tree against its conventions.

#![allow(clippy::disallowed_methods, clippy::disallowed_types, clippy::print_stdout, clippy::print_stderr)]

mod bench;
mod dwellings;
mod picture;
mod tidy;
mod unread;

use std::io::Write as _;
use std::path::Path;
use std::process::ExitCode;

const USAGE: &str = "usage: cargo xtask tidy [--near]
       cargo xtask picture [--check]
       cargo xtask unread
       cargo xtask dwellings [--boxes N] [--count N] [--seed N] [--drawn 0|1]
       cargo xtask bench [--sizes 40,150] [--count N] [--rivals PYTHON] [--seconds N] [--largest-drawn N]
                          [--portfolio N]

  tidy    hold every file against the project's conventions
  --near  also list the files that come near the length limit
  picture draw the README's picture of a plan page from what the program prints
  --check only hold the kept picture against it
  unread  print which values of the code rest on memory, are disputed or are not entered
  dwellings
          print made-up surveys, one a line: 10 of 40 boxes from seed 1, with plans of their
          floors, if nothing else is said
  bench   measure the planner and keep the page docs/benchmarks.md; with --rivals also two general-purpose solvers, by a
          Python that has tools/exactness/requirements.txt installed";

fn main() -> ExitCode {
    let arguments: Vec<String> = std::env::args().skip(1).collect();
    let arguments: Vec<&str> = arguments.iter().map(String::as_str).collect();
    match arguments[..] {
        ["tidy"] => tidy::command::run(false),
        ["tidy", "--near"] => tidy::command::run(true),
        ["picture"] => picture(false),
        ["picture", "--check"] => picture(true),
        ["unread"] => {
            print!("{}", unread::page());
            ExitCode::SUCCESS
        }
        ["bench", ref flags @ ..] => bench(flags),
        ["dwellings", ref flags @ ..] => dwellings(flags),
        ["help" | "--help" | "-h"] => {
            println!("{USAGE}");
            ExitCode::SUCCESS
        }
        _ => {
            eprintln!("{USAGE}");
            ExitCode::from(2)
        }
    }
}

/// Measures, prints the page and keeps it.
fn bench(flags: &[&str]) -> ExitCode {
    let Some(wanted) = bench::Wanted::from_flags(flags) else {
        eprintln!("{USAGE}");
        return ExitCode::from(2);
    };
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap_or(Path::new("."));
    let kept = bench::run(root, &wanted).and_then(|page| {
        print!("{page}");
        std::fs::write(root.join(bench::KEPT_AT), page).map_err(|error| format!("cannot keep the page: {error}"))
    });
    match kept {
        Ok(()) => ExitCode::SUCCESS,
        Err(why) => {
            eprintln!("bench: {why}");
            ExitCode::FAILURE
        }
    }
}

/// Prints generated surveys, one a line.
fn dwellings(flags: &[&str]) -> ExitCode {
    let known = [("--boxes", 40), ("--count", 10), ("--seed", 1), ("--drawn", 1)];
    let Some([boxes @ 2..=10_000, count, seed, drawn @ 0..=1]) = numbers(flags, known) else {
        eprintln!("{USAGE}");
        return ExitCode::from(2);
    };
    let plan = if drawn == 1 { dwellings::Plan::Drawn } else { dwellings::Plan::NotDrawn };
    let mut out = std::io::BufWriter::new(std::io::stdout().lock());
    for seed in (seed..).take(count as usize) {
        if writeln!(out, "{}", dwellings::survey(boxes as usize, seed, plan)).is_err() {
            return ExitCode::FAILURE;
        }
    }
    ExitCode::SUCCESS
}

/// The numbers behind these flags, or what each is if it is left out; nothing where there is any other word.
fn numbers<const COUNT: usize>(words: &[&str], flags: [(&str, u64); COUNT]) -> Option<[u64; COUNT]> {
    let mut found = flags.map(|(_, otherwise)| otherwise);
    for pair in words.chunks(2) {
        let place = flags.iter().position(|(flag, _)| *flag == pair[0])?;
        found[place] = pair.get(1)?.parse().ok()?;
    }
    Some(found)
}

/// Draws or checks the picture and tells how that went.
fn picture(check_only: bool) -> ExitCode {
    let root = Path::new(env!("CARGO_MANIFEST_DIR")).parent().unwrap_or(Path::new("."));
    match picture::run(root, check_only) {
        Ok(told) => {
            println!("{told}");
            ExitCode::SUCCESS
        }
        Err(why) => {
            eprintln!("picture: {why}");
            ExitCode::FAILURE
        }
    }
}
