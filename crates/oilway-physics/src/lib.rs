//! Pure formulas of lubrication engineering, each with equation, validity and source, each registered once.
