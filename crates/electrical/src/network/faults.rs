//! What may be wrong with a branch circuit.

use super::branch_circuit::{Opening, RunNumber, Wire};
use crate::Resistance;

/// Where a conductor is broken, bad or exchanged for another.
#[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
pub enum Place {
    /// At a run's end towards the panel.
    NearEnd(RunNumber),
    /// At a run's end away from the panel: the opening there and all beyond it are concerned.
    FarEnd(RunNumber),
    /// Between the splice and the device of an opening: nothing beyond it is concerned.
    Device(Opening),
}

/// A fault of a branch circuit. Several may stand together; a later one of the same kind at the same place and conductor
/// replaces an earlier one.
#[derive(Clone, Copy, Debug, PartialEq)]
pub enum Fault {
    /// A conductor that is not connected.
    Open {
        /// Where.
        at: Place,
        /// Which conductor: at a run's end that of the run, at a device its terminal.
        wire: Wire,
    },
    /// A splice or terminal of some resistance.
    Resistance {
        /// Where.
        at: Place,
        /// Which conductor, as for an open one.
        wire: Wire,
        /// How much; nought is a sound connection.
        resistance: Resistance,
    },
    /// Two terminals of a device that touch: a false ground by a jumper, or a hot that meets metal. Two of one
    /// conductor are no fault.
    Jumper {
        /// At which opening.
        at: Opening,
        /// Between which terminals of the device.
        between: (Wire, Wire),
        /// Of what resistance; nought makes the two one.
        resistance: Resistance,
    },
    /// Terminals of two openings that touch: neutrals of two circuits joined, a ground borrowed from elsewhere.
    Bridged {
        /// The two terminals.
        ends: [(Opening, Wire); 2],
        /// Through what resistance; nought makes the two one.
        resistance: Resistance,
    },
    /// Two conductors that stand on each other's place.
    Exchanged {
        /// Where.
        at: Place,
        /// Which two.
        wires: (Wire, Wire),
    },
    /// A terminal of a device that is joined to earth by itself: a rod, a pipe, damp ground.
    Earthed {
        /// At which opening.
        at: Opening,
        /// Which terminal.
        wire: Wire,
        /// Through what resistance, above nought.
        resistance: Resistance,
    },
}
