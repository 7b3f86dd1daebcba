//! `cables-fewer-than-fed`: fewer cables are counted in a box than feed it and are fed from it.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "cables-fewer-than-fed",
    "Fewer cables are counted in a box than feed it and are fed from it.",
    Example::Added(r#"fed_by = "panel"
cables_in_box = 1

[[box]]
id = "K-2"
room = "kitchen"
fed_by = "K-1"
"#),
);

pub(crate) fn mistake(counted: u32, is_fed: bool, feeds: u32, span: Span) -> Diagnostic {
    let fed = if is_fed { "one that feeds it and " } else { "" };
    let message = format!("the feeding order brings more cables than the {counted} counted here");
    KIND.at(span, format!("there must be {fed}{feeds} that it feeds"), message)
        .help("count again, or mend what feeds what")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_fewer_cables_are_counted_in_a_box_than_feed_it_and_are_fed_from_it() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[cables-fewer-than-fed]: the feeding order brings more cables than the 1 counted here
  --> survey.toml:21:17
21 | cables_in_box = 1
   |                 ^ there must be one that feeds it and 1 that it feeds
   = help: count again, or mend what feeds what
"
        );
    }
}
