//! `id-clash`: a box, panel or ground source has the id of one of the others, so that what feeds a box or where a route ends cannot be told.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "id-clash",
    "A box, panel or ground source has the id of one of the others, so that what feeds a box or where a route ends cannot be told.",
    Example::Added(r#"
[[box]]
id = "main"
room = "kitchen"
"#),
);

pub(crate) fn mistake(id: &str, (one, one_at): (&str, Span), (other, other_at): (&str, Span)) -> Diagnostic {
    KIND.at(one_at, format!("a {one} here"), format!("`{id}` names a {one} and a {other}"))
        .and(other_at, format!("a {other} here"))
        .help("boxes, panels and ground sources share their names: give one of the two another id")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_box_panel_or_ground_source_has_the_id_of_one_of_the_others() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[id-clash]: `main` names a box and a panel
  --> survey.toml:22:6
 7 | id = "main"
   |      ------ a panel here
   ...
22 | id = "main"
   |      ^^^^^^ a box here
   = help: boxes, panels and ground sources share their names: give one of the two another id
"#
        );
    }
}
