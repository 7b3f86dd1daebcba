//! What an opening is owed, as an answer.

use rulebook::{Duty, Judgement, Need};
use schemars::JsonSchema;
use serde::Serialize;

/// What the code asks of an opening when its receptacle is replaced.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct RequiresAnswer {
    /// Protection of people by a GFCI.
    pub gfci: DutyAnswer,
    /// Protection of the wiring by an AFCI.
    pub afci: DutyAnswer,
    /// A tamper-resistant receptacle.
    pub tamper_resistant: DutyAnswer,
    /// A weather-resistant receptacle.
    pub weather_resistant: DutyAnswer,
    /// An equipment ground for what is plugged in.
    pub equipment_ground: DutyAnswer,
    /// The use of a ground that is there.
    pub use_existing_ground: DutyAnswer,
    /// All hots of the multiwire set open together.
    pub simultaneous_disconnect: DutyAnswer,
}

/// One duty.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct DutyAnswer {
    /// Whether to act as if it were required: false only where it is certainly not. `need` tells a certain duty from a
    /// disputed one and from one that could not be checked.
    pub required: bool,
    /// `required`, `not-required`, `disputed` or `not-checked`.
    pub need: Need,
    /// The sections that say so.
    pub cites: Vec<String>,
    /// The reasons; for an equipment ground, the equipment.
    pub because: Vec<String>,
    /// The authorities whose changes or answers have a part in this.
    pub changed_by: Vec<String>,
}

impl RequiresAnswer {
    /// The duties of a judgement.
    #[must_use]
    pub fn of(judgement: &Judgement) -> Self {
        Self {
            gfci: duty(judgement, Duty::Gfci),
            afci: duty(judgement, Duty::Afci),
            tamper_resistant: duty(judgement, Duty::TamperResistant),
            weather_resistant: duty(judgement, Duty::WeatherResistant),
            equipment_ground: duty(judgement, Duty::EquipmentGround),
            use_existing_ground: duty(judgement, Duty::UseExistingGround),
            simultaneous_disconnect: duty(judgement, Duty::SimultaneousDisconnect),
        }
    }

    /// Every duty with the words people use for it.
    #[must_use]
    pub fn named(&self) -> [(&'static str, &DutyAnswer); 7] {
        [
            ("GFCI protection", &self.gfci),
            ("AFCI protection", &self.afci),
            ("tamper-resistant", &self.tamper_resistant),
            ("weather-resistant", &self.weather_resistant),
            ("equipment ground", &self.equipment_ground),
            ("use of the ground that is there", &self.use_existing_ground),
            ("hots that open together", &self.simultaneous_disconnect),
        ]
    }
}

fn duty(judgement: &Judgement, duty: Duty) -> DutyAnswer {
    match judgement.duties.iter().find(|verdict| verdict.duty == duty) {
        Some(verdict) => DutyAnswer {
            required: verdict.need != Need::NotRequired,
            need: verdict.need,
            cites: sections(&verdict.cites),
            because: verdict.because.clone(),
            changed_by: verdict.changed_by.clone(),
        },
        None => DutyAnswer {
            required: true,
            need: Need::NotChecked,
            cites: Vec::new(),
            because: Vec::new(),
            changed_by: Vec::new(),
        },
    }
}

/// The sections of citations, each once.
pub(super) fn sections(cites: &[rulebook::Citation]) -> Vec<String> {
    let mut sections: Vec<String> = Vec::new();
    for cite in cites {
        if !sections.iter().any(|section| section == cite.section) {
            sections.push(cite.section.to_owned());
        }
    }
    sections
}
