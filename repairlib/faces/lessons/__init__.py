"""One command opens the lessons: a working copy in the learner's own folder, JupyterLab on it."""

from repairlib.faces.lessons.opening import open_lessons

__all__ = ["open_lessons"]
