//! How what is in a box is counted, item by item.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::TEXT_2011;

/// Allowances for an insulated conductor that enters, whether spliced, ended or passing straight through.
pub const INSULATED: ByEdition<u32> = ByEdition {
    id: "boxes.count.insulated",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(1)", 1),
        Reading::read(Nec2011, "314.16(B)(1)", TEXT_2011, 1),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(1)", 1),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(1)", 1),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(1)", 1),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(1)", 1),
    ],
};

/// Allowances for an unbroken loop at least twice as long as the shortest free conductor, which is 12 in.
pub const LOOPED: ByEdition<u32> = ByEdition {
    id: "boxes.count.looped",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(1)", 2),
        Reading::read(Nec2011, "314.16(B)(1)", TEXT_2011, 2),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(1)", 2),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(1)", 2),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(1)", 2),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(1)", 2),
    ],
};

/// Allowances of the largest conductor in the box for all clamps inside it together.
pub const CLAMPS: ByEdition<u32> = ByEdition {
    id: "boxes.count.clamps",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(2)", 1),
        Reading::read(Nec2011, "314.16(B)(2)", TEXT_2011, 1),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(2)", 1),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(2)", 1),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(2)", 1),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(2)", 1),
    ],
};

/// Allowances of the largest conductor in the box for each kind of support fitting.
pub const FITTINGS: ByEdition<u32> = ByEdition {
    id: "boxes.count.support-fittings",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(3)", 1),
        Reading::read(Nec2011, "314.16(B)(3)", TEXT_2011, 1),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(3)", 1),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(3)", 1),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(3)", 1),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(3)", 1),
    ],
};

/// Allowances of the largest conductor on it for each strap, for each gang that a wide device needs.
pub const STRAPS: ByEdition<u32> = ByEdition {
    id: "boxes.count.straps",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(4)", 2),
        Reading::read(Nec2011, "314.16(B)(4)", TEXT_2011, 2),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(4)", 2),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(4)", 2),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(4)", 2),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(4)", 2),
    ],
};

const QUARTER_RULE: &str = "trade forum, threads 2566828 and 2568132";

/// How many grounding conductors share the first allowance; `None` is all of them. Each further one takes a quarter.
pub const SHARING_FIRST_ALLOWANCE: ByEdition<Option<u32>> = ByEdition {
    id: "boxes.count.grounding-sharing-first-allowance",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(5)", None),
        Reading::read(Nec2011, "314.16(B)(5)", TEXT_2011, None),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(5)", None),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(5)", None),
        Reading::read(Nec2020, "314.16(B)(5)", QUARTER_RULE, Some(4)),
        Reading::read(Nec2023, "314.16(B)(5)", QUARTER_RULE, Some(4)),
    ],
};

/// Allowances of the largest conductor on it for a terminal block; `None` where the edition does not count it.
pub const TERMINAL_BLOCKS: ByEdition<Option<u32>> = ByEdition {
    id: "boxes.count.terminal-blocks",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)", None),
        Reading::remembered(Nec2011, "314.16(B)", None),
        Reading::remembered(Nec2014, "314.16(B)", None),
        Reading::remembered(Nec2017, "314.16(B)", None),
        Reading::remembered(Nec2020, "314.16(B)", None),
        Reading::read(Nec2023, "314.16(B)(6)", "electricallicenserenewal.com, NEC content 1471", Some(1)),
    ],
};

/// How many fixture wires smaller than 14 AWG from under a domed canopy may be left out, with their grounding conductors.
pub const UNDER_CANOPY: ByEdition<u32> = ByEdition {
    id: "boxes.count.under-canopy",
    readings: &[
        Reading::remembered(Nec2008, "314.16(B)(1), exception", 4),
        Reading::read(Nec2011, "314.16(B)(1), exception", TEXT_2011, 4),
        Reading::unchanged_since_2011(Nec2014, "314.16(B)(1), exception", 4),
        Reading::unchanged_since_2011(Nec2017, "314.16(B)(1), exception", 4),
        Reading::unchanged_since_2011(Nec2020, "314.16(B)(1), exception", 4),
        Reading::unchanged_since_2011(Nec2023, "314.16(B)(1), exception", 4),
    ],
};
