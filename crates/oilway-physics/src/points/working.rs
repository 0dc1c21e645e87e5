//! The working of one point: its answers, what surrounds it, and the page of the ledger on which each step is written.

use oilway_text::{Message, message};
use oilway_units::{
    AnyQuantity, Count, Density, Flow, KinematicViscosity, Mass, Quantity, Ratio, Temperature, Time, Volume,
};

use super::{Answers, Around, Demand, MOVING_SHARE, NoDemand, moving_share};
use crate::demand::{MEAN_RATE, VOLUME_OF_MASS, mean_rate, volume_of_mass};
use crate::{Formula, How, Ledger, Line, Term};

/// A number and the name of its line in the ledger, if it has one.
#[derive(Clone, Copy, Debug)]
pub(super) struct Kept<T> {
    pub(super) value: T,
    name: Option<&'static str>,
}

/// A number that stands in no line: a constant of a table.
pub(super) const fn constant<T>(value: T) -> Kept<T> {
    Kept { value, name: None }
}

/// A number of any dimension, as it goes into a line of the ledger.
#[derive(Clone, Copy, Debug)]
pub(super) struct Ingredient {
    value: AnyQuantity,
    name: Option<&'static str>,
}

impl<T: Quantity> From<Kept<T>> for Ingredient {
    fn from(kept: Kept<T>) -> Self {
        Ingredient { value: kept.value.into(), name: kept.name }
    }
}

/// See the head of this file.
pub(super) struct Working<'a> {
    answers: Answers<'a>,
    pub(super) around: &'a Around,
    ledger: &'a mut Ledger,
    name: &'a str,
    notes: Vec<Message>,
}

impl<'a> Working<'a> {
    pub(super) fn new(
        answers: Answers<'a>,
        around: &'a Around,
        ledger: &'a mut Ledger,
        name: &'a str,
    ) -> Self {
        Working { answers, around, ledger, name, notes: Vec::new() }
    }

    /// The answer in a field, if it applies.
    pub(super) fn answer<T: Quantity>(&self, field: &'static str) -> Option<Kept<T>> {
        self.answers.quantity(field).map(|value| Kept { value, name: Some(field) })
    }
    /// The answer in a field without which there is no demand.
    pub(super) fn need<T: Quantity>(&self, field: &'static str) -> Result<Kept<T>, NoDemand> {
        self.answer(field).ok_or_else(|| NoDemand {
            reason: message!("physics-point-missing", field = field),
            cure: message!("physics-point-missing-cure", field = field),
        })
    }
    /// The word in a field.
    pub(super) fn word(&self, field: &str) -> Option<&'static str> {
        self.answers.word(field)
    }

    pub(super) fn temperature(&self) -> Kept<Temperature> {
        Kept { value: self.around.temperature, name: Some("temperature") }
    }
    pub(super) fn density(&self) -> Kept<Density> {
        Kept { value: self.around.density, name: Some("density") }
    }
    pub(super) fn dirt(&self) -> Kept<Count> {
        Kept { value: Count::from_number(f64::from(self.around.severity.dirt)), name: Some("dirt") }
    }
    pub(super) fn water(&self) -> Kept<Count> {
        Kept { value: Count::from_number(f64::from(self.around.severity.water)), name: Some("water") }
    }

    /// Viscosity of the oil or base oil at the point, if the lubricant tells it and it is more than nothing.
    pub(super) fn base_viscosity(&self) -> Option<Kept<KinematicViscosity>> {
        let value = self.around.base_viscosity.filter(|value| *value > KinematicViscosity::ZERO)?;
        Some(Kept { value, name: Some("base_viscosity") })
    }

    /// Keeps the volume of a mass of the lubricant.
    pub(super) fn volume(&mut self, step: &'static str, mass: Kept<Mass>) -> Kept<Volume> {
        let density = self.density();
        let volume = volume_of_mass(mass.value, density.value);
        self.keep(step, &VOLUME_OF_MASS, volume, &[mass.into(), density.into()])
    }
    /// Keeps the mean rate of a quantity at an interval.
    pub(super) fn rate(&mut self, quantity: Kept<Volume>, interval: Kept<Time>) -> Kept<Flow> {
        let rate = mean_rate(quantity.value, interval.value);
        self.keep("rate", &MEAN_RATE, rate, &[quantity.into(), interval.into()])
    }

    /// Keeps what a formula gave for the terms of its inputs, in their order.
    pub(super) fn keep<T: Quantity>(
        &mut self,
        step: &'static str,
        formula: &'static Formula,
        value: T,
        terms: &[Ingredient],
    ) -> Kept<T> {
        if self.ledger.is_on() {
            let how = How::Formula(formula, self.terms(terms));
            self.write(step, value.into(), how);
        }
        Kept { value, name: Some(step) }
    }

    /// Keeps a number that was taken for a reason and not by a registered formula.
    pub(super) fn judge<T: Quantity>(
        &mut self,
        step: &'static str,
        value: T,
        why: &'static str,
        terms: &[Ingredient],
    ) -> Kept<T> {
        if self.ledger.is_on() {
            let how = How::Chosen(Message::new(why), self.terms(terms));
            self.write(step, value.into(), how);
        }
        Kept { value, name: Some(step) }
    }

    /// Keeps the smaller of two numbers.
    pub(super) fn smaller<T: Quantity>(
        &mut self,
        step: &'static str,
        first: Kept<T>,
        second: Kept<T>,
    ) -> Kept<T> {
        let value = if second.value < first.value { second.value } else { first.value };
        if self.ledger.is_on() {
            let how = How::Smallest(self.terms(&[first.into(), second.into()]));
            self.write(step, value.into(), how);
        }
        Kept { value, name: Some(step) }
    }

    pub(super) fn note(&mut self, note: Message) {
        self.notes.push(note);
    }

    /// The last step: what remains of the rate where the point moves only part of the time, or even stands.
    pub(super) fn demand(
        mut self,
        rate: Kept<Flow>,
        standing: Kept<Ratio>,
        rule: &'static Formula,
    ) -> Result<Demand, NoDemand> {
        let duty = Kept { value: Ratio::from_fraction(self.around.duty), name: Some("duty") };
        let mean = moving_share(rate.value, duty.value, standing.value);
        if duty.value < Ratio::from_fraction(1.0) {
            self.note(message!("physics-point-duty", share = duty.value, standing = standing.value));
        }
        let rate = self.keep("demand", &MOVING_SHARE, mean, &[rate.into(), duty.into(), standing.into()]);
        self.demand_as_is(rate, rule)
    }

    /// The demand where nothing remains to be done to the rate, kept as `demand`.
    pub(super) fn demand_as_is(self, rate: Kept<Flow>, rule: &'static Formula) -> Result<Demand, NoDemand> {
        let rate = rate.value;
        if !rate.is_finite() || rate < Flow::ZERO {
            return Err(NoDemand {
                reason: message!("physics-point-no-number", rule = rule.id),
                cure: message!("physics-point-no-number-cure"),
            });
        }
        Ok(Demand {
            rate,
            quantity: None,
            interval: None,
            first_fill: None,
            rule,
            viscosity_ratio: None,
            notes: self.notes,
        })
    }

    fn write(&mut self, step: &str, value: AnyQuantity, how: How) {
        let name = self.line(step);
        self.ledger.record(|| Line { name, value, how });
    }
    fn line(&self, step: &str) -> String {
        format!("{}.{step}", self.name)
    }
    /// By name where the ledger has the line with this very number, as it has of all earlier steps and of the answers
    /// that the caller has entered; else by value.
    fn terms(&self, ingredients: &[Ingredient]) -> Vec<Term> {
        let term = |ingredient: &Ingredient| {
            let line = ingredient.name.map(|step| self.line(step));
            line.filter(|line| self.ledger.line(line).is_some_and(|kept| kept.value == ingredient.value))
                .map_or(Term::Value(ingredient.value), Term::Name)
        };
        ingredients.iter().map(term).collect()
    }
}

/// The refusal of a lubricant that does not suit a kind.
pub(super) fn wrong_lubricant(reason: &'static str, cure: &'static str) -> NoDemand {
    NoDemand { reason: Message::new(reason), cure: Message::new(cure) }
}
