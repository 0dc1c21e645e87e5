//! The catalogues of sentences, one for each area of the house, kept in `data/messages` and built in.

/// The English catalogues: name of the file and its text.
pub(crate) const ENGLISH: &[(&str, &str)] = &[
    ("units.ftl", include_str!("../../../data/messages/en/units.ftl")),
    ("physics.ftl", include_str!("../../../data/messages/en/physics.ftl")),
    ("catalogue.ftl", include_str!("../../../data/messages/en/catalogue.ftl")),
    ("model.ftl", include_str!("../../../data/messages/en/model.ftl")),
    ("solve.ftl", include_str!("../../../data/messages/en/solve.ftl")),
    ("check.ftl", include_str!("../../../data/messages/en/check.ftl")),
    ("documents.ftl", include_str!("../../../data/messages/en/documents.ftl")),
    ("store.ftl", include_str!("../../../data/messages/en/store.ftl")),
    ("oilway.ftl", include_str!("../../../data/messages/en/oilway.ftl")),
];
