//! The work order held against the plan: every box once, with what is done there.

use crate::planned_job::{EXAMPLES, with_example, with_survey};
use papers::{Block, Job, Paper, work_order};
use remedies::OpeningAnswer;

/// A piece of work: the box or way, what is done, and what stands below by its word.
type Task = (String, String, Vec<(String, String)>);

/// The pieces of work of a paper.
fn tasks(paper: &Paper) -> Vec<Task> {
    fn add(blocks: &[Block], found: &mut Vec<Task>) {
        for block in blocks {
            match block {
                Block::Together(blocks) => add(blocks, found),
                Block::Task(at, what) => found.push((at.clone(), what.clone(), Vec::new())),
                Block::Items(items) => {
                    if let Some((_, _, under)) = found.last_mut().filter(|(_, _, under)| under.is_empty()) {
                        under.extend(items.iter().map(|(label, text)| (label.clone(), text.words())));
                    }
                }
                _ => {}
            }
        }
    }
    let mut found = Vec::new();
    add(&paper.blocks, &mut found);
    found
}

/// What stands behind a word of a piece of work.
fn said<'a>(task: &'a Task, label: &str) -> Option<&'a str> {
    task.2.iter().find(|(known, _)| known == label).map(|(_, words)| words.as_str())
}

fn of_box(job: &Job, id: &str) -> Task {
    tasks(&work_order(job)).into_iter().find(|(at, _, _)| at == id).unwrap()
}

#[test]
fn every_box_with_work_is_ordered_once_with_its_markings() {
    for name in EXAMPLES {
        with_example(name, |job| {
            let tasks = tasks(&work_order(job));
            for opening in &job.plan.openings {
                let here: Vec<_> = tasks.iter().filter(|(at, _, _)| *at == opening.box_id).collect();
                let any_work = opening.price.total_cents > 0 || !opening.routes_joined.is_empty();
                assert!(here.len() <= 1 && (!any_work || here.len() == 1), "{name}: {}", opening.box_id);
                for task in here {
                    let marked = said(task, "Mark").unwrap_or_default();
                    let words: Vec<&str> = marked.split(['“', '”']).skip(1).step_by(2).collect();
                    let words: Vec<&str> = words.into_iter().filter(|words| *words != "Labels").collect();
                    assert_eq!(words, opening.markings, "{name}: {}", opening.box_id);
                }
            }
            for route in &job.plan.routes {
                assert_eq!(tasks.iter().filter(|(at, _, _)| *at == route.id).count(), 1, "{name}: {}", route.id);
            }
        });
    }
}

#[test]
fn boxes_come_in_the_order_of_the_rooms() {
    with_example("bungalow", |job| {
        let ordered: Vec<String> = tasks(&work_order(job)).into_iter().map(|(at, _, _)| at).collect();
        let planned = job.plan.openings.iter().map(|opening| &opening.box_id);
        let planned: Vec<&String> = planned.filter(|id| ordered.contains(id)).collect();
        let boxes: Vec<&String> = ordered.iter().filter(|id| planned.contains(id)).collect();
        assert_eq!(boxes, planned);
    });
}

/// By hand: two runs of 12 AWG with two wires each, 4 × 2.25; the device 2 × 2.25; the clamps 2.25: 15.75 in³.
#[test]
fn a_protective_receptacle_is_connected_by_line_and_load() {
    with_example("bungalow", |job| {
        let laundry = of_box(job, "LA-1");
        assert_eq!(said(&laundry, "Take out"), Some("the three-slot receptacle"));
        assert_eq!(said(&laundry, "Line"), Some("LINE terminals: the home run from the panel"));
        assert!(said(&laundry, "Load").unwrap().starts_with("LOAD terminals: hot and neutral of the run to LA-2"));
        assert!(said(&laundry, "Box").unwrap().contains("counted afterwards: 15.75 in³ of 20 in³"));
        let yard = of_box(job, "Y-1");
        assert_eq!(said(&yard, "Load"), Some("LOAD terminals: nothing; leave their tape on"));
        assert!(said(&yard, "Put in").unwrap().contains("weather-resistant"));
    });
}

#[test]
fn dangers_stand_before_the_work_that_removes_them() {
    with_example("bungalow", |job| {
        let task = of_box(job, "L-3");
        let place = |label: &str| task.2.iter().position(|(known, _)| known == label).unwrap();
        assert!(place("Danger") < place("First") && place("First") < place("Mark"));
        assert_eq!(said(&task, "First"), Some("Take out the false ground."));
    });
}

#[test]
fn cautions_are_those_of_the_dwelling() {
    let words = |name: &str| {
        let mut words = String::new();
        with_example(name, |job| words = work_order(job).words());
        words
    };
    let (bungalow, old) = (words("bungalow"), words("knob-and-tube"));
    assert!(bungalow.contains("from before 1978") && bungalow.contains("asbestos"));
    assert!(!bungalow.contains("Knob-and-tube wiring"));
    assert!(old.contains("Knob-and-tube wiring") && old.contains("Do not disturb the conductors in this box"));
    for paper in [bungalow, old] {
        assert!(paper.contains("Prove the tester again on the same live source"));
    }
}

#[test]
fn what_is_not_settled_stands_at_the_head() {
    with_example("flat", |job| {
        let words = work_order(job).words();
        let at = |part: &str| words.find(part).unwrap();
        assert!(!job.plan.in_the_way.is_empty());
        // What is asked of several boxes is asked once, for all of them.
        for line in &job.plan.in_the_way {
            let (of, what) = line.split_once(": ").unwrap();
            let told = words.lines().find(|told| told.ends_with(&format!("{what}."))).unwrap();
            assert!(told.split([',', ':']).any(|name| name.trim() == of), "{line}: {told}");
            assert!(at(told) < at("Power off, and prove dead"), "{line}");
        }
    });
}

#[test]
fn both_circuits_of_a_multiwire_set_are_switched_off_together() {
    with_example("bungalow", |job| {
        let words = work_order(job).words();
        assert!(words.contains("1 + 2 2 breakers of 20 A, panel main – both at once: they share a neutral"));
    });
}

#[test]
fn a_poor_ground_is_traced_and_a_loose_one_is_connected() {
    with_example("flat", |job| {
        assert!(
            said(&of_box(job, "B-1"), "Ground")
                .unwrap()
                .starts_with("bring the grounding conductor that is in the box")
        );
    });
    let survey = "format = 1\n[job]\nname = \"poor\"\nedition = 2020\n[[panel]]\nid = \"p\"\n[[circuit]]\nid = \"1\"\n\
                  panel = \"p\"\nbreaker = \"15 A\"\ncable = \"nm-with-ground\"\ngauge = 14\n[[room]]\nid = \"r\"\n\
                  use = \"bedroom\"\n[[box]]\nid = \"B\"\nroom = \"r\"\ncircuit = \"1\"\nfed_by = \"panel\"\n\
                  holds = \"three-slot\"\nfound = { hn = 120, hg = 119, ng = 0.5, ground_ohms = 3, ground = \"connected\" }\n";
    with_survey(survey, |job| {
        assert!(said(&of_box(job, "B"), "Ground").unwrap().contains("find the joint along its way that is bad"));
    });
}

/// The drawings of a work order: the title of each, and what it says to those who hear it read.
fn drawings(paper: &Paper) -> Vec<(String, String)> {
    let of = |block: &Block| match block {
        Block::Drawings(drawings) => drawings.clone(),
        _ => Vec::new(),
    };
    let title = |svg: &str| {
        let title = svg.split_once("<title id=\"title\">").and_then(|(_, rest)| rest.split_once("</title>"));
        title.map_or(String::new(), |(title, _)| title.to_owned())
    };
    let wirings = paper.blocks.iter().flat_map(of).filter(|drawing| drawing.says.starts_with("Wiring drawing"));
    wirings.map(|drawing| (title(&drawing.svg), drawing.says)).collect()
}

/// By hand, from the plan of the bungalow: new grounds land at K-2, L-4, B2-3 and LA-1, a jumper comes out at L-3, hot and
/// neutral are put right at B1-3, and Y-1 gets a GFCI.
#[test]
fn boxes_whose_wiring_matters_name_their_drawing() {
    with_example("bungalow", |job| {
        let paper = work_order(job);
        let drawn = drawings(&paper);
        let titles: Vec<&str> = drawn.iter().map(|(title, _)| title.as_str()).collect();
        assert_eq!(titles, ["A: K-2", "B: L-3", "C: L-4", "D: B1-3", "E: B2-3", "F: LA-1", "G: Y-1"]);
        assert!(drawn[1].1.contains("take out the jumper"), "{}", drawn[1].1);
        assert!(drawn[5].1.contains("hot, load: join"), "{}", drawn[5].1);
        for task in tasks(&paper) {
            let here = titles.iter().find(|title| title.split_once(": ").is_some_and(|(_, ids)| ids == task.0));
            let told =
                said(&task, "Drawing").map(|words| words.split(' ').nth(3).unwrap().trim_matches(',').to_owned());
            assert_eq!(told.as_deref(), here.and_then(|title| title.split(':').next()), "{}", task.0);
        }
    });
}

/// Two boxes of one making at the ends of two circuits: one drawing, in which neither is named but in its title.
#[test]
fn boxes_that_are_wired_alike_share_a_drawing() {
    let rows: String = (1..=2)
        .map(|number| {
            format!(
                "[[circuit]]\nid = \"{number}\"\npanel = \"main\"\nbreaker = \"15 A\"\ncable = \"nm-two-wire\"\ngauge = 14\n\
                 [[box]]\nid = \"A-{number}\"\nroom = \"bed\"\ncircuit = \"{number}\"\nfed_by = \"panel\"\nholds = \"three-slot\"\n\
                 body = {{ metal = false, volume = \"20 in3\", clamps = \"none\" }}\nfound = {{ hn = 120, ground = \"none seen\" }}\n"
            )
        })
        .collect();
    let survey = format!(
        "format = 1\n[job]\nname = \"x\"\nbuilt = 1956\nuse = \"one-family\"\nedition = 2020\n[[panel]]\nid = \"main\"\n\
         made_for_it = []\nground_bar = true\nroom_beside = false\n[[room]]\nid = \"bed\"\nuse = \"bedroom\"\n{rows}"
    );
    with_survey(&survey, |job| {
        let drawn = drawings(&work_order(job));
        assert_eq!(drawn.len(), 1, "{drawn:?}");
        assert_eq!(drawn[0].0, "A: A-1, A-2");
        assert!(drawn[0].1.contains("from the panel side"), "{}", drawn[0].1);
    });
}

/// By hand, from the plan of the bungalow: K-2 gets a ground, the other three boxes of the kitchen do not; every box with
/// equipment that must be grounded gets its ground.
#[test]
fn cautions_for_want_of_a_ground_are_not_given_where_one_is_brought() {
    with_example("bungalow", |job| {
        let words = work_order(job).words();
        assert!(words.contains("K-1, K-3, K-4: As long as there is no ground here"), "{words}");
        for caution in
            ["experts differ on whether equipment that must be grounded", "a surge protector diverts to the ground"]
        {
            let of = |opening: &&OpeningAnswer| opening.cautions.iter().any(|told| told.starts_with(caution));
            let mut warned = job.plan.openings.iter().filter(of).peekable();
            assert!(warned.peek().is_some() && warned.all(|opening| opening.grounded), "{caution}");
            assert!(!words.to_lowercase().contains(caution), "{caution}");
        }
    });
}

/// By hand: the knob-and-tube house has a panel of fuses, K-1 feeds K-2 and C-1, BA-1 goes on to BA-2 and U-1, and P-3 is
/// reached by armored cable.
#[test]
fn a_panel_of_fuses_several_runs_and_metal_around_wires_are_called_what_they_are() {
    with_example("knob-and-tube", |job| {
        let words = work_order(job).words();
        for said in [
            "Line terminals to the hot from the fuse and to the neutral bar",
            "A GFCI/AFCI device beside the panel, in a box of its own, without slots",
            "Protected by GFCI/AFCI device beside panel fuses",
            "hot and neutral of the runs to K-2 and C-1, and nothing else",
            "the runs to BA-2 and U-1 are joined to it by pigtails",
            "old-work box, of metal, its connector outside: metal around the wires ends in it (314.3)",
        ] {
            assert!(words.contains(said), "{said}\n{words}");
        }
        assert!(!words.contains("breaker's hot") && !words.contains("this small box"), "{words}");
        assert_eq!(words.matches("of metal, its connector outside").count(), 1);
    });
}
