//! The invented figures that come with the tool.

use crate::cents::Cents;
use crate::charges::Charges;
use crate::figures::Figures;
use crate::material::Material;
use crate::percent::Percent;
use crate::task::Task;

impl Figures {
    /// The invented figures that come with the tool. The prices of things have waste, markup and tax in them, and the minutes
    /// are for any place, so what a plan weighs is what the tables of things and tasks say.
    #[must_use]
    #[allow(clippy::inconsistent_digit_grouping, reason = "the last group is cents")]
    pub fn demo() -> Self {
        Self {
            hour: Cents(95_00),
            helper_hour: Some(Cents(55_00)),
            material: Material::ALL.iter().map(|thing| (*thing, demo_cost(*thing))).collect(),
            packs: DEMO_PACKS.iter().map(|(thing, packs)| (*thing, packs.to_vec())).collect(),
            minutes: Task::ALL.iter().map(|task| (*task, demo_minutes(*task))).collect(),
            for_two: Vec::new(),
            conditions: Vec::new(),
            charges: Charges {
                trip: Cents(45_00),
                hours_a_day: 7,
                permit: Cents(120_00),
                contingency: Percent::whole(5),
                minimum: Cents(250_00),
                round_to: Cents(10_00),
                ..Charges::default()
            },
        }
    }
}

/// Invented demo packs.
const DEMO_PACKS: &[(Material, &[u32])] = &[
    (Material::TwoSlot, &[1, 10]),
    (Material::ThreeSlot, &[1, 10]),
    (Material::Gfci, &[1, 3]),
    (Material::Plate, &[1, 10]),
    (Material::Label, &[25]),
    (Material::GroundWire14, &[25, 50, 100, 500]),
    (Material::GroundWire12, &[25, 50, 100, 500]),
    (Material::GroundWire10, &[25, 50, 100, 500]),
    (Material::Cable14, &[25, 50, 100, 250]),
    (Material::Cable12, &[25, 50, 100, 250]),
    (Material::Cable10, &[25, 50, 100]),
    (Material::RacewayFoot, &[5, 10]),
];

/// Invented demo figure for what a thing costs.
#[allow(clippy::inconsistent_digit_grouping, reason = "the last group is cents")]
const fn demo_cost(thing: Material) -> Cents {
    Cents(match thing {
        Material::TwoSlot => 3_40,
        Material::ThreeSlot => 2_80,
        Material::ThreeSlotOutdoors => 21_00,
        Material::Gfci => 24_00,
        Material::GfciOutdoors => 43_00,
        Material::Afci => 42_00,
        Material::Dual => 49_00,
        Material::DeadFrontGfci => 26_00,
        Material::DeadFrontDual => 58_00,
        Material::PanelSideBox => 14_00,
        Material::Plate => 1_10,
        Material::Label => 30,
        Material::OldWorkBox => 4_20,
        Material::SurfaceExtension => 18_50,
        Material::WideOldWorkBox => 7_80,
        Material::BreakerGfci => 58_00,
        Material::BreakerAfci => 52_00,
        Material::BreakerDual => 66_00,
        Material::BreakerGfciTwoPole => 118_00,
        Material::BreakerAfciTwoPole => 124_00,
        Material::BreakerDualTwoPole => 149_00,
        Material::GroundWire14 => 22,
        Material::GroundWire12 => 33,
        Material::GroundWire10 => 52,
        Material::Cable14 => 62,
        Material::Cable12 => 88,
        Material::Cable10 => 1_45,
        Material::GroundFittings => 1_90,
        Material::AluminiumSplice => 4_60,
        Material::BlankCover => 1_90,
        Material::Patch => 6_00,
        Material::BranchBox => 3_60,
        Material::RacewayFoot => 1_45,
        Material::RacewayEnds => 12_00,
        Material::BreakerStandard => 11_00,
        Material::BreakerStandardTwoPole => 22_00,
        Material::Fuse => 9_00,
        Material::NeutralFittings => 1_20,
    })
}

/// Invented demo figure for how long a task takes.
const fn demo_minutes(task: Task) -> u32 {
    match task {
        Task::FitDevice => 20,
        Task::SortLoadSide => 12,
        Task::LabelAndTest => 5,
        Task::RestoreGround => 15,
        Task::TracePoorGround => 50,
        Task::RemoveFalseGround => 10,
        Task::CorrectPolarity => 8,
        Task::PartGround => 6,
        Task::ReplaceBox => 45,
        Task::ExtendBox => 40,
        Task::ReplaceBoxWide => 70,
        Task::ConnectGround => 8,
        Task::ChangeBreaker => 18,
        Task::FitPanelSideDevice => 55,
        Task::FishSetup => 35,
        Task::FishFoot => 2,
        Task::PatchOpening => 40,
        Task::TakeOut => 15,
        Task::SpliceAluminium => 6,
        Task::EndConductor => 6,
        Task::JoinBranch => 6,
        Task::DrillPlate => 6,
        Task::FishBay => 10,
        Task::PastInsulation => 15,
        Task::PastFireBlock => 30,
        Task::ThroughFloor => 35,
        Task::ThroughStud => 10,
        Task::ThroughWall => 12,
        Task::AtticFoot => 1,
        Task::CrawlFoot => 2,
        Task::BasementFoot => 1,
        Task::SetUpRaceway => 20,
        Task::RacewayFoot => 3,
        Task::PatchWithCare => 25,
        Task::FindOpenNeutral => 75,
        Task::MendNeutral => 20,
        Task::ClearLiveMetal => 60,
        Task::ChangeFuse => 8,
        Task::TakeOutNeutralFuse => 25,
    }
}
