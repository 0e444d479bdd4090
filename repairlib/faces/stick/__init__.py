"""The workbook on a memory stick: one folder that installs and opens without a network.

start.py       the one command, on a computer with nothing but Python
wheels/        everything that is installed, this package too
page/          the quick check as a page, where its Python is at hand
group.json     the group
sums.json      the check of all of it, written last: what is not whole does not start
"""

from repairlib.faces.stick.filling import fill_stick

__all__ = ["fill_stick"]
