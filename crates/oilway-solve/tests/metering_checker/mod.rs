//! A plain checker of one-divider answers and a reader of instance files, sharing no code with the search.

#![allow(dead_code)] // each test file uses a part
#![allow(clippy::unwrap_used)] // a test: a file of instances that cannot be read must fail it

use oilway_solve::metering::{
    Combining, Feed, Given, Limits, OneDivider, Optimum, PeriodRange, SectionSize, Wanted,
};
use serde_json::Value;

/// An instance of a file.
pub(crate) struct Instance {
    pub(crate) id: String,
    pub(crate) question: OneDivider,
    /// `None` where there is proven to be no answer.
    pub(crate) objective: Option<u64>,
}

/// Reads the instances of a file.
pub(crate) fn instances(text: &str) -> Vec<Instance> {
    let file: Value = serde_json::from_str(text).unwrap();
    file["instances"].as_array().unwrap().iter().map(instance).collect()
}

fn instance(case: &Value) -> Instance {
    let data = &case["data"];
    let number = |name: &str| u32::try_from(data[name].as_u64().unwrap()).unwrap();
    let list = |name: &str| -> Vec<u32> {
        data[name].as_array().unwrap().iter().map(|n| n.as_u64().unwrap() as u32).collect()
    };
    let (lo, hi) = (list("lo"), list("hi"));
    let kept =
        |i: usize| data["kept_size"].get(i).and_then(Value::as_u64).map(|s| Given::Sizes(vec![s as usize]));
    let point =
        |(i, &demand): (usize, &u32)| Wanted { demand, lo_pct: lo[i], hi_pct: hi[i], allowed: kept(i) };
    let size = |(&volume_mm3, &cost): (&u32, &u32)| SectionSize { volume_mm3, cost };
    let combining = match case["model"].as_str().unwrap() {
        "M1" => Combining::joined_at(number("join_cost")),
        "M2" => Combining::teed(number("K_max") as u8, number("tee_cost")),
        other => panic!("model {other} is not one of a single divider"),
    };
    let objective =
        if case["result"].is_object() { &case["result"]["objective"] } else { &case["objective"] };
    Instance {
        id: case["id"].as_str().unwrap().to_owned(),
        question: OneDivider {
            points: list("demand").iter().enumerate().map(point).collect(),
            sizes: list("sizes").iter().zip(&list("piston_cost")).map(size).collect(),
            limits: Limits {
                pistons: (number("N_min"), number("N_max")),
                combining,
                period: PeriodRange::seconds(number("T_min"), number("T_max"), number("T_step")),
                effort: Limits::USUAL_EFFORT,
            },
        },
        objective: objective.as_u64(),
    }
}

/// Judges an answer from its feeds and period alone; names the first thing that does not hold.
pub(crate) fn check(question: &OneDivider, found: &Optimum) -> Result<(), String> {
    let OneDivider { points, sizes, limits } = question;
    if found.choices.len() != points.len() {
        return Err("not one feed for each point".into());
    }
    period(&limits.period, found)?;
    for (i, (point, choice)) in points.iter().zip(&found.choices).enumerate() {
        let volume: u32 = choice.feed.outlets().iter().map(|&s| sizes[s].volume_mm3).sum();
        in_band(i, point, u128::from(volume), found)?;
        kept(i, point, &choice.feed)?;
    }
    pistons_and_cost(question, found)
}

fn period(range: &PeriodRange, found: &Optimum) -> Result<(), String> {
    let ticks = found.period.ticks;
    let inside = ticks >= u64::from(range.shortest) && ticks <= u64::from(range.longest);
    if inside && ticks.is_multiple_of(u64::from(range.step)) {
        Ok(())
    } else {
        Err(format!("period {ticks} not open"))
    }
}

fn in_band(i: usize, point: &Wanted, volume: u128, found: &Optimum) -> Result<(), String> {
    let wanted = u128::from(point.demand) * u128::from(found.period.ticks);
    let given = 360_000 * u128::from(found.period.ticks_per_second) * volume;
    if u128::from(point.lo_pct) * wanted <= given && given <= u128::from(point.hi_pct) * wanted {
        Ok(())
    } else {
        Err(format!("point {i} outside its band"))
    }
}

fn kept(i: usize, point: &Wanted, feed: &Feed) -> Result<(), String> {
    let holds = match &point.allowed {
        None => true,
        Some(Given::Feed(given)) => given == feed,
        Some(Given::OneOf(feeds)) => feeds.contains(feed),
        Some(Given::Sizes(sizes)) => feed.outlets().iter().all(|size| sizes.contains(size)),
    };
    if holds { Ok(()) } else { Err(format!("point {i} does not keep what was given")) }
}

fn pistons_and_cost(question: &OneDivider, found: &Optimum) -> Result<(), String> {
    let OneDivider { sizes, limits, .. } = question;
    let feeds: Vec<&Feed> = found.choices.iter().map(|choice| &choice.feed).collect();
    let (mut pistons, mut cost) = (0u32, 0u64);
    for (size, section) in sizes.iter().enumerate() {
        let joined = feeds.iter().filter(|feed| ***feed == Feed::Joined(size)).count();
        let all = feeds.iter().flat_map(|feed| feed.outlets()).filter(|&s| s == size).count();
        let split = (all - 2 * joined) / 2;
        if all % 2 == 1 {
            return Err(format!("an outlet of size {size} has no partner"));
        }
        if (found.pistons[size].split, found.pistons[size].joined) != (split as u32, joined as u32) {
            return Err(format!("pistons of size {size} are miscounted"));
        }
        pistons += (split + joined) as u32;
        cost += u64::from(section.cost) * (split + joined) as u64;
        cost += joined as u64 * u64::from(limits.combining.join_cost.unwrap_or(0));
    }
    for feed in feeds {
        if let (Feed::Teed(outlets), Some(tees)) = (feed, limits.combining.tees) {
            cost += u64::from(tees.cost) * (outlets.len() as u64 - 1);
        }
    }
    if pistons < limits.pistons.0 || pistons > limits.pistons.1 {
        return Err(format!("{pistons} pistons are not allowed"));
    }
    if cost == found.objective {
        Ok(())
    } else {
        Err(format!("cost is {cost}, said to be {}", found.objective))
    }
}
