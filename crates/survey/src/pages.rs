//! The pages for users: the survey file, and the mistakes, made from the same tables that the reading uses.

use crate::local_code;
use crate::mistakes::KINDS;
use crate::practice;
use crate::prices;
use crate::shape::{FieldKind, NameList, Need, Shape};
use crate::tables::names::LISTS;
use crate::tables::survey;
use std::fmt::Write as _;

const MADE: &str = "<!-- Made by `cargo run -p survey --example survey_pages`; a test compares it with the code. -->";

const INTRODUCTION: &str = "\
A survey says what was found in one dwelling. People write it in TOML, programs in JSON; both have the same shape, and a
file whose name ends in `.json` is read as JSON.

- **Unknown is a value.** Every key that is not needed can be left out, or be `\"unknown\"`.
- **Units stand beside numbers**: `\"14 ft\"`, `\"5 ft 6 in\"`, `\"4.2 m\"`, `\"12.5 in3\"`, `\"205 cm3\"`, `\"15 A\"`. A number alone is
  taken only for volts, ohms, minutes, wire sizes and coordinates.
- **Metric box volumes** that the volume table prints beside its cubic inches are those cubic inches; any other is
  converted exactly (1 in = 25.4 mm) and rounded down.
- **Ids** are letters, digits and `-`, `_`, `.`, `/`, `#`, `+`. Boxes, panels and ground sources share their names, since a box is
  fed by, and a route begins at, any of them.
- **Every mistake** of a file is pointed at in one go; [mistakes](mistakes.md) lists them.
";

const ABOUT_LOCAL_CODE: &str = "\
Places change the code that they adopt. A file of local code says who changed what, where that is written, and from which
permit day it holds. A survey names the file (`amendments = \"larch-county.toml\"` under `[job]`), and every answer that a change
has a part in names its authority. What counts is the authority's word: ask before you rely on a file.
";

const ABOUT_PRACTICE: &str = "\
[Beliefs](beliefs.md) rest on two kinds of figures that nobody has published: how common each fault is in old wiring before
anybody looks, and what it costs to act wrongly and to test. What is shipped is common practice, no source, and stands below as
the example of each key. A business that has counted its own jobs writes what it found:

```sh
thirdwire practice > my-practice.toml
thirdwire findings my-house.toml --practice my-practice.toml --next
```

- **What is left out** keeps the shipped figure; a file may hold a single one.
- **Shares of one table add up to one**, those that are left out among them. A share says how often one thing of a hundred or of
  a thousand was found so: 92.5 % is `0.925`.
- **Nothing is impossible**: shares and chances lie between 0.000001 and 0.999999. A state with no share at all could be shown
  by no reading, however plain. States that cannot be have no key.
- **Costs are minutes** of work, or what is worth as much; they weigh tests against each other and change no belief.
- **No figure passes an opening.** Whatever a file says, an opening is called grounded only after a loaded test that shows a way
  of its own, and what is dangerous is told by the readings, not by these figures.
- **You answer for your figures.** How true beliefs turn out is measured with the shipped ones alone ([beliefs](beliefs.md)).
- **Every mistake** of a file is pointed at in one go; [mistakes](mistakes.md) lists them.
- Editors complete the file by `thirdwire schema practice`.
";

const ABOUT_PRICES: &str = "\
What things cost, how long work takes and what is charged besides: the figures that a contractor keeps. What comes with the tool
is invented: the figures of things and tasks stand below as examples. Those have waste, markup and tax in them, and minutes for any
place; in a book of your own these are kept apart.

```sh
thirdwire prices > my-prices.toml
thirdwire prices my-prices.toml
thirdwire prices my-prices.toml --xlsx my-prices.xlsx
thirdwire plan my-house.toml --prices my-prices.toml
thirdwire estimate my-house.toml --prices my-prices.xlsx --xlsx my-house.xlsx
```

## How a price is worked out

- **A unit has one price in whole cents.** A unit is a piece, a foot, or a task done once under one condition.
  - A piece is charged at its cost × (1 + markup) × (1 + tax), a foot besides × (1 + waste), rounded half up to the cent once. So
    it is all the same whether tax is laid on the cost and markup on both, or the other way round.
  - A task costs its minutes × the percent of its condition × the price of an hour, rounded half up to the cent once. A task for
    two costs the hours of both; on the site it takes its minutes.
- **Every price is so many units.** What an opening, a route or a change at a panel costs is the sum of its lines, and a line is its
  quantity × its unit. The planner weighs these very cents: the plan it calls cheapest is the cheapest in what is charged.
- **The owner pays** besides: a trip for each working day, contingency on material, labour and trips (rounded half up), the permit;
  then what is missing to the minimum charge; then the total is rounded up. Every one of these is shown, and the total is their sum.
  Where nothing is done, nothing is charged.
- **Days** are the minutes on the site over the hours of a day, rounded up: one crew, one task after the other. State more hours
  where more crews work side by side.
- **What steers the plan** is material and labour alone. Contingency, minimum and rounding never fall as that rises, and the permit
  is the same for every plan, so the cheapest plan stays the cheapest. The trips of working days are the exception: they are
  charged for the days of the plan that was chosen, and a plan that costs a little more and takes a day less is not looked for.
- **Conditions** come from what the survey records: the finish of the walls of a room, and boxes in attics and crawl spaces. They
  make what is done inside walls longer or shorter (changing boxes, fishing, getting through studs, blocks and floors), and
  drilling plates and joining branches from an attic or a crawl space. Running a foot there has minutes of its own. What is
  not recorded, and a route that the survey states, is reckoned plain; the plan says so.
- **Packs** say what is bought, not what is charged: of foot goods what is measured with its waste, rounded up to the foot, and of
  all the packs those that leave the least over, and of these the fewest. In the workbook of an estimate they follow a quantity that
  is changed; of sizes that do not go into each other the largest are then taken first.
- **What a file leaves out**: a thing or a task costs or takes what the demo book says, a helper, a condition, a pack or a charge
  adds nothing. So a book that was written before these keys were there means what it meant.
- **What is dangerous is put right with every plan**, and priced as lines of its own: an open or failing neutral, live metal, a fuse
  in a neutral, a jumper that only readings speak for, a breaker or fuse too large for its conductors (nothing is added where the
  plan fits a new breaker anyway). Where nobody can know how far the work goes, one task stands as an allowance, named so with
  what it rests on. The things and tasks only for this (`breaker-standard`, `breaker-standard-2p`, `fuse`, `neutral-fittings`;
  `find-open-neutral`, `mend-neutral`, `clear-live-metal`, `change-fuse`, `take-out-neutral-fuse`) take no demo figure where your
  book leaves them out: they then add nothing, and the estimate says \"no price in the book for …\". A danger for which there
  is no work with a price is named as not in the price, on the plan, the estimate and the proposal.
- **A spreadsheet** holds the same: a sheet for each table, keys in column A and values in column B from the second row on, and a
  sheet `book` for what stands in no table. Lists are written with commas. Further columns are not read.
- **Every mistake** of a file is pointed at in one go, by line and column or by sheet and cell; [mistakes](mistakes.md) lists them.
- Editors complete the file by `thirdwire schema prices`.
";

/// The page about the survey file, in Markdown.
#[must_use]
pub fn survey_page() -> String {
    let mut page = format!("{MADE}\n\n# The survey file\n\n{INTRODUCTION}\n");
    tables(&mut page, &survey::SHAPE);
    page.push_str("## Names\n\n");
    names(&mut page, LISTS);
    page.push_str(
        "## Trade sizes of metal boxes\n\n| size | volume | printed | by gang |\n| --- | --- | --- | --- |\n",
    );
    for size in dwelling::TRADE_SIZES {
        let by_gang = if size.by_gang { "yes" } else { "" };
        let _ = writeln!(page, "| `{}` | {} | {} cm³ | {by_gang} |", size.name, size.volume, size.cubic_centimetres);
    }
    page
}

/// The page about mistakes, in Markdown.
#[must_use]
pub fn mistakes_page() -> String {
    let mut page = format!("{MADE}\n\n# Mistakes in survey files\n\n");
    let _ = write!(
        page,
        "{} kinds. An error must be mended before the survey can be used; a warning points at what is odd, though it can be so.\n\n",
        KINDS.len()
    );
    for kind in KINDS {
        let _ = write!(page, "## {}\n\n{}\n\n```text\n{}```\n\n", kind.code, kind.means, kind.rendered_example());
    }
    page.truncate(page.trim_end().len());
    page.push('\n');
    page
}

/// The page about files of local code, in Markdown.
#[must_use]
pub fn local_code_page() -> String {
    let mut page = format!("{MADE}\n\n# Local changes to the code\n\n{ABOUT_LOCAL_CODE}\n");
    tables(&mut page, &local_code::SHAPE);
    page.push_str("## Names\n\n");
    names(&mut page, local_code::LISTS);
    page
}

/// The page about practice files, in Markdown.
#[must_use]
pub fn practice_page() -> String {
    let mut page = format!("{MADE}\n\n# The practice file\n\n{ABOUT_PRACTICE}\n");
    tables(&mut page, &practice::SHAPE);
    page.truncate(page.trim_end().len());
    page.push('\n');
    page
}

/// The page about price books, in Markdown.
#[must_use]
pub fn prices_page() -> String {
    let mut page = format!("{MADE}\n\n# The price book\n\n{ABOUT_PRICES}\n");
    tables(&mut page, &prices::SHAPE);
    page.truncate(page.trim_end().len());
    page.push('\n');
    page
}

/// A section for each table below a shape.
fn tables(page: &mut String, top: &'static Shape) {
    let mut shapes: Vec<&'static Shape> = Vec::new();
    collect(top, &mut shapes);
    for shape in shapes {
        let title =
            if shape.title.contains(['[', '{']) { format!("`{}`", shape.title) } else { shape.title.to_string() };
        let _ = write!(page, "## {title}\n\n{}\n\n", shape.meaning);
        page.push_str("| key | what it says | what it holds | needed | example |\n| --- | --- | --- | --- | --- |\n");
        for field in shape.fields {
            let needed = match field.need {
                Need::Optional => "",
                Need::UnlessClosed => "unless closed",
                Need::Required | Need::RequiredOtherwise => "yes",
            };
            let holds = field.kind.expected();
            let _ =
                writeln!(page, "| `{}` | {} | {holds} | {needed} | `{}` |", field.key, field.meaning, field.example);
        }
        page.push('\n');
    }
}

/// A section for each list of names.
fn names(page: &mut String, lists: &[&NameList]) {
    for list in lists {
        let _ = write!(page, "### {}\n\n| name | meaning |\n| --- | --- |\n", capital(list.title));
        for name in list.names {
            let _ = writeln!(page, "| `{name}` | {} |", (list.meaning)(name).trim());
        }
        page.push('\n');
    }
}

/// A shape and those inside it, each once, in the order they are met.
fn collect(shape: &'static Shape, shapes: &mut Vec<&'static Shape>) {
    if shapes.iter().any(|known| known.name == shape.name) {
        return;
    }
    shapes.push(shape);
    for field in shape.fields {
        if let FieldKind::Table(inner)
        | FieldKind::Tables(inner)
        | FieldKind::OneOrMore(inner)
        | FieldKind::DistanceOrTable(inner) = field.kind
        {
            collect(inner, shapes);
        }
    }
}

fn capital(text: &str) -> String {
    let mut characters = text.chars();
    characters.next().map_or(String::new(), |first| first.to_uppercase().chain(characters).collect())
}
