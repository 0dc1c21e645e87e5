//! Sheets made from one model: text, parts list, port plan.
