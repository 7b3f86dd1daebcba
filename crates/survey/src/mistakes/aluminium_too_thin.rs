//! `aluminium-too-thin`: aluminium conductors are said to be thinner than they are made for buildings.

use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::warning(
    "aluminium-too-thin",
    "Aluminium conductors are said to be thinner than they are made for buildings.",
    Example::Added("run = { gauge = 14, metal = \"aluminium\" }\n"),
);

pub(crate) fn mistake(gauge: Span, metal: Option<Span>) -> Diagnostic {
    let mistake = KIND.at(gauge, "thinner than 12 AWG", "aluminium conductors for buildings are 12 AWG or thicker");
    let mistake = match metal {
        Some(metal) => mistake.and(metal, "aluminium here"),
        None => mistake,
    };
    mistake.help("check the metal and the size; a tinned copper wire looks like aluminium")
}

#[cfg(test)]
mod tests {
    #[test]
    fn it_tells_that_aluminium_conductors_are_said_to_be_thinner_than_they_are_made() {
        assert_eq!(
            super::KIND.rendered_example(),
            r#"warning[aluminium-too-thin]: aluminium conductors for buildings are 12 AWG or thicker
  --> survey.toml:20:17
20 | run = { gauge = 14, metal = "aluminium" }
   |                 ^^ thinner than 12 AWG
   |                             ----------- aluminium here
   = help: check the metal and the size; a tinned copper wire looks like aluminium
"#
        );
    }
}
