"""Charge in a capacitor: its energy, how it leaves through a resistor, and when to stop."""
