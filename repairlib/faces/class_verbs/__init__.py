"""The verbs of `python -m repairlib class`, a file for each subject."""
