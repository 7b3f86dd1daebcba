//! What a line of a count counts, put into words where somebody reads it.

use std::fmt;

/// What a line of a count counts.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum Counted {
    /// So many insulated conductors.
    Insulated(u32),
    /// So many unbroken loops of 12 in or more.
    Looped(u32),
    /// So many fixture wires from under the canopy.
    FromCanopy(u32),
    /// The clamps inside.
    Clamps,
    /// So many kinds of support fittings.
    SupportFittings(u32),
    /// A strap with its device, so many gangs wide.
    Strap(u32),
    /// So many equipment grounding conductors.
    Grounding(u32),
    /// So many isolated grounding conductors.
    IsolatedGrounding(u32),
    /// A terminal block.
    TerminalBlock,
}

impl fmt::Display for Counted {
    fn fmt(&self, out: &mut fmt::Formatter<'_>) -> fmt::Result {
        let s = |count: &u32| if *count == 1 { "" } else { "s" };
        match self {
            Self::Insulated(count) => write!(out, "{count} insulated conductor{}", s(count)),
            Self::Looped(count) => write!(out, "{count} unbroken loop{} of 12 in or more", s(count)),
            Self::FromCanopy(count) => write!(out, "{count} fixture wire{} from under the canopy", s(count)),
            Self::Clamps => write!(out, "clamps inside"),
            Self::SupportFittings(count) => write!(out, "{count} kind{} of support fitting", s(count)),
            Self::Strap(..=1) => write!(out, "strap with its device"),
            Self::Strap(gangs) => write!(out, "strap with its device {gangs} gangs wide"),
            Self::Grounding(count) => write!(out, "{count} equipment grounding conductor{}", s(count)),
            Self::IsolatedGrounding(count) => write!(out, "{count} isolated grounding conductor{}", s(count)),
            Self::TerminalBlock => write!(out, "terminal block"),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn one_is_told_apart_from_many() {
        let told = [Counted::Insulated(1), Counted::Insulated(4), Counted::SupportFittings(2), Counted::Strap(2)];
        let words = [
            "1 insulated conductor",
            "4 insulated conductors",
            "2 kinds of support fitting",
            "strap with its device 2 gangs wide",
        ];
        assert_eq!(told.map(|counted| counted.to_string()), words);
    }
}
