//! `neutral-across-panels`: two circuits of different panels are said to share a neutral.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "neutral-across-panels",
    "Two circuits of different panels are said to share a neutral.",
    Example::Added(r#"
[[panel]]
id = "annex"

[[circuit]]
id = "5"
panel = "annex"
shares_neutral_with = "3"
"#),
);

pub(crate) fn mistake((own, own_at): (&str, Span), (partner, partner_at): (&str, Span)) -> Diagnostic {
    KIND.at(own_at, "shared with this", format!("circuits `{own}` and `{partner}` of different panels cannot share a neutral"))
        .and(partner_at, format!("circuit `{partner}` originates here"))
        .help("both circuits of a multiwire set originate in one panel; if the wiring is really so, have an electrician part it before anything else")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_two_circuits_of_different_panels_are_said_to_share_a_neutral() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"error[neutral-across-panels]: circuits `5` and `3` of different panels cannot share a neutral
  --> survey.toml:27:23
11 | panel = "main"
   |         ------ circuit `3` originates here
   ...
27 | shares_neutral_with = "3"
   |                       ^^^ shared with this
   = help: both circuits of a multiwire set originate in one panel; if the wiring is really so, have an electrician part it before anything else
"#
        );
    }
}
