# Names of formulas, their bounds and their warnings.
