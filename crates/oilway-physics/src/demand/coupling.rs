//! Gear couplings: the ring of grease that covers the teeth.

use core::f64::consts::PI;

use oilway_units::{Length, Volume};

use crate::{Range, formula};

formula! {
    /// The grease that covers the teeth of one mesh of a gear coupling when it is thrown outward.
    ///
    /// # Example
    /// ```
    /// use oilway_physics::demand::coupling_fill;
    /// use oilway_units::Length;
    ///
    /// let mm = Length::from_millimetres;
    /// let fill = coupling_fill(mm(120.0), mm(100.0), mm(30.0));
    /// assert_eq!(fill.map(|v| format!("{:.1}", v.cubic_centimetres())), Some("103.7".to_string()));
    /// ```
    COUPLING_FILL = "demand/coupling-fill",
    title: "Fill of one mesh of a gear coupling",
    equation: "V = π/4 · (Do² − Di²) · w",
    validity: "One mesh; a coupling has two, to be filled alike. Do is the bore of the housing, Di a circle just below the roots of the teeth, w the length of the teeth and the spaces beside them. Change the grease every 6 to 12 months or 4000 to 8000 h, do not only top it up. No answer where Do is not larger than Di.",
    sources: [
        "own-derivation", "geometry", Own;
        "common-practice", "teeth covered while turning; interval", CommonPractice
    ],
    fn coupling_fill(
        housing_bore: Length, "Do", "bore of the housing", Range::Positive;
        root: Length, "Di", "diameter just below the roots of the teeth", Range::NotNegative;
        width: Length, "w", "length of the teeth and side spaces", Range::Positive;
    ) -> Option<Volume>, "V", "grease of one mesh" {
        let (outer, inner) = (housing_bore.metres(), root.metres());
        let ring = PI / 4.0 * (outer - inner) * (outer + inner) * width.metres();
        (outer > inner).then(|| Volume::from_cubic_metres(ring))
    }
}

#[cfg(test)]
mod tests {
    use super::*;

    fn fill(outer: f64, inner: f64) -> Option<Volume> {
        let mm = Length::from_millimetres;
        coupling_fill(mm(outer), mm(inner), mm(30.0))
    }

    #[test]
    fn without_a_root_the_whole_bore_is_filled() {
        let cylinder = PI / 4.0 * 120.0 * 120.0 * 30.0;
        assert!(fill(120.0, 0.0).is_some_and(|v| (v.cubic_millimetres() / cylinder - 1.0).abs() < 1e-14));
    }

    #[test]
    fn diameters_the_wrong_way_round_give_no_answer() {
        assert_eq!(fill(100.0, 120.0), None);
        assert_eq!(fill(100.0, 100.0), None);
        assert!(fill(100.1, 100.0).is_some());
    }
}
