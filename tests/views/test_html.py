"""Markup is built by one builder that escapes; blocks know what changed."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.views.parts.html import Html, block, changed, escaped, joined, kept_together, tag
from tests.views.markup import Element, parsed

TEXTS = st.text(st.characters(exclude_categories=["Cs"], exclude_characters="\r\x00"))


@given(TEXTS)
def test_any_text_comes_through_as_text(text):
    found = parsed(tag("p", text, title=text)).named("p")[0]
    shown = "".join(str(part) for part in found.inside)
    assert shown == kept_together(text)
    assert found.attributes == {"title": text}


def test_markup_is_markup_and_none_is_nothing():
    assert joined("<", Html("<br>"), None) == "&lt;<br>"
    assert tag("p", tag("b", "x"), hidden=False, title=None, open=True) == ("<p open><b>x</b></p>")


def test_what_needs_no_end_has_none():
    assert tag("input", name="a") == '<input name="a">'
    assert tag("line", x1=1) == '<line x1="1"/>'


def test_five_marks():
    assert escaped("<>&\"'") == "&lt;&gt;&amp;&quot;&#39;"


def test_the_deepest_block_that_changed_is_sent():
    old = block("page", tag("h1", "a"), block("one", "1"), block("two", "2"), class_="wide")
    new = block("page", tag("h1", "a"), block("one", "1"), block("two", "3"), class_="wide")
    assert changed(old, new) == [("two", "3")]
    assert changed(old, old) == []
    assert old.outer.startswith('<section id="page" class="wide"><h1>a</h1><section id="one">1')


@pytest.mark.parametrize(
    "new",
    [
        block("page", "b", block("one", "1")),
        block("page", "a", block("two", "1")),
        block("page", "a", block("one", "1", name="div")),
        block("page", "a", block("one", "1", class_="x")),
        block("page", "a"),
        block("page", "a", block("one", "1"), "b"),
        block("page", "a", "b"),
    ],
)
def test_another_shape_is_sent_whole(new):
    old = block("page", "a", block("one", "1"))
    assert changed(old, new) == [("page", new.inner)]


bodies = st.recursive(
    st.sampled_from(["a", "b", None]),
    lambda inner: st.tuples(
        st.sampled_from(["one", "two", "three"]), st.lists(inner, max_size=3),
        st.sampled_from(["section", "div"]),
    ),
    max_leaves=8,
)  # fmt: skip


def built(path, body):
    if body is None or isinstance(body, str):
        return body
    name, inside, element = body
    here = f"{path}-{name}"
    return block(here, *(built(f"{here}-{n}", one) for n, one in enumerate(inside)), name=element)


@given(st.lists(bodies, max_size=3), st.lists(bodies, max_size=3))
def test_what_is_sent_makes_the_old_page_the_new_one(before, after):
    old, new = (
        block("page", *(built(f"p{n}", one) for n, one in enumerate(parts)))
        for parts in (before, after)
    )
    screen = Element("body", {}, parsed(old.outer).inside)
    for ident, html in changed(old, new):
        screen.at(ident).inside = parsed(html).inside
    assert screen.within() == parsed(new.outer).within()
