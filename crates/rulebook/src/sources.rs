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
/// The full public text of the 2013 California Electrical Code, which adopts the 2011 edition.
pub const TEXT_2011: &str = "California Electrical Code 2013 (adopts the 2011 text)";
/// A course page on receptacles under the 2008 edition.
pub const COURSE_2008: &str = "solar365.com, national electric code 2008, receptacles";
/// A training company's newsletter on the 2008 edition.
pub const NEWSLETTER_2008: &str = "jade1.com, newsletter of spring 2008";
/// An inspectors' forum on the 2008 list of GFCI places.
pub const INSPECTORS_FORUM_2008_LIST: &str = "forum.nachi.org, thread 12658 (2008 list)";
/// An inspectors' forum on weather-resistant receptacles and on a state's exceptions under the 2008 edition.
pub const INSPECTORS_FORUM_2008: &str = "inspectionnews.net, thread 12614";
/// A home-repair forum's thread that quotes the 2011 form of 250.130(C).
pub const FORUM_2011_CONNECTIONS: &str = "diychatroom.com, thread 153678 (quotes 250.130(C))";
/// A trade magazine's answer on metal water pipes.
pub const MAGAZINE_WATER_PIPE: &str = "ecmweb.com, code Q&A, metal piping";
/// A trade magazine's page on the 2011 changes.
pub const MAGAZINE_2011: &str = "ecmweb.com, 2011 NEC changes";
/// A trade magazine's article on tamper-resistant receptacles under the 2008 edition.
pub const MAGAZINE_2008_TAMPER: &str = "ecmag.com, `Plug it` (2008)";
/// A training article on 250.122 in the 2026 edition.
pub const TRAINING_2026: &str = "fasttraxsystem.com, training article on 250.122 (2026): no effect on 15 and 20 A work";
/// A licence-renewal course's page on the 2026 change of 210.8(A).
pub const COURSE_1851: &str = "electricallicenserenewal.com, NEC content 1851 (2026)";
/// A licence-renewal course's page on the 2026 change of 210.8(F).
pub const COURSE_1852: &str = "electricallicenserenewal.com, NEC content 1852 (2026)";
/// A licence-renewal course's page on the 2026 change of 210.12(E).
pub const COURSE_1855: &str = "electricallicenserenewal.com, NEC content 1855";
/// A device maker's page on the 2023 changes.
pub const MAKER_2023: &str = "a device maker's page on the 2023 changes";
/// A trade forum's post that quotes the 2008 rooms.
pub const FORUM_2008_ROOMS: &str = "trade forum, post 1196351 (2008 rooms)";
/// A trade newsletter on 2014 and a reproduced comparison with 2011.
pub const NEWSLETTER_2014: &str = "trade newsletter and a reproduced comparison of 2011 and 2014";
/// A licence-renewal course's page on a state's change of 210.12 under the 2017 edition.
pub const COURSE_3528: &str = "electricallicenserenewal.com, NEC content 3528";
/// A training page on 210.12.
pub const TRAINING_2020: &str = "training page on 210.12 from 2020 to 2023";
/// A contractor's training page on 210.12(C) and (D) in 2020.
pub const CORNER_2020: &str = "rosendinuniversity.com, code corner 210.12";
/// A licence-renewal course's page on 210.12 in 2014.
pub const COURSE_21: &str = "electricallicenserenewal.com, NEC content 21";
/// A licence-renewal course's page on wiring extensions in 2014.
pub const COURSE_22: &str = "electricallicenserenewal.com, NEC content 22";
/// A licence-renewal course's page on wiring extensions in 2017.
pub const COURSE_236: &str = "electricallicenserenewal.com, NEC content 236";
/// A licence-renewal course's page on 422.5 in 2020.
pub const COURSE_810: &str = "electricallicenserenewal.com, NEC content 810";
/// A licence-renewal course's page on 210.8(F) in 2020.
pub const COURSE_812: &str = "electricallicenserenewal.com, NEC content 812";
/// A trade forum's thread on dishwashers.
pub const FORUM_DISHWASHERS: &str = "trade forum, thread 2559641";
/// A device maker's page on outdoor outlets.
pub const MAKER_OUTDOORS: &str = "a device maker's page on 210.8(F)";
/// A licence-renewal course's page on 406.9(C).
pub const COURSE_1494: &str = "electricallicenserenewal.com, NEC content 1494";
/// A licence-renewal course's page on panel directories in 2014.
pub const COURSE_121: &str = "electricallicenserenewal.com, NEC content 121";
/// A licence-renewal course's page on panel directories in 2020.
pub const COURSE_1497: &str = "electricallicenserenewal.com, NEC content 1497";
/// A trade magazine's series on the 2023 edition, part 11.
pub const MAGAZINE_2023_PART_11: &str = "ecmag.com, 2023 changes, part 11";
/// A licence-renewal course's page on the 2017 change of 250.148, with the 2014 text beside it.
pub const COURSE_271: &str = "electricallicenserenewal.com, NEC content 271";
/// A trade magazine's article on equipment grounding of July 2017.
pub const MAGAZINE_GROUNDING_4: &str = "ecmweb.com, methods of equipment grounding, part 4 (July 2017)";
/// A distributor's questions and answers on 406.12 in 2017.
pub const ANSWERS_2017_TAMPER: &str = "p3-inc.com, use of tamper-resistant receptacles (2017)";
/// A trade magazine's article on the receptacles of dwellings under the 2011 edition.
pub const MAGAZINE_2011_AROUND_THE_HOUSE: &str = "ecmag.com, `Around the House` (2011)";
/// A trade forum's thread that gives the panel's action on foyers.
pub const FORUM_2011_FOYERS: &str = "trade forum, thread 71808 (proposal 2-223 for 2011, on foyers)";
/// A device maker's page on the 2017 change of 210.52(G), with that of 2014.
pub const MAKER_2017_GARAGES: &str = "a device maker's page on 210.52(G) in 2017";
/// A device maker's page on the 2023 change of 210.52(G).
pub const MAKER_2023_BASEMENTS: &str = "a device maker's page on 210.52(G) in 2023";
