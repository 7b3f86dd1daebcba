//! The answer about one opening: what it is owed and every remedy, lawful or not.

use super::basis::BasisAnswer;
use super::duties::RequiresAnswer;
use super::remedy::RemedyAnswer;
use crate::facts::{Facts, judged};
use dwelling::{BoxIndex, GroundFact, Holding};
use rulebook::{Citation, CodeInForce, Judgement, Opening, Remedy, RemedyVerdict};
use schemars::JsonSchema;
use serde::Serialize;

/// What the code says about one opening.
#[derive(Clone, Debug, PartialEq, Eq, Serialize, JsonSchema)]
pub struct OptionsAnswer {
    /// The edition of the code.
    pub edition: u16,
    /// The box, where the opening comes from a survey.
    #[serde(rename = "box")]
    pub box_id: Option<String>,
    /// What is known of its ground.
    pub ground: GroundFact,
    /// What it is owed when its receptacle is replaced.
    pub requires: RequiresAnswer,
    /// Every remedy, always all of them, from least to most.
    pub remedies: Vec<RemedyAnswer>,
    /// Cautions that hold whatever is chosen.
    pub cautions: Vec<String>,
    /// What the answer rests on.
    pub basis: BasisAnswer,
    /// Whether anything could not be checked, so that the answer is not the last word.
    pub not_checked: bool,
}

/// The answer about an opening of which only these facts are known.
#[must_use]
pub fn options_answer(opening: &Opening, code: &CodeInForce) -> OptionsAnswer {
    answer(None, opening, opening.holds != Holding::Unknown, &judged(opening, false, code), code)
}

/// The answer about an opening of a surveyed dwelling.
#[must_use]
pub fn options_of_box(facts: &Facts, index: BoxIndex) -> OptionsAnswer {
    let at = facts.at(index);
    let id = facts.dwelling.device_box(index).id.clone();
    answer(Some(id), &at.as_found, true, &at.judged_as_found, &facts.code)
}

/// The remedies that are listed: a blank cover where the owner asks for one.
pub(super) fn listed<'a>(opening: &Opening, judged: &'a Judgement) -> Vec<&'a RemedyVerdict> {
    let asked = |remedy: Remedy| remedy != Remedy::BlankCover || opening.taking_out.is_some();
    judged.remedies.iter().filter(|verdict| asked(verdict.remedy)).collect()
}

/// The citations of a verdict and of its conditions.
pub(super) fn all_cites(verdict: &RemedyVerdict) -> impl Iterator<Item = &Citation> {
    verdict.cites.iter().chain(verdict.conditions.iter().flat_map(|condition| &condition.cites))
}

fn answer(
    box_id: Option<String>,
    opening: &Opening,
    asks_to_leave: bool,
    judged: &Judgement,
    code: &CodeInForce,
) -> OptionsAnswer {
    let cites = judged.duties.iter().flat_map(|duty| &duty.cites);
    let listed = listed(opening, judged);
    let basis = BasisAnswer::of(cites.chain(listed.iter().copied().flat_map(all_cites)));
    let remedies: Vec<RemedyAnswer> = listed.into_iter().map(RemedyAnswer::of).collect();
    let requires = RequiresAnswer::of(judged);
    let open_duty = requires.named().iter().any(|(_, duty)| duty.need == rulebook::Need::NotChecked);
    // Whether leaving it is lawful cannot be told of an opening of which nobody asked what it holds.
    let asked = |remedy: &&RemedyAnswer| remedy.remedy != Remedy::Leave || asks_to_leave;
    let not_checked = open_duty || remedies.iter().filter(asked).any(|remedy| remedy.standing == "not-checked");
    OptionsAnswer {
        edition: code.edition.year(),
        box_id,
        ground: opening.ground,
        requires,
        remedies,
        cautions: judged.cautions.clone(),
        basis,
        not_checked,
    }
}
