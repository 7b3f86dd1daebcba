//! Solves networks that stand in plain text on the standard input, for an outside check.
//!
//! A network is lines of words: `network N` with N nodes beside earth, numbered from 1; `branch A B R X RE IM` for an
//! impedance R + jX in ohms from node A to node B with a rise of RE + jIM volts; `current A B RE IM` for amperes driven out
//! of A into B; `end`. For each, `network` and a line `RE IM` per node come out.
#![allow(clippy::print_stdout, reason = "an example is a program: it prints")]

use electrical::network::{Network, Node};
use electrical::{Complex, Impedance};
use std::error::Error;
use std::io;

fn main() -> Result<(), Box<dyn Error>> {
    let mut network = Network::new();
    let mut nodes = Vec::new();
    for line in io::read_to_string(io::stdin())?.lines() {
        let words: Vec<&str> = line.split_whitespace().collect();
        let number = |at: usize| words[at].parse::<f64>();
        let node = |nodes: &[Node], at: usize| -> Result<Node, Box<dyn Error>> {
            Ok(*nodes.get(words[at].parse::<usize>()?).ok_or("no such node")?)
        };
        match (words.first().copied(), words.len()) {
            (Some("network"), 2) => {
                network = Network::new();
                nodes = vec![Node::EARTH];
                nodes.extend((0..words[1].parse()?).map(|_| network.node()));
            }
            (Some("branch"), 7) => {
                let rise = Complex::new(number(5)?, number(6)?);
                let impedance = Impedance::ohms(number(3)?, number(4)?);
                network.source(node(&nodes, 1)?, node(&nodes, 2)?, rise, impedance);
            }
            (Some("current"), 5) => {
                network.current_source(node(&nodes, 1)?, node(&nodes, 2)?, Complex::new(number(3)?, number(4)?));
            }
            (Some("end"), 1) => {
                let solution = network.solve()?;
                println!("network");
                for node in nodes.iter().skip(1) {
                    let volts = solution.voltage(*node);
                    println!("{:e} {:e}", volts.re, volts.im);
                }
            }
            (None, _) => {}
            _ => return Err(format!("`{line}` is none of the lines").into()),
        }
    }
    Ok(())
}
