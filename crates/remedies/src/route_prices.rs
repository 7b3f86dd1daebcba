//! What a route takes: a stated one by its length, a built one by the work along it.

use crate::room_in_box::GRADES;
use dwelling::{Dwelling, Route, RouteKind};
use electrical::Length;
use estimate::{Line, Material, Price, PriceBook, Task, WorkCondition};
use routes::{EdgeKind, Layer, RouteEdge, Work};

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

/// What is bought and worked for a route of the survey at a grade. Where it is worked is not recorded: all is plain.
#[must_use]
pub fn lines_as_stated(route: &Route, grade: usize) -> Vec<Line> {
    let feet = feet(route.length);
    let mut lines = vec![Line::Thing(by_the_foot(route.kind, grade), feet), Line::Thing(Material::GroundFittings, 2)];
    match route.minutes {
        Some(minutes) => lines.push(Line::AsStated(minutes)),
        None => lines.extend([Line::once(Task::FishSetup), Line::Work(Task::FishFoot, feet, None)]),
    }
    add_patches(&mut lines, route.openings);
    lines
}

/// What is bought and worked for a way along these edges at a grade.
///
/// A cable is in one piece: no branch is joined where it comes out of a wall.
#[must_use]
pub fn lines_as_built(dwelling: &Dwelling, edges: &[&RouteEdge], kind: RouteKind, grade: usize) -> Vec<Line> {
    let length: Length = edges.iter().fold(Length::ZERO, |sum, edge| sum + edge.length);
    let mut lines = vec![Line::Thing(by_the_foot(kind, grade), feet(length))];
    for edge in edges {
        let in_walls = edge.walls.and_then(|room| dwelling.room(room).walls).and_then(WorkCondition::of_walls);
        let in_space = space_of(edge);
        for (work, times) in edge.work.iter().filter(|(work, _)| kind == RouteKind::Egc || *work != Work::JoinBranch) {
            let task = task_of(*work);
            let condition = match task {
                task if task.is_in_a_wall() => in_walls,
                task if task.is_in_a_space() => in_space,
                _ => None,
            };
            lines.extend(material_of(*work).map(|thing| Line::Thing(thing, *times)));
            lines.push(Line::Work(task, *times, condition));
        }
    }
    add_patches(&mut lines, edges.iter().map(|edge| edge.openings).sum());
    lines
}

/// By grade: what these lines of a way cost, the first of which is its conductor.
#[must_use]
pub fn prices_by_grade(book: &PriceBook, kind: RouteKind, mut lines: Vec<Line>) -> Vec<Price> {
    let by_grade = (0..GRADES.len()).map(|grade| {
        if let Some(Line::Thing(thing, _)) = lines.first_mut() {
            *thing = by_the_foot(kind, grade);
        }
        book.price(&lines)
    });
    by_grade.collect()
}

fn feet(length: Length) -> u32 {
    u32::try_from(length.started_feet()).unwrap_or(0)
}

fn add_patches(lines: &mut Vec<Line>, openings: u32) {
    if openings > 0 {
        lines.extend([Line::Thing(Material::Patch, openings), Line::Work(Task::PatchOpening, openings, None)]);
    }
}

/// The space into which a drop leads: a riser leads into two, and is reckoned plain.
fn space_of(edge: &RouteEdge) -> Option<WorkCondition> {
    let layer = edge.line.last().map(|corner| corner.layer);
    match (edge.kind, layer) {
        (EdgeKind::ToAttic, _) => Some(WorkCondition::Attic),
        (EdgeKind::ToBelow, Some(Layer::CrawlSpace)) => Some(WorkCondition::CrawlSpace),
        _ => None,
    }
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
