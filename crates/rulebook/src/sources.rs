//! The public sources in which values of the code were read, in short.

/// A licence-renewal course's page on the 2014 change of 406.4(D).
pub const COURSE_77: &str = "electricallicenserenewal.com, NEC content 77";
/// A licence-renewal course's page on the 2017 change of 406.4(D)(2).
pub const COURSE_306: &str = "electricallicenserenewal.com, NEC content 306";
/// A licence-renewal course's page on the 2017 change of 406.4(D)(4).
pub const COURSE_307: &str = "electricallicenserenewal.com, NEC content 307";
/// A licence-renewal course's page on the 2017 change of 406.4(D)(5).
pub const COURSE_308: &str = "electricallicenserenewal.com, NEC content 308";
/// A licence-renewal course's page on the 2017 change of 406.12.
pub const COURSE_312: &str = "electricallicenserenewal.com, NEC content 312";
/// A licence-renewal course's page on the rooms of 210.12 in 2023.
pub const COURSE_1429: &str = "electricallicenserenewal.com, NEC content 1429";
/// A trade magazine's article on receptacles under the 2023 edition.
pub const MAGAZINE_2023_RECEPTACLES: &str = "trade magazine, `NEC requirements for receptacles` (2023)";
/// A continuing-education guide to the 2023 edition.
pub const GUIDE_2023: &str = "expertce.com, NEC 2023 guide";
/// A municipal code that reproduces the 2014 list.
pub const MUNICIPAL_2014: &str = "ecode360.com/27891398 (2014 list)";
/// A state regulation that reproduces the 2020 list.
pub const STATE_LIST_2020: &str = "S.C. Code Regs. 8-1103 (2020 list)";
/// A home builders' summary of the 2023 edition.
pub const BUILDERS_2023: &str = "nahb.org, 2023 NEC adoption kit";
/// A trade magazine's article on measuring six feet.
pub const MAGAZINE_MEASURING: &str = "ecmweb.com, article 55344219 (measurement)";
/// A trade magazine's article on remodelling under the 2020 edition.
pub const MAGAZINE_REMODEL: &str = "ecmag.com, `Remodel with care`";
/// An inspectors' magazine's article on measuring six feet.
pub const INSPECTORS_MEASURING: &str = "iaeimagazine.org, NEC 2020 changes to measurement";
/// A trade magazine's page on the 2017 changes.
pub const MAGAZINE_2017: &str = "ecmweb.com, 2017 NEC changes";
/// A trade magazine's article on the scope of the 2020 list.
pub const MAGAZINE_2020_SCOPE: &str = "ecmweb.com, article 21129151";
/// A trade magazine's questions and answers on equipment grounding.
pub const MAGAZINE_EQUIPMENT_GROUNDING: &str = "ecmweb.com, equipment grounding, part 3";
/// A trade forum's thread that quotes the 2014 text.
pub const FORUM_2014_SOURCES: &str = "trade forum, thread 116386";
