//! The tables of a price book: every key with what it says and an example, for things and tasks the demo figure.

use crate::shape::{FieldKind, Shape, field, name_list};
use estimate::Task;

/// The longest task, in minutes. One that takes longer is a slip of the pen. Common practice, no source.
const LONGEST: i64 = 10_000;
/// The most pieces or feet in one pack. Common practice, no source.
const LARGEST_PACK: i64 = 1_000;
/// Percents beyond these are slips of the pen. Common practice, no source.
const MOST_MARKUP: i64 = 300;
const MOST_TAX: i64 = 50;
const MOST_WASTE: i64 = 100;

pub(crate) static SHAPE: Shape = Shape {
    title: "the file",
    name: "prices",
    meaning: "What a contractor pays and charges.",
    fields: &[
        field!(own "format", FieldKind::Format, "the number of this format", "1"),
        field!(must "hour", FieldKind::Money, "an hour of an electrician's work", "95.00"),
        field!(may "helper-hour", FieldKind::Money, "an hour of a helper's work, where a task takes two", "55.00"),
        field!(may "material", FieldKind::Table(&MATERIAL), "what things cost", "{ gfci = 24.00 }"),
        field!(may "packs", FieldKind::Table(&PACKS), "in what packs things are sold", "{ plate = [1, 10] }"),
        field!(may "minutes", FieldKind::Table(&MINUTES), "how long work takes", "{ fit-device = 20 }"),
        field!(may "crew", FieldKind::Table(&CREW), "who works, and how long a day", "{ hours-a-day = 7 }"),
        field!(may "conditions", FieldKind::Table(&CONDITIONS), "what the place makes of the plain time", "{ plaster = 125 }"),
        field!(may "charges", FieldKind::Table(&CHARGES), "what is charged besides", "{ markup-percent = 15 }"),
    ],
};

name_list!(TASKS, Task, "tasks");

pub(super) static MATERIAL: Shape = Shape {
    title: "[material]",
    name: "material",
    meaning: "What things cost, by the piece or by the foot; what is left out costs what the demo book says, but the breakers, fuse and fittings at the end, which then have no price.",
    fields: &[
        field!(may "two-slot", FieldKind::Money, "two-slot receptacle", "3.40"),
        field!(may "three-slot", FieldKind::Money, "tamper-resistant three-slot receptacle", "2.80"),
        field!(may "three-slot-outdoors", FieldKind::Money, "tamper- and weather-resistant three-slot receptacle with its in-use cover", "21.00"),
        field!(may "gfci", FieldKind::Money, "tamper-resistant GFCI receptacle", "24.00"),
        field!(may "gfci-outdoors", FieldKind::Money, "tamper- and weather-resistant GFCI receptacle with its in-use cover", "43.00"),
        field!(may "afci", FieldKind::Money, "tamper-resistant AFCI receptacle", "42.00"),
        field!(may "dual", FieldKind::Money, "tamper-resistant GFCI/AFCI receptacle", "49.00"),
        field!(may "dead-front-gfci", FieldKind::Money, "GFCI device without slots", "26.00"),
        field!(may "dead-front-dual", FieldKind::Money, "GFCI/AFCI device without slots", "58.00"),
        field!(may "panel-side-box", FieldKind::Money, "box and fittings for a device beside the panel", "14.00"),
        field!(may "plate", FieldKind::Money, "nonmetallic cover plate", "1.10"),
        field!(may "label", FieldKind::Money, "label with the words the code asks for", "0.30"),
        field!(may "old-work-box", FieldKind::Money, "single-gang old-work box marked 20 cubic inches", "4.20"),
        field!(may "surface-extension", FieldKind::Money, "single-gang surface extension box marked 12 cubic inches", "18.50"),
        field!(may "wide-old-work-box", FieldKind::Money, "two-gang old-work box marked 34 cubic inches, with a cover for one device", "7.80"),
        field!(may "breaker-gfci", FieldKind::Money, "single-pole GFCI breaker", "58.00"),
        field!(may "breaker-afci", FieldKind::Money, "single-pole AFCI breaker", "52.00"),
        field!(may "breaker-dual", FieldKind::Money, "single-pole GFCI/AFCI (dual-function) breaker", "66.00"),
        field!(may "breaker-gfci-2p", FieldKind::Money, "two-pole GFCI breaker", "118.00"),
        field!(may "breaker-afci-2p", FieldKind::Money, "two-pole AFCI breaker", "124.00"),
        field!(may "breaker-dual-2p", FieldKind::Money, "two-pole GFCI/AFCI (dual-function) breaker", "149.00"),
        field!(may "ground-wire-14-ft", FieldKind::Money, "a foot of 14 AWG green conductor", "0.22"),
        field!(may "ground-wire-12-ft", FieldKind::Money, "a foot of 12 AWG green conductor", "0.33"),
        field!(may "ground-wire-10-ft", FieldKind::Money, "a foot of 10 AWG green conductor", "0.52"),
        field!(may "cable-14-ft", FieldKind::Money, "a foot of 14 AWG two-wire cable with ground", "0.62"),
        field!(may "cable-12-ft", FieldKind::Money, "a foot of 12 AWG two-wire cable with ground", "0.88"),
        field!(may "cable-10-ft", FieldKind::Money, "a foot of 10 AWG two-wire cable with ground", "1.45"),
        field!(may "ground-fittings", FieldKind::Money, "ground screw, pigtail and connectors for one end of a conductor", "1.90"),
        field!(may "aluminium-splice", FieldKind::Money, "listed copper-to-aluminium splice for one conductor", "4.60"),
        field!(may "blank-cover", FieldKind::Money, "nonmetallic blank cover, with connectors for the splices behind it", "1.90"),
        field!(may "patch", FieldKind::Money, "patching material for one opening in a finished surface", "6.00"),
        field!(may "branch-box", FieldKind::Money, "accessible box with its cover and a connector, in which a branch is joined", "3.60"),
        field!(may "raceway-ft", FieldKind::Money, "a foot of surface raceway", "1.45"),
        field!(may "raceway-ends", FieldKind::Money, "the two end boxes and fittings of a run of surface raceway", "12.00"),
        field!(may "breaker-standard", FieldKind::Money, "single-pole breaker, of the rating that the conductors bear", "11.00"),
        field!(may "breaker-standard-2p", FieldKind::Money, "two-pole breaker, of the rating that the conductors bear", "22.00"),
        field!(may "fuse", FieldKind::Money, "fuse of the rating that the conductors bear, with an adapter that takes no larger one", "9.00"),
        field!(may "neutral-fittings", FieldKind::Money, "connector and pigtail for one joint of a neutral", "1.20"),
    ],
};

pub(super) static MINUTES: Shape = Shape {
    title: "[minutes]",
    name: "minutes",
    meaning: "How long work takes, in minutes; what is left out takes what the demo book says, but the five tasks at the end, which then have no price.",
    fields: &[
        field!(may "fit-device", FieldKind::Count(0, LONGEST), "take out a device and fit another in the same box", "20"),
        field!(may "sort-load-side", FieldKind::Count(0, LONGEST), "join the load side of a protective device to what is fed from it, having found which pair that is", "12"),
        field!(may "label-and-test", FieldKind::Count(0, LONGEST), "put a label on a plate and check the reading", "5"),
        field!(may "restore-ground", FieldKind::Count(0, LONGEST), "restore a grounding conductor that is in the box but loose or not connected", "15"),
        field!(may "trace-poor-ground", FieldKind::Count(0, LONGEST), "find and mend the bad joint of a poor ground", "50"),
        field!(may "remove-false-ground", FieldKind::Count(0, LONGEST), "take out a jumper or a false ground", "10"),
        field!(may "correct-polarity", FieldKind::Count(0, LONGEST), "put the conductors of a reversed receptacle right", "8"),
        field!(may "part-ground", FieldKind::Count(0, LONGEST), "part a grounding conductor that joins openings without a ground", "6"),
        field!(may "replace-box", FieldKind::Count(0, LONGEST), "cut out a box and fit a larger old-work box", "45"),
        field!(may "extend-box", FieldKind::Count(0, LONGEST), "fit a surface extension box onto a box", "40"),
        field!(may "replace-box-wide", FieldKind::Count(0, LONGEST), "cut out a box and fit a two-gang old-work box", "70"),
        field!(may "connect-ground", FieldKind::Count(0, LONGEST), "connect a device that stays to a ground that has come into its box", "8"),
        field!(may "change-breaker", FieldKind::Count(0, LONGEST), "change a breaker", "18"),
        field!(may "fit-panel-side-device", FieldKind::Count(0, LONGEST), "fit a box and a device without slots beside the panel", "55"),
        field!(may "fish-setup", FieldKind::Count(0, LONGEST), "set up for one fished conductor and end it at both ends", "35"),
        field!(may "fish-foot", FieldKind::Count(0, LONGEST), "fish one foot of conductor or cable", "2"),
        field!(may "patch-opening", FieldKind::Count(0, LONGEST), "patch one opening in a finished surface", "40"),
        field!(may "take-out", FieldKind::Count(0, LONGEST), "take out a receptacle, splice its conductors and close the box with a blank cover", "15"),
        field!(may "splice-aluminium", FieldKind::Count(0, LONGEST), "make one copper-to-aluminium splice", "6"),
        field!(may "end-conductor", FieldKind::Count(0, LONGEST), "end a conductor at a box, a panel or a source", "6"),
        field!(may "join-branch", FieldKind::Count(0, LONGEST), "join a branch in an accessible box where it leaves an attic, a crawl space or a basement", "6"),
        field!(may "drill-plate", FieldKind::Count(0, LONGEST), "drill one plate from an attic, a crawl space or a basement", "6"),
        field!(may "fish-bay", FieldKind::Count(0, LONGEST), "fish one bay of a wall", "10"),
        field!(may "past-insulation", FieldKind::Count(0, LONGEST), "get through one bay that is full of insulation", "15"),
        field!(may "past-fire-block", FieldKind::Count(0, LONGEST), "get past one fire block in a wall", "30"),
        field!(may "through-floor", FieldKind::Count(0, LONGEST), "get through the floor between two storeys inside a wall", "35"),
        field!(may "through-stud", FieldKind::Count(0, LONGEST), "get through one stud inside a wall", "10"),
        field!(may "through-wall", FieldKind::Count(0, LONGEST), "go through a wall into the back of the box on its other side", "12"),
        field!(may "attic-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable in an attic", "1"),
        field!(may "crawl-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable in a crawl space", "2"),
        field!(may "basement-foot", FieldKind::Count(0, LONGEST), "run one foot of conductor or cable under the open ceiling of a basement", "1"),
        field!(may "set-up-raceway", FieldKind::Count(0, LONGEST), "set up one run of surface raceway with its end boxes", "20"),
        field!(may "raceway-foot", FieldKind::Count(0, LONGEST), "fasten one foot of surface raceway", "3"),
        field!(may "patch-with-care", FieldKind::Count(0, LONGEST), "patch plaster, tile or panelling rather than board, on top of patching one opening", "25"),
        field!(may "find-open-neutral", FieldKind::Count(0, LONGEST), "find where the neutral of one circuit is interrupted", "75"),
        field!(may "mend-neutral", FieldKind::Count(0, LONGEST), "make the joints of the neutral in one box anew", "20"),
        field!(may "clear-live-metal", FieldKind::Count(0, LONGEST), "find why metal at one place is live, and part it from what makes it so", "60"),
        field!(may "change-fuse", FieldKind::Count(0, LONGEST), "change a fuse, and fit the adapter that takes no larger one", "8"),
        field!(may "take-out-neutral-fuse", FieldKind::Count(0, LONGEST), "take a fuse out of a neutral and join the neutral through", "25"),
    ],
};

pub(super) static PACKS: Shape = Shape {
    title: "[packs]",
    name: "packs",
    meaning: "In what packs things are sold: pieces or feet in one. What is left out is sold by the piece or the foot. Packs say what is bought, and change no price.",
    fields: &[
        field!(may "two-slot", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-slot receptacle", "[1, 10]"),
        field!(may "three-slot", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper-resistant three-slot receptacle", "[1, 10]"),
        field!(may "three-slot-outdoors", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper- and weather-resistant three-slot receptacle with its in-use cover", "[1, 10]"),
        field!(may "gfci", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper-resistant GFCI receptacle", "[1, 10]"),
        field!(may "gfci-outdoors", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper- and weather-resistant GFCI receptacle with its in-use cover", "[1, 10]"),
        field!(may "afci", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper-resistant AFCI receptacle", "[1, 10]"),
        field!(may "dual", FieldKind::Counts(1, LARGEST_PACK), "packs of: tamper-resistant GFCI/AFCI receptacle", "[1, 10]"),
        field!(may "dead-front-gfci", FieldKind::Counts(1, LARGEST_PACK), "packs of: GFCI device without slots", "[1, 10]"),
        field!(may "dead-front-dual", FieldKind::Counts(1, LARGEST_PACK), "packs of: GFCI/AFCI device without slots", "[1, 10]"),
        field!(may "panel-side-box", FieldKind::Counts(1, LARGEST_PACK), "packs of: box and fittings for a device beside the panel", "[1, 10]"),
        field!(may "plate", FieldKind::Counts(1, LARGEST_PACK), "packs of: nonmetallic cover plate", "[1, 10]"),
        field!(may "label", FieldKind::Counts(1, LARGEST_PACK), "packs of: label with the words the code asks for", "[1, 10]"),
        field!(may "old-work-box", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-gang old-work box marked 20 cubic inches", "[1, 10]"),
        field!(may "surface-extension", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-gang surface extension box marked 12 cubic inches", "[1, 10]"),
        field!(may "wide-old-work-box", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-gang old-work box marked 34 cubic inches, with a cover for one device", "[1, 10]"),
        field!(may "breaker-gfci", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-pole GFCI breaker", "[1, 10]"),
        field!(may "breaker-afci", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-pole AFCI breaker", "[1, 10]"),
        field!(may "breaker-dual", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-pole GFCI/AFCI (dual-function) breaker", "[1, 10]"),
        field!(may "breaker-gfci-2p", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-pole GFCI breaker", "[1, 10]"),
        field!(may "breaker-afci-2p", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-pole AFCI breaker", "[1, 10]"),
        field!(may "breaker-dual-2p", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-pole GFCI/AFCI (dual-function) breaker", "[1, 10]"),
        field!(may "ground-wire-14-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 14 AWG green conductor", "[25, 50, 250]"),
        field!(may "ground-wire-12-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 12 AWG green conductor", "[25, 50, 250]"),
        field!(may "ground-wire-10-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 10 AWG green conductor", "[25, 50, 250]"),
        field!(may "cable-14-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 14 AWG two-wire cable with ground", "[25, 50, 250]"),
        field!(may "cable-12-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 12 AWG two-wire cable with ground", "[25, 50, 250]"),
        field!(may "cable-10-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of 10 AWG two-wire cable with ground", "[25, 50, 250]"),
        field!(may "ground-fittings", FieldKind::Counts(1, LARGEST_PACK), "packs of: ground screw, pigtail and connectors for one end of a conductor", "[1, 10]"),
        field!(may "aluminium-splice", FieldKind::Counts(1, LARGEST_PACK), "packs of: listed copper-to-aluminium splice for one conductor", "[1, 10]"),
        field!(may "blank-cover", FieldKind::Counts(1, LARGEST_PACK), "packs of: nonmetallic blank cover, with connectors for the splices behind it", "[1, 10]"),
        field!(may "patch", FieldKind::Counts(1, LARGEST_PACK), "packs of: patching material for one opening in a finished surface", "[1, 10]"),
        field!(may "branch-box", FieldKind::Counts(1, LARGEST_PACK), "packs of: accessible box with its cover and a connector, in which a branch is joined", "[1, 10]"),
        field!(may "raceway-ft", FieldKind::Counts(1, LARGEST_PACK), "packs of: a foot of surface raceway", "[25, 50, 250]"),
        field!(may "raceway-ends", FieldKind::Counts(1, LARGEST_PACK), "packs of: the two end boxes and fittings of a run of surface raceway", "[1, 10]"),
        field!(may "breaker-standard", FieldKind::Counts(1, LARGEST_PACK), "packs of: single-pole breaker, of the rating that the conductors bear", "[1, 10]"),
        field!(may "breaker-standard-2p", FieldKind::Counts(1, LARGEST_PACK), "packs of: two-pole breaker, of the rating that the conductors bear", "[1, 10]"),
        field!(may "fuse", FieldKind::Counts(1, LARGEST_PACK), "packs of: fuse of the rating that the conductors bear, with an adapter that takes no larger one", "[1, 10]"),
        field!(may "neutral-fittings", FieldKind::Counts(1, LARGEST_PACK), "packs of: connector and pigtail for one joint of a neutral", "[1, 10]"),
    ],
};

pub(super) static CREW: Shape = Shape {
    title: "[crew]",
    name: "crew",
    meaning: "Who works, and how long a day.",
    fields: &[
        field!(may "hours-a-day", FieldKind::Count(1, 24), "hours of a day that are worked on the site; 8 if left out", "7"),
        field!(may "tasks-for-two", FieldKind::Names(&TASKS), "the tasks that take an electrician and a helper; none if left out", "[\"past-fire-block\"]"),
    ],
};

pub(super) static CONDITIONS: Shape = Shape {
    title: "[conditions]",
    name: "conditions",
    meaning: "What the place makes of the plain time, in percent of it: 125 is a quarter longer. What is left out is 100, as is what the survey does not record.",
    fields: &[
        field!(may "open", FieldKind::Count(10, 1_000), "work in a wall of bare studs", "75"),
        field!(may "plaster", FieldKind::Count(10, 1_000), "work in a wall of plaster on lath", "125"),
        field!(may "panelling", FieldKind::Count(10, 1_000), "work in a panelled wall", "110"),
        field!(may "tile", FieldKind::Count(10, 1_000), "work in a tiled wall", "150"),
        field!(may "masonry", FieldKind::Count(10, 1_000), "work in brick, block or stone", "200"),
        field!(may "attic", FieldKind::Count(10, 1_000), "drilling and joining from an attic, and all work at a box in one", "120"),
        field!(may "crawl-space", FieldKind::Count(10, 1_000), "drilling and joining from a crawl space, and all work at a box in one", "130"),
    ],
};

pub(super) static CHARGES: Shape = Shape {
    title: "[charges]",
    name: "charges",
    meaning: "What is charged besides material and labour. What is left out adds nothing.",
    fields: &[
        field!(may "waste-percent", FieldKind::Percent(MOST_WASTE), "of what goes by the foot: what is cut off and thrown away", "10"),
        field!(may "markup-percent", FieldKind::Percent(MOST_MARKUP), "on the cost of material", "15"),
        field!(may "tax-percent", FieldKind::Percent(MOST_TAX), "on material, its markup included", "6.25"),
        field!(may "trip", FieldKind::Money, "for each working day begun", "45.00"),
        field!(may "permit", FieldKind::Money, "the fee of the permit, where there is work", "120.00"),
        field!(may "contingency-percent", FieldKind::Percent(MOST_WASTE), "on material, labour and trips: for what nobody could see", "5"),
        field!(may "minimum", FieldKind::Money, "the least that a job is done for", "250.00"),
        field!(may "round-to", FieldKind::Money, "the total is rounded up to a multiple of this", "10.00"),
    ],
};
