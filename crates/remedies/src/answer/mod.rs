//! Answers: plain values with stable names that print as JSON and that every screen and paper reads.

mod assumed_order;
mod basis;
mod beliefs;
mod certificate;
mod dangers;
mod duties;
mod editions;
mod estimate;
mod feeding;
mod fill;
mod findings;
mod law;
mod lines;
mod links;
mod next_best;
mod offers;
mod opening;
mod options;
mod owner;
mod plan;
mod pricing_notes;
mod reading;
mod reasons;
mod remedy;
mod routes;
mod sensitivity;
mod steering;
mod why;

pub use assumed_order::{AssumedOrderAnswer, OtherOrderAnswer, StepChangeAnswer, with_other_orders};
pub use basis::BasisAnswer;
pub use beliefs::{
    AdviceAnswer, BeliefAnswer, ClashAnswer, ExplanationAnswer, OddsAnswer, OutcomeAnswer, SearchAnswer, StepAnswer,
    explanation_answers, percent,
};
pub use certificate::CertificateAnswer;
pub use dangers::{ALLOWED, DangerAnswer, NotPricedAnswer};
pub use duties::{DutyAnswer, RequiresAnswer};
pub use editions::{ChangeAnswer, EditionsAnswer, OpeningChanges, editions_answer};
pub use estimate::{EstimateAnswer, LabourAnswer, PackAnswer, PieceAnswer, PieceAt, TakeoffAnswer, estimate_answer};
pub use feeding::{
    FeedAnswer, FeedingAnswer, FeedingOutcomeAnswer, FeedingState, FeedingTestAnswer, OrderAnswer, RunAnswer,
    feeding_answers,
};
pub use fill::{FillAnswer, FillLineAnswer};
pub use findings::{FindingAnswer, FindingsAnswer, NextAnswer, findings_answer};
pub use law::LawAnswer;
pub use lines::{LineAnswer, LineOf};
pub use links::LinkAnswer;
pub use next_best::{NextBestAnswer, next_best_answers};
pub use offers::{OfferAnswer, OffersAnswer, PointAnswer, StepUpAnswer, called, offers_answer};
pub use opening::{MoneyAnswer, OpeningAnswer, RuledOut, work_first};
pub use options::{OptionsAnswer, options_answer, options_of_box};
pub use owner::OwnerPriceAnswer;
pub use plan::{CircuitAnswer, JobAnswer, PlanAnswer, PlanStatus, TotalsAnswer, plan_answer};
pub use remedy::RemedyAnswer;
pub use routes::{LegAnswer, NotBuiltAnswer, RefusedRouteAnswer, RouteAnswer};
pub use sensitivity::{PriceMovedAnswer, SensitivityAnswer, TriedAnswer, UnknownAnswer, sensitivity_answer};
pub use steering::{BudgetAnswer, SteeringAnswer, WishAnswer};
pub use why::{RuleSaid, Saying, ValueSaid, WhyAnswer, how_known, why_answer};
