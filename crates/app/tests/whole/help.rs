//! The help texts.

use crate::running::{thirdwire, words_of};

const COMMANDS: [&str; 15] = [
    "plan", "options", "findings", "circuits", "checks", "draw", "papers", "prove", "editions", "what-if", "verify",
    "schema", "prices", "practice", "example",
];

#[test]
fn every_command_has_an_example_and_names_the_exit_codes() {
    for command in COMMANDS {
        let said = thirdwire(&[command, "--help"]);
        assert_eq!(said.code, 0, "{command}");
        assert!(said.out.contains(&format!("  thirdwire {command}")), "{command} has no example");
        assert!(said.out.contains("Exit codes:"), "{command} names no exit codes");
    }
}

#[test]
fn the_help_of_the_program_lists_every_command_and_the_exit_codes() {
    let help = thirdwire(&["--help"]).out;
    for command in COMMANDS {
        assert!(help.contains(&format!("\n  {command} ")), "{command}");
    }
    assert!(help.contains("Exit codes:"));
}

/// The examples of the help, run as they stand.
#[test]
fn the_examples_of_the_help_run() {
    for command in COMMANDS {
        let help = thirdwire(&[command, "--help"]).out.replace("\\\n", " ");
        let examples = help.lines().map(str::trim).filter(|line| line.starts_with("thirdwire "));
        for example in examples.filter(|line| !line.contains("my-") && !line.contains("plan.")) {
            let line = example.split(" > ").next().unwrap_or_default();
            let words = words_of(line);
            let args: Vec<&str> = words.iter().skip(1).map(String::as_str).collect();
            let said = thirdwire(&args);
            assert!(matches!(said.code, 0 | 3), "{example}: {said:?}");
            assert!(!said.out.is_empty(), "{example}");
        }
    }
}
