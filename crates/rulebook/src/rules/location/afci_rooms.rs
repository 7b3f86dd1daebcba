//! Rooms whose replaced receptacles need AFCI protection.

use crate::amendment::Dated;
use crate::cited::{ByEdition, Citation, Cited, Known, NotChecked, Reading, Value};
use crate::code::CodeInForce;
use crate::day::Day;
use crate::duty::Duty;
use crate::edition::Edition::{Nec2008, Nec2011, Nec2014, Nec2017, Nec2020, Nec2023};
use crate::in_words::InWords;
use crate::opening::{Opening, Supply};
use crate::remedy::Remedy;
use crate::rule::{Decides, Rule, Says, Statement};
use crate::sources::{COURSE_77, COURSE_307, COURSE_2008, MAGAZINE_2011, MAGAZINE_2023_RECEPTACLES};
use crate::tables::afci_rooms::{RATINGS, ROOMS, Standing, standing};

/// The rule.
pub const RULE: Rule = Rule {
    id: "replacement.afci",
    title: "In most living rooms a replaced receptacle needs AFCI protection",
    page: include_str!("afci_rooms.md"),
    decides: &[Decides::Duty(Duty::Afci)],
    values: VALUES,
    judge,
};

const VALUES: &[&dyn Value] = &[&ON_REPLACEMENT, &ROOMS, &RATINGS, &FOUR_CONDITIONS, &READILY_ACCESSIBLE];

/// Whether a replaced receptacle is reached.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
enum OnReplacement {
    Never,
    From(Day),
    Always,
}

const ARGUED_IN_2014: &str = "most read it as reaching every receptacle replaced in a listed room; to some the exception for short \
     pieces of wiring, or the words on circuits that require it elsewhere, excuse a mere replacement (trade forum, threads 111542, \
     121820 and 150725)";

const ON_REPLACEMENT: ByEdition<OnReplacement> = ByEdition {
    id: "replacement.afci.on-replacement",
    readings: &[
        Reading::read(Nec2008, "406.3(D)", COURSE_2008, OnReplacement::Never),
        Reading::read(Nec2011, "406.4(D)(4)", MAGAZINE_2011, OnReplacement::From(Day::on(2014, 1, 1))),
        Reading::disputed(Nec2014, "406.4(D)(4)", ARGUED_IN_2014, OnReplacement::Always),
        Reading::read(Nec2017, "406.4(D)(4)", COURSE_307, OnReplacement::Always),
        Reading::read(Nec2020, "406.4(D)(4)", "ecmweb.com, article 21182073", OnReplacement::Always),
        Reading::read(Nec2023, "406.4(D)(4)", "trade forum, thread 2584935", OnReplacement::Always),
    ],
};

const BELIEVED_DELETED: &str = "believed to have been deleted in 2020; one who has the book may find it kept";

/// Whether the edition excepts a GFCI replacement without ground under four conditions that must all hold.
const FOUR_CONDITIONS: ByEdition<bool> = ByEdition {
    id: "replacement.afci.four-conditions",
    readings: &[
        Reading::read(Nec2008, "406.3(D)", COURSE_2008, false),
        Reading::read(Nec2011, "406.4(D)(4)", MAGAZINE_2011, false),
        Reading::remembered(Nec2014, "406.4(D)(4)", false),
        Reading::read(Nec2017, "406.4(D)(4), exception 1", COURSE_307, true),
        Reading::disputed(Nec2020, "406.4(D)(4)", BELIEVED_DELETED, false),
        Reading::disputed(Nec2023, "406.4(D)(4)", BELIEVED_DELETED, false),
    ],
};

/// Whether an AFCI receptacle used as a replacement must be readily accessible.
const READILY_ACCESSIBLE: ByEdition<bool> = ByEdition {
    id: "replacement.afci.readily-accessible",
    readings: &[
        Reading::remembered(Nec2008, "406.3(D)", false),
        Reading::remembered(Nec2011, "406.4(D)(4)", false),
        Reading::read(Nec2014, "406.4(D)", COURSE_77, true),
        Reading::remembered(Nec2017, "406.4(D)", true),
        Reading::remembered(Nec2020, "406.4(D)", true),
        Reading::read(Nec2023, "406.4(D)", MAGAZINE_2023_RECEPTACLES, true),
    ],
};

/// The remedies at which a receptacle is replaced.
const REPLACING: [Remedy; 7] = [
    Remedy::NongroundingReceptacle,
    Remedy::GfciReceptacle,
    Remedy::DownstreamOfGfci,
    Remedy::GfciBreaker,
    Remedy::SeparateEgc,
    Remedy::NewCable,
    Remedy::RestoreExistingGround,
];

fn judge(opening: &Opening, code: &CodeInForce) -> Result<Vec<Statement>, NotChecked> {
    if !opening.is_receptacle_outlet() {
        return Ok(Vec::new());
    }
    let duty = Duty::Afci;
    let (standing, listed) = standing(opening.room_use, code)?;
    match &standing {
        Standing::NotListed => return Ok(Vec::new()),
        Standing::TakenOut(by) => {
            let why = format!("{by}: the {} is not in the list here", opening.room_use);
            return Ok(vec![
                Says::Excuses(duty, why.into()).by(&listed.into_iter().collect::<Vec<_>>()).changed(Some(by)),
            ]);
        }
        _ => {}
    }
    let ratings = RATINGS.in_force(code)?;
    let list = listed.unwrap_or(ratings.cite);
    let rated = match opening.breaker {
        Some(breaker) if !ratings.value.contains(&breaker.get()) => {
            let why = format!("a {breaker} circuit is not among those that the AFCI rule reaches");
            return Ok(vec![Says::Excuses(duty, why.into()).by(&[list])]);
        }
        breaker => breaker.is_some(),
    };
    if opening.supply() == Some(Supply::V240) {
        return Ok(vec![Says::Excuses(duty, "the AFCI rule reaches circuits of 120 V".into()).by(&[list])]);
    }
    // A new outlet is reached by the list itself.
    let (asks, dated_by) = if opening.is_replacement() {
        match begun(code)? {
            Begun::Yes(cite, by) => (Some(cite), by),
            Begun::No(why, cite, by) => {
                return Ok(vec![Says::Excuses(duty, why.into()).by(&[cite]).changed(by.as_deref())]);
            }
            Begun::Unknown(why, cite, by) => {
                return Ok(vec![Says::CannotTell(duty, why.into()).by(&[cite]).changed(by.as_deref())]);
            }
        }
    } else {
        (None, None)
    };
    let cites: Vec<Citation> = asks.into_iter().chain([list]).collect();
    let (says, by) = match standing {
        Standing::NotListed | Standing::TakenOut(_) => return Ok(Vec::new()),
        Standing::Unknown(missing, by) => (Says::CannotTell(duty, missing.into()), by),
        _ if !rated => (Says::CannotTell(duty, "find out the rating of the circuit's breaker".into()), None),
        Standing::Listed => {
            (Says::Owes(duty, format!("the {} is one of the rooms listed", opening.room_use).into()), None)
        }
        Standing::PutIn(by) => {
            (Says::Owes(duty, format!("the authority's list has the {}", opening.room_use).into()), Some(by))
        }
        Standing::Similar(why) => (Says::Owes(duty, why.into()), None),
        Standing::Argued(both) => (Says::Disputes(duty, both.into()), None),
    };
    let how = match says {
        Says::Owes(..) => "give the receptacle AFCI protection",
        Says::Disputes(..) => {
            "where the authority counts this room among those listed, give the receptacle AFCI protection"
        }
        _ => "where it turns out to be due, give the receptacle AFCI protection",
    };
    let by_what = "by an AFCI receptacle here or upstream, or a combination-type breaker made for the panel";
    let mut said = vec![says.by(&cites).changed(by.as_deref()).changed(dated_by.as_deref())];
    for remedy in REPLACING {
        said.push(Says::Conditions(remedy, format!("{how}: {by_what}").into()).by(&cites).changed(by.as_deref()));
    }
    let reach = READILY_ACCESSIBLE.in_force(code)?;
    if reach.value && opening.readily_accessible != Some(true) && opening.is_replacement() {
        let only_if = "an AFCI receptacle is fitted only where it can be reached quickly";
        for remedy in REPLACING {
            said.push(Says::Conditions(remedy, only_if.into()).by(&[reach.cite]));
        }
    }
    if opening.is_replacement() {
        said.extend(exception(FOUR_CONDITIONS.in_force(code)?));
    }
    Ok(said)
}

/// Whether the duty has begun on the day of the permit.
enum Begun {
    Yes(Citation, Option<String>),
    No(String, Citation, Option<String>),
    Unknown(String, Citation, Option<String>),
}

fn begun(code: &CodeInForce) -> Result<Begun, NotChecked> {
    let published = ON_REPLACEMENT.in_force(code)?;
    let (from, by) = match code.dated(Dated::AfciOnReplacement) {
        Some((day, by)) => (OnReplacement::From(day), Some(by)),
        None => (published.value, None),
    };
    Ok(match (from, code.permit_day) {
        (OnReplacement::Always, _) => Begun::Yes(published.cite, by),
        (OnReplacement::Never, _) => Begun::No(
            "this edition asks for no AFCI protection of a replaced receptacle".to_owned(),
            published.cite,
            by,
        ),
        (OnReplacement::From(first), None) => {
            let why =
                format!("find out the day of the permit: a replaced receptacle needs AFCI protection from {first} on");
            Begun::Unknown(why, published.cite, by)
        }
        (OnReplacement::From(first), Some(day)) if day < first => {
            let why =
                format!("a replaced receptacle needs AFCI protection from {first} on, and the permit is of {day}");
            Begun::No(why, published.cite, by)
        }
        (OnReplacement::From(_), Some(_)) => Begun::Yes(published.cite, by),
    })
}

/// The exception for a GFCI receptacle without ground, which is practically empty where dual-function devices are sold. Where it is
/// disputed whether an edition has it, that is said.
fn exception(four_conditions: Cited<bool>) -> Option<Statement> {
    let text = "AFCI protection may be left out only where all four hold: the receptacle is a GFCI one without ground, no \
                grounding conductor can practically be brought, no combination-type AFCI breaker can be bought for the \
                panel, and no receptacle that is GFCI and AFCI in one can be bought; such receptacles are sold";
    let unsure = "whether this edition kept the exception of four conditions, the last of which is that no receptacle that is GFCI \
                  and AFCI in one can be bought, is disputed; such receptacles are sold";
    let words = match (four_conditions.value, four_conditions.cite.known) {
        (true, _) => text,
        (false, Known::Disputed(_)) => unsure,
        (false, _) => return None,
    };
    Some(Says::Conditions(Remedy::GfciReceptacle, words.into()).by(&[four_conditions.cite]))
}

impl InWords for OnReplacement {
    fn in_words(&self) -> String {
        match self {
            Self::Never => "not asked".to_owned(),
            Self::From(day) => format!("asked from {day} on"),
            Self::Always => "asked".to_owned(),
        }
    }
}
