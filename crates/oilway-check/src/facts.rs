//! [`Facts`]: a finished design and the checker's own numbers, worked out once before the rules look at them.

use oilway_model::{Design, End, Season};
use oilway_physics::{pipe_flow, pump};
use oilway_units::{Flow, Pressure, Time, Volume};

use crate::feeding::{Feed, Service, branches, divider_at, nodes_of_points, period, service, way};
use crate::need::{Need, need};
use crate::outlets::{Meter, meters};
use crate::shield::{Shield, shield};
use crate::source::{Inlet, Source, inlet};
use crate::views::Views;
use crate::walk::Walk;

/// The pressures of the path to one point in one season.
#[derive(Clone, Copy, Debug, PartialEq)]
pub(crate) struct PathFacts {
    /// To start when the lubricant has just stopped.
    pub(crate) start: Pressure,
    /// To start after rest.
    pub(crate) rested: Pressure,
    /// To keep moving at the flow that the event needs.
    pub(crate) moving: Pressure,
    /// What stays when the pump side is let down.
    pub(crate) residual: Pressure,
    /// The flow that the pump really pushes through it.
    pub(crate) flow: Flow,
    /// The pressure at the pump while it does.
    pub(crate) at_pump: Pressure,
}

/// One season.
#[derive(Debug)]
pub(crate) struct SeasonFacts {
    pub(crate) season: Season,
    /// One for each point; none where something on the way is not known.
    pub(crate) paths: Vec<Option<PathFacts>>,
    pub(crate) source: Option<Source>,
    pub(crate) inlet: Option<Inlet>,
    /// Time of one event; none where a path stands still.
    pub(crate) event: Option<Time>,
}

impl SeasonFacts {
    /// The point whose path asks most, and how much.
    pub(crate) fn worst(&self, of: impl Fn(&PathFacts) -> Pressure) -> Option<(usize, Pressure)> {
        let asked = |(point, path): (usize, &Option<PathFacts>)| path.as_ref().map(|path| (point, of(path)));
        let all = self.paths.iter().enumerate().filter_map(asked);
        all.fold(None, |most: Option<(usize, Pressure)>, next| match most {
            Some(most) if most.1 >= next.1 => Some(most),
            _ => Some(next),
        })
    }
}

/// A design and the checker's own numbers.
#[derive(Debug)]
pub struct Facts<'a> {
    pub(crate) design: &'a Design,
    pub(crate) views: Views,
    pub(crate) walk: Walk<'a>,
    pub(crate) meters: Vec<Meter>,
    /// The way of each point to the pump; none if it never gets there.
    pub(crate) ways: Vec<Option<Vec<usize>>>,
    pub(crate) services: Vec<Service>,
    /// Content of the line to each node; none where a bore is not known.
    pub(crate) contents: Vec<Option<Volume>>,
    pub(crate) needs: Vec<Need>,
    /// The divider that hangs on the pump.
    pub(crate) first: Option<usize>,
    /// Flow of an event that ends just in the time allowed.
    pub(crate) event_flow: Option<Flow>,
    pub(crate) seasons: [SeasonFacts; 3],
    pub(crate) shield: Shield,
}

impl<'a> Facts<'a> {
    /// Works everything out.
    pub fn of(design: &'a Design) -> Self {
        let views = Views::of(design);
        let walk = Walk::new(design, &views);
        let meters = meters(design, &views);
        let branches = branches(design);
        let nodes = nodes_of_points(design);
        let ways: Vec<Option<Vec<usize>>> = nodes.iter().map(|node| way(design, (*node)?)).collect();
        let unfed = || Service::Unfed(None);
        let services: Vec<Service> = ways
            .iter()
            .map(|way| way.as_ref().map_or_else(unfed, |way| service(design, &meters, &branches, way)))
            .collect();
        let contents = contents(design, &walk);
        let tail = |node: &Option<usize>| node.and_then(|n| contents[n]).unwrap_or(Volume::ZERO);
        let needs = design
            .points
            .iter()
            .zip(&nodes)
            .map(|(point, node)| need(&design.conditions, point, tail(node)))
            .collect();
        let first = first_divider(design);
        let event = first.and_then(|first| meters[first].cycle).map(|v| v * f64::from(design.control.cycles));
        let event_flow = event.map(|v| v / design.conditions.limits.event_time.get());
        let seasons = Season::ALL.map(|season| {
            season_facts(design, &views, &walk, &ways, &services, event.zip(event_flow), season)
        });
        let peak = seasons.iter().filter_map(|s| s.worst(|p| p.rested.max(p.at_pump))).map(|(_, p)| p);
        let free = seasons.iter().filter_map(|s| s.source.as_ref()).map(Source::free_flow);
        let shield = shield(
            design,
            &views,
            &walk,
            mains(design, &walk),
            peak.fold(Pressure::ZERO, Pressure::max),
            free.fold(Flow::ZERO, Flow::max),
        );
        Facts {
            design,
            views,
            walk,
            meters,
            ways,
            services,
            contents,
            needs,
            first,
            event_flow,
            seasons,
            shield,
        }
    }

    /// One season.
    pub(crate) fn season(&self, season: Season) -> &SeasonFacts {
        &self.seasons[season as usize]
    }
    /// The name of a point as findings write it.
    pub(crate) fn point_name(&self, point: usize) -> String {
        format!("point.{}", self.design.points[point].name)
    }
    /// The name of a divider as findings write it.
    pub(crate) fn divider_name(&self, divider: usize) -> String {
        format!("divider.{}", self.design.dividers[divider].name)
    }
    /// What each served point gets.
    pub(crate) fn feeds(&self) -> impl Iterator<Item = (usize, &Feed)> {
        self.services.iter().enumerate().filter_map(|(point, service)| match service {
            Service::Fed(feed) => Some((point, feed)),
            _ => None,
        })
    }
    /// What the whole system uses while the machine runs.
    pub(crate) fn use_rate(&self) -> Option<Flow> {
        Some(self.meters[self.first?].cycle? / period(self.design)?)
    }
    /// Calendar time for a running time.
    pub(crate) fn calendar(&self, running: Time) -> Time {
        let duty = &self.design.conditions.duty;
        pump::calendar_interval(running, duty.hours_per_day.get(), duty.days_per_week.get())
    }
    /// Calendar time for which a filling lasts.
    pub(crate) fn refill(&self) -> Option<Time> {
        let vessel = self.views.reservoir.as_ref()?;
        Some(self.calendar(pump::refill_interval(vessel.gross, vessel.usable, self.use_rate()?)))
    }
    /// Calendar time between the low-level signal and empty.
    pub(crate) fn reserve(&self) -> Option<Time> {
        Some(self.calendar(self.views.reservoir.as_ref()?.reserve / self.use_rate()?))
    }
    /// Calendar time that the lubricant of a point spends in its own line, and from the reservoir to the point.
    pub(crate) fn ages(&self, point: usize) -> Option<(Time, Time)> {
        let (way, feed) = (self.ways[point].as_ref()?, self.feed(point)?);
        let mut stays = way.iter().zip(&feed.along).map(|(&node, &rate)| {
            let content = self.contents[node]?;
            Some(if content > Volume::ZERO { pump::age_at_point(content, rate) } else { Time::ZERO })
        });
        let tail = stays.next()??;
        let before: Time = stays.sum::<Option<Time>>()?;
        Some((self.calendar(tail), self.calendar(tail + before) + self.refill().unwrap_or(Time::ZERO)))
    }
    /// What a point gets, if it is served.
    pub(crate) fn feed(&self, point: usize) -> Option<&Feed> {
        match &self.services[point] {
            Service::Fed(feed) => Some(feed),
            _ => None,
        }
    }
    /// The places through which lubricant runs or at which it is used.
    pub(crate) fn places_in_use(&self) -> Vec<usize> {
        let design = self.design;
        let legs = design.network.nodes.iter().flat_map(|node| &node.legs).map(|leg| leg.place);
        let points = design.points.iter().map(|point| point.place);
        let mut places: Vec<usize> = legs.chain(points).chain([design.package.place]).collect();
        places.sort_unstable();
        places.dedup();
        places.retain(|&place| place < design.conditions.places.len());
        places
    }
    /// The largest need of all seasons, its season and its point.
    pub(crate) fn highest(
        &self,
        of: impl Fn(&PathFacts) -> Pressure,
    ) -> Option<(&SeasonFacts, usize, Pressure)> {
        let worst = self.seasons.iter().filter_map(|s| s.worst(&of).map(|(point, need)| (s, point, need)));
        // The coldest stands first and keeps its place among equals.
        worst.fold(None, |most: Option<(&SeasonFacts, usize, Pressure)>, next| match most {
            Some(most) if most.2 >= next.2 => Some(most),
            _ => Some(next),
        })
    }
    /// Stall pressure at the setting and the lowest air.
    pub(crate) fn stall(&self) -> Option<Pressure> {
        self.season(Season::Cold).source.as_ref().map(|source| source.stall)
    }
    /// The longest event of all seasons.
    pub(crate) fn longest_event(&self) -> Option<Time> {
        self.seasons
            .iter()
            .filter_map(|s| s.event)
            .fold(None, |most, t| Some(most.map_or(t, |m: Time| m.max(t))))
    }
}

fn contents(design: &Design, walk: &Walk<'_>) -> Vec<Option<Volume>> {
    let leg = |leg: &oilway_model::Leg| Some(pipe_flow::line_content(walk.bore(leg)?, leg.length.get()));
    design.network.nodes.iter().map(|node| node.legs.iter().map(leg).sum()).collect()
}

/// The first divider: nothing that meters stands between it and the pump.
fn first_divider(design: &Design) -> Option<usize> {
    (0..design.network.nodes.len()).find_map(|node| {
        let divider = divider_at(design, node)?;
        let way = way(design, node)?;
        let above = way.iter().skip(1).any(|&n| matches!(design.network.nodes[n].end, End::Divider(_)));
        (!above).then_some(divider)
    })
}

/// The most that the yield stress holds between the pump and any divider on the coldest day.
fn mains(design: &Design, walk: &Walk<'_>) -> Pressure {
    let of = |divider: &oilway_model::Divider| {
        let way = way(design, divider.node)?;
        Some(walk.losses(Season::Cold, &way, Flow::ZERO)?.yielding)
    };
    design.dividers.iter().filter_map(of).fold(Pressure::ZERO, Pressure::max)
}

fn season_facts(
    design: &Design,
    views: &Views,
    walk: &Walk<'_>,
    ways: &[Option<Vec<usize>>],
    services: &[Service],
    event: Option<(Volume, Flow)>,
    season: Season,
) -> SeasonFacts {
    let inlet = inlet(design, views, walk, season);
    let source = views.pump.as_ref().map(|pump| Source::new(design, views, pump, inlet.as_ref()));
    let rest = design.conditions.practice.rest_factor.get().fraction();
    let path = |way: &Option<Vec<usize>>| {
        let (way, source, (_, flow)) = (way.as_ref()?, source.as_ref()?, event?);
        let still = walk.losses(season, way, flow)?;
        let (pushed, at_pump) = source.against(|q| walk.losses(season, way, q).map(|l| l.moving))?;
        Some(PathFacts {
            start: still.yielding + still.fixed,
            rested: still.yielding * rest + still.fixed,
            moving: still.moving,
            residual: still.yielding,
            flow: pushed,
            at_pump,
        })
    };
    let paths: Vec<Option<PathFacts>> = ways.iter().map(path).collect();
    let event = event.and_then(|(volume, _)| event_time(design, volume, services, &paths));
    SeasonFacts { season, paths, source, inlet, event }
}

/// The time of an event: the part of each point, one after the other, at the flow that its own path allows.
fn event_time(
    design: &Design,
    volume: Volume,
    services: &[Service],
    paths: &[Option<PathFacts>],
) -> Option<Time> {
    let period = period(design)?;
    let event = period * f64::from(design.control.cycles);
    let mut time = Time::ZERO;
    for (service, path) in services.iter().zip(paths) {
        let Service::Fed(feed) = service else { continue };
        let path = path.as_ref()?;
        if path.flow <= Flow::ZERO {
            return None;
        }
        let part = feed.rate * event;
        time += part / path.flow;
    }
    (volume > Volume::ZERO && time.is_finite()).then_some(time)
}
