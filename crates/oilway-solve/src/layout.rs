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
