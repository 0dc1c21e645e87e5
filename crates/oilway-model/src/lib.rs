//! Types only: survey, network, design, results, findings.
