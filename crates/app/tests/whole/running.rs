//! Runs the real binary.

use serde_json::Value;
use std::io::Write as _;
use std::path::PathBuf;
use std::process::{Command, Stdio};

/// What the program said and how it went.
#[derive(Debug, PartialEq, Eq)]
pub struct Said {
    /// The exit code.
    pub code: i32,
    /// What it wrote for people and programs.
    pub out: String,
    /// What it wrote of mistakes.
    pub err: String,
}

impl Said {
    /// The answer as JSON.
    pub fn json(&self) -> Value {
        serde_json::from_str(&self.out).unwrap_or_else(|error| panic!("no JSON ({error}): {self:?}"))
    }
}

/// Runs the program from the top of the repository.
pub fn thirdwire(args: &[&str]) -> Said {
    thirdwire_reading(args, "")
}

/// Runs the program with a text on its standard input.
pub fn thirdwire_reading(args: &[&str], input: &str) -> Said {
    let mut child = command(args)
        .stdin(Stdio::piped())
        .stdout(Stdio::piped())
        .stderr(Stdio::piped())
        .spawn()
        .unwrap_or_else(|error| panic!("the program does not start: {error}"));
    if let Some(mut stdin) = child.stdin.take() {
        // A program that does not read its input closes it: that is no fault.
        let _written = stdin.write_all(input.as_bytes());
    }
    let output = child.wait_with_output().unwrap_or_else(|error| panic!("the program does not end: {error}"));
    Said {
        code: output.status.code().unwrap_or(-1),
        out: String::from_utf8_lossy(&output.stdout).into_owned(),
        err: String::from_utf8_lossy(&output.stderr).into_owned(),
    }
}

/// The program with its arguments, not yet started; what the surroundings say of colours is left out.
pub fn command(args: &[&str]) -> Command {
    let mut command = Command::new(env!("CARGO_BIN_EXE_thirdwire"));
    command.args(args).current_dir(repository());
    for colour in ["NO_COLOR", "CLICOLOR", "CLICOLOR_FORCE"] {
        command.env_remove(colour);
    }
    command
}

/// The top of the repository.
pub fn repository() -> PathBuf {
    PathBuf::from(env!("CARGO_MANIFEST_DIR")).join("../..")
}

/// A document of the repository.
pub fn document(path: &str) -> String {
    let path = repository().join(path);
    std::fs::read_to_string(&path).unwrap_or_else(|error| panic!("{}: {error}", path.display()))
}

/// Writes a file for a test and says where. It is moved to its name as a whole: another test may be reading the same one.
pub fn file(name: &str, text: &str) -> String {
    let folder = PathBuf::from(env!("CARGO_TARGET_TMPDIR"));
    let (path, draft) = (folder.join(name), folder.join(format!("{name} {:?}", std::thread::current().id())));
    let written = std::fs::write(&draft, text).and_then(|()| std::fs::rename(&draft, &path));
    written.unwrap_or_else(|error| panic!("{}: {error}", path.display()));
    path.display().to_string()
}

/// The text at a place of a JSON value.
pub fn text<'a>(value: &'a Value, place: &str) -> &'a str {
    value.pointer(place).and_then(Value::as_str).unwrap_or_else(|| panic!("no text at {place} of {value}"))
}

/// The list at a place of a JSON value.
pub fn list<'a>(value: &'a Value, place: &str) -> &'a [Value] {
    let list = value.pointer(place).and_then(Value::as_array);
    list.unwrap_or_else(|| panic!("no list at {place} of {value}"))
}

/// The number at a place of a JSON value.
pub fn number(value: &Value, place: &str) -> i64 {
    value.pointer(place).and_then(Value::as_i64).unwrap_or_else(|| panic!("no number at {place} of {value}"))
}

/// The words of a command line, those in double quotes kept whole.
pub fn words_of(line: &str) -> Vec<String> {
    let quoted = line.split('"').enumerate();
    quoted
        .flat_map(|(position, part)| {
            let words: Vec<&str> = if position % 2 == 1 { vec![part] } else { part.split_whitespace().collect() };
            words.into_iter().map(str::to_owned).collect::<Vec<_>>()
        })
        .collect()
}
