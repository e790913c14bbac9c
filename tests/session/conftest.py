"""One visit for each test."""

import pytest

from tests.session.page import Page


@pytest.fixture
def visit(monkeypatch):
    """Return a first visit that shows the made-up boat."""
    found = Page(monkeypatch)
    found.open()
    return found


@pytest.fixture
def mine(visit):
    """Return a visit with an empty plan of one's own."""
    visit.do("start-own")
    visit.go("#home")
    return visit
