//! `fitted-not-made-for-panel`: a protective breaker is fitted that is not among those made for its panel.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "fitted-not-made-for-panel",
    "A protective breaker is fitted that is not among those made for its panel.",
    Example::Added(r#"
[[panel]]
id = "annex"
made_for_it = ["gfci"]

[[circuit]]
id = "5"
panel = "annex"
fitted = "dual"
"#),
);

pub(crate) fn mistake(fitted: &str, panel: &str, span: Span) -> Diagnostic {
    let message = format!("`{fitted}` is not among the breakers made for panel `{panel}`");
    KIND.at(span, "fitted here", message)
        .help("if it is listed for this panel, name it in `made_for_it`; if not, it does not belong there")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_a_protective_breaker_is_fitted_that_is_not_among_those_made() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[fitted-not-made-for-panel]: `dual` is not among the breakers made for panel `annex`
  --> survey.toml:28:10
28 | fitted = "dual"
   |          ^^^^^^ fitted here
   = help: if it is listed for this panel, name it in `made_for_it`; if not, it does not belong there
"#
        );
    }
}
