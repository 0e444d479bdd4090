"""Heat at the bench: solders, irons, joints, desoldering, hot air, moisture, cleaning."""
