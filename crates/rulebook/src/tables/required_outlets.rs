//! Where a dwelling must have receptacles, so that one cannot be taken out.

use crate::cited::{ByEdition, Reading};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::in_words::InWords;
use crate::sources::{FORUM_2011_FOYERS, MAGAZINE_2011_AROUND_THE_HOUSE, MAKER_2017_GARAGES, MAKER_2023_BASEMENTS};
use crate::wall_line::WallMeasure;
use dwelling::DwellingUse;
use electrical::Length;

const WALL: WallMeasure = WallMeasure {
    reach: Length::feet(6),
    least_wall: Length::feet(2),
    off_the_wall: Length::feet_and_inches(1, 6),
    cabinets_break: true,
};

/// How receptacles are spaced along the walls of habitable rooms.
pub const WALLS: ByEdition<WallMeasure> = ByEdition {
    id: "outlets.walls",
    readings: &[
        Reading::remembered(Nec2008, "210.52(A)", WallMeasure { cabinets_break: false, ..WALL }),
        Reading::read(Nec2011, "210.52(A)", MAGAZINE_2011_AROUND_THE_HOUSE, WALL),
        Reading::remembered(Nec2014, "210.52(A)", WALL),
        Reading::remembered(Nec2017, "210.52(A)", WALL),
        Reading::remembered(Nec2020, "210.52(A)", WALL),
        Reading::remembered(Nec2023, "210.52(A)", WALL),
    ],
};

const TOO_HIGH: Length = Length::feet_and_inches(5, 6);

/// Higher than this above the floor, a receptacle does not count as a required one.
pub const HIGHEST: ByEdition<Length> = ByEdition { id: "outlets.highest", readings: &from_memory("210.52", TOO_HIGH) };

/// How near a bathroom's basin a receptacle is.
pub const BASINS: ByEdition<Length> =
    ByEdition { id: "outlets.basins", readings: &from_memory("210.52(D)", Length::feet(3)) };

/// That countertops have receptacles along them.
pub const COUNTERTOPS: ByEdition<()> = ByEdition { id: "outlets.countertops", readings: &from_memory("210.52(C)", ()) };

/// That a house has receptacles outdoors, in front and behind.
pub const OUTDOORS: ByEdition<()> = ByEdition { id: "outlets.outdoors", readings: &from_memory("210.52(E)", ()) };

/// That a laundry area has a receptacle.
pub const LAUNDRIES: ByEdition<()> = ByEdition { id: "outlets.laundries", readings: &from_memory("210.52(F)", ()) };

/// Whose basements, garages and accessory buildings must have receptacles.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Whose {
    /// Those of houses for one family.
    OneFamily,
    /// Those of houses for one or two families.
    OneAndTwoFamilies,
    /// Those of every dwelling.
    All,
}

impl Whose {
    /// Whether a dwelling is among them; nothing where its kind is needed and not known.
    #[must_use]
    pub fn includes(self, of: Option<DwellingUse>) -> Option<bool> {
        match (self, of) {
            (Self::All, _) => Some(true),
            (_, None) => None,
            (_, Some(DwellingUse::OneFamily)) => Some(true),
            (Self::OneFamily, Some(_)) => Some(false),
            (Self::OneAndTwoFamilies, Some(of)) => Some(of == DwellingUse::TwoFamily),
        }
    }
}

/// Whose basements, garages and accessory buildings must have receptacles.
pub const SERVICE_PLACES: ByEdition<Whose> = ByEdition {
    id: "outlets.service-places",
    readings: &[
        Reading::remembered(Nec2008, "210.52(G)", Whose::OneFamily),
        Reading::remembered(Nec2011, "210.52(G)", Whose::OneFamily),
        Reading::remembered(Nec2014, "210.52(G)", Whose::OneFamily),
        Reading::read(Nec2017, "210.52(G)", MAKER_2017_GARAGES, Whose::OneAndTwoFamilies),
        Reading::remembered(Nec2020, "210.52(G)", Whose::All),
        Reading::read(Nec2023, "210.52(G)", MAKER_2023_BASEMENTS, Whose::All),
    ],
};

/// Whether every car's place in a garage has a receptacle of its own.
pub const EACH_CAR: ByEdition<bool> = ByEdition {
    id: "outlets.each-car",
    readings: &[
        Reading::remembered(Nec2008, "210.52(G)", false),
        Reading::remembered(Nec2011, "210.52(G)", false),
        Reading::read(Nec2014, "210.52(G)(1)", MAKER_2017_GARAGES, true),
        Reading::read(Nec2017, "210.52(G)(1)", MAKER_2017_GARAGES, true),
        Reading::remembered(Nec2020, "210.52(G)(1)", true),
        Reading::remembered(Nec2023, "210.52(G)(1)", true),
    ],
};

/// From which length on a hallway has a receptacle.
pub const HALLWAYS: ByEdition<Length> =
    ByEdition { id: "outlets.hallways", readings: &from_memory("210.52(H)", Length::feet(10)) };

/// Above how many square feet a foyer has receptacles; none where the edition does not ask.
pub const FOYERS: ByEdition<Option<u32>> = ByEdition {
    id: "outlets.foyers",
    readings: &[
        Reading::remembered(Nec2008, "210.52", None),
        Reading::read(Nec2011, "210.52(I)", FORUM_2011_FOYERS, Some(60)),
        Reading::remembered(Nec2014, "210.52(I)", Some(60)),
        Reading::remembered(Nec2017, "210.52(I)", Some(60)),
        Reading::remembered(Nec2020, "210.52(I)", Some(60)),
        Reading::remembered(Nec2023, "210.52(I)", Some(60)),
    ],
};

/// How near heating, cooling and like equipment a receptacle is.
pub const NEAR_EQUIPMENT: ByEdition<Length> =
    ByEdition { id: "outlets.near-equipment", readings: &from_memory("210.63", Length::feet(25)) };

/// How near an appliance with a place of its own its receptacle is.
pub const NEAR_APPLIANCES: ByEdition<Length> =
    ByEdition { id: "outlets.near-appliances", readings: &from_memory("210.50(C)", Length::feet(6)) };

/// The same value in every edition to 2023, from memory.
const fn from_memory<T: Copy>(section: &'static str, value: T) -> [Reading<T>; 6] {
    [
        Reading::remembered(Nec2008, section, value),
        Reading::remembered(Nec2011, section, value),
        Reading::remembered(Nec2014, section, value),
        Reading::remembered(Nec2017, section, value),
        Reading::remembered(Nec2020, section, value),
        Reading::remembered(Nec2023, section, value),
    ]
}

impl InWords for WallMeasure {
    fn in_words(&self) -> String {
        let cabinets = if self.cabinets_break { ", fixed cabinets" } else { "" };
        format!(
            "no point more than {} along the wall from a receptacle, in every wall space of {} or more between doorways, \
             fireplaces{cabinets}; one in the floor counts to {} from the wall",
            self.reach, self.least_wall, self.off_the_wall
        )
    }
}

impl InWords for Whose {
    fn in_words(&self) -> String {
        match self {
            Self::OneFamily => "those of one-family houses",
            Self::OneAndTwoFamilies => "those of one- and two-family houses",
            Self::All => "those of every dwelling",
        }
        .to_owned()
    }
}
