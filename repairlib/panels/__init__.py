"""Panels: thin live views over the pure parts, for the notebook. Import each by its own name."""
