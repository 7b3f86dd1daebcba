//! `boxes-in-a-ring`: boxes are said to feed one another in a ring, so that none is fed from a panel.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "boxes-in-a-ring",
    "Boxes are said to feed one another in a ring, so that none is fed from a panel.",
    Example::Added(r#"fed_by = "K-2"

[[box]]
id = "K-2"
room = "kitchen"
circuit = "3"
fed_by = "K-3"

[[box]]
id = "K-3"
room = "kitchen"
circuit = "3"
fed_by = "K-1"
"#),
);

pub(crate) fn mistake(ring: &[(&str, Span)]) -> Diagnostic {
    const SHOWN: usize = 12;
    let mut ids: Vec<&str> = ring.iter().take(SHOWN).map(|(id, _)| *id).collect();
    if ring.len() > SHOWN {
        ids.push("…");
    }
    ids.extend(ring.first().map(|(id, _)| *id));
    let message = format!("boxes feed one another in a ring: `{}`", ids.join("` is fed by `"));
    let mut mistake = Diagnostic { labels: Vec::new(), ..KIND.at(Span::new(0, 0), "", message) };
    for (index, (id, place)) in ring.iter().enumerate() {
        let next = ring[(index + 1) % ring.len()].0;
        mistake = mistake.and(*place, format!("`{id}` is fed by `{next}`"));
    }
    mistake.help("one of them is fed from elsewhere: mend its `fed_by`, or leave it out where nobody knows")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_boxes_are_said_to_feed_one_another_in_a_ring_so_that_none_is_fed_from() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[boxes-in-a-ring]: boxes feed one another in a ring: `K-1` is fed by `K-2` is fed by `K-3` is fed by `K-1`
  --> survey.toml:20:10
20 | fed_by = "K-2"
   |          ^^^^^ `K-1` is fed by `K-2`
   ...
26 | fed_by = "K-3"
   |          ----- `K-2` is fed by `K-3`
   ...
32 | fed_by = "K-1"
   |          ----- `K-3` is fed by `K-1`
   = help: one of them is fed from elsewhere: mend its `fed_by`, or leave it out where nobody knows
"#
        );
    }
}
