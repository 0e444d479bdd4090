"""Own lessons: questions and a lesson by somebody who knows no Python, in a file outside the clone.

How such a file is written is shown by `example.txt`, which stands beside this.
"""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(
    __name__,
    known="own_files own_lesson own_module",
    lesson="OWN OwnLesson lesson_name read_own read_own_file",
    notebook="own_notebook",
    slips="Slip Slips",
)
