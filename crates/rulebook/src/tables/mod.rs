//! Tables of the code that several rules read.

pub mod afci_rooms;
pub mod box_counting;
pub mod conductor_allowance;
pub mod conductor_area;
pub mod egc_size;
pub mod gfci_places;
pub mod grounded_equipment;
pub mod marking_place;
pub mod required_outlets;
pub mod six_feet;
pub mod small_conductors;

use crate::cited::Value;

/// Every value of the tables, for lists of what has been read and what is remembered.
pub const VALUES: &[&dyn Value] = &[
    &afci_rooms::ROOMS,
    &afci_rooms::RATINGS,
    &box_counting::INSULATED,
    &box_counting::LOOPED,
    &box_counting::CLAMPS,
    &box_counting::FITTINGS,
    &box_counting::STRAPS,
    &box_counting::SHARING_FIRST_ALLOWANCE,
    &box_counting::TERMINAL_BLOCKS,
    &box_counting::UNDER_CANOPY,
    &conductor_allowance::ALLOWANCES,
    &conductor_area::AREAS,
    &egc_size::ROWS,
    &egc_size::ENLARGED,
    &gfci_places::PLACES,
    &gfci_places::BASEMENTS,
    &gfci_places::KITCHENS,
    &gfci_places::SINKS,
    &gfci_places::TUBS,
    &gfci_places::WET_INDOORS,
    &gfci_places::SCOPE,
    &gfci_places::ALARMS_ANYWHERE,
    &gfci_places::EXHAUST_FANS,
    &gfci_places::CEILING_SUPPORTS,
    &six_feet::METHOD,
    &six_feet::LIMIT,
    &grounded_equipment::LISTED,
    &grounded_equipment::DISPUTED,
    &marking_place::PLACE,
    &marking_place::VISIBLE,
    &small_conductors::LARGEST_BREAKER,
    &required_outlets::WALLS,
    &required_outlets::HIGHEST,
    &required_outlets::BASINS,
    &required_outlets::COUNTERTOPS,
    &required_outlets::OUTDOORS,
    &required_outlets::LAUNDRIES,
    &required_outlets::SERVICE_PLACES,
    &required_outlets::EACH_CAR,
    &required_outlets::HALLWAYS,
    &required_outlets::FOYERS,
    &required_outlets::NEAR_EQUIPMENT,
    &required_outlets::NEAR_APPLIANCES,
];
