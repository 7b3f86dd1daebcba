//! Which edition places have adopted, since when, and what they changed in it, as far as a public source says so.
//!
//! A place is one file and two lines here. Only what has a public source is entered; what is remembered says so.

mod alabama;
mod arkansas;
mod california;
mod colorado;
mod connecticut;
mod delaware;
mod florida;
mod georgia;
mod idaho;
mod indiana;
mod iowa;
mod kentucky;
mod louisiana;
mod maine;
mod maryland;
mod massachusetts;
mod michigan;
mod minnesota;
mod montana;
mod nebraska;
mod new_hampshire;
mod new_jersey;
mod new_mexico;
mod north_carolina;
mod north_dakota;
mod ohio;
mod oklahoma;
mod oregon;
mod pennsylvania;
mod record;
mod rhode_island;
mod south_carolina;
mod south_dakota;
mod tennessee;
mod texas;
mod utah;
mod vermont;
mod virginia;
mod washington;

pub use record::{ASK_THE_AUTHORITY, Adopted, Adoption, Record, Since, adopted, code_for};

/// Every place with a record, by name.
const ADOPTIONS: &[Adoption] = &[
    alabama::ADOPTION,
    arkansas::ADOPTION,
    california::ADOPTION,
    colorado::ADOPTION,
    connecticut::ADOPTION,
    delaware::ADOPTION,
    florida::ADOPTION,
    georgia::ADOPTION,
    idaho::ADOPTION,
    indiana::ADOPTION,
    iowa::ADOPTION,
    kentucky::ADOPTION,
    louisiana::ADOPTION,
    maine::ADOPTION,
    maryland::ADOPTION,
    massachusetts::ADOPTION,
    michigan::ADOPTION,
    minnesota::ADOPTION,
    montana::ADOPTION,
    nebraska::ADOPTION,
    new_hampshire::ADOPTION,
    new_jersey::ADOPTION,
    new_mexico::ADOPTION,
    north_carolina::ADOPTION,
    north_dakota::ADOPTION,
    ohio::ADOPTION,
    oklahoma::ADOPTION,
    oregon::ADOPTION,
    pennsylvania::ADOPTION,
    rhode_island::ADOPTION,
    south_carolina::ADOPTION,
    south_dakota::ADOPTION,
    tennessee::ADOPTION,
    texas::ADOPTION,
    utah::ADOPTION,
    vermont::ADOPTION,
    virginia::ADOPTION,
    washington::ADOPTION,
];

/// The states that leave the adoption to their cities and counties.
const LEFT_TO_THE_LOCAL: &[(&str, &str)] = &[
    ("arizona", "Arizona"),
    ("illinois", "Illinois"),
    ("kansas", "Kansas"),
    ("mississippi", "Mississippi"),
    ("missouri", "Missouri"),
    ("nevada", "Nevada"),
];

/// Every place with a record, by name.
#[must_use]
pub const fn adoptions() -> &'static [Adoption] {
    ADOPTIONS
}
