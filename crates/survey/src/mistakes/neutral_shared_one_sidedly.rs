//! `neutral-shared-one-sidedly`: circuits contradict each other about which of them share a neutral.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "neutral-shared-one-sidedly",
    "Circuits contradict each other about which of them share a neutral.",
    Example::Added(r#"
[[circuit]]
id = "5"
panel = "main"
shares_neutral_with = "7"

[[circuit]]
id = "7"
panel = "main"
shares_neutral_with = "3"
"#),
);

pub(crate) fn mistake((own, own_at): (&str, Span), (other, other_at): (&str, Span)) -> Diagnostic {
    KIND.at(own_at, format!("circuit `{own}` says this"), "circuits contradict each other about a shared neutral")
        .and(other_at, format!("circuit `{other}` says this"))
        .help("a multiwire set is two circuits, and each names the other or says nothing")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_circuits_contradict_each_other_about_which_of_them_share_a_neutral() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[neutral-shared-one-sidedly]: circuits contradict each other about a shared neutral
  --> survey.toml:24:23
24 | shares_neutral_with = "7"
   |                       ^^^ circuit `5` says this
   ...
29 | shares_neutral_with = "3"
   |                       --- circuit `7` says this
   = help: a multiwire set is two circuits, and each names the other or says nothing
"#
        );
    }
}
