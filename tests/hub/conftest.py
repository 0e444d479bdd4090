"""The browser of the browser tests, for two learners at once."""

from tests.browser.conftest import browser  # noqa: F401
