//! The facts about one opening on which rules decide, whether they come from a survey or from flags.

use crate::code::CodeInForce;
use crate::fill::FillContents;
use crate::policy::Question;
use crate::taking_out::TakingOut;
use dwelling::{CableKind, Equipment, GroundFact, Holding, NearWater, ProtectiveBreaker, RoomUse, Wetness, names};
use electrical::{Amperes, ConductorMetal, Gauge, Length};

/// One opening. `None` is not known; a rule that needs it answers "not checked" or "find out", never a pass.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct Opening {
    /// What its room is used for.
    pub room_use: RoomUse,
    /// What it holds.
    pub holds: Holding,
    /// The rating of its circuit's breaker or fuse.
    pub breaker: Option<Amperes>,
    /// The size of its circuit conductors.
    pub gauge: Option<Gauge>,
    /// The metal of its circuit conductors.
    pub metal: ConductorMetal,
    /// What is known of its ground.
    pub ground: GroundFact,
    /// Whether it is an existing outlet (a replacement) rather than a new one.
    pub existing_outlet: bool,
    /// In a kitchen: whether it serves a countertop.
    pub countertop: Option<bool>,
    /// How far the nearest sink is, where one is near or was measured.
    pub sink: Option<NearWater>,
    /// How far the nearest tub or shower is.
    pub tub: Option<NearWater>,
    /// How wet its place is, where that is not plain from the room.
    pub wetness: Option<Wetness>,
    /// How high it is above the floor.
    pub height: Option<Length>,
    /// Whether it serves one appliance in a space set aside for it, not easily moved.
    pub dedicated_space: Option<bool>,
    /// Whether it can be reached quickly.
    pub readily_accessible: Option<bool>,
    /// What is plugged in.
    pub serves: Vec<Equipment>,
    /// Whether the run that feeds it carries the shared neutral of a multiwire set.
    pub on_shared_neutral: bool,
    /// Whether its circuit is one half of a multiwire set, though the run that feeds it may carry this half alone.
    pub half_of_set: bool,
    /// The protective breakers made and listed for its panel. `None` is unknown, an empty list none.
    pub made_for_panel: Option<Vec<ProtectiveBreaker>>,
    /// Whether a dead-front protective device could sit beside the panel.
    pub room_beside_panel: Option<bool>,
    /// Whether another opening lies upstream of it on its circuit, at which a GFCI receptacle could sit.
    pub has_upstream: Option<bool>,
    /// The voltage of its circuit; `None` is taken for 120 V on a circuit of up to 20 A, and for unknown above.
    pub supply: Option<Supply>,
    /// The wiring method of the run that feeds it, where known.
    pub cable: Option<CableKind>,
    /// Where the owner does not need it: its room as it will be without it.
    pub taking_out: Option<TakingOut>,
    /// What its receptacle is built into, where it is built into something.
    pub built_into: Option<BuiltInto>,
    /// Its box and what is in it.
    pub fill: FillContents,
}

names! {
    /// The voltage of a circuit.
    Supply {
        /// 120 V: one hot and the neutral.
        V120 = "120 V",
        /// 240 V, or 120 and 240 V together.
        V240 = "240 V",
    }
}

names! {
    /// What a receptacle is built into.
    BuiltInto {
        /// A luminaire.
        Luminaire = "luminaire",
        /// An appliance.
        Appliance = "appliance",
        /// The assembly of an exhaust fan, where it came from the factory.
        ExhaustFan = "exhaust-fan",
        /// A listed locking support of a ceiling luminaire or a ceiling fan.
        CeilingSupport = "ceiling-support",
    }
}

impl Opening {
    /// Whether its circuit shares a neutral with another, here or nearer to the panel.
    #[must_use]
    pub const fn is_on_multiwire(&self) -> bool {
        self.half_of_set || self.on_shared_neutral
    }

    /// An existing opening with copper conductors of which nothing else is known but the use of its room.
    #[must_use]
    pub fn unexamined(room_use: RoomUse) -> Self {
        Self {
            room_use,
            holds: Holding::Unknown,
            breaker: None,
            gauge: None,
            metal: ConductorMetal::Copper,
            ground: GroundFact::Unknown,
            existing_outlet: true,
            countertop: None,
            sink: None,
            tub: None,
            wetness: None,
            height: None,
            dedicated_space: None,
            readily_accessible: None,
            serves: Vec::new(),
            on_shared_neutral: false,
            half_of_set: false,
            made_for_panel: None,
            room_beside_panel: None,
            has_upstream: None,
            supply: None,
            cable: None,
            taking_out: None,
            built_into: None,
            fill: FillContents { gangs: 1, ..FillContents::default() },
        }
    }

    /// Whether a receptacle is, was or is to be here: an open or unseen box of an existing outlet counts as one.
    #[must_use]
    pub const fn is_receptacle_outlet(&self) -> bool {
        self.holds.is_receptacle() || matches!(self.holds, Holding::Nothing | Holding::Unknown) || !self.existing_outlet
    }

    /// Whether an existing receptacle would be replaced here, so that the permissions for replacements reach it.
    #[must_use]
    pub const fn is_replacement(&self) -> bool {
        self.existing_outlet && self.is_receptacle_outlet()
    }

    /// The voltage of its circuit as far as it can be told.
    #[must_use]
    pub fn supply(&self) -> Option<Supply> {
        let small = self.breaker.is_none_or(|breaker| breaker.get() <= 20);
        self.supply.or(if small { Some(Supply::V120) } else { None })
    }

    /// What is known of its ground once the authority has answered whether a disputed path counts, and who answered.
    ///
    /// A disputed path is old armor or a thin grounding conductor; where the wiring method is not known, an answer does
    /// not reach it.
    #[must_use]
    pub fn ground_under<'a>(&self, code: &'a CodeInForce) -> (GroundFact, Option<&'a str>) {
        let armor = self.cable == Some(CableKind::ArmoredNoStrip);
        if self.ground == GroundFact::None && armor {
            // Where the armor counts, having found no ground means only that nobody has followed it yet.
            let accepted = code.answer(Question::ArmorWithoutStrip).filter(|answer| answer.yes);
            return accepted.map_or((self.ground, None), |answer| (GroundFact::Unknown, Some(&answer.by)));
        }
        if self.ground != GroundFact::Disputed {
            return (self.ground, None);
        }
        let question = match self.cable {
            Some(CableKind::NmReducedGround) => Question::ReducedGround,
            Some(CableKind::ArmoredNoStrip) => Question::ArmorWithoutStrip,
            _ => return (self.ground, None),
        };
        match code.answer(question) {
            Some(answer) if answer.yes => (GroundFact::Connected, Some(&answer.by)),
            Some(answer) => (GroundFact::None, Some(&answer.by)),
            None => (self.ground, None),
        }
    }

    /// Whether what is here can only be a receptacle of a kind other than 15 or 20 A, going by its breaker.
    #[must_use]
    pub fn breaker_is_above(&self, amperes: u32) -> bool {
        self.breaker.is_some_and(|breaker| breaker.get() > amperes)
    }
}
