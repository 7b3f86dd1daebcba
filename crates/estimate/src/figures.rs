//! The figures of a price book as they are written, before anything is worked out of them.

use crate::cents::Cents;
use crate::charges::Charges;
use crate::condition::WorkCondition;
use crate::material::Material;
use crate::task::Task;

/// What a price book says. A thing or a task that is left out costs and takes what the demo book says, but for those that put
/// right what is dangerous: these have no price then. All else that is left out adds nothing.
#[derive(Clone, Debug, Default, PartialEq, Eq)]
pub struct Figures {
    /// An hour of an electrician's work.
    pub hour: Cents,
    /// An hour of a helper's work, where there is one.
    pub helper_hour: Option<Cents>,
    /// What things cost, by the piece or by the foot.
    pub material: Vec<(Material, Cents)>,
    /// In what packs things are sold: pieces or feet in one.
    pub packs: Vec<(Material, Vec<u32>)>,
    /// How long tasks take on the site, in minutes.
    pub minutes: Vec<(Task, u32)>,
    /// The tasks that take an electrician and a helper.
    pub for_two: Vec<Task>,
    /// What conditions make of the plain time, in percent.
    pub conditions: Vec<(WorkCondition, u32)>,
    /// What is charged besides.
    pub charges: Charges,
}
