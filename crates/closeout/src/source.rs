//! Where each claim, or the test that proves it, comes from.

use crate::claim::ClaimKind;
use calculations::{SourceAnswer, SourceKind};

/// The source of a kind of claim where the plan names no section of its own for it.
pub(crate) fn source_of(claim: ClaimKind) -> SourceAnswer {
    let (kind, cite, from_memory) = match claim {
        ClaimKind::Device => (SourceKind::Advice, "the plan; common practice, no source", false),
        ClaimKind::BoxWork => (SourceKind::Rule, "314.16(A), (B)", true),
        ClaimKind::TamperResistant => (SourceKind::Rule, "406.12", true),
        ClaimKind::WeatherResistant => (SourceKind::Rule, "406.9(A), (B)", true),
        ClaimKind::HotNeutral => (SourceKind::Standard, "ANSI C84.1, range A, at the service", true),
        ClaimKind::HotNeutralLoaded => {
            (SourceKind::Advice, "reckoned from the surveyed runs; the test is common practice, no source", false)
        }
        ClaimKind::Polarity => (SourceKind::Rule, "200.11", true),
        ClaimKind::Ground => (
            SourceKind::Advice,
            "inspectors' forum on proving a local false ground; the volts are reckoned from the surveyed runs",
            false,
        ),
        ClaimKind::GroundConnected => (SourceKind::Rule, "250.148", true),
        ClaimKind::GroundPath => {
            (SourceKind::Advice, "one instrument maker's rule of thumb, under 1 Ω for people; common practice", false)
        }
        ClaimKind::NoGround => (SourceKind::Rule, "250.142(B)", true),
        ClaimKind::Trips | ClaimKind::DeadWhenTripped => {
            (SourceKind::Rule, "110.3(B), with the instructions of the device", true)
        }
        ClaimKind::Marking | ClaimKind::NoFalseMarking => (SourceKind::Rule, "406.4(D)(2)", true),
        ClaimKind::Directory => (SourceKind::Rule, "408.4(A)", true),
        ClaimKind::NotProtected | ClaimKind::Recorded | ClaimKind::NoDanger => {
            (SourceKind::Advice, "common practice, no source", false)
        }
    };
    SourceAnswer::other(kind, cite, from_memory)
}

/// The sections that the plan itself names for a claim, or else those of its kind.
pub(crate) fn sections_or(sections: &[String], claim: ClaimKind) -> SourceAnswer {
    if sections.is_empty() {
        source_of(claim)
    } else {
        SourceAnswer::other(SourceKind::Rule, sections.join(", "), false)
    }
}
