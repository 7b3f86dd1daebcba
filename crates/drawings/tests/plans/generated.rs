//! Surveys of invented dwellings of many shapes, the same for the same seed.

/// Numbers that look like chance and are not.
struct Numbers(u64);

impl Numbers {
    fn below(&mut self, limit: u64) -> u64 {
        self.0 = self.0.wrapping_mul(6_364_136_223_846_793_005).wrapping_add(1_442_695_040_888_963_407);
        (self.0 >> 33) % limit
    }
}

/// A survey of so many boxes in rooms on so many floors.
pub fn survey(seed: u64, boxes: usize, floors: usize) -> String {
    let mut numbers = Numbers(seed);
    let mut text = "format = 1\n[job]\nname = \"Invented house\"\nbuilt = 1950\nuse = \"one-family\"\nedition = 2020\n\
                    [[panel]]\nid = \"main\"\nmade_for_it = [\"gfci\", \"dual\"]\nground_bar = true\nroom_beside = true\n"
        .to_owned();
    let circuits = boxes / 8 + 2;
    for circuit in 1..=circuits {
        let cable = ["nm-two-wire", "nm-two-wire", "armored-unknown", "nm-with-ground"][numbers.below(4) as usize];
        text.push_str(&format!(
            "[[circuit]]\nid = \"{circuit}\"\npanel = \"main\"\nbreaker = \"15 A\"\ncable = \"{cable}\"\ngauge = 14\n"
        ));
    }
    let (across, down) = (3, 2 + boxes / floors / 20);
    let mut rooms = Vec::new();
    for floor in 1..=floors {
        let mut bottom = 0;
        for row in 0..down {
            let high = 8 + numbers.below(6);
            let mut left = 0;
            for column in 0..across {
                let wide = if column + 1 == across { 36 - left } else { 8 + numbers.below(7) };
                let id = format!("r{floor}-{row}-{column}");
                let kind =
                    ["bedroom", "living-room", "kitchen", "hallway", "bathroom", "closet"][numbers.below(6) as usize];
                let (right, top) = (left + wide, bottom + high);
                text.push_str(&format!(
                    "[[room]]\nid = \"{id}\"\ntitle = \"{kind} {row}{column}\"\nuse = \"{kind}\"\nfloor = {floor}\n\
                     outline = [[{left}, {bottom}], [{right}, {bottom}], [{right}, {top}], [{left}, {top}]]\n"
                ));
                rooms.push((id, [left, bottom, right, top]));
                left += wide;
            }
            bottom += high;
        }
    }
    let mut last = vec![None; circuits + 1];
    for number in 0..boxes {
        let (room, [left, bottom, right, top]) = &rooms[numbers.below(rooms.len() as u64) as usize];
        let circuit = 1 + numbers.below(circuits as u64) as usize;
        let along_x = left + numbers.below(right - left);
        let along_y = bottom + numbers.below(top - bottom);
        let at = match numbers.below(6) {
            0 => format!("at = [{along_x}, {bottom}]\n"),
            1 => format!("at = [{along_x}, {top}]\n"),
            2 => format!("at = [{left}, {along_y}]\n"),
            3 => format!("at = [{right}, {along_y}]\n"),
            4 => format!("at = [{along_x}, {along_y}]\n"),
            _ if numbers.below(2) == 0 => String::new(),
            _ => format!("at = [{left}, {bottom}]\n"),
        };
        let holds = ["three-slot", "three-slot", "two-slot", "gfci", "switch", "luminaire", "splice", "unknown"]
            [numbers.below(8) as usize];
        let id = format!("B{number}");
        let feed = match &last[circuit] {
            _ if numbers.below(14) == 0 => String::new(),
            None => "fed_by = \"panel\"\n".to_owned(),
            Some(parent) => format!("fed_by = \"{parent}\"\n"),
        };
        let found = if holds == "three-slot" { "found = { hn = 120, ground = \"none seen\" }\n" } else { "" };
        text.push_str(&format!(
            "[[box]]\nid = \"{id}\"\nroom = \"{room}\"\ncircuit = \"{circuit}\"\n{feed}{at}holds = \"{holds}\"\n\
             body = {{ volume = \"20 in3\", clamps = \"none\" }}\n{found}"
        ));
        if numbers.below(3) == 0 && holds == "three-slot" {
            text.push_str("serves = [\"computer\"]\n");
            text.push_str(&format!(
                "[[route]]\nid = \"R{number}\"\nfrom = \"main\"\nto = \"{id}\"\nkind = \"{}\"\nlength = \"{} ft\"\n",
                ["egc", "new-cable"][numbers.below(2) as usize],
                10 + numbers.below(40)
            ));
        }
        if last[circuit].is_none() || numbers.below(3) > 0 {
            last[circuit] = Some(id);
        }
    }
    text
}
