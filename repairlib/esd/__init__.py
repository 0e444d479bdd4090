"""Static electricity at the bench: limits and audit, charge on a body, part classes, the strap."""
