//! The layout: the tree of lines as the job draws it, before any bore is chosen.

use std::sync::Arc;

use oilway_catalogue::kinds::{Hose, Tube, TubeMaterial};
use oilway_catalogue::{Catalogue, Part};
use oilway_model::{End, Feed, Job, Leg, LegWish, Network, Node, Place};
use oilway_text::message;
use oilway_units::{Entry, Length, Pressure, Temperature};

use crate::Obstacle;

/// A tube or hose that a leg may become.
#[derive(Clone, Debug)]
pub(crate) struct Conduit {
    /// The part.
    pub part: Arc<Part>,
    /// Its bore.
    pub bore: Length,
    /// What it may see.
    pub rated: Pressure,
    /// Whether it bends with the machine.
    pub flexible: bool,
    /// Between which temperatures it may be used, as far as its maker says.
    pub used: (Option<Temperature>, Option<Temperature>),
}

/// The tree and, for each leg, the conduits among which the tool may choose.
#[derive(Clone, Debug)]
pub(crate) struct Layout {
    /// The tree; the conduit numbers of its legs point into `conduits`.
    pub network: Network,
    /// All conduits that any leg may use.
    pub conduits: Vec<Conduit>,
    /// For each node and leg: the candidates, narrowest first; one alone where it was given.
    pub candidates: Vec<Vec<Vec<usize>>>,
    /// For each divider of the job: its node.
    pub divider_nodes: Vec<usize>,
    /// For each point of the job: its node.
    pub point_nodes: Vec<usize>,
}

/// Draws the tree of a job.
///
/// # Errors
/// Every given part that the catalogue does not hold and every leg for which it holds no line at all.
pub(crate) fn layout(job: &Job, catalogue: &Catalogue) -> Result<Layout, Vec<Obstacle>> {
    let mut draft = Draft {
        places: &job.conditions.places,
        conduits: conduits(job, catalogue),
        nodes: Vec::new(),
        candidates: Vec::new(),
        obstacles: Vec::new(),
    };
    draft.node("pump", None, &[], End::Pump);
    let mut divider_nodes: Vec<usize> = Vec::with_capacity(job.dividers.len());
    for (number, divider) in job.dividers.iter().enumerate() {
        let parent = match divider.fed_by {
            Feed::Pump => 0,
            Feed::Divider(above) => divider_nodes.get(above).copied().unwrap_or(0),
        };
        divider_nodes.push(draft.node(&divider.name, Some(parent), &divider.route, End::Divider(number)));
    }
    let point_nodes = job
        .points
        .iter()
        .enumerate()
        .map(|(number, point)| {
            let parent = divider_nodes.get(point.divider).copied().unwrap_or(0);
            draft.node(&point.name, Some(parent), &point.route, End::Point(number))
        })
        .collect();
    if !draft.obstacles.is_empty() {
        return Err(draft.obstacles);
    }
    let Draft { conduits, nodes, candidates, .. } = draft;
    Ok(Layout { network: Network { nodes }, conduits, candidates, divider_nodes, point_nodes })
}

struct Draft<'a> {
    places: &'a [Place],
    conduits: Vec<Conduit>,
    nodes: Vec<Node>,
    candidates: Vec<Vec<Vec<usize>>>,
    obstacles: Vec<Obstacle>,
}

impl Draft<'_> {
    fn node(&mut self, name: &str, parent: Option<usize>, route: &[LegWish], end: End) -> usize {
        let mut legs = Vec::with_capacity(route.len());
        let mut candidates = Vec::with_capacity(route.len());
        for (number, wish) in route.iter().enumerate() {
            let open = self.candidates_of(name, number, wish);
            let Some(&first) = open.first() else { continue };
            legs.push(Leg { place: wish.place, length: wish.length, rise: wish.rise, conduit: first });
            candidates.push(open);
        }
        self.nodes.push(Node { name: name.to_owned(), parent, legs, end });
        self.candidates.push(candidates);
        self.nodes.len() - 1
    }

    fn candidates_of(&mut self, node: &str, number: usize, wish: &LegWish) -> Vec<usize> {
        let at = format!("line.{node}.{}.conduit", number + 1);
        let of = |pick: &dyn Fn(&Conduit) -> bool| -> Vec<usize> {
            self.conduits.iter().enumerate().filter(|(_, c)| pick(c)).map(|(i, _)| i).collect()
        };
        let (open, obstacle) = match wish.conduit.chosen() {
            Some(id) => (of(&|c| c.part.id == *id), message!("solve-no-such-line", part = id.as_str())),
            None => {
                let suits = |c: &Conduit| c.flexible == wish.flexible && c.allowed_by_choice();
                let endures =
                    of(&|c| suits(c) && self.places.get(wish.place).is_none_or(|place| c.endures(place)));
                // Where none endures the place the line is still drawn, and the checker tells which limit it breaks.
                let open = if endures.is_empty() { of(&suits) } else { endures };
                (open, message!("solve-no-line-at-all", flexible = i64::from(wish.flexible)))
            }
        };
        if open.is_empty() {
            self.obstacles.push(Obstacle { at, what: obstacle, cure: message!("solve-add-line") });
        }
        open
    }
}

impl Conduit {
    /// Whether the tool may choose it; a part without a rating can only be given.
    fn allowed_by_choice(&self) -> bool {
        self.rated > Pressure::ZERO
    }
    /// Cost of a metre in hundredths. A hair is added for the bore, so that of two lines of one price the narrower is the cheaper; where
    /// the catalogue has no price a line costs by its bore alone.
    pub(crate) fn cost_per_metre(&self) -> f64 {
        let millimetres = self.bore.millimetres();
        self.part.price.as_ref().map_or(100.0 + 40.0 * millimetres, |p| p.hundredths as f64)
            + 0.5 * millimetres
    }
    /// Whether it may be used from the coldest to the hottest of a place.
    fn endures(&self, place: &Place) -> bool {
        self.used.0.is_none_or(|coldest| place.coldest.get() >= coldest)
            && self.used.1.is_none_or(|hottest| place.hottest.get() <= hottest)
    }
}

/// All lines of the catalogue that suit the job, narrowest bore first; parts that the job names are kept whatever they are.
fn conduits(job: &Job, catalogue: &Catalogue) -> Vec<Conduit> {
    let named = |id: &str| {
        job.points
            .iter()
            .flat_map(|p| &p.route)
            .chain(job.dividers.iter().flat_map(|d| &d.route))
            .chain(&job.package.inlet)
            .any(|leg| leg.conduit.chosen().is_some_and(|c| c == id))
    };
    let stainless_there = catalogue
        .of_kind("tube")
        .filter_map(|p| Tube::of(p))
        .any(|t| t.material == TubeMaterial::StainlessSteel);
    let food = job.conditions.limits.food;
    let mut found: Vec<Conduit> = catalogue
        .of_kind("tube")
        .filter_map(|part| {
            let tube = Tube::of(part)?;
            let metal = tube.material != TubeMaterial::Polyamide;
            let clean = !food || !stainless_there || tube.material == TubeMaterial::StainlessSteel;
            (named(&part.id) || (metal && clean)).then(|| Conduit {
                part: Arc::clone(part),
                bore: tube.bore(),
                rated: tube.rated.unwrap_or(Pressure::ZERO),
                flexible: false,
                used: (tube.coldest, tube.hottest),
            })
        })
        .chain(catalogue.of_kind("hose").filter_map(|part| {
            let hose = Hose::of(part)?;
            (named(&part.id) || !food || hose.food).then(|| Conduit {
                part: Arc::clone(part),
                bore: hose.bore,
                rated: hose.rated,
                flexible: true,
                used: (Some(hose.coldest), Some(hose.hottest)),
            })
        }))
        .collect();
    found.sort_by(|a, b| {
        a.bore
            .total_cmp(&b.bore)
            .then_with(|| price(&a.part).cmp(&price(&b.part)))
            .then_with(|| a.part.id.cmp(&b.part.id))
    });
    found
}

/// Price in hundredths; dear where the catalogue has none, so that priced parts go first.
pub(crate) fn price(part: &Part) -> i64 {
    part.price.as_ref().map_or(1_000_000, |p| p.hundredths)
}

/// A length that is exactly nothing.
pub(crate) fn no_length() -> Entry<Length> {
    Entry::known(Length::ZERO)
}

#[cfg(test)]
mod tests {
    use oilway_model::Choice;

    use super::*;
    use crate::testing::{catalogue, dairy, hall, hose, known, spindle};

    fn offered(job: &Job) -> Vec<Conduit> {
        let layout = layout(job, catalogue()).unwrap();
        let used = layout.candidates.iter().flatten().flatten();
        let mut numbers: Vec<usize> = used.copied().collect();
        numbers.sort_unstable();
        numbers.dedup();
        numbers.into_iter().map(|n| layout.conduits[n].clone()).collect()
    }

    fn materials(job: &Job) -> Vec<TubeMaterial> {
        offered(job).iter().filter_map(|c| Tube::of(&c.part)).map(|t| t.material).collect()
    }

    #[test]
    fn the_tree_has_a_node_for_the_pump_and_for_each_divider_and_point_parents_first() {
        let layout = layout(&dairy(), catalogue()).unwrap();
        assert_eq!(layout.network.nodes.len(), 1 + 5 + 34);
        for (number, node) in layout.network.nodes.iter().enumerate().skip(1) {
            assert!(node.parent.unwrap() < number, "{}", node.name);
        }
        let belt = layout.network.nodes.iter().find(|n| n.name == "cold belt 3").unwrap();
        assert_eq!(layout.network.nodes[belt.parent.unwrap()].name, "cold room");
    }

    #[test]
    fn candidates_come_narrowest_first_and_moving_legs_take_hoses_only() {
        let mut job = hall();
        job.points[0].route.push(hose(1, 1.0));
        let layout = layout(&job, catalogue()).unwrap();
        for (node, open) in layout.network.nodes.iter().zip(&layout.candidates) {
            for candidates in open {
                let bores = candidates.iter().map(|&c| layout.conduits[c].bore);
                assert!(bores.is_sorted_by(|a, b| a <= b), "{}", node.name);
            }
        }
        let legs = &layout.candidates[layout.point_nodes[0]];
        assert!(legs[0].iter().all(|&c| !layout.conduits[c].flexible));
        assert!(legs[1].iter().all(|&c| layout.conduits[c].flexible));
    }

    #[test]
    fn beside_food_the_tubes_are_stainless_and_the_hoses_made_for_it() {
        let mut job = hall();
        job.points[0].route.push(hose(1, 1.0));
        assert!(materials(&job).contains(&TubeMaterial::CarbonSteel));
        job.conditions.limits.food = true;
        assert!(materials(&job).iter().all(|m| *m == TubeMaterial::StainlessSteel));
        let hoses: Vec<Hose> = offered(&job).iter().filter_map(|c| Hose::of(&c.part)).collect();
        assert!(!hoses.is_empty() && hoses.iter().all(|h| h.food));
    }

    #[test]
    fn a_place_too_cold_or_too_hot_for_a_line_leaves_it_out() {
        let mut job = hall();
        assert!(materials(&job).contains(&TubeMaterial::Copper));
        job.conditions.places[1].hottest = known(Temperature::from_celsius(90.0));
        assert!(!materials(&job).contains(&TubeMaterial::Copper), "soft copper ends at 65 °C");
        job.conditions.places[1].coldest = known(Temperature::from_celsius(-30.0));
        assert!(!materials(&job).contains(&TubeMaterial::CarbonSteel), "this steel ends at −20 °C");
        // On the moon nothing endures, and the lines are drawn all the same.
        job.conditions.places[1].coldest = known(Temperature::from_celsius(-150.0));
        assert!(!materials(&job).is_empty());
    }

    #[test]
    fn plastic_tube_is_taken_only_where_the_job_gives_it() {
        let mut job = spindle();
        assert!(!materials(&job).contains(&TubeMaterial::Polyamide));
        job.points[0].route[0].conduit = Choice::Given("10099".to_owned());
        let layout = layout(&job, catalogue()).unwrap();
        let given = &layout.candidates[layout.point_nodes[0]][0];
        assert_eq!(given.len(), 1);
        assert_eq!(layout.conduits[given[0]].part.id, "10099");
    }

    #[test]
    fn every_line_that_the_catalogue_does_not_hold_is_named() {
        let mut job = hall();
        job.dividers[0].route[0].conduit = Choice::Given("no such tube".to_owned());
        job.points[4].route[0].conduit = Choice::Pinned("10074".to_owned());
        let obstacles = layout(&job, catalogue()).unwrap_err();
        let at: Vec<&str> = obstacles.iter().map(|o| o.at.as_str()).collect();
        assert_eq!(at, ["line.post.1.conduit", "line.pin 5.1.conduit"]);
        assert!(obstacles.iter().all(|o| o.what.key == "solve-no-such-line"));
    }

    #[test]
    fn without_any_hose_a_moving_leg_stands_in_the_way() {
        let mut job = hall();
        job.points[0].route.push(hose(1, 1.0));
        let tubes = Catalogue::new(catalogue().of_kind("tube").map(|p| Part::clone(p)));
        let obstacles = layout(&job, &tubes).unwrap_err();
        assert_eq!(
            (obstacles[0].at.as_str(), obstacles[0].what.key),
            ("line.pin 1.2.conduit", "solve-no-line-at-all")
        );
    }
}
