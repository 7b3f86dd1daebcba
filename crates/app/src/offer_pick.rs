//! Which offer is meant on the command line: by its number, or by its name.

use dwelling::nearest;
use remedies::{OfferKind, Offers, offer_called};

/// An offer that somebody asks for.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum OfferPick {
    /// The offer of this number, counted from 1.
    Number(usize),
    /// The offer of this kind.
    Kind(OfferKind),
}

/// The offer that is the plan itself.
pub const FIRST: OfferPick = OfferPick::Number(1);

/// A short name for each kind of offer.
const SHORT: &[(&str, OfferKind)] = &[
    ("least-money", OfferKind::LeastMoney),
    ("fewest-walls", OfferKind::LeastDisturbance),
    ("electronics", OfferKind::Electronics),
    ("most-grounds", OfferKind::MostGrounds),
    ("best-value", OfferKind::BestValue),
];

/// An offer as it is written: a number, a short name, its kind in JSON, or what pages and papers call it.
pub fn offer_pick(written: &str) -> Result<OfferPick, String> {
    if written.bytes().all(|byte| byte.is_ascii_digit()) && !written.is_empty() {
        return match written.parse() {
            Ok(0) => Err("offers are counted from 1".to_owned()),
            Ok(number) => Ok(OfferPick::Number(number)),
            Err(_) => Err("there are never so many offers".to_owned()),
        };
    }
    let names = names();
    let folded = folded(written);
    if let Some((_, kind)) = names.iter().find(|(name, _)| *name == folded) {
        return Ok(OfferPick::Kind(*kind));
    }
    let meant = nearest(&folded, names.iter().map(|(name, _)| name.as_str()));
    let meant = meant.map_or_else(|| ".".to_owned(), |name| format!("; did you mean `{name}`?"));
    let short: Vec<&str> = SHORT.iter().map(|(name, _)| *name).collect();
    Err(format!("no offer is called so{meant} Write its number, or one of {}", short.join(", ")))
}

/// Every name by which an offer is known, short ones first.
fn names() -> Vec<(String, OfferKind)> {
    let short = SHORT.iter().map(|(name, kind)| ((*name).to_owned(), *kind));
    let long = OfferKind::ALL.iter().flat_map(|kind| {
        let called = offer_called(*kind).iter().map(|name| folded(name));
        called.chain([kind.name().to_owned()]).map(|name| (name, *kind))
    });
    short.chain(long).collect()
}

/// A name in small letters, its words joined by hyphens.
fn folded(name: &str) -> String {
    let words = name.split(|letter: char| !letter.is_alphanumeric()).filter(|word| !word.is_empty());
    words.map(str::to_lowercase).collect::<Vec<String>>().join("-")
}

/// The short name of a kind.
pub fn short_name(kind: OfferKind) -> &'static str {
    SHORT.iter().find(|(_, known)| *known == kind).map_or(kind.name(), |(name, _)| name)
}

impl OfferPick {
    /// Its number among the offers of a dwelling.
    ///
    /// # Errors
    /// That there is no such offer, and which there are.
    pub fn number_in(self, offers: &Offers) -> Result<usize, String> {
        let count = offers.offers.len();
        let there = if count == 1 { "there is one offer".to_owned() } else { format!("there are {count} offers") };
        match self {
            Self::Number(number) if (1..=count).contains(&number) => Ok(number),
            Self::Number(number) => Err(format!("there is no offer {number}; {there}")),
            Self::Kind(kind) => offers.number_of(kind).ok_or_else(|| {
                let names: Vec<&str> = offers.offers.iter().map(|offer| short_name(offer.kind)).collect();
                format!("no offer is `{}` here; {there}: {}", short_name(kind), names.join(", "))
            }),
        }
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn an_offer_is_known_by_its_number_and_by_every_name_it_has() {
        assert_eq!(offer_pick("2"), Ok(OfferPick::Number(2)));
        for name in ["electronics", "Electronics", "grounds-for-electronics", "Grounds where electronics stand"] {
            assert_eq!(offer_pick(name), Ok(OfferPick::Kind(OfferKind::Electronics)), "{name}");
        }
        for kind in OfferKind::ALL {
            assert_eq!(offer_pick(short_name(*kind)), Ok(OfferPick::Kind(*kind)));
            assert_eq!(offer_pick(kind.name()), Ok(OfferPick::Kind(*kind)));
            assert!(offer_called(*kind).iter().all(|name| offer_pick(name) == Ok(OfferPick::Kind(*kind))), "{kind}");
        }
    }

    #[test]
    fn no_name_means_two_offers() {
        let names = names();
        for (name, kind) in &names {
            assert!(names.iter().all(|(other, of)| other != name || of == kind), "{name}");
        }
    }

    #[test]
    fn a_slip_of_the_pen_is_told_with_the_nearest_name() {
        let told = |written: &str| offer_pick(written).unwrap_err();
        assert!(told("electroncis").contains("did you mean `electronics`?"), "{}", told("electroncis"));
        assert!(told("zzzzzzzz").contains("Write its number, or one of least-money"), "{}", told("zzzzzzzz"));
        assert_eq!(told("0"), "offers are counted from 1");
        assert_eq!(offer_pick("1000"), Ok(OfferPick::Number(1000)));
        assert_eq!(told("99999999999999999999"), "there are never so many offers");
    }
}
