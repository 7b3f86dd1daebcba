//! What an opening can be owed when its receptacle is replaced.

use dwelling::names;

names! {
    /// A duty that the code lays on an opening.
    Duty {
        /// People must be protected by a GFCI.
        Gfci = "gfci",
        /// The wiring must be protected by an AFCI.
        Afci = "afci",
        /// The receptacle must be tamper-resistant.
        TamperResistant = "tamper-resistant",
        /// The receptacle must be weather-resistant.
        WeatherResistant = "weather-resistant",
        /// What is plugged in must have an equipment ground.
        EquipmentGround = "equipment-ground",
        /// A ground that is there must be used.
        UseExistingGround = "use-existing-ground",
        /// All hots of the multiwire set must open together.
        SimultaneousDisconnect = "simultaneous-disconnect",
    }
}

names! {
    /// Whether a duty holds.
    Need {
        /// It does.
        Required = "required",
        /// It does not.
        NotRequired = "not-required",
        /// The code is read in two ways; the authority decides.
        Disputed = "disputed",
        /// A fact or a value is missing.
        NotChecked = "not-checked",
    }
}
