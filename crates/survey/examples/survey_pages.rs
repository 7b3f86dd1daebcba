//! Writes the pages about survey files and their mistakes into `docs/`.
#![allow(clippy::disallowed_methods, clippy::print_stdout, missing_docs)]

use std::path::Path;

fn main() -> std::io::Result<()> {
    let docs = Path::new(env!("CARGO_MANIFEST_DIR")).join("../../docs");
    std::fs::write(docs.join("survey-file.md"), survey::survey_page())?;
    std::fs::write(docs.join("local-code.md"), survey::local_code_page())?;
    std::fs::write(docs.join("practice-file.md"), survey::practice_page())?;
    std::fs::write(docs.join("price-book.md"), survey::prices_page())?;
    std::fs::write(docs.join("mistakes.md"), survey::mistakes_page())?;
    println!("{} kinds of mistake", survey::KINDS.len());
    Ok(())
}
