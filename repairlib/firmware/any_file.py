"""An image out of whatever file people have of it: plain bytes, Intel HEX or S-records."""

from __future__ import annotations

import re
from pathlib import Path

from repairlib.core.plain_file import read_bytes
from repairlib.firmware.image_file import LARGEST, Image, image_of
from repairlib.firmware.records import records_of

ACCEPTED = "an image of a memory chip: binary, at most 256 MiB, or Intel HEX or S-records"
_FIRST_LINE = re.compile(rb"\s*(:[0-9A-Fa-f]{10,}|S[0-9][0-9A-Fa-f]{8,})\s*[\r\n]")


def read_any_image(path: str | Path) -> Image:
    """The image in a file; one that begins with a line of records is read as records.

    Between records stands FF. Raises RepairlibError as `read_image` and `read_records` do.
    """
    data, name = read_bytes(path, LARGEST, ACCEPTED), Path(path).name
    if _FIRST_LINE.match(data[:1000]):
        return records_of(data, name).image()
    return image_of(data, name)
