//! Questions of metering in JSON: one divider with its points, for trying the exact search on data of one's own and for comparing it
//! with other solvers.
//!
//! A file holds `{ "instances": [ { "id": …, "model": "M1" or "M2", "data": { … }, "result": { … } } ] }`. Volumes are in mm³,
//! demands in mm³/h, bands in percent of the demand, periods in seconds, costs in any unit. Models other than these two are
//! passed over and named.

use oilway_text::{Message, message};
use serde::Deserialize;

/// One question of a file.
#[derive(Clone, Debug, PartialEq)]
pub struct MeteringInstance {
    /// Its name.
    pub id: String,
    /// Which rules hold for the outlets.
    pub model: MeteringModel,
    /// Demand of each point, mm³/h.
    pub demand: Vec<u32>,
    /// Least delivery of each point, percent of its demand.
    pub lo: Vec<u32>,
    /// Largest delivery of each point, percent of its demand.
    pub hi: Vec<u32>,
    /// Volume of one outlet of each size, mm³.
    pub sizes: Vec<u32>,
    /// Cost of a piston of each size.
    pub piston_cost: Vec<u32>,
    /// Shortest period of a cycle, s.
    pub shortest_period: u32,
    /// Longest period of a cycle, s.
    pub longest_period: u32,
    /// Step of the period, s.
    pub period_step: u32,
    /// Fewest pistons.
    pub fewest_pistons: u32,
    /// Most pistons.
    pub most_pistons: u32,
    /// For each point the only size that it may use, where one is settled; empty where none is.
    pub kept_size: Vec<Option<usize>>,
    /// The proven answer, if the file holds one: the least cost, or none where it says that there is no answer.
    pub proven: Option<Option<f64>>,
}

/// The rules for outlets.
#[derive(Clone, Copy, Debug, PartialEq, Eq)]
pub enum MeteringModel {
    /// A point takes one outlet, or both of a piston joined at this cost.
    Joined {
        /// Cost of joining.
        join_cost: u32,
    },
    /// A point takes up to so many outlets, led together outside at this cost each.
    Teed {
        /// Most outlets of one point.
        most_outlets: u32,
        /// Cost of each further outlet.
        tee_cost: u32,
    },
}

#[derive(Deserialize)]
struct File {
    instances: Vec<Row>,
}

#[derive(Deserialize)]
struct Row {
    id: String,
    model: String,
    data: serde_json::Value,
    #[serde(default)]
    result: Option<ResultRow>,
    /// In place of a result: the least cost, or null where there is no answer.
    #[serde(default, deserialize_with = "said_even_if_null")]
    objective: Option<Option<f64>>,
}

/// A key that says null is not a key that is missing.
fn said_even_if_null<'de, D: serde::Deserializer<'de>>(from: D) -> Result<Option<Option<f64>>, D::Error> {
    Option::deserialize(from).map(Some)
}

#[derive(Deserialize)]
struct ResultRow {
    status: String,
    #[serde(default)]
    objective: Option<f64>,
}

#[derive(Deserialize)]
#[serde(deny_unknown_fields)]
#[allow(non_snake_case, reason = "the names that the file format has")]
struct Data {
    demand: Vec<u32>,
    lo: Vec<u32>,
    hi: Vec<u32>,
    sizes: Vec<u32>,
    piston_cost: Vec<u32>,
    T_min: u32,
    T_max: u32,
    T_step: u32,
    N_min: u32,
    N_max: u32,
    #[serde(default)]
    join_cost: Option<u32>,
    #[serde(default)]
    K_max: Option<u32>,
    #[serde(default)]
    tee_cost: Option<u32>,
    #[serde(default)]
    kept_size: Vec<Option<usize>>,
}

/// The questions of a file, and what is wrong with it or passed over, each with the name of the question.
pub fn read_metering(json: &str) -> (Vec<MeteringInstance>, Vec<Message>) {
    let file: File = match serde_json::from_str(json) {
        Ok(file) => file,
        Err(error) => return (Vec::new(), vec![message!("store-metering-file", reason = error.to_string())]),
    };
    let mut instances = Vec::new();
    let mut remarks = Vec::new();
    for row in file.instances {
        let id = row.id.clone();
        match instance(row) {
            Ok(instance) => instances.push(instance),
            Err(remark) => remarks.push(remark.with("id", id)),
        }
    }
    (instances, remarks)
}

fn instance(row: Row) -> Result<MeteringInstance, Message> {
    if !matches!(row.model.as_str(), "M1" | "M2") {
        return Err(message!("store-metering-model", model = row.model));
    }
    let data: Data = serde_json::from_value(row.data)
        .map_err(|error| message!("store-metering-data", reason = error.to_string()))?;
    let points = data.demand.len();
    if data.lo.len() != points || data.hi.len() != points || data.piston_cost.len() != data.sizes.len() {
        return Err(message!("store-metering-lengths"));
    }
    let kept_fits = data.kept_size.is_empty() || data.kept_size.len() == points;
    if !kept_fits || data.kept_size.iter().flatten().any(|size| *size >= data.sizes.len()) {
        return Err(message!("store-metering-kept"));
    }
    let model = match (row.model.as_str(), data.join_cost, data.K_max, data.tee_cost) {
        ("M1", Some(join_cost), None, None) => MeteringModel::Joined { join_cost },
        ("M2", None, Some(most_outlets), Some(tee_cost)) => MeteringModel::Teed { most_outlets, tee_cost },
        _ => return Err(message!("store-metering-rules", model = row.model)),
    };
    Ok(MeteringInstance {
        id: row.id,
        model,
        demand: data.demand,
        lo: data.lo,
        hi: data.hi,
        sizes: data.sizes,
        piston_cost: data.piston_cost,
        shortest_period: data.T_min,
        longest_period: data.T_max,
        period_step: data.T_step,
        fewest_pistons: data.N_min,
        most_pistons: data.N_max,
        kept_size: data.kept_size,
        proven: row.objective.or_else(|| row.result.and_then(proven)),
    })
}

fn proven(result: ResultRow) -> Option<Option<f64>> {
    match (result.status.as_str(), result.objective) {
        ("OPTIMAL", Some(cost)) => Some(Some(cost)),
        ("INFEASIBLE", _) => Some(None),
        _ => None,
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    const GOOD: &str = r#"{ "instances": [ { "id": "a", "model": "M1", "data": {
        "demand": [96], "lo": [90], "hi": [130], "sizes": [25, 40], "piston_cost": [20, 20], "join_cost": 3,
        "T_min": 600, "T_max": 14400, "T_step": 10, "N_min": 3, "N_max": 12 },
        "result": { "status": "OPTIMAL", "objective": 66 } } ] }"#;

    #[test]
    fn a_question_is_read_with_its_proven_answer() {
        let (read, remarks) = read_metering(GOOD);
        assert_eq!(remarks, []);
        assert_eq!(read[0].model, MeteringModel::Joined { join_cost: 3 });
        assert_eq!((read[0].sizes.as_slice(), read[0].proven), (&[25, 40][..], Some(Some(66.0))));
        let none = GOOD.replace("\"OPTIMAL\", \"objective\": 66", "\"INFEASIBLE\"");
        assert_eq!(read_metering(&none).0[0].proven, Some(None));
    }

    #[test]
    fn the_project_s_own_questions_are_all_read_with_their_answers() {
        for (json, number) in [
            (include_str!("../../../reference/metering/one_divider.json"), 4),
            (include_str!("../../../reference/metering/independent.json"), 172),
        ] {
            let (read, remarks) = read_metering(json);
            assert_eq!((read.len(), remarks), (number, Vec::new()));
            assert!(read.iter().all(|instance| instance.proven.is_some()));
        }
    }

    #[test]
    fn what_cannot_be_read_is_named_with_its_question_and_the_others_are_read() {
        let keys =
            |json: &str| -> Vec<&'static str> { read_metering(json).1.iter().map(|m| m.key).collect() };
        assert_eq!(keys("{"), ["store-metering-file"]);
        assert_eq!(keys(&GOOD.replace("\"M1\"", "\"M6\"")), ["store-metering-model"]);
        assert_eq!(keys(&GOOD.replace("\"lo\": [90]", "\"lo\": []")), ["store-metering-lengths"]);
        assert_eq!(keys(&GOOD.replace("\"demand\": [96]", "\"demand\": [-1]")), ["store-metering-data"]);
        assert_eq!(keys(&GOOD.replace("\"demand\"", "\"demands\"")), ["store-metering-data"]);
        assert_eq!(keys(&GOOD.replace("\"M1\"", "\"M2\"")), ["store-metering-rules"]);
    }
}
