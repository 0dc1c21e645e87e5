//! From a survey to a complete design: demand, metering, lines, package, protection, ports.

pub mod metering;
