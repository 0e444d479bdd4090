"""The page: a marking read in a browser, on any device, with nothing to install there.

`python -m repairlib page --out FOLDER` builds a folder of static files. In the browser the same
files of this library run on a Python compiled to WebAssembly:

- `needed.py` finds the files that go along; `bundling.py` packs them; `runtime.py` gets the Python;
  `building.py` lays the folder out; `outline.py` writes the HTML around the fields.
- `answers.py` is what the page asks, in the browser. It shows what `faces/shown` shows.
- `square.py` draws the square code of an address; `card.py` is a sheet of them to print.
- `static/` is what the browser loads as it is: `page.js` (fields and answers), `reader.js` (talks
  to the worker), `worker.js` (starts Python), `service.js` (keeps all for a start without a
  network), `page.css`.
- `languages/` holds the page's own words, one file for each language.

The page holds no rule of the trade.
"""

from repairlib.core.public import public_names

__getattr__, __all__ = public_names(__name__, building="build_page", card="write_card")
