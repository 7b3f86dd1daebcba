//! Positions in the dwelling's lists: cheap, ordered references that cannot be mixed up.

macro_rules! index {
    ($(#[$doc:meta])* $kind:ident) => {
        $(#[$doc])*
        #[derive(Clone, Copy, Debug, PartialEq, Eq, PartialOrd, Ord, Hash)]
        pub struct $kind(pub usize);
    };
}

index!(
    /// The position of a panel in [`crate::Dwelling::panels`].
    PanelIndex
);
index!(
    /// The position of a circuit in [`crate::Dwelling::circuits`].
    CircuitIndex
);
index!(
    /// The position of a room in [`crate::Dwelling::rooms`].
    RoomIndex
);
index!(
    /// The position of a box in [`crate::Dwelling::boxes`].
    BoxIndex
);
index!(
    /// The position of a ground source in [`crate::Dwelling::sources`].
    SourceIndex
);
