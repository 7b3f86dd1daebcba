//! Whether what the plan puts into the wall is what is there: the device, its kind, the box.

use crate::case::OpeningCase;
use crate::claim::{Against, ClaimAnswer, ClaimKind, Claimed, against};
use crate::source::{sections_or, source_of};
use dwelling::{BoxSeen, Holding};
use electrical::Volume;
use remedies::{BoxWork, Device};
use rulebook::{Lawful, Remedy, RemedyVerdict};

/// The claims about the device and the box of an opening.
pub(crate) fn claims(case: &OpeningCase) -> Vec<ClaimAnswer> {
    let mut claims = vec![device(case)];
    claims.extend(box_work(case));
    let opening = case.opening;
    let fits_receptacle = !matches!(opening.device, Device::Kept | Device::TwoSlot | Device::Blank);
    let kinds = [
        (
            ClaimKind::TamperResistant,
            &opening.requires.tamper_resistant,
            case.seen.last(|after| after.tamper_resistant),
        ),
        (
            ClaimKind::WeatherResistant,
            &opening.requires.weather_resistant,
            case.seen.last(|after| after.weather_resistant),
        ),
    ];
    for (claim, duty, seen) in kinds.into_iter().filter(|(_, duty, _)| duty.required && fits_receptacle) {
        let kind = if claim == ClaimKind::TamperResistant { "tamper-resistant" } else { "weather-resistant" };
        let claimed = Claimed {
            claim,
            of: None,
            says: format!("the new receptacle is a {kind} one"),
            must_read: "its mark, seen on its face".to_owned(),
            source: sections_or(&duty.cites, claim),
        };
        claims.push(match seen {
            Some(true) => claimed.proved(format!("marked as {kind}")),
            Some(false) => claimed.contradicted(against(
                "no such mark",
                "a receptacle of another kind was fitted",
                format!("fit a {kind} receptacle"),
            )),
            None => claimed.open(format!("look for the mark and write `{} = true`", kind.replace('-', "_"))),
        });
    }
    claims
}

fn device(case: &OpeningCase) -> ClaimAnswer {
    let planned = case.case.state.dwelling.device_box(case.at).holds;
    let claimed = Claimed {
        claim: ClaimKind::Device,
        of: None,
        says: format!("the box holds: {}", planned.in_words()),
        must_read: planned.in_words().to_owned(),
        source: sections_or(&case.opening.cites, ClaimKind::Device),
    };
    match case.seen.last(|after| after.fitted) {
        None => claimed.open(format!("look, and write what is fitted, such as `fitted = \"{}\"`", planned.name())),
        Some(fitted) if fitted == planned => claimed.proved(fitted.in_words()),
        Some(fitted) => claimed.contradicted(another_device(case, fitted)),
    }
}

/// What is said where something else was fitted than was planned: never accepted as it is, even where it is lawful.
fn another_device(case: &OpeningCase, fitted: Holding) -> Against {
    let seen = fitted.in_words();
    let cause = "the work differs from the plan";
    let Some(verdict) = verdict_on(case, fitted) else {
        return against(seen, cause, "fit what the plan says, or plan anew with what is there");
    };
    let remedy = verdict.remedy.name();
    match verdict.lawful {
        Lawful::Yes | Lawful::Disputed => against(
            seen,
            format!("{cause}: the code knows this as `{remedy}`"),
            format!(
                "plan anew with it: put `holds = \"{}\"` and what is wired into the survey as found, so that its \
                 protection, markings and box are counted; until then nothing here is settled",
                fitted.name()
            ),
        ),
        Lawful::No => against(
            seen,
            format!("{cause}, and `{remedy}` is not lawful here: {}", verdict.why_not.join("; ")),
            "fit what the plan says",
        ),
        Lawful::NotChecked => against(
            seen,
            format!("{cause}, and whether `{remedy}` is lawful here could not be checked"),
            "fit what the plan says, or plan anew with what is there",
        ),
    }
}

/// What the code says of the remedy that a fitted device amounts to.
fn verdict_on<'a>(case: &OpeningCase<'a>, fitted: Holding) -> Option<&'a RemedyVerdict> {
    let opening = case.opening;
    let remedy = match fitted {
        Holding::TwoSlot => Remedy::NongroundingReceptacle,
        Holding::Gfci | Holding::Dual if !opening.grounded => Remedy::GfciReceptacle,
        Holding::Splice => Remedy::BlankCover,
        Holding::ThreeSlot | Holding::Afci if !opening.grounded => match opening.protected_by.as_deref() {
            Some(by) if by.starts_with("box") => Remedy::DownstreamOfGfci,
            _ => Remedy::GfciBreaker,
        },
        Holding::ThreeSlot | Holding::Afci | Holding::Gfci | Holding::Dual => opening.remedy?,
        _ => return None,
    };
    let judged = &case.case.planned.facts.at(case.at).judged_to_plan;
    judged.remedies.iter().find(|verdict| verdict.remedy == remedy)
}

fn box_work(case: &OpeningCase) -> Option<ClaimAnswer> {
    let seen = case.seen.last(|after| after.box_work);
    let planned = case.opening.box_work;
    if planned == BoxWork::Keep && matches!(seen, None | Some(BoxSeen::Kept)) {
        return None;
    }
    let (done, words) = match planned {
        BoxWork::Keep => (BoxSeen::Kept, "the box stays as it was"),
        BoxWork::Extend => (BoxSeen::Extended, "an extension is on the box"),
        BoxWork::Replace | BoxWork::ReplaceWide => (BoxSeen::Replaced, "a new box is in the wall"),
    };
    let asked = planned.new_volume().or(planned.added_volume());
    let least = least_volume(case, planned, asked);
    let must = least.map_or(String::new(), |least| format!(", marked {least} or more"));
    let claimed = Claimed {
        claim: ClaimKind::BoxWork,
        of: None,
        says: format!("{words}{must}"),
        must_read: format!("{words}{must}"),
        source: source_of(ClaimKind::BoxWork),
    };
    Some(match (seen, least, case.seen.last(|after| after.box_volume)) {
        (None, ..) => claimed.open("look, and write what was done with the box and the volume marked on it"),
        (Some(seen), ..) if seen != done => claimed.contradicted(against(
            format!("box {}", seen.name()),
            "the work differs from the plan",
            "count the box anew: put what is there into the survey as found and plan anew, or change it as planned",
        )),
        (Some(_), None, _) => claimed.proved(format!("box {}", done.name())),
        (Some(_), Some(_), None) => claimed.open("write the volume that is marked on it"),
        (Some(_), Some(least), Some(volume)) if volume < least => claimed.contradicted(against(
            format!("marked {volume}"),
            "a smaller box was fitted than the plan counted on",
            "count the box anew with this volume, or fit a larger one",
        )),
        (Some(_), Some(_), Some(volume)) => claimed.proved(format!("box {}, marked {volume}", done.name())),
    })
}

/// The least volume that must be marked on what was fitted: what the count of the finished box takes, where it is known; else
/// what the plan counted on.
fn least_volume(case: &OpeningCase, planned: BoxWork, asked: Option<Volume>) -> Option<Volume> {
    if planned.new_volume().is_none() {
        return asked;
    }
    let row = case.case.fills.iter().find(|row| row.subject.id == case.opening.box_id);
    let taken = row.and_then(|row| row.found.as_ref()?.most);
    let taken = taken.map(|taken| Volume::ten_thousandths((taken * 10_000.0).round() as i64));
    taken.or(asked)
}
