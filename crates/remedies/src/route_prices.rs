//! What a route costs: a stated one by its length, a built one by the work along it.

use dwelling::{Route, RouteKind};
use electrical::Length;
use estimate::{Material, Price, PriceBook, Task};
use routes::{RouteEdge, Work};

/// What a foot of the conductor or cable of a grade is.
const fn by_the_foot(kind: RouteKind, grade: usize) -> Material {
    match (kind, grade) {
        (RouteKind::Egc, 0) => Material::GroundWire14,
        (RouteKind::Egc, 1) => Material::GroundWire12,
        (RouteKind::Egc, _) => Material::GroundWire10,
        (RouteKind::NewCable, 0) => Material::Cable14,
        (RouteKind::NewCable, 1) => Material::Cable12,
        (RouteKind::NewCable, _) => Material::Cable10,
    }
}

/// What a route of the survey costs at a grade.
#[must_use]
pub fn price_as_stated(book: &PriceBook, route: &Route, grade: usize) -> Price {
    let feet = route.length.started_feet();
    let fished =
        book.minutes(Task::FishSetup) + book.minutes(Task::FishFoot) * u32::try_from(feet).unwrap_or(u32::MAX / 64);
    let minutes = route.minutes.unwrap_or(fished) + book.minutes(Task::PatchOpening) * route.openings;
    let patches = (Material::Patch, i64::from(route.openings));
    book.price(&[(by_the_foot(route.kind, grade), feet), (Material::GroundFittings, 2), patches], minutes)
}

/// What a way along these edges costs at a grade.
///
/// A cable is in one piece: no branch is joined where it comes out of a wall.
#[must_use]
pub fn price_as_built(book: &PriceBook, edges: &[&RouteEdge], kind: RouteKind, grade: usize) -> Price {
    let length: Length = edges.iter().fold(Length::ZERO, |sum, edge| sum + edge.length);
    let openings: u32 = edges.iter().map(|edge| edge.openings).sum();
    let mut material = vec![(by_the_foot(kind, grade), length.started_feet()), (Material::Patch, i64::from(openings))];
    let mut minutes = book.minutes(Task::PatchOpening).saturating_mul(openings);
    let work = edges.iter().flat_map(|edge| &edge.work);
    for (work, times) in work.filter(|(work, _)| kind == RouteKind::Egc || *work != Work::JoinBranch) {
        minutes = minutes.saturating_add(book.minutes(task_of(*work)).saturating_mul(*times));
        material.extend(material_of(*work).map(|thing| (thing, i64::from(*times))));
    }
    book.price(&material, minutes)
}

const fn task_of(work: Work) -> Task {
    match work {
        Work::EndConductor => Task::EndConductor,
        Work::JoinBranch => Task::JoinBranch,
        Work::DrillPlate => Task::DrillPlate,
        Work::FishBay => Task::FishBay,
        Work::PastInsulation => Task::PastInsulation,
        Work::PastFireBlock => Task::PastFireBlock,
        Work::ThroughFloor => Task::ThroughFloor,
        Work::ThroughStud => Task::ThroughStud,
        Work::ThroughWall => Task::ThroughWall,
        Work::AtticFoot => Task::AtticFoot,
        Work::CrawlFoot => Task::CrawlFoot,
        Work::BasementFoot => Task::BasementFoot,
        Work::SetUpRaceway => Task::SetUpRaceway,
        Work::RacewayFoot => Task::RacewayFoot,
        Work::PatchWithCare => Task::PatchWithCare,
    }
}

const fn material_of(work: Work) -> Option<Material> {
    match work {
        Work::EndConductor => Some(Material::GroundFittings),
        Work::JoinBranch => Some(Material::BranchBox),
        Work::SetUpRaceway => Some(Material::RacewayEnds),
        Work::RacewayFoot => Some(Material::RacewayFoot),
        _ => None,
    }
}
