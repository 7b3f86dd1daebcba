//! The programs that are measured: built once, fed with lines, read line by line.

use serde_json::Value;
use std::fs::File;
use std::io::Write as _;
use std::path::{Path, PathBuf};
use std::process::{Command, Stdio};
use std::time::{Duration, Instant};

/// Where the programs are, and a folder for what they read.
pub struct Programs {
    root: PathBuf,
    target: PathBuf,
}

/// What went wrong, for people.
pub type Fault = String;

impl Programs {
    /// Builds the planner and the printer of problems, optimised.
    pub fn built(root: &Path) -> Result<Self, Fault> {
        let packages = ["--package", "thirdwire", "--package", "remedies", "--bins", "--example", "print_problem"];
        let mut build = Command::new(env!("CARGO"));
        build.current_dir(root).args(["build", "--release", "--quiet", "--locked"]).args(packages);
        let done = build.status().map_err(|error| format!("cannot run cargo: {error}"))?;
        if !done.success() {
            return Err("the programs could not be built".into());
        }
        let target = std::env::var_os("CARGO_TARGET_DIR").map_or(root.join("target"), PathBuf::from);
        std::fs::create_dir_all(target.join("bench")).map_err(|error| format!("no folder for surveys: {error}"))?;
        Ok(Self { root: root.to_path_buf(), target })
    }

    /// The planner.
    pub fn planner(&self) -> Command {
        Command::new(self.target.join("release").join("thirdwire"))
    }

    /// The printer of problems and of thirdwire's answers.
    pub fn printer(&self) -> Command {
        Command::new(self.target.join("release").join("examples").join("print_problem"))
    }

    /// The rivals, each with so many seconds for a dwelling.
    pub fn rivals(&self, python: &str, seconds: u64) -> Command {
        let mut command = Command::new(python);
        command.arg(self.root.join("tools/exactness/rivals.py")).arg(seconds.to_string());
        command
    }

    /// Writes lines to a file that a program can read.
    pub fn kept(&self, name: &str, lines: impl Iterator<Item = String>) -> Result<PathBuf, Fault> {
        let path = self.target.join("bench").join(name);
        let file = File::create(&path).map_err(|error| format!("cannot write `{name}`: {error}"))?;
        let mut out = std::io::BufWriter::new(file);
        for line in lines {
            writeln!(out, "{line}").map_err(|error| format!("cannot write `{name}`: {error}"))?;
        }
        out.flush().map_err(|error| format!("cannot write `{name}`: {error}"))?;
        Ok(path)
    }
}

/// Runs a program over a file and returns the one JSON value that it writes; nothing where it takes longer than allowed.
pub fn answer_within(mut program: Command, input: &Path, most: Duration) -> Result<Option<Value>, Fault> {
    let file = File::open(input).map_err(|error| format!("cannot read `{}`: {error}", input.display()))?;
    let told = input.with_extension("told");
    let out = File::create(&told).map_err(|error| format!("cannot write `{}`: {error}", told.display()))?;
    let start = Instant::now();
    let mut running = program.stdin(file).stdout(out).spawn().map_err(|error| format!("cannot run it: {error}"))?;
    loop {
        match running.try_wait() {
            Ok(Some(status)) if status.success() => break,
            Ok(Some(_)) => return Err(format!("`{}` failed", shown(&program))),
            Ok(None) if start.elapsed() > most => {
                let ended = running.kill().and_then(|()| running.wait());
                return ended.map(|_| None).map_err(|error| format!("cannot end it: {error}"));
            }
            Ok(None) => std::thread::sleep(Duration::from_millis(10)),
            Err(error) => return Err(format!("it is lost: {error}")),
        }
    }
    let text = std::fs::read_to_string(&told).map_err(|error| format!("cannot read `{}`: {error}", told.display()))?;
    Ok(serde_json::from_str(text.trim()).ok())
}

/// Runs a program over a file and returns the JSON values that it writes, one a line. Lines that are no JSON are left out:
/// solvers greet.
pub fn answers(mut program: Command, input: &Path) -> Result<Vec<Value>, Fault> {
    let file = File::open(input).map_err(|error| format!("cannot read `{}`: {error}", input.display()))?;
    program.stdin(file).stderr(Stdio::inherit());
    let done = program.output().map_err(|error| format!("cannot run `{}`: {error}", shown(&program)))?;
    if !done.status.success() {
        return Err(format!("`{}` failed", shown(&program)));
    }
    let text = String::from_utf8_lossy(&done.stdout);
    Ok(text.lines().filter(|line| line.starts_with('{')).filter_map(|line| serde_json::from_str(line).ok()).collect())
}

fn shown(program: &Command) -> String {
    program.get_program().to_string_lossy().into_owned()
}
