"""What a person touches: the command line and the panels of the lessons."""
