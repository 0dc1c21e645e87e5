//! Formulas and their results for programs.

use oilway_physics::{Formula, Source, Symbol};
use oilway_text::Reader;
use oilway_units::AnyQuantity;
use schemars::JsonSchema;
use serde::Serialize;

use super::quantity::QuantityData;

/// The answer of `calc`: a list of formulas, one formula, or one formula with its results.
#[derive(Debug, Serialize, JsonSchema)]
pub struct CalcAnswer {
    /// `oilway.calc.1`
    pub version: &'static str,
    /// The formulas that were asked for; one if there are results.
    pub formulas: Vec<FormulaData>,
    /// The results, one for each case; empty where nothing was to be calculated.
    pub results: Vec<ResultData>,
}

/// A formula.
#[derive(Debug, Serialize, JsonSchema)]
pub struct FormulaData {
    /// Its lasting name.
    pub id: &'static str,
    /// What it gives.
    pub title: &'static str,
    /// The equation.
    pub equation: &'static str,
    /// What it takes, in order.
    pub inputs: Vec<SymbolData>,
    /// What it gives.
    pub output: SymbolData,
    /// Where it holds.
    pub validity: &'static str,
    /// Where it comes from.
    pub sources: Vec<SourceData>,
}

/// A letter of an equation.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SymbolData {
    /// Its name on the command line.
    pub name: &'static str,
    /// The letter.
    pub letter: &'static str,
    /// What it measures.
    pub dimension: &'static str,
    /// What it means.
    pub meaning: &'static str,
}

/// Where something comes from.
#[derive(Debug, Serialize, JsonSchema)]
pub struct SourceData {
    /// The source by its lasting name.
    pub key: &'static str,
    /// Page, clause or table.
    pub place: &'static str,
    /// seen, second-hand, memory, common-practice or own.
    pub standing: &'static str,
}

/// The result of one case.
#[derive(Debug, Serialize, JsonSchema)]
pub struct ResultData {
    /// The inputs, in the order of the formula; two values where one was a range.
    pub inputs: Vec<Vec<QuantityData>>,
    /// The result with all ranges at their middle.
    pub result: QuantityData,
    /// Lowest and highest result over the ranges; none if every input was one value.
    pub span: Option<(QuantityData, QuantityData)>,
}

impl From<&'static Formula> for FormulaData {
    fn from(formula: &'static Formula) -> Self {
        FormulaData {
            id: formula.id,
            title: formula.title,
            equation: formula.equation,
            inputs: formula.inputs.iter().map(SymbolData::from).collect(),
            output: (&formula.output).into(),
            validity: formula.validity,
            sources: formula.sources.iter().map(SourceData::from).collect(),
        }
    }
}

impl From<&Symbol> for SymbolData {
    fn from(symbol: &Symbol) -> Self {
        let Symbol { name, letter, meaning, .. } = *symbol;
        SymbolData { name, letter, dimension: symbol.dimension.name(), meaning }
    }
}

impl From<&Source> for SourceData {
    fn from(source: &Source) -> Self {
        SourceData { key: source.key, place: source.place, standing: source.standing.word() }
    }
}

/// One case as it was calculated.
#[derive(Clone, Debug)]
pub(crate) struct Case {
    /// Lower and upper end of each input.
    pub(crate) inputs: Vec<(AnyQuantity, AnyQuantity)>,
    /// The result in the middle.
    pub(crate) middle: AnyQuantity,
    /// Lowest and highest result.
    pub(crate) span: Option<(AnyQuantity, AnyQuantity)>,
}

impl ResultData {
    pub(crate) fn new(case: &Case, reader: &Reader) -> Self {
        let said = |quantity: AnyQuantity| QuantityData::new(quantity, reader);
        let ends = |&(low, high): &(AnyQuantity, AnyQuantity)| {
            if low == high { vec![said(low)] } else { vec![said(low), said(high)] }
        };
        ResultData {
            inputs: case.inputs.iter().map(ends).collect(),
            result: said(case.middle),
            span: case.span.map(|(low, high)| (said(low), said(high))),
        }
    }
}
