//! Prices as catalogues write them: `12.50 EUR`.

use crate::Price;

impl Price {
    /// Reads an amount with at most two decimals and the three letters of its currency (ISO 4217).
    ///
    /// ```
    /// use oilway_catalogue::Price;
    ///
    /// let price = Price::read("1250.5 EUR").unwrap();
    /// assert_eq!((price.hundredths, price.currency.as_str()), (125_050, "EUR"));
    /// assert_eq!(price.to_string(), "1250.50 EUR");
    /// assert!(Price::read("12,50 EUR").is_none());
    /// ```
    pub fn read(text: &str) -> Option<Price> {
        let (amount, currency) = text.trim().split_once(' ')?;
        let currency = currency.trim();
        if currency.len() != 3 || !currency.chars().all(|c| c.is_ascii_uppercase()) {
            return None;
        }
        let (whole, part) = amount.split_once('.').unwrap_or((amount, "00"));
        let digits = |text: &str| !text.is_empty() && text.chars().all(|c| c.is_ascii_digit());
        if !digits(whole) || !digits(part) || part.len() > 2 {
            return None;
        }
        let part: i64 = format!("{part:0<2}").parse().ok()?;
        let hundredths = whole.parse::<i64>().ok()?.checked_mul(100)?.checked_add(part)?;
        Some(Price { hundredths, currency: currency.to_owned() })
    }
}

impl core::fmt::Display for Price {
    fn fmt(&self, f: &mut core::fmt::Formatter<'_>) -> core::fmt::Result {
        let (sign, amount) = (if self.hundredths < 0 { "-" } else { "" }, self.hundredths.unsigned_abs());
        write!(f, "{sign}{}.{:02} {}", amount / 100, amount % 100, self.currency)
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    #[test]
    fn what_is_no_price_is_refused() {
        for text in [
            "",
            "12",
            "EUR 12",
            "12 eur",
            "12.345 EUR",
            "-1 EUR",
            ".5 EUR",
            "99999999999999999999 EUR",
            "12 EURO",
        ] {
            assert!(Price::read(text).is_none(), "{text}");
        }
    }

    #[test]
    fn a_price_reads_back_as_it_is_printed() {
        for hundredths in [0, 5, 99, 100, 123_456] {
            let price = Price { hundredths, currency: "EUR".to_owned() };
            assert_eq!(Price::read(&price.to_string()), Some(price));
        }
    }
}
