//! The program as its users meet it: real dwellings planned, commands run, pages and documents held against each other.
#![allow(clippy::disallowed_methods, reason = "these tests read documents and start the program")]

mod answers;
mod beliefs;
mod bungalow;
mod by_its_rows;
mod checks;
mod coupled_model;
mod dangers;
mod drawings;
mod dwelling_page;
mod estimates;
mod examples;
mod exit_codes;
mod feeding_order;
mod flat;
mod help;
mod knob_and_tube;
mod law_in_force;
mod many_dwellings;
mod mistakes;
mod next_best;
mod offers;
mod options;
mod own_practice;
mod own_prices;
mod papers;
mod prove;
mod rows;
mod running;
mod shared_way;
mod steering;
mod streams;
mod verify;
mod what_if;
mod written_documents;
