//! Openings for tests: a plain one to start from, and short ways to ask about it.
#![allow(dead_code)]

use dwelling::{
    CableInBox, CableKind, Cables, Clamps, GroundFact, Holding, NearWater, PathObstacle, ProtectiveBreaker, RoomUse,
};
use electrical::{Amperes, ConductorMetal, Gauge, Length, Volume};
use rulebook::{
    CodeInForce, Duty, Edition, FillContents, FillVerdict, Judgement, Lawful, Marking, Need, Opening, Remedy,
    RemedyVerdict, judge,
};

/// An existing two-slot receptacle in a bedroom, at the end of a 15 A circuit of two-wire cable, in an 18 in³ box.
pub fn bedroom() -> Opening {
    Opening {
        room_use: RoomUse::Bedroom,
        holds: Holding::TwoSlot,
        breaker: Some(Amperes::new(15)),
        gauge: Some(Gauge::AWG_14),
        metal: ConductorMetal::Copper,
        ground: GroundFact::None,
        existing_outlet: true,
        countertop: None,
        sink: None,
        tub: None,
        wetness: None,
        height: None,
        dedicated_space: None,
        readily_accessible: Some(true),
        serves: Vec::new(),
        on_shared_neutral: false,
        half_of_set: false,
        made_for_panel: Some(vec![ProtectiveBreaker::Gfci, ProtectiveBreaker::Dual]),
        room_beside_panel: None,
        has_upstream: Some(true),
        supply: None,
        cable: None,
        taking_out: None,
        built_into: None,
        fill: FillContents {
            volume: Some(Volume::hundredths(1800)),
            cables: two_wire_cables(1),
            clamps: Some(Clamps::Inside),
            support_fittings: 0,
            other_straps: 0,
            gangs: 1,
        },
    }
}

/// The same in another room.
pub fn opening_in(room_use: RoomUse) -> Opening {
    Opening { room_use, ..bedroom() }
}

/// So many 14 AWG two-wire cables without ground, and no others.
pub fn two_wire_cables(count: usize) -> Cables {
    let cable = CableInBox {
        kind: CableKind::NmTwoWire,
        gauge: Some(Gauge::AWG_14),
        metal: ConductorMetal::Copper,
        insulated: 2,
    };
    Cables { known: vec![cable; count], complete: true }
}

/// A path to water of so many feet and inches.
pub fn water(feet: i64, inches: i64, passes: &[PathObstacle]) -> Option<NearWater> {
    Some(NearWater { distance: Length::feet_and_inches(feet, inches), passes: passes.to_vec() })
}

/// What the rulebook says under an edition.
pub fn under(edition: Edition, opening: &Opening) -> Judgement {
    judge(opening, &CodeInForce::published(edition))
}

/// Questions that tests ask of a judgement.
pub trait Ask {
    fn need(&self, duty: Duty) -> Need;
    fn of(&self, remedy: Remedy) -> &RemedyVerdict;
    fn lawful(&self, remedy: Remedy) -> Lawful;
    fn markings(&self, remedy: Remedy) -> Vec<Marking>;
    fn fit(&self, remedy: Remedy) -> FillVerdict;
    fn condition_names(&self, remedy: Remedy, words: &str) -> bool;
    fn use_is_disputed(&self, remedy: Remedy) -> bool;
}

impl Ask for Judgement {
    fn need(&self, duty: Duty) -> Need {
        self.duties.iter().find(|verdict| verdict.duty == duty).expect("every duty is answered").need
    }
    fn of(&self, remedy: Remedy) -> &RemedyVerdict {
        self.remedies.iter().find(|verdict| verdict.remedy == remedy).expect("every remedy is answered")
    }
    fn lawful(&self, remedy: Remedy) -> Lawful {
        self.of(remedy).lawful
    }
    fn markings(&self, remedy: Remedy) -> Vec<Marking> {
        self.of(remedy).markings.clone()
    }
    fn fit(&self, remedy: Remedy) -> FillVerdict {
        self.of(remedy).fit.verdict.clone()
    }
    fn condition_names(&self, remedy: Remedy, words: &str) -> bool {
        self.of(remedy).conditions.iter().any(|condition| condition.text().contains(words))
    }
    fn use_is_disputed(&self, remedy: Remedy) -> bool {
        !self.of(remedy).disputed_use.is_empty()
    }
}

/// Asserts which remedies are lawful and which are not, under every edition given.
pub fn assert_remedies(editions: &[Edition], opening: &Opening, lawful: &[Remedy], unlawful: &[Remedy]) {
    assert!(!editions.is_empty() && (!lawful.is_empty() || !unlawful.is_empty()));
    for edition in editions {
        let judgement = under(*edition, opening);
        for remedy in lawful {
            assert_eq!(
                judgement.lawful(*remedy),
                Lawful::Yes,
                "{edition}, {remedy}: {:?}",
                judgement.of(*remedy).why_not
            );
        }
        for remedy in unlawful {
            assert_eq!(judgement.lawful(*remedy), Lawful::No, "{edition}, {remedy}");
        }
    }
}

/// The editions that are entered in full: of 2026 little could be confirmed.
pub const ENTERED: [Edition; 6] =
    [Edition::Nec2008, Edition::Nec2011, Edition::Nec2014, Edition::Nec2017, Edition::Nec2020, Edition::Nec2023];

/// The editions since 2014 that are entered in full, in which a replaced receptacle has duties without a date.
pub const SINCE_2014: [Edition; 4] = [Edition::Nec2014, Edition::Nec2017, Edition::Nec2020, Edition::Nec2023];
