//! Invented houses of a few circuits: ungrounded and grounded runs, grounds to be brought, panels with and without breakers.

use simulation::Chance;

const HEAD: &str = r#"format = 1
[job]
name = "a house of the tests"
built = 1959
use = "one-family"
edition = 2020
[[panel]]
id = "main"
overcurrent = "breakers"
ground_bar = true
service = true
fault_current = "1400 A"
"#;
const ROOMS: [(&str, &str); 4] =
    [("living", "living-room"), ("kitchen", "kitchen"), ("bath", "bathroom"), ("bed", "bedroom")];

/// The survey of a house: the same for the same seed.
pub fn house(seed: u64) -> String {
    let mut chance = Chance::new(seed);
    let breakers = if chance.happens(0.5) { r#"["gfci", "afci", "dual"]"# } else { "[]" };
    let mut text = format!("{HEAD}made_for_it = {breakers}\n");
    let circuits = 1 + chance.below(3);
    for number in 1..=circuits {
        let (rating, gauge) = if chance.happens(0.5) { (15, 14) } else { (20, 12) };
        let cable = if chance.happens(0.3) { "nm-with-ground" } else { "nm-two-wire" };
        text.push_str(&format!(
            "[[circuit]]\nid = \"{number}\"\npanel = \"main\"\nbreaker = \"{rating} A\"\ncable = \"{cable}\"\ngauge = {gauge}\n"
        ));
    }
    for (id, what) in ROOMS {
        text.push_str(&format!("[[room]]\nid = \"{id}\"\nuse = \"{what}\"\nfloor = 1\n"));
    }
    let mut routes = String::new();
    for circuit in 1..=circuits {
        let grounded = text
            .contains(&format!("id = \"{circuit}\"\npanel = \"main\"\nbreaker = \"15 A\"\ncable = \"nm-with"))
            || text.contains(&format!("id = \"{circuit}\"\npanel = \"main\"\nbreaker = \"20 A\"\ncable = \"nm-with"));
        let count = 2 + chance.below(4);
        for at in 1..=count {
            let id = format!("B{circuit}-{at}");
            let parent = if at == 1 { "panel".to_owned() } else { format!("B{circuit}-{}", 1 + chance.below(at - 1)) };
            let room = ROOMS[chance.below(ROOMS.len())].0;
            let feet = 18 + chance.below(40);
            let ground = !grounded && chance.happens(0.25);
            let want = if ground { "ground" } else { "three-slot" };
            let found = if grounded {
                r#"{ hn = 121, hg = 121, ng = 0, load = "none", ground = "connected", ground_ohms = 0.3 }, { hn = 118.4, hg = 119.7, ng = 1.3, load = "heavy", meter = "high-impedance" }"#
            } else {
                r#"{ hn = 121, tester = "open ground", ground = "none seen" }"#
            };
            let holds = if !grounded && chance.happens(0.3) { "two-slot" } else { "three-slot" };
            text.push_str(&format!(
                "[[box]]\nid = \"{id}\"\nroom = \"{room}\"\ncircuit = \"{circuit}\"\nfed_by = \"{parent}\"\nrun = {{ length = \"{feet} ft\" }}\nbody = {{ volume = \"22 in3\", clamps = \"none\", metal = false }}\nholds = \"{holds}\"\nwant = \"{want}\"\nsink = \"5 ft\"\ncountertop = false\nreadily_accessible = true\nfound = [{found}]\n"
            ));
            if ground {
                routes.push_str(&format!(
                    "[[route]]\nfrom = \"main\"\nto = \"{id}\"\nkind = \"egc\"\nlength = \"{} ft\"\nminutes = 30\n",
                    feet + 10
                ));
            }
        }
    }
    text + &routes
}
