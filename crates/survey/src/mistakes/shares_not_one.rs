//! `shares-not-one`: the shares of a table do not add up to one.

use crate::decimal::Decimal;
use crate::diagnostic::{Diagnostic, Span};
use crate::mistakes::{Example, Kind};

pub(crate) const KIND: Kind = Kind::error(
    "shares-not-one",
    "The shares of a table do not add up to one, those that are left out counted as shipped.",
    Example::Practice(r#"format = 1

[run-hot]
sound = 0.95
open = 0.02
"#),
);

/// The table with the total of its shares, and those that it leaves out.
pub(crate) fn mistake(title: &str, total: Decimal, left_out: &[(&str, Decimal)], span: Span) -> Diagnostic {
    let message = format!("the shares of `{title}` add up to {}, not to 1", total.shown());
    let told = KIND.at(span, "does not add up", message);
    if left_out.is_empty() {
        return told;
    }
    let kept: Vec<String> = left_out.iter().map(|(key, share)| format!("`{key} = {}`", share.shown())).collect();
    told.help(format!("left out, and counted as shipped: {}", kept.join(", ")))
}

#[cfg(test)]
mod tests {
    /// By hand: 0.95 + 0.006, which is left out and shipped, + 0.02 = 0.976.
    #[test]
    fn it_tells_that_the_shares_of_a_table_do_not_add_up_to_one() {
        assert_eq!(
            super::KIND.rendered_example(),
            "\
error[shares-not-one]: the shares of `[run-hot]` add up to 0.976, not to 1
 --> practice.toml:3:1
3 | [run-hot]
  | ^^^^^^^^^ does not add up
  = help: left out, and counted as shipped: `high-resistance = 0.006`
"
        );
    }
}
