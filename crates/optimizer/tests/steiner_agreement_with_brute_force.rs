//! The Steiner search agrees with trying every set of lines, whatever it may use, and its certificates hold.

mod steiner_support;

use optimizer::steiner::{Answer, Instance, Methods, SteinerLimits, certify, check_bound, check_tree, solve_steiner};
use steiner_support::{Chance, KINDS, Kind, instance, least};

const OF_EACH_KIND: u64 = 200;

const ALL: Methods = Methods { distances: true, reduced_costs: true, labels: true, front: true };
const NONE: Methods = Methods { distances: false, reduced_costs: false, labels: false, front: false };
const WAYS: [Methods; 7] = [
    ALL,
    NONE,
    Methods { labels: true, ..NONE },
    Methods { front: true, ..NONE },
    Methods { distances: true, ..NONE },
    Methods { reduced_costs: true, ..NONE },
    Methods { labels: false, front: false, ..ALL },
];

fn solved(instance: &Instance, methods: Methods, nodes: Option<u64>) -> Answer {
    solve_steiner(instance, &mut SteinerLimits { nodes, stop: &mut || false, methods }).expect("a sound instance")
}

/// By trying every set of lines.
#[test]
fn every_way_of_searching_finds_what_trying_everything_finds() {
    for kind in KINDS {
        let mut feasible = 0;
        for seed in 1..=OF_EACH_KIND {
            let instance = instance(&mut Chance::new(seed), kind, 8, 11);
            let expected = least(&instance);
            feasible += u64::from(expected.is_some());
            for methods in WAYS {
                let answer = solved(&instance, methods, None);
                let found = answer.tree.as_ref().map(|tree| tree.cost);
                assert_eq!(found, expected, "{kind:?} {seed} {methods:?} {instance:?}");
                assert!(answer.is_proved(), "{kind:?} {seed} {methods:?}: {answer:?}");
                if let Some(tree) = &answer.tree {
                    assert_eq!(check_tree(&instance, tree), Ok(tree.cost), "{kind:?} {seed} {instance:?}");
                }
            }
        }
        assert!(feasible > OF_EACH_KIND / 4, "{kind:?}: {feasible}");
    }
}

/// By trying every set of lines.
#[test]
fn a_certificate_proves_the_optimum_and_nothing_above_it() {
    let (mut proved, mut with_drops) = (0, 0);
    for kind in KINDS {
        for seed in 1..=OF_EACH_KIND {
            let instance = instance(&mut Chance::new(seed + 5000), kind, 8, 11);
            let Some(tree) = solved(&instance, ALL, None).tree else { continue };
            let Some(certificate) = certify(&instance, &tree, 200) else {
                assert!(kind == Kind::Arborescence, "{kind:?} {seed} {instance:?}");
                continue;
            };
            proved += 1;
            with_drops += u64::from(!certificate.dropped.is_empty());
            assert_eq!(check_bound(&instance, tree.cost, &certificate), Ok(()), "{kind:?} {seed} {instance:?}");
            let can_hold = certificate.cases.iter().any(|case| !case.steps.is_empty());
            if can_hold {
                assert!(
                    check_bound(&instance, least(&instance).unwrap() + 1, &certificate).is_err(),
                    "{kind:?} {seed}"
                );
            }
        }
    }
    assert!(
        proved > 3 * OF_EACH_KIND / 2 && with_drops > OF_EACH_KIND / 4,
        "{proved}, {with_drops} with dropped lines"
    );
}

/// By trying every set of lines.
#[test]
fn a_search_stopped_at_once_never_claims_more_than_it_knows() {
    for kind in KINDS {
        for seed in 1..=OF_EACH_KIND {
            let instance = instance(&mut Chance::new(seed + 9000), kind, 8, 11);
            let expected = least(&instance);
            for nodes in [0, 1, 2] {
                let answer = solved(&instance, NONE, Some(nodes));
                let claims = [answer.bound, expected, answer.tree.as_ref().map(|tree| tree.cost)];
                if let [Some(bound), Some(expected), _] = claims {
                    assert!(bound <= expected, "{kind:?} {seed} {nodes}: {answer:?}");
                }
                assert!(answer.bound.is_some() || expected.is_none(), "{kind:?} {seed} {nodes}");
                if let Some(tree) = &answer.tree {
                    assert!(Some(tree.cost) >= expected);
                    assert_eq!(check_tree(&instance, tree), Ok(tree.cost));
                }
            }
        }
    }
}

/// The ways share little beside branching: on larger instances they hold each other.
#[test]
fn the_ways_of_searching_agree_on_larger_instances() {
    for kind in KINDS {
        for seed in (1..=25).chain([101]) {
            let instance = instance(&mut Chance::new(seed + 20_000), kind, 40, 90);
            let costs = WAYS.map(|methods| {
                let answer = solved(&instance, methods, Some(300));
                let best = answer.tree.as_ref().map(|tree| tree.cost);
                answer.is_proved().then_some(best)
            });
            let claimed: Vec<_> = costs.iter().flatten().collect();
            assert!(!claimed.is_empty(), "{kind:?} {seed}");
            assert!(claimed.iter().all(|cost| *cost == claimed[0]), "{kind:?} {seed}: {costs:?}");
        }
    }
}
