//! Where the words that an ungrounded replacement carries must stand.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::sources::{COURSE_306, COURSE_2008, MAGAZINE_2023_RECEPTACLES, TEXT_2011};

const ON_THE_RECEPTACLE: &str = "on the receptacle itself";
const ON_EITHER: &str = "on the receptacle or its cover plate";

/// Where the words must stand.
pub const PLACE: ByEdition<&str> = ByEdition {
    id: "replacement.marking-place",
    readings: &[
        Reading::read(Nec2008, "406.3(D)(3)", COURSE_2008, ON_THE_RECEPTACLE),
        Reading::read(Nec2011, "406.4(D)(2)", TEXT_2011, ON_THE_RECEPTACLE),
        Reading::read(Nec2014, "406.4(D)(2)", COURSE_306, ON_THE_RECEPTACLE),
        Reading::read(Nec2017, "406.4(D)(2)", COURSE_306, ON_EITHER),
        Reading::remembered(Nec2020, "406.4(D)(2)", ON_EITHER),
        Reading::read(Nec2023, "406.4(D)(2)", MAGAZINE_2023_RECEPTACLES, ON_EITHER),
    ],
};

/// Whether the words behind a GFCI must be visible after installation.
pub const VISIBLE: ByEdition<bool> = ByEdition {
    id: "replacement.marking-visible",
    readings: &[
        Reading::remembered(Nec2008, "406.3(D)(3)(c)", false),
        Reading::remembered(Nec2011, "406.4(D)(2)(c)", false),
        Reading::remembered(Nec2014, "406.4(D)(2)(c)", false),
        Reading::remembered(Nec2017, "406.4(D)(2)(c)", true),
        Reading::remembered(Nec2020, "406.4(D)(2)(c)", true),
        Reading::remembered(Nec2023, "406.4(D)(2)(c)", true),
    ],
};
