//! Makes the plan that was asked for: with its wishes, within its sum of money, as the offer that was picked.

use crate::command_error::CommandError;
use crate::offer_pick::OfferPick;
use diagnosis::feeding::{feeding_orders, on_likeliest_orders};
use dwelling::Dwelling;
use estimate::{Cents, PriceBook};
use remedies::{
    CertificateAnswer, LawAnswer, OffersAnswer, PlanAnswer, PlanFault, Planned, Wish, next_best_answers, offers_answer,
    plan_answer, with_other_orders,
};
use rulebook::CodeInForce;

/// What is asked of a plan.
#[derive(Debug, Default)]
pub struct Asked {
    /// What the owner lays down.
    pub wishes: Vec<Wish>,
    /// The sum of money to stay within.
    pub budget: Option<Cents>,
    /// The offer to plan; the offers are then told too.
    pub offer: Option<OfferPick>,
    /// Whether it is told what other feeding orders would change, where one is assumed.
    pub other_orders: bool,
    /// Whether the next best is told at each opening.
    pub next_best: bool,
    /// Whether the certificate is made that nothing costs less.
    pub certificate: bool,
}

/// A fault of the planner as the program tells it.
pub fn fault(PlanFault(faults): PlanFault) -> CommandError {
    CommandError::Fault(faults.join("; "))
}

/// A dwelling to plan on: where nobody knows what feeds what, the most probable order is assumed, and marked so.
pub fn to_plan_on(dwelling: Dwelling) -> Dwelling {
    let orders = feeding_orders(&dwelling);
    if orders.is_empty() { dwelling } else { on_likeliest_orders(&dwelling, &orders) }
}

impl Asked {
    /// The plan, and the offers where they are asked for.
    ///
    /// # Errors
    /// [`CommandError::Usage`] where there is no such offer, [`CommandError::Fault`] for a fault of this program.
    pub fn planned<'a>(
        &self,
        dwelling: &'a Dwelling,
        code: CodeInForce,
        book: &PriceBook,
    ) -> Result<(Planned<'a>, Option<OffersAnswer>), CommandError> {
        let mut planned = Planned::steered(dwelling, code, book, &self.wishes).map_err(fault)?;
        if let Some(budget) = self.budget {
            planned.stay_within(budget).map_err(fault)?;
        }
        let Some(pick) = self.offer else { return Ok((planned, None)) };
        let offers = planned.offers().map_err(fault)?;
        let number = pick.number_in(&offers).map_err(CommandError::Usage)?;
        let Some(offer) = offers.offers.get(number.saturating_sub(1)) else { return Ok((planned, None)) };
        planned.take(&offers.frontier[offer.point], offers.complete);
        let told = offers_answer(&planned, &offers, number);
        Ok((planned, Some(told)))
    }

    /// The answer about a plan that was so made.
    ///
    /// # Errors
    /// [`CommandError::Fault`] for a fault of this program.
    pub fn answer(
        &self,
        planned: &Planned,
        offers: Option<OffersAnswer>,
        law: &LawAnswer,
        book: &PriceBook,
    ) -> Result<PlanAnswer, CommandError> {
        let mut answer = plan_answer(planned, law, book.is_demo);
        answer.offers = offers;
        if self.other_orders {
            answer.feeding = with_other_orders(&answer.feeding, planned, book).map_err(fault)?;
        }
        if self.next_best {
            answer.next_best = Some(next_best_answers(planned).map_err(fault)?);
        }
        if self.certificate {
            answer.certificate = CertificateAnswer::of(planned);
        }
        Ok(answer)
    }
}
