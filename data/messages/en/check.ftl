# Findings: what is wrong, why it matters, what cures it.
