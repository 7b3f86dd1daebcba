//! The public `.stp` format (and its `.gr` kin): text in, an instance or the line that cannot be read.

use super::instance::{Cost, Instance, Line};

/// The decimals that costs are read to.
const DECIMALS: u32 = 6;

/// An instance and the power of ten that its costs were multiplied by.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Reading {
    /// The instance; node 1 of the text is node 0.
    pub instance: Instance,
    /// How many decimals of the text's costs stand in the integers.
    pub decimals: u32,
}

/// Why a text cannot be read, and in which line.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Unreadable {
    /// The line, from 1; 0 is the whole text.
    pub line: usize,
    /// What is wrong.
    pub what: String,
}

#[derive(Default)]
struct Reader<'a> {
    nodes: Option<usize>,
    edges: Option<usize>,
    terminals: Option<usize>,
    lines: Vec<(usize, usize, &'a str, Option<&'a str>, usize)>,
    named: Vec<usize>,
    prizes: Vec<(usize, &'a str, usize)>,
    root: Option<usize>,
}

/// Reads an instance.
///
/// # Errors
/// The first line that is not understood, or a count that does not hold.
pub fn read(text: &str) -> Result<Reading, Unreadable> {
    let mut reader = Reader::default();
    let mut section = String::new();
    for (index, raw) in text.lines().enumerate() {
        let words: Vec<&str> = raw.split_whitespace().collect();
        let Some(&first) = words.first() else { continue };
        let line = index + 1;
        let word = first.to_ascii_lowercase();
        match (section.as_str(), word.as_str()) {
            ("", "section") => section = words.get(1).map(|name| name.to_ascii_lowercase()).unwrap_or_default(),
            ("", "eof") => break,
            ("", _) if word.starts_with("33d32945") || word.starts_with('#') => {}
            ("", _) => return Err(unreadable(line, &format!("expected `SECTION`, found `{first}`"))),
            (_, "end") => section.clear(),
            ("graph", _) => reader.graph(line, &word, &words)?,
            ("terminals", _) => reader.terminal(line, &word, &words)?,
            _ => {}
        }
    }
    if !section.is_empty() {
        return Err(unreadable(0, &format!("section `{section}` has no `END`")));
    }
    reader.finish()
}

impl<'a> Reader<'a> {
    fn graph(&mut self, line: usize, word: &str, words: &[&'a str]) -> Result<(), Unreadable> {
        match word {
            "nodes" => self.nodes = Some(count(line, words)?),
            "edges" | "arcs" => self.edges = Some(self.edges.unwrap_or(0) + count(line, words)?),
            "e" | "a" => {
                let &[_, from, to, cost, ref rest @ ..] = words else {
                    return Err(unreadable(line, "a line needs two nodes and a cost"));
                };
                let back = match (word, rest) {
                    ("e", []) => Some(cost),
                    ("a", []) => None,
                    ("a", [back]) => Some(*back),
                    _ => return Err(unreadable(line, "more words than a line has")),
                };
                let ends = (self.node(line, from)?, self.node(line, to)?);
                self.lines.push((ends.0, ends.1, cost, back, line));
            }
            "obstacles" | "optimal" | "name" | "creator" | "remark" => {}
            other => return Err(unreadable(line, &format!("`{other}` is not known in a graph"))),
        }
        Ok(())
    }

    fn terminal(&mut self, line: usize, word: &str, words: &[&'a str]) -> Result<(), Unreadable> {
        match word {
            "terminals" => self.terminals = Some(count(line, words)?),
            "t" => {
                let &[_, node] = words else { return Err(unreadable(line, "`T` needs one node")) };
                let node = self.node(line, node)?;
                self.named.push(node);
            }
            "tp" => {
                let &[_, node, prize] = words else { return Err(unreadable(line, "`TP` needs a node and a prize")) };
                let node = self.node(line, node)?;
                self.prizes.push((node, prize, line));
            }
            "root" | "rootp" => {
                let &[_, node] = words else { return Err(unreadable(line, "a root needs one node")) };
                let node = self.node(line, node)?;
                if self.root.replace(node).is_some_and(|before| before != node) {
                    return Err(unreadable(line, "a second root"));
                }
            }
            other => return Err(unreadable(line, &format!("`{other}` is not known among terminals"))),
        }
        Ok(())
    }

    fn node(&self, line: usize, word: &str) -> Result<usize, Unreadable> {
        let nodes = self.nodes.ok_or_else(|| unreadable(line, "`Nodes` must stand first"))?;
        match word.parse::<usize>() {
            Ok(node) if (1..=nodes).contains(&node) => Ok(node - 1),
            _ => Err(unreadable(line, &format!("`{word}` is no node from 1 to {nodes}"))),
        }
    }

    fn finish(self) -> Result<Reading, Unreadable> {
        let nodes = self.nodes.ok_or_else(|| unreadable(0, "there is no graph"))?;
        let named = self.named.len() + self.prizes.len();
        let with_root = named + usize::from(self.root.is_some());
        match self.terminals {
            None => return Err(unreadable(0, "there are no terminals")),
            Some(said) if said != named && said != with_root => {
                return Err(unreadable(0, &format!("{said} terminals are said, {named} are named")));
            }
            Some(_) => {}
        }
        if let Some(said) = self.edges
            && said != self.lines.len()
        {
            return Err(unreadable(0, &format!("{said} lines are said, {} are named", self.lines.len())));
        }
        let fractional = |word: &str| word.split_once('.').is_some_and(|(_, part)| part.contains(|digit| digit != '0'));
        let any = self.lines.iter().any(|&(_, _, cost, back, _)| fractional(cost) || back.is_some_and(fractional))
            || self.prizes.iter().any(|&(_, prize, _)| fractional(prize));
        let decimals = if any { DECIMALS } else { 0 };
        let mut instance = Instance { nodes, root: self.root, terminals: self.named, ..Instance::default() };
        for (from, to, cost, back, line) in self.lines {
            let there = fixed(cost, decimals, line)?;
            let back = back.map(|back| fixed(back, decimals, line)).transpose()?;
            if from == to {
                return Err(unreadable(line, "a line joins a node to itself"));
            }
            instance.lines.push(Line { from, to, there, back });
        }
        for (node, prize, line) in self.prizes {
            instance.prizes.push((node, fixed(prize, decimals, line)?));
        }
        instance.validate().map_err(|fault| unreadable(0, &format!("{fault:?}")))?;
        Ok(Reading { instance, decimals })
    }
}

fn count(line: usize, words: &[&str]) -> Result<usize, Unreadable> {
    match words {
        [_, number] => number.parse().ok().filter(|&number: &usize| number < 1 << 26),
        _ => None,
    }
    .ok_or_else(|| unreadable(line, "expected one count"))
}

/// The number times ten to the power `decimals`, exactly.
fn fixed(word: &str, decimals: u32, line: usize) -> Result<Cost, Unreadable> {
    let wrong = || unreadable(line, &format!("`{word}` is no cost from 0 with at most {DECIMALS} decimals"));
    let (whole, part) = word.split_once('.').unwrap_or((word, ""));
    let part = part.trim_end_matches('0');
    let digits = |text: &str| text.bytes().all(|byte| byte.is_ascii_digit());
    if whole.is_empty() || !digits(whole) || !digits(part) || part.len() > decimals as usize {
        return Err(wrong());
    }
    format!("{whole}{part:0<width$}", width = decimals as usize).parse().map_err(|_| wrong())
}

fn unreadable(line: usize, what: &str) -> Unreadable {
    Unreadable { line, what: what.to_owned() }
}
