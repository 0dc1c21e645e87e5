//! What every kind of point needs: laws that hold for all kinds at once, worked cases that fit a whole kind, and the
//! plausibility of a small machine.

mod cases;
mod kinds;
mod laws;
mod ledger;
mod machine;
mod said;
