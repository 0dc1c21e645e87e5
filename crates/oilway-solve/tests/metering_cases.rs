//! One-divider metering against instances whose objective others have proven, feasibility judged by a plain checker.

mod metering_checker;

use metering_checker::{Instance, check, instances};
use oilway_solve::metering::Infeasible;

/// Solves every instance of a file and compares the objective; returns how many had an answer and how many had none.
fn compare(file: &str, text: &str) -> (usize, usize) {
    let (mut solved, mut without) = (0, 0);
    for Instance { id, question, objective } in instances(text) {
        match (question.solve(), objective) {
            (Ok(found), Some(objective)) => {
                assert_eq!(found.objective, objective, "{file} {id}: objective");
                assert_eq!(found.proof.lower_bound, objective, "{file} {id}: proof");
                check(&question, &found).unwrap_or_else(|fault| panic!("{file} {id}: {fault}"));
                solved += 1;
            }
            (Err(Infeasible::Faults { faults }), _) => panic!("{file} {id}: {faults:?}"),
            (Err(Infeasible::EffortSpent { .. }), _) => panic!("{file} {id}: no proof"),
            (Err(_), None) => without += 1,
            (found, objective) => panic!("{file} {id}: {objective:?} expected, {found:?} found"),
        }
    }
    (solved, without)
}

// Standing: second-hand; objectives proven by a constraint programme and by a mixed-integer programme.
#[test]
fn the_proven_instances_reach_their_objective() {
    let text = include_str!("../../../reference/metering/one_divider.json");
    assert_eq!(compare("one_divider.json", text), (4, 0));
}

// Standing: own instances, objectives by OR-Tools CP-SAT (see reference/independent/metering_ortools.py).
#[test]
fn random_instances_agree_with_an_independent_constraint_solver() {
    let text = include_str!("../../../reference/metering/independent.json");
    let (solved, without) = compare("independent.json", text);
    assert!(solved >= 100 && without >= 10, "{solved} with an answer, {without} without");
}

#[test]
fn the_checker_finds_a_spoilt_answer() {
    let text = include_str!("../../../reference/metering/one_divider.json");
    let Instance { question, .. } = instances(text).remove(0);
    let found = question.solve().unwrap();
    assert!(check(&question, &found).is_ok());

    let mut dearer = found.clone();
    dearer.objective += 1;
    assert!(check(&question, &dearer).unwrap_err().contains("cost"));

    let mut slower = found.clone();
    slower.period.ticks = 14_400;
    assert!(check(&question, &slower).unwrap_err().contains("band"));

    let mut unpaired = found.clone();
    let single = unpaired.choices.iter().position(|choice| choice.feed.outlets().len() == 1).unwrap();
    unpaired.choices[single].feed = oilway_solve::metering::Feed::One(0);
    assert!(check(&question, &unpaired).is_err());
}

#[test]
fn the_same_question_gives_the_same_answer() {
    let text = include_str!("../../../reference/metering/one_divider.json");
    for Instance { question, .. } in instances(text) {
        assert_eq!(question.solve(), question.solve());
    }
}

#[test]
fn the_order_of_the_points_does_not_change_cost_error_or_period() {
    let text = include_str!("../../../reference/metering/one_divider.json");
    for Instance { mut question, .. } in instances(text) {
        let before = question.solve().unwrap();
        question.points.reverse();
        let after = question.solve().unwrap();
        assert_eq!(
            (before.objective, before.worst_error, before.period),
            (after.objective, after.worst_error, after.period)
        );
    }
}
