"""Ground under every topic: quantities, findings, calculators, sources, limits, safety."""
