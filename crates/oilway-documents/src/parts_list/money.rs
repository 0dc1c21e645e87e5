//! Prices of a parts list, in whole hundredths, so that a buyer who adds them up by hand finds the same sum.

use std::collections::BTreeMap;

use oilway_catalogue::Price;

use super::PartsLine;

/// The sums of a parts list.
#[derive(Clone, Debug, Default, PartialEq)]
pub struct Totals {
    /// One sum for each currency, in the order of their codes.
    pub sums: Vec<Price>,
    /// The items that have no price: as long as there are any, the sums are not the whole.
    pub unpriced: Vec<u32>,
}

/// The price of a line; none if the catalogue has no price, or one that nobody could pay.
pub fn line_price(line: &PartsLine) -> Option<Price> {
    let price = line.unit_price()?;
    let hundredths = price.hundredths.checked_mul(i64::try_from(line.amount.bought()).ok()?)?;
    Some(Price { hundredths, currency: price.currency.clone() })
}

/// The sums of a list.
pub fn totals(lines: &[PartsLine]) -> Totals {
    let mut sums: BTreeMap<String, i64> = BTreeMap::new();
    let mut unpriced = Vec::new();
    for line in lines {
        let added = line_price(line).and_then(|price| {
            let sum = sums.get(&price.currency).copied().unwrap_or(0).checked_add(price.hundredths)?;
            sums.insert(price.currency, sum);
            Some(())
        });
        if added.is_none() {
            unpriced.push(line.item);
        }
    }
    let sums = sums.into_iter().map(|(currency, hundredths)| Price { hundredths, currency }).collect();
    Totals { sums, unpriced }
}
