"""One visit for each test."""

import pytest

from tests.session.page import Page


@pytest.fixture
def visit(monkeypatch):
    """Return a first visit that shows the made-up boat."""
    found = Page(monkeypatch)
    found.open()
    return found
