//! Reading `.stp` texts: what is read, what is refused and where, and that no text at all makes the reader fail.

mod steiner_support;

use optimizer::steiner::{Line, Methods, SteinerLimits, read, solve_steiner};
use steiner_support::{Chance, KINDS, instance, least};

const TREE: &str = "33D32945 STP File, STP Format Version 1.0

SECTION Comment
Name \"odd wheel\"
END

SECTION Graph
Nodes 4
Edges 3
E 1 2 3
E 2 3 4
E 2 4 5
END

SECTION Terminals
Terminals 2
T 1
T 3
END

EOF
";

fn cost(text: &str) -> Option<i64> {
    let instance = read(text).expect("a text that can be read").instance;
    let mut limits = SteinerLimits { nodes: None, stop: &mut || false, methods: Methods::default() };
    solve_steiner(&instance, &mut limits).expect("a sound instance").tree.map(|tree| tree.cost)
}

/// By hand: the one path, 3 + 4.
#[test]
fn a_steiner_tree_is_read() {
    assert_eq!(cost(TREE), Some(7));
}

/// By hand: a prize of 4.5 is not worth a line of 5; 3 + 4 + 4.5.
#[test]
fn prizes_a_root_and_decimals_are_read() {
    let text = TREE.replace("Terminals 2\n", "Terminals 3\nRootP 1\n").replace("T 1\n", "TP 4 4.500\n");
    let reading = read(&text).unwrap();
    assert_eq!((reading.decimals, reading.instance.root), (6, Some(0)));
    assert_eq!(cost(&text), Some(11_500_000));
}

#[test]
fn arcs_are_read_one_way_or_with_their_way_back() {
    let text = TREE.replace("E 1 2 3", "A 1 2 3").replace("E 2 3 4", "A 2 3 4 6").replace("T 1\n", "Root 1\nT 2\n");
    let lines = read(&text).unwrap().instance.lines;
    assert_eq!(lines[0], Line { from: 0, to: 1, there: 3, back: None });
    assert_eq!(lines[1], Line { from: 1, to: 2, there: 4, back: Some(6) });
}

#[test]
fn what_cannot_be_read_is_told_with_its_line() {
    let told = |old: &str, new: &str| {
        let fault = read(&TREE.replace(old, new)).unwrap_err();
        (fault.line, fault.what)
    };
    assert_eq!(told("E 1 2 3", "E 1 9 3"), (10, "`9` is no node from 1 to 4".to_owned()));
    assert_eq!(told("E 1 2 3", "E 1 2 -3").0, 10);
    assert_eq!(told("E 1 2 3", "E 1 2 1e9").0, 10);
    assert_eq!(told("E 1 2 3", "E 1 2 0.1234567").0, 10);
    assert_eq!(told("E 1 2 3", "E 1 2"), (10, "a line needs two nodes and a cost".to_owned()));
    assert_eq!(told("E 1 2 3", "E 1 1 3"), (10, "a line joins a node to itself".to_owned()));
    assert_eq!(told("E 1 2 3", "Q 1 2 3"), (10, "`q` is not known in a graph".to_owned()));
    assert_eq!(told("T 3", "T 0").0, 18);
    assert_eq!(told("T 3", "X 3").0, 18);
    assert_eq!(told("Edges 3", "Edges 4"), (0, "4 lines are said, 3 are named".to_owned()));
    assert_eq!(told("Terminals 2", "Terminals 9"), (0, "9 terminals are said, 2 are named".to_owned()));
    assert_eq!(told("Nodes 4", "Nodes many"), (8, "expected one count".to_owned()));
    assert_eq!(told("SECTION Graph", "GRAPH").0, 7);
    assert_eq!(told("T 3\nEND\n\nEOF", "T 3"), (0, "section `terminals` has no `END`".to_owned()));
    assert_eq!(told("E 1 2 3", "A 1 2 3").0, 0, "one way without a root");
    assert_eq!(told("E 1 2 3", "E 1 2 99999999999999999").0, 0, "too large");
    assert_eq!(told("E 1 2 3", "E 1 2 99999999999999999999").0, 10);
}

#[test]
fn no_text_makes_the_reader_fail() {
    let words = [
        "SECTION",
        "Graph",
        "Terminals",
        "END",
        "Nodes",
        "E",
        "A",
        "T",
        "TP",
        "RootP",
        "EOF",
        "1",
        "3",
        "-1",
        "0.5",
        "é",
        "18446744073709551616",
    ];
    let mut read_well = 0;
    for seed in 1..=20_000 {
        let mut chance = Chance::new(seed);
        let mut lines: Vec<String> = TREE.lines().map(str::to_owned).collect();
        for _ in 0..chance.below(4) {
            let line = chance.below(lines.len());
            let mut parts: Vec<&str> = lines[line].split(' ').collect();
            let word = words[chance.below(words.len())];
            match chance.below(3) {
                0 => parts.push(word),
                1 => {
                    let place = chance.below(parts.len());
                    parts[place] = word;
                }
                _ => parts.clear(),
            }
            lines[line] = parts.join(" ");
        }
        if let Ok(reading) = read(&lines.join("\n")) {
            assert_eq!(reading.instance.validate(), Ok(()), "seed {seed}");
            read_well += 1;
        }
    }
    assert!(read_well > 100 && read_well < 19_000, "{read_well}");
}

/// By trying every set of lines: an instance written as text is the same instance.
#[test]
fn an_instance_written_and_read_costs_the_same() {
    for kind in KINDS {
        for seed in 1..=60 {
            let instance = instance(&mut Chance::new(seed + 300), kind, 7, 9);
            let mut text = format!("SECTION Graph\nNodes {}\n", instance.nodes);
            for line in &instance.lines {
                let Line { from, to, there, back } = *line;
                let (from, to) = (from + 1, to + 1);
                text += &match back {
                    Some(back) if back == there => format!("E {from} {to} {there}\n"),
                    Some(back) => format!("A {from} {to} {there} {back}\n"),
                    None => format!("A {from} {to} {there}\n"),
                };
            }
            text +=
                &format!("END\nSECTION Terminals\nTerminals {}\n", instance.terminals.len() + instance.prizes.len());
            instance.root.iter().for_each(|root| text += &format!("Root {}\n", root + 1));
            instance.terminals.iter().for_each(|node| text += &format!("T {}\n", node + 1));
            instance.prizes.iter().for_each(|(node, prize)| text += &format!("TP {} {prize}\n", node + 1));
            text += "END\nEOF\n";
            assert_eq!(read(&text).unwrap().instance, instance, "{kind:?} {seed}");
            assert_eq!(cost(&text), least(&instance), "{kind:?} {seed}");
        }
    }
}
