//! Whether what a wiring method brings counts as a ground: metal around the conductors, or a conductor thinner than asked.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::{CodeInForce, Local};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::judgement::Lawful;
use crate::lists::List;
use crate::policy::Question;
use crate::sources::TEXT_2011;
use dwelling::CableKind;
use electrical::{Amperes, Length};

/// That conduit, and a conductor in a cable, count.
const METHODS: ByEdition<()> = ByEdition {
    id: "grounding.methods.recognised",
    readings: &[
        Reading::remembered(Nec2008, "250.118", ()),
        Reading::read(Nec2011, "250.118", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.118", ()),
        Reading::unchanged_since_2011(Nec2017, "250.118", ()),
        Reading::unchanged_since_2011(Nec2020, "250.118", ()),
        Reading::unchanged_since_2011(Nec2023, "250.118(A)", ()),
    ],
};

/// That armored cable counts by the strip in contact with its armor.
const BONDING_STRIP: ByEdition<()> = ByEdition {
    id: "grounding.methods.bonding-strip",
    readings: &[
        Reading::remembered(Nec2008, "320.100, 320.108", ()),
        Reading::read(Nec2011, "320.100, 320.108", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "320.100, 320.108", ()),
        Reading::unchanged_since_2011(Nec2017, "320.100, 320.108", ()),
        Reading::unchanged_since_2011(Nec2020, "320.100, 320.108", ()),
        Reading::unchanged_since_2011(Nec2023, "320.100, 320.108", ()),
    ],
};

const BOTH_WAYS: &str = "to some the present definition of armored cable, which has the strip, decides; to others a ground that was \
     lawful when it was installed may serve a replaced device";

/// That old armor without a strip is argued.
const WITHOUT_STRIP: ByEdition<()> = ByEdition {
    id: "grounding.methods.armor-without-strip",
    readings: &[
        Reading::disputed(Nec2008, "250.118(8)", BOTH_WAYS, ()),
        Reading::disputed(Nec2011, "250.118(8)", BOTH_WAYS, ()),
        Reading::disputed(Nec2014, "250.118(8)", BOTH_WAYS, ()),
        Reading::disputed(Nec2017, "250.118(8)", BOTH_WAYS, ()),
        Reading::disputed(Nec2020, "250.118(8)", BOTH_WAYS, ()),
        Reading::disputed(Nec2023, "250.118(A)(8)", BOTH_WAYS, ()),
    ],
};

const THINNER: &str =
    "it is the ground that the cable was made with, and thinner than the table asks today: authorities differ";

/// That a thin conductor of the 1950s and 1960s is argued.
const REDUCED: ByEdition<()> = ByEdition {
    id: "grounding.methods.reduced-ground",
    readings: &[
        Reading::disputed(Nec2008, "Table 250.122", THINNER, ()),
        Reading::disputed(Nec2011, "Table 250.122", THINNER, ()),
        Reading::disputed(Nec2014, "Table 250.122", THINNER, ()),
        Reading::disputed(Nec2017, "Table 250.122", THINNER, ()),
        Reading::disputed(Nec2020, "Table 250.122", THINNER, ()),
        Reading::disputed(Nec2023, "Table 250.122", THINNER, ()),
    ],
};

/// The limits within which flexible metal conduit counts: amperes and length in the same path.
const FLEXIBLE: ByEdition<(u32, Length)> = ByEdition {
    id: "grounding.methods.flexible-metal-conduit",
    readings: &[
        Reading::remembered(Nec2008, "250.118(5)", (20, Length::feet(6))),
        Reading::read(Nec2011, "250.118(5)", TEXT_2011, (20, Length::feet(6))),
        Reading::unchanged_since_2011(Nec2014, "250.118(5)", (20, Length::feet(6))),
        Reading::unchanged_since_2011(Nec2017, "250.118(5)", (20, Length::feet(6))),
        Reading::unchanged_since_2011(Nec2020, "250.118(5)", (20, Length::feet(6))),
        Reading::unchanged_since_2011(Nec2023, "250.118(A)(5)", (20, Length::feet(6))),
    ],
};

/// That a surface metal raceway counts where it is listed for grounding.
const SURFACE: ByEdition<()> = ByEdition {
    id: "grounding.methods.surface-raceway",
    readings: &[
        Reading::remembered(Nec2008, "250.118(14)", ()),
        Reading::read(Nec2011, "250.118(14)", TEXT_2011, ()),
        Reading::unchanged_since_2011(Nec2014, "250.118(14)", ()),
        Reading::unchanged_since_2011(Nec2017, "250.118(14)", ()),
        Reading::unchanged_since_2011(Nec2020, "250.118(14)", ()),
        Reading::unchanged_since_2011(Nec2023, "250.118(A)(14)", ()),
    ],
};

/// The values above, for lists of what has been read.
pub(crate) const METHOD_VALUES: &[&dyn Value] =
    &[&METHODS, &BONDING_STRIP, &WITHOUT_STRIP, &REDUCED, &FLEXIBLE, &SURFACE];

/// What is known of a path. `None` is not known.
#[derive(Clone, Copy, Debug, Default, PartialEq, Eq)]
pub struct PathFacts {
    /// Whether its joints and fittings were found whole up to the panel.
    pub whole: Option<bool>,
    /// The rating of its circuit's breaker or fuse.
    pub breaker: Option<Amperes>,
    /// The length of all flexible pieces in the path together.
    pub flexible: Option<Length>,
    /// Whether its fittings, or the raceway, are listed for grounding.
    pub listed: Option<bool>,
}

/// Whether a wiring method's path counts as a ground.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct MetalPath {
    /// Whether it does.
    pub lawful: Lawful,
    /// Why, or why not, or both readings, or what to find out: one sentence.
    pub why: String,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The authorities whose amendments or answers changed this, with their texts.
    pub changed_by: Vec<String>,
}

/// Whether the path that a wiring method brings counts as a ground for a replaced receptacle.
#[must_use]
pub fn metal_path(kind: CableKind, facts: PathFacts, code: &CodeInForce) -> MetalPath {
    let not_read = |missing: NotChecked| of(Lawful::NotChecked, &missing.because, &[]);
    let path = match code.local(List::GroundMethods, kind.name()) {
        None => counts(kind, facts, code).unwrap_or_else(not_read),
        Some(Local::In(by)) => {
            let why = format!("{by}: this wiring method counts as a ground here");
            MetalPath { changed_by: vec![by], ..of(Lawful::Yes, &why, &[]) }
        }
        Some(Local::Out(by)) => {
            let why = format!("{by}: this wiring method does not count as a ground here");
            MetalPath { changed_by: vec![by], ..of(Lawful::No, &why, &[]) }
        }
        Some(Local::Unsure(missing, by)) => MetalPath { changed_by: vec![by], ..of(Lawful::NotChecked, &missing, &[]) },
    };
    match (path.lawful, facts.whole) {
        (Lawful::Yes | Lawful::Disputed, Some(false)) => MetalPath {
            lawful: Lawful::No,
            why: "the path was found not to be whole up to the panel".to_owned(),
            ..path
        },
        (Lawful::Yes, None) => {
            let why = format!("{}; check that it is whole up to the panel", path.why);
            MetalPath { lawful: Lawful::NotChecked, why, ..path }
        }
        _ => path,
    }
}

fn of(lawful: Lawful, why: &str, cites: &[Citation]) -> MetalPath {
    MetalPath { lawful, why: why.to_owned(), cites: cites.to_vec(), changed_by: Vec::new() }
}

fn counts(kind: CableKind, facts: PathFacts, code: &CodeInForce) -> Result<MetalPath, NotChecked> {
    let methods = METHODS.in_force(code)?.cite;
    Ok(match kind {
        CableKind::MetalConduit => of(Lawful::Yes, "metal conduit counts as a ground", &[methods]),
        CableKind::NmWithGround | CableKind::MetalCladWithGround => {
            of(Lawful::Yes, "the cable has a full-size grounding conductor", &[methods])
        }
        CableKind::ArmoredWithStrip => {
            let strip = BONDING_STRIP.in_force(code)?.cite;
            of(Lawful::Yes, "armored cable with a bonding strip counts as a ground", &[methods, strip])
        }
        CableKind::ArmoredNoStrip => answered(
            WITHOUT_STRIP.in_force(code)?.cite,
            code,
            Question::ArmorWithoutStrip,
            "armor without a bonding strip is a long spiral of high impedance",
        ),
        CableKind::NmReducedGround => answered(
            REDUCED.in_force(code)?.cite,
            code,
            Question::ReducedGround,
            "the grounding conductor is thinner than the table asks",
        ),
        CableKind::ArmoredUnknown => {
            let strip = BONDING_STRIP.in_force(code)?.cite;
            let why = "look for the bonding strip under the armor: cable made before about 1959 has none";
            of(Lawful::NotChecked, why, &[strip])
        }
        CableKind::FlexibleMetalConduit => flexible(facts, code)?,
        CableKind::SurfaceMetalRaceway => {
            let cites = [SURFACE.in_force(code)?.cite];
            match facts.listed {
                Some(true) => of(Lawful::Yes, "a surface metal raceway listed for grounding counts", &cites),
                Some(false) => of(Lawful::No, "this surface metal raceway is not listed for grounding", &cites),
                None => of(Lawful::NotChecked, "find out whether the raceway is listed for grounding", &cites),
            }
        }
        CableKind::NmTwoWire | CableKind::KnobAndTube | CableKind::NonmetallicConduit => {
            of(Lawful::No, "this wiring method brings no ground", &[methods])
        }
        CableKind::Unknown => of(Lawful::NotChecked, "find out the wiring method", &[methods]),
    })
}

/// What the trade is divided on: the authority's answer where there is one, both readings where not.
fn answered(cite: Citation, code: &CodeInForce, question: Question, fact: &str) -> MetalPath {
    match code.answer(question) {
        Some(answer) => {
            let (lawful, says) = if answer.yes { (Lawful::Yes, "accepts") } else { (Lawful::No, "does not accept") };
            let why = format!("{fact}; the authority {says} it");
            MetalPath { changed_by: vec![answer.by.clone()], ..of(lawful, &why, &[cite]) }
        }
        None => of(
            Lawful::Disputed,
            &format!("{fact}; some authorities accept it for a replaced device, others do not"),
            &[cite],
        ),
    }
}

fn flexible(facts: PathFacts, code: &CodeInForce) -> Result<MetalPath, NotChecked> {
    let limits = FLEXIBLE.in_force(code)?;
    let (amperes, length) = limits.value;
    let cites = [limits.cite];
    let missing = |why: &str| of(Lawful::NotChecked, why, &cites);
    Ok(match (facts.breaker, facts.flexible, facts.listed) {
        (Some(breaker), ..) if breaker.get() > amperes => {
            of(Lawful::No, &format!("flexible metal conduit counts only behind {amperes} A at most"), &cites)
        }
        (_, Some(along), _) if along > length => {
            of(Lawful::No, &format!("flexible metal conduit counts only over {length} in one path"), &cites)
        }
        (.., Some(false)) => of(Lawful::No, "flexible metal conduit counts only with listed fittings", &cites),
        (None, ..) => missing("find out the breaker's rating"),
        (_, None, _) => missing("measure the flexible pieces of the path"),
        (.., None) => missing("find out whether the fittings are listed for grounding"),
        (Some(_), Some(_), Some(true)) => {
            of(Lawful::Yes, "short flexible metal conduit with listed fittings counts", &cites)
        }
    })
}

#[cfg(test)]
mod tests {
    use super::*;
    use crate::edition::Edition;

    fn under_2011(kind: CableKind, facts: PathFacts) -> Lawful {
        metal_path(kind, facts, &CodeInForce::published(Edition::Nec2011)).lawful
    }

    /// Published: California Electrical Code 2013, 250.118(5): 20 A, 6 ft, listed fittings.
    #[test]
    fn flexible_metal_conduit_counts_within_its_limits() {
        let short = PathFacts {
            whole: Some(true),
            breaker: Some(Amperes::new(20)),
            flexible: Some(Length::feet(6)),
            listed: Some(true),
        };
        let lawful = |facts| under_2011(CableKind::FlexibleMetalConduit, facts);
        assert_eq!(lawful(short), Lawful::Yes);
        assert_eq!(lawful(PathFacts { breaker: Some(Amperes::new(25)), ..short }), Lawful::No);
        assert_eq!(lawful(PathFacts { flexible: Some(Length::feet_and_inches(6, 1)), ..short }), Lawful::No);
        assert_eq!(lawful(PathFacts { listed: None, ..short }), Lawful::NotChecked);
        assert_eq!(lawful(PathFacts { whole: Some(false), ..short }), Lawful::No);
    }

    /// Published (contested): trade forum, threads 125168, 66086, 127741 and 100198.
    #[test]
    fn armor_without_a_strip_is_disputed_until_the_authority_answers() {
        let whole = PathFacts { whole: Some(true), ..PathFacts::default() };
        assert_eq!(under_2011(CableKind::ArmoredNoStrip, whole), Lawful::Disputed);
        for (yes, expected) in [(true, Lawful::Yes), (false, Lawful::No)] {
            let mut code = CodeInForce::published(Edition::Nec2020);
            code.policy = code.policy.with(Question::ArmorWithoutStrip, yes, "Springfield, notice 7");
            let path = metal_path(CableKind::ArmoredNoStrip, whole, &code);
            assert_eq!((path.lawful, path.changed_by), (expected, vec!["Springfield, notice 7".to_owned()]));
        }
    }

    /// No source: the 2026 edition puts voltage limits on certain methods, and which could not be confirmed.
    #[test]
    fn no_method_is_checked_under_2026() {
        for kind in CableKind::ALL {
            let path = metal_path(*kind, PathFacts::default(), &CodeInForce::published(Edition::Nec2026));
            assert_eq!(path.lawful, Lawful::NotChecked, "{kind}");
        }
    }
}
