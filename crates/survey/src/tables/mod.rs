//! The tables of a survey, each with its shape and how a row of it becomes part of a dwelling.

pub(crate) mod after;
pub(crate) mod body;
pub(crate) mod circuit;
pub(crate) mod close_out;
pub(crate) mod dead_when;
pub(crate) mod device_box;
pub(crate) mod found;
pub(crate) mod job;
pub(crate) mod names;
pub(crate) mod near_water;
pub(crate) mod panel;
pub(crate) mod room;
pub(crate) mod route;
pub(crate) mod run;
pub(crate) mod source;
pub(crate) mod survey;
pub(crate) mod wall_break;

/// The position of what could not be found: an error was reported, so that no dwelling comes of it.
pub(crate) const NOT_FOUND: usize = usize::MAX;

#[cfg(test)]
mod tests {
    use super::*;
    use crate::mistakes::SOUND;
    use crate::shape::{Need, Shape};
    use crate::{Format, read};

    /// The mistakes of a survey with one field of a table written as its example is, those about what else is there left out.
    fn codes(shape: &Shape, key: &str, before: &str, between: &str, after: &str) -> Vec<&'static str> {
        let written: Vec<String> = shape
            .fields
            .iter()
            .filter(|field| field.key == key || field.need != Need::Optional)
            .map(|field| format!("{} = {}", field.key, field.example))
            .collect();
        let text = format!("{before}{}{after}", written.join(between));
        let found = read(text.as_bytes(), Format::Toml).diagnostics;
        let codes = found.into_iter().map(|diagnostic| diagnostic.code);
        let about_others = ["id-twice", "shared-neutral-without-partner"];
        codes.filter(|code| !code.starts_with("no-such-") && !about_others.contains(code)).collect()
    }

    #[test]
    fn the_example_of_every_field_is_read_without_a_mistake() {
        let tables: [&'static Shape; 6] =
            [&panel::SHAPE, &circuit::SHAPE, &room::SHAPE, &device_box::SHAPE, &source::SHAPE, &route::SHAPE];
        for shape in tables {
            for field in shape.fields {
                let before = format!("{SOUND}\n{}\n", shape.title);
                assert_eq!(codes(shape, field.key, &before, "\n", "\n"), [""; 0], "{} {}", shape.title, field.key);
            }
        }
        for (key, shape) in [
            ("run", &run::SHAPE),
            ("body", &body::SHAPE),
            ("found", &found::SHAPE),
            ("after", &after::SHAPE),
            ("sink", &near_water::SHAPE),
        ] {
            for field in shape.fields {
                let before = format!("{SOUND}{key} = {{ ");
                assert_eq!(codes(shape, field.key, &before, ", ", " }\n"), [""; 0], "{} {}", shape.title, field.key);
            }
        }
        for (under, key, shape) in [
            ("[[panel]]\nid = \"p\"", "after", &after::PANEL_SHAPE),
            ("[[circuit]]\nid = \"c\"\npanel = \"main\"", "after", &after::CIRCUIT_SHAPE),
        ] {
            for field in shape.fields {
                let before = format!("{SOUND}\n{under}\n{key} = {{ ");
                assert_eq!(codes(shape, field.key, &before, ", ", " }\n"), [""; 0], "{} {}", shape.title, field.key);
            }
        }
        for field in close_out::SHAPE.fields {
            let before = format!("{SOUND}\n[close_out]\n");
            assert_eq!(codes(&close_out::SHAPE, field.key, &before, "\n", "\n"), [""; 0], "{}", field.key);
        }
        for field in dead_when::SHAPE.fields {
            let is_cut = ["breaker_off", "opened", "load_side_lifted"].contains(&field.key);
            let other = if is_cut { "alive = [\"L-1\"]" } else { "opened = \"L-1\"" };
            let other = if field.key == "note" { "opened = \"L-1\"\ndead = [\"L-2\"]" } else { other };
            let before = format!("{SOUND}\n[[dead_when]]\n{other}\n");
            assert_eq!(codes(&dead_when::SHAPE, field.key, &before, "\n", "\n"), [""; 0], "{}", field.key);
        }
        for field in job::SHAPE.fields {
            let after = "\n[[room]]\nid = \"a\"\n[[box]]\nid = \"b\"\nroom = \"a\"\n";
            let codes = codes(&job::SHAPE, field.key, "format = 1\n[job]\n", "\n", after);
            assert_eq!(codes, [""; 0], "{}", field.key);
        }
        for field in survey::SHAPE.fields {
            assert_eq!(codes(&survey::SHAPE, field.key, "", "\n", "\n"), [""; 0], "{}", field.key);
        }
    }
}
