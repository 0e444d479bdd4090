"""Health of parts: what a reading is worth, what a part should read, and a verdict with why."""
