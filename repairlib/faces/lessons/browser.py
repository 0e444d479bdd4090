"""Whether this computer shows a page to the person at it."""

from __future__ import annotations

import webbrowser
from pathlib import PurePath

IN_A_TERMINAL = {"www-browser", "links", "links2", "elinks", "lynx", "w3m"}


def find_browser() -> webbrowser.BaseBrowser | None:
    """The browser that the person at this computer uses; None without one, or without a screen.

    `webbrowser` looks at BROWSER, DISPLAY and WAYLAND_DISPLAY. What it finds without a screen are
    browsers inside a terminal, and those cannot show a lesson.
    """
    try:
        browser = webbrowser.get()
    except webbrowser.Error:
        return None
    return None if PurePath(getattr(browser, "name", "")).name in IN_A_TERMINAL else browser
