"""The questions of each lesson, one module a lesson."""
