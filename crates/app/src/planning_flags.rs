//! How a dwelling is to be planned, from the command line: at which prices, with which wishes, under which code.

use crate::command_error::CommandError;
use crate::law::CodeFlags;
use crate::offer_pick::OfferPick;
use crate::planning::Asked;
use crate::steering_flags::SteeringFlags;
use dwelling::Dwelling;
use std::path::PathBuf;

/// How a dwelling is to be planned.
#[derive(Debug, clap::Args)]
pub struct PlanningFlags {
    /// Your own price book, a .toml or .xlsx file (see `thirdwire prices`); where there was a plan, the one it was made with
    #[arg(long, value_name = "FILE")]
    pub prices: Option<PathBuf>,
    #[command(flatten)]
    pub steering: SteeringFlags,
    #[command(flatten)]
    pub code: CodeFlags,
}

impl PlanningFlags {
    /// What is asked of the plan, with this offer. A sum to stay within leaves no offers to choose from.
    ///
    /// # Errors
    /// [`CommandError::Usage`] with every id that the survey does not have.
    pub fn asked(&self, dwelling: &Dwelling, offer: Option<OfferPick>) -> Result<Asked, CommandError> {
        let budget = self.steering.budget;
        let offer = offer.filter(|_| budget.is_none());
        Ok(Asked { wishes: self.steering.wishes(dwelling)?, budget, offer, ..Asked::default() })
    }
}
