//! What sits on a reservoir: breather, lubricant filter, filling coupling, level switch.

use super::Medium;

kind! {
    /// A breather.
    Breather, BreatherKind = "breather", "lets a vessel or an idle chamber breathe and keeps dirt out";
    fineness: maybe Quantity(Length, Positive), "largest particle that passes";
}

kind! {
    /// A filter for the lubricant.
    LubricantFilter, LubricantFilterKind = "lubricant filter", "keeps dirt from pump and metering devices";
    @rating |filter| Some(filter.rated);
    fineness: needed Quantity(Length, Positive), "largest particle that passes";
    rated: needed Quantity(Pressure, Positive), "highest steady pressure";
    drop: maybe Quantity(Pressure, NotNegative), "pressure that a clean one takes at the flow of a package";
    lubricants: needed Words(Medium), "for which lubricant it is meant";
}

kind! {
    /// A coupling through which the reservoir is filled.
    FillingCoupling, FillingCouplingKind = "filling coupling", "fills the reservoir without opening it";
    @rating |coupling| Some(coupling.rated);
    rated: needed Quantity(Pressure, Positive), "highest pressure while filling";
    check: maybe Flag(), "it shuts by itself when the hose comes off";
}

kind! {
    /// A level switch.
    LevelSwitch, LevelSwitchKind = "level switch", "tells that the reservoir is nearly empty or full";
    low: maybe Flag(), "it tells low level";
    high: maybe Flag(), "it tells high level";
    voltage: needed Quantity(Voltage, Positive), "voltage that it switches";
    lubricants: needed Words(Medium), "in which lubricant it works";
}
