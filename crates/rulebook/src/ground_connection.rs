//! Whether a grounding conductor brought by itself may be connected at a place, and how large it must be.

use crate::cited::{ByEdition, Citation, NotChecked, Reading, Value};
use crate::code::{CodeInForce, Local};
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::judgement::Lawful;
use crate::lists::{self, List};
use crate::policy::Question;
use crate::sources::{
    FORUM_2011_CONNECTIONS, FORUM_2014_SOURCES, GUIDE_2023, MAGAZINE_EQUIPMENT_GROUNDING, MAGAZINE_WATER_PIPE,
};
use crate::tables::egc_size::egc_size;
use dwelling::SourceKind;
use electrical::{Amperes, ConductorMetal, Gauge, Length};

const FIVE: &str = "an accessible point of the grounding electrode system or of its conductor, the grounding bar of the \
     panel in which the circuit starts, or the neutral inside the service equipment";
const FIVE_PLUS_DONOR: &str = "an accessible point of the grounding electrode system or of its conductor, the grounding bar \
     of the panel in which the circuit starts, the grounding conductor of another circuit from the same panel, or the \
     neutral inside the service equipment";

/// The places in words.
pub(crate) const PLACES: ByEdition<&str> = ByEdition {
    id: "grounding.connection.places",
    readings: &[
        Reading::remembered(Nec2008, "250.130(C)", FIVE),
        Reading::read(Nec2011, "250.130(C)", FORUM_2011_CONNECTIONS, FIVE),
        Reading::read(Nec2014, "250.130(C)", FORUM_2014_SOURCES, FIVE_PLUS_DONOR),
        Reading::read(Nec2017, "250.130(C)", MAGAZINE_EQUIPMENT_GROUNDING, FIVE_PLUS_DONOR),
        Reading::read(Nec2020, "250.130(C)", MAGAZINE_EQUIPMENT_GROUNDING, FIVE_PLUS_DONOR),
        Reading::read(Nec2023, "250.130(C)", GUIDE_2023, FIVE_PLUS_DONOR),
    ],
};

/// Whether the grounding conductor of another circuit from the same panel is a place to connect.
const ANOTHER_CIRCUIT: ByEdition<bool> = ByEdition {
    id: "grounding.connection.another-circuit",
    readings: &[
        Reading::remembered(Nec2008, "250.130(C)", false),
        Reading::read(Nec2011, "250.130(C)", FORUM_2011_CONNECTIONS, false),
        Reading::read(Nec2014, "250.130(C)(4)", FORUM_2014_SOURCES, true),
        Reading::read(Nec2017, "250.130(C)(4)", MAGAZINE_EQUIPMENT_GROUNDING, true),
        Reading::read(Nec2020, "250.130(C)(4)", MAGAZINE_EQUIPMENT_GROUNDING, true),
        Reading::read(Nec2023, "250.130(C)(4)", GUIDE_2023, true),
    ],
};

/// How far inside the building a metal water pipe still belongs to the grounding electrode system.
const WATER_PIPE: ByEdition<Length> = ByEdition {
    id: "grounding.connection.water-pipe",
    readings: &[
        Reading::remembered(Nec2008, "250.52(A)(1)", Length::feet(5)),
        Reading::read(Nec2011, "250.68(C)(1)", MAGAZINE_WATER_PIPE, Length::feet(5)),
        Reading::read(Nec2014, "250.68(C)(1)", MAGAZINE_WATER_PIPE, Length::feet(5)),
        Reading::read(Nec2017, "250.68(C)(1)", "electricallicenserenewal.com, NEC content 263", Length::feet(5)),
        Reading::remembered(Nec2020, "250.68(C)(1)", Length::feet(5)),
        Reading::read(Nec2023, "250.68(C)(1)", "electricallicenserenewal.com, NEC content 1456", Length::feet(5)),
    ],
};

/// That the earth alone is no path for fault current.
const EARTH_IS_NO_PATH: ByEdition<()> = ByEdition {
    id: "grounding.connection.earth-is-no-path",
    readings: &[
        Reading::remembered(Nec2008, "250.4(A)(5)", ()),
        Reading::remembered(Nec2011, "250.4(A)(5)", ()),
        Reading::remembered(Nec2014, "250.4(A)(5)", ()),
        Reading::remembered(Nec2017, "250.4(A)(5)", ()),
        Reading::remembered(Nec2020, "250.4(A)(5)", ()),
        Reading::remembered(Nec2023, "250.4(A)(5)", ()),
    ],
};

/// The values above, for lists of what has been read.
pub const CONNECTION_VALUES: &[&dyn Value] = &[&PLACES, &ANOTHER_CIRCUIT, &WATER_PIPE, &EARTH_IS_NO_PATH];

/// The kind of place at which a grounding conductor would be connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum ConnectionPlace {
    /// A ground source that the survey names.
    Source(SourceKind),
    /// A grounded box of another circuit.
    BoxOfAnotherCircuit,
    /// A grounded box of the same circuit.
    BoxOfTheSameCircuit,
}

/// What is known of a place at which a grounding conductor would be connected.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub struct SourceFacts {
    /// The kind of place.
    pub place: ConnectionPlace,
    /// Whether it is in, or its circuit starts in, the panel in which the recipient's circuit starts.
    pub same_panel: Option<bool>,
    /// Whether someone has checked that its path is whole: to the panel for a box, to earth and the service for a pipe.
    pub verified: Option<bool>,
    /// For a water pipe: how far along the pipe from where it enters the building.
    pub from_entry: Option<Length>,
    /// The size of the copper grounding conductor at this place, where a wire limits what may be joined to it.
    pub gauge: Option<Gauge>,
    /// Whether the ground at this place is metal raceway or armor rather than a wire.
    pub through_metal: bool,
    /// The rating of the largest breaker of the circuits that the conductor is to serve.
    pub breaker: Option<Amperes>,
}

/// Whether a grounding conductor may be connected at a place.
#[derive(Clone, Debug, PartialEq, Eq)]
pub struct GroundConnection {
    /// Whether it may.
    pub lawful: Lawful,
    /// Why, or why not, or what to find out: one sentence.
    pub why: String,
    /// What must hold besides.
    pub conditions: Vec<String>,
    /// The least size of the conductor in copper, where the breaker is known.
    pub size: Option<Gauge>,
    /// Where the code says so.
    pub cites: Vec<Citation>,
    /// The authorities whose amendments or answers changed this, with their texts.
    pub changed_by: Vec<String>,
}

/// Whether a grounding conductor that is brought by itself may be connected at this place, and how large it must be.
#[must_use]
pub fn ground_connection(facts: SourceFacts, code: &CodeInForce) -> GroundConnection {
    let not_read = |missing: NotChecked| GroundConnection {
        lawful: Lawful::NotChecked,
        why: missing.because,
        conditions: Vec::new(),
        size: None,
        cites: Vec::new(),
        changed_by: Vec::new(),
    };
    let answered = answer(facts, code).unwrap_or_else(not_read);
    let Some(breaker) = facts.breaker.filter(|_| answered.lawful != Lawful::No) else { return sized_later(answered) };
    match egc_size(breaker, ConductorMetal::Copper, None, code) {
        Ok(size) => {
            let mut cites = answered.cites;
            cites.push(size.cite);
            GroundConnection { size: Some(size.value), cites, ..answered }
        }
        Err(missing) => not_read(missing),
    }
}

/// Without the breaker's rating the conductor has no size, so that nothing can be said to be lawful yet.
fn sized_later(answered: GroundConnection) -> GroundConnection {
    if answered.lawful != Lawful::Yes {
        return answered;
    }
    let why = "find out the breaker's rating, which sizes the conductor".to_owned();
    GroundConnection { lawful: Lawful::NotChecked, why, ..answered }
}

/// The answer of the list, as amendments leave it.
fn answer(facts: SourceFacts, code: &CodeInForce) -> Result<GroundConnection, NotChecked> {
    let item = match facts.place {
        ConnectionPlace::Source(kind) => kind.name(),
        ConnectionPlace::BoxOfAnotherCircuit => lists::ANOTHER_CIRCUIT,
        ConnectionPlace::BoxOfTheSameCircuit => return same_circuit(code),
    };
    let amended = |lawful, why: String, by: String| GroundConnection {
        lawful,
        why,
        conditions: Vec::new(),
        size: None,
        cites: Vec::new(),
        changed_by: vec![by],
    };
    match code.local(List::GroundConnections, item) {
        None => as_published(facts, code),
        Some(Local::Out(by)) => Ok(amended(Lawful::No, format!("{by}: this place is not in the list here"), by)),
        Some(Local::Unsure(missing, by)) => Ok(amended(Lawful::NotChecked, missing, by)),
        // What an amendment adds to the list of places does not change what the place itself must be.
        Some(Local::In(by)) => {
            let published = as_published(facts, code)?;
            Ok(match published.lawful {
                Lawful::No if item == lists::ANOTHER_CIRCUIT => {
                    let whole = (facts.same_panel, facts.verified) == (Some(true), Some(true));
                    let lawful = if whole { Lawful::Yes } else { Lawful::NotChecked };
                    amended(lawful, format!("{by}: another circuit's whole ground from the same panel"), by)
                }
                _ => GroundConnection { changed_by: vec![by], ..published },
            })
        }
    }
}

/// The ground of the same circuit: argued, unless the authority has answered.
fn same_circuit(code: &CodeInForce) -> Result<GroundConnection, NotChecked> {
    let listed = PLACES.in_force(code)?.cite;
    let answer = code.answer(Question::GroundOfTheSameCircuit);
    let (lawful, why) = match answer {
        Some(answer) if answer.yes => (Lawful::Yes, "the authority lets the ground of the same circuit be extended"),
        Some(_) => (Lawful::No, "the authority reads the permission as only for circuits that have no ground at all"),
        None => (
            Lawful::Disputed,
            "the circuit has a ground at this box: some read the permission as only for circuits that have none at all, \
             others extend the ground that is there",
        ),
    };
    Ok(GroundConnection {
        lawful,
        why: why.to_owned(),
        conditions: Vec::new(),
        size: None,
        cites: vec![listed],
        changed_by: answer.iter().map(|answer| answer.by.clone()).collect(),
    })
}

fn as_published(facts: SourceFacts, code: &CodeInForce) -> Result<GroundConnection, NotChecked> {
    let listed = PLACES.in_force(code)?.cite;
    let of = |lawful, why: &str, cites: &[Citation]| GroundConnection {
        lawful,
        why: why.to_owned(),
        conditions: Vec::new(),
        size: None,
        cites: cites.to_vec(),
        changed_by: Vec::new(),
    };
    let given = |known: Option<bool>, no: &str, unknown: &str| match known {
        Some(true) => None,
        Some(false) => Some(of(Lawful::No, no, &[listed])),
        None => Some(of(Lawful::NotChecked, unknown, &[listed])),
    };
    Ok(match facts.place {
        ConnectionPlace::Source(SourceKind::GroundBar) => given(
            facts.same_panel,
            "this bar is not in the panel in which the circuit starts",
            "find out in which panel the circuit starts",
        )
        .unwrap_or_else(|| of(Lawful::Yes, "the grounding bar of the panel in which the circuit starts", &[listed])),
        ConnectionPlace::Source(SourceKind::ElectrodeConductor | SourceKind::ElectrodeSystem) => {
            let bonded = given(
                facts.verified,
                "this conductor or electrode was found not to be whole up to the service",
                "check that this conductor or electrode is whole up to the service",
            );
            bonded.unwrap_or_else(|| GroundConnection {
                conditions: vec!["at a point that stays accessible".to_owned()],
                ..of(Lawful::Yes, "an accessible point of the grounding electrode system or its conductor", &[listed])
            })
        }
        ConnectionPlace::Source(SourceKind::ServiceNeutral) => GroundConnection {
            conditions: vec!["only inside the service equipment, never at a panel fed from it".to_owned()],
            ..of(Lawful::Yes, "the neutral inside the service equipment", &[listed])
        },
        ConnectionPlace::Source(SourceKind::WaterPipe) => {
            let limit = WATER_PIPE.in_force(code)?;
            let cites = [listed, limit.cite];
            match facts.from_entry {
                None => of(Lawful::NotChecked, "measure along the pipe from where it enters the building", &cites),
                Some(along) if along > limit.value => of(
                    Lawful::No,
                    "a water pipe inside the building counts only within 5 ft of where it enters",
                    &cites,
                ),
                Some(_) => given(
                    facts.verified,
                    "this pipe was found not to be a sound part of the grounding electrode system",
                    "check that the pipe is metal into the ground, and bonded around its meter to the service",
                )
                .unwrap_or_else(|| of(Lawful::Yes, "the water pipe within 5 ft of where it enters", &cites)),
            }
        }
        ConnectionPlace::Source(SourceKind::LoneRod) => {
            let earth = EARTH_IS_NO_PATH.in_force(code)?.cite;
            of(Lawful::No, "a rod of its own is no ground: the earth does not carry enough to open a breaker", &[earth])
        }
        ConnectionPlace::Source(SourceKind::OtherMetal) => {
            of(Lawful::No, "this metal is not among the places at which a ground may be connected", &[listed])
        }
        ConnectionPlace::BoxOfTheSameCircuit => same_circuit(code)?,
        ConnectionPlace::BoxOfAnotherCircuit => another_circuit(facts, code, &of)?,
    })
}

fn another_circuit(
    facts: SourceFacts,
    code: &CodeInForce,
    of: &impl Fn(Lawful, &str, &[Citation]) -> GroundConnection,
) -> Result<GroundConnection, NotChecked> {
    let donor = ANOTHER_CIRCUIT.in_force(code)?;
    let cites = [donor.cite];
    if !donor.value {
        return Ok(of(Lawful::No, "this edition does not list the grounding conductor of another circuit", &cites));
    }
    let early = match (facts.same_panel, facts.verified) {
        (Some(false), _) => Some((Lawful::No, "the two circuits do not start in the same panel")),
        (_, Some(false)) => Some((Lawful::No, "the ground in this box was found not to be whole up to the panel")),
        (None, _) => Some((Lawful::NotChecked, "find out in which panel each of the two circuits starts")),
        (_, None) => Some((Lawful::NotChecked, "check that the ground in this box is whole up to the panel")),
        (Some(true), Some(true)) => None,
    };
    if let Some((lawful, why)) = early {
        return Ok(of(lawful, why, &cites));
    }
    let Some(breaker) = facts.breaker else {
        return Ok(of(Lawful::NotChecked, "find out the breaker's rating, which sizes the conductor", &cites));
    };
    let size = egc_size(breaker, ConductorMetal::Copper, None, code)?;
    let sized = [donor.cite, size.cite];
    Ok(match facts.gauge {
        _ if facts.through_metal => {
            of(Lawful::Yes, "a verified grounded box of another circuit from the same panel", &cites)
        }
        Some(gauge) if gauge < size.value => of(
            Lawful::No,
            &format!("its ground is {gauge}, and a {breaker} circuit asks for {} copper", size.value),
            &sized,
        ),
        Some(_) => of(Lawful::Yes, "a verified grounded box of another circuit from the same panel", &cites),
        None => of(Lawful::NotChecked, "find out the size of the grounding conductor in this box", &sized),
    })
}
