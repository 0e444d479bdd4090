"""`python -m repairlib`."""

import sys

from repairlib.faces.cli import main

if __name__ == "__main__":
    sys.exit(main())
