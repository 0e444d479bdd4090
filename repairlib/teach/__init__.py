"""For instructors: a group, its paper, what it hands in, and who is stuck where."""
