//! The certificate: written only where everything is proved, and saying what was proved and how.

use crate::planned_job::with_example;
use papers::{Closed, Job, Paper, PaperSize, certificate, typeset};

fn certificate_of(job: &Job) -> Option<Paper> {
    certificate(&Closed { dwelling: job.dwelling, plan: job.plan, proof: job.proof?, date: job.date.clone() })
}

#[test]
fn there_is_none_where_anything_is_open_or_contradicts() {
    with_example("cottage-half-done", |job| assert_eq!(certificate_of(job), None));
    with_example("cottage-done", |job| {
        let mut proof = job.proof.unwrap().clone();
        proof.status = closeout::ProofVerdict::Open;
        assert_eq!(certificate_of(&Job { proof: Some(&proof), ..job.clone() }), None);
        assert!(certificate_of(job).is_some());
    });
}

#[test]
fn it_names_every_opening_with_all_that_proves_it() {
    with_example("cottage-done", |job| {
        let words = certificate_of(job).unwrap().words();
        for opening in &job.proof.unwrap().openings {
            assert!(words.contains(&opening.box_id));
            for claim in &opening.claims {
                let how = claim.how.as_ref().unwrap();
                // A cell begins with a capital.
                let all_but_first: String = how.chars().skip(1).collect();
                assert!(words.contains(&all_but_first), "{}: {how}", opening.box_id);
            }
        }
    });
}

/// By hand: three receptacles of the cottage have no ground: L-1, L-2 and BA-1.
#[test]
fn it_tells_the_next_inspector_where_open_ground_is_expected_and_what_would_be_wrong() {
    with_example("cottage-done", |job| {
        let words = certificate_of(job).unwrap().words();
        assert!(words.contains("5: 2 with an equipment ground, 3 without"), "{words}");
        assert!(words.contains("A plug-in tester says “open ground” at these openings. That is as it must be"));
        assert!(words.contains("A tester that says “correct” at one of them is the alarming answer"));
        assert!(
            words.contains("L-2 Living room at panel main: GFCI/AFCI breaker GFCI Protected · No Equipment Ground")
        );
    });
}

#[test]
fn it_claims_no_more_than_was_read_and_leaves_room_to_sign() {
    with_example("cottage-done", |job| {
        let words = certificate_of(job).unwrap().words();
        for said in [
            "certifies the readings that were written down",
            "nothing of wiring that nobody saw",
            "it is no approval: the authority having jurisdiction decides",
            "Licensed electrician Licence Signature Day",
            "National Electrical Code, 2020",
        ] {
            assert!(words.contains(said), "{said}");
        }
        assert!(!words.to_lowercase().contains("complies") && !words.contains('`'), "{words}");
    });
}

#[test]
fn it_is_set_on_both_sizes_and_the_same_each_time() {
    with_example("cottage-done", |job| {
        let paper = certificate_of(job).unwrap();
        for size in [PaperSize::Letter, PaperSize::A4] {
            let set = typeset(&paper, size).unwrap();
            assert!(set.bytes.starts_with(b"%PDF") && set.pages <= 3, "{} pages", set.pages);
            assert_eq!(set.bytes, typeset(&paper, size).unwrap().bytes);
        }
    });
}
