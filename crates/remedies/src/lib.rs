//! From a dwelling to its plan: the candidate remedies of every opening, the cheapest lawful whole, and what it means.

mod answer;
mod assemble;
mod assumed_feeds;
mod at_panel;
mod built_cables;
mod built_routes;
mod candidate;
mod candidates;
mod changes;
mod dangers;
mod device;
mod facts;
mod feed_through;
pub mod in_words;
mod leakage;
mod network;
mod next_best;
mod obstacles;
mod offers;
mod outline;
mod planned;
mod price_line;
mod repairs;
mod room_in_box;
mod route_prices;
mod search_limits;
mod sensitivity;
mod standing;
mod stated_routes;
mod steering;
mod taking_out;
mod unknowns;
mod verify;
mod ways;
mod worth;

pub use answer::called as offer_called;
pub use answer::{
    ALLOWED, AdviceAnswer, AssumedOrderAnswer, BasisAnswer, BeliefAnswer, BudgetAnswer, CertificateAnswer,
    ChangeAnswer, CircuitAnswer, ClashAnswer, DangerAnswer, DutyAnswer, EditionsAnswer, EstimateAnswer,
    ExplanationAnswer, FeedAnswer, FeedingAnswer, FeedingOutcomeAnswer, FeedingState, FeedingTestAnswer, FillAnswer,
    FillLineAnswer, FindingAnswer, FindingsAnswer, JobAnswer, LabourAnswer, LawAnswer, LegAnswer, LineAnswer, LineOf,
    LinkAnswer, MoneyAnswer, NextAnswer, NextBestAnswer, NotBuiltAnswer, NotPricedAnswer, OddsAnswer, OfferAnswer,
    OffersAnswer, OpeningAnswer, OpeningChanges, OptionsAnswer, OrderAnswer, OtherOrderAnswer, OutcomeAnswer,
    OwnerPriceAnswer, PackAnswer, PieceAnswer, PieceAt, PlanAnswer, PlanStatus, PointAnswer, PriceMovedAnswer,
    RefusedRouteAnswer, RemedyAnswer, RequiresAnswer, RouteAnswer, RuleSaid, RuledOut, RunAnswer, Saying, SearchAnswer,
    SensitivityAnswer, SteeringAnswer, StepAnswer, StepChangeAnswer, StepUpAnswer, TakeoffAnswer, TotalsAnswer,
    TriedAnswer, UnknownAnswer, ValueSaid, WhyAnswer, WishAnswer, editions_answer, estimate_answer,
    explanation_answers, feeding_answers, findings_answer, how_known, next_best_answers, offers_answer, options_answer,
    options_of_box, percent, plan_answer, sensitivity_answer, why_answer, with_other_orders, work_first,
};
pub use assemble::{Assembled, assemble};
pub use candidate::{Candidate, Shortfall, Step};
pub use dangers::{DangerRepair, DangerWork};
pub use device::{AtPanel, BoxWork, Device};
pub use facts::{Facts, OpeningFacts, opening_of};
pub use feed_through::FeedThroughLimits;
pub use network::{BuyableRoute, Network, NotBuilt, Origin, RefusedRoute, WayEnd};
pub use next_best::NextBest;
pub use offers::{Offer, OfferKind, Offers, Point};
pub use planned::{PlanFault, Planned, Proof, Protector};
pub use search_limits::OF_A_PLAN as LIMITS_OF_A_PLAN;
pub use sensitivity::{MOVES, PriceLine, Sensitive, SensitivePrice, Sensitivity, Tried};
pub use standing::Standing;
pub use steering::{Steered, Wish};
pub use unknowns::{Possible, Unknown, UnknownAt};
pub use verify::PlanClaim;
pub use ways::{Leg, Way};
