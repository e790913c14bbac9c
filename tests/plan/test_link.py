"""A plan in a link: whole or refused, whatever happened to it on the way."""

import zlib
from base64 import urlsafe_b64encode
from string import ascii_letters, digits

import pytest
from hypothesis import given
from hypothesis import strategies as st

from engine.plan.document import new_document, plain_text, written
from engine.plan.link import LARGEST_PLAN, LENGTHS, is_link, length_words, packed, unpacked
from engine.plan.made_up import made_up_document
from engine.problem import Problem

BOAT = packed(made_up_document())
SMALL = packed(new_document("Gannet"))
names = st.text(st.characters(exclude_categories=["Cs"]), max_size=200).map(plain_text)
others = st.characters(min_codepoint=33, max_codepoint=0x2FF) | st.sampled_from("٠١２٣ｐ")


def link_of(body, version="p1"):
    text = urlsafe_b64encode(body).decode().rstrip("=")
    return f"{version}.{len(body)}.{zlib.crc32(body):08x}.{text}"


def deflated(data):
    return zlib.compress(data, 9, wbits=-15)


def refusal(fragment):
    with pytest.raises(Problem) as caught:
        unpacked(fragment)
    return caught.value.what


@given(names)
def test_what_is_packed_is_unpacked(name):
    document = new_document(name)
    assert unpacked(packed(document)) == document


def test_the_made_up_boat_travels_whole():
    assert unpacked(BOAT) == made_up_document()
    assert unpacked(f" {BOAT}\n") == made_up_document()


def test_the_same_plan_has_the_same_link_of_plain_letters():
    assert packed(made_up_document()) == BOAT
    assert set(BOAT) <= set(f"{ascii_letters}{digits}.-_")


@given(st.data())
def test_any_one_changed_letter_is_noticed(data):
    link = data.draw(st.sampled_from([BOAT, SMALL]))
    place = data.draw(st.integers(0, len(link) - 1))
    other = data.draw(others.filter(lambda letter: letter != link[place]))
    assert refusal(link[:place] + other + link[place + 1 :])


@pytest.mark.parametrize("place", range(len(SMALL)))
def test_every_place_of_a_short_link(place):
    for other in "0aA_.9z":
        if other != SMALL[place]:
            assert refusal(SMALL[:place] + other + SMALL[place + 1 :])


@given(st.data())
def test_any_cut_or_lost_letter_is_noticed(data):
    place = data.draw(st.integers(0, len(BOAT) - 1))
    assert refusal(BOAT[:place])
    assert refusal(BOAT[:place] + BOAT[place + 1 :])
    assert refusal(BOAT[:place] + "x" + BOAT[place:])


def test_bits_that_mean_nothing_are_noticed_too():
    """The last letter of the text may hold bits beyond the last byte."""
    for length in range(1, 9):
        link = link_of(deflated(written(new_document("x" * length)).encode()))
        for letter in set(f"{ascii_letters}{digits}-_") - {link[-1]}:
            assert refusal(link[:-1] + letter)


@pytest.mark.parametrize("lost", [1, 2, 3, 4, 5, 9])
def test_a_cut_link_says_what_was_expected_and_what_came(lost):
    expected = int(BOAT.split(".")[1])
    came = (len(BOAT.split(".")[3]) - lost) * 3 // 4
    assert f"({expected} bytes expected, {came} received)" in refusal(BOAT[:-lost])


def test_another_version_is_named():
    assert "version 9" in refusal(SMALL.replace("p1.", "p9.", 1))


def test_a_link_longer_than_any():
    assert "longer than any plan" in refusal("p1.1.00000000." + "A" * 256_000)


def test_what_unfolds_to_too_much_is_refused_before_it_does():
    bomb = deflated(b" " * (LARGEST_PLAN * 20))
    assert len(bomb) < 60_000
    assert "unfolds to more" in refusal(link_of(bomb))


def test_bytes_that_are_no_text_or_do_not_unfold():
    assert "does not unfold" in refusal(link_of(b"\xff\xff\xff\xff"))
    assert "does not unfold" in refusal(link_of(deflated(b"\xff\xfe")))
    assert "line 1" in refusal(link_of(b""))
    assert "line 1" in refusal(link_of(deflated(b"")))
    assert "not a plan" in refusal(link_of(deflated(b"[]")))
    assert "format" in refusal(link_of(deflated(b'{"format":7}')))


@pytest.mark.parametrize("fragment", ["", "p1", "p1.", "p1..x.", "p1.5.123.AAAA"])
def test_a_front_part_that_says_nothing(fragment):
    assert "front part" in refusal(fragment)


@pytest.mark.parametrize("fragment", [SMALL, "p9.1.x", "q1.5.aa", "1.5"])
def test_what_claims_to_be_a_link(fragment):
    assert is_link(fragment)


@pytest.mark.parametrize("route", ["home", "sum/drop?run=4.5+m", "energy/use/L11", "", "x?a=1.5"])
def test_what_is_an_address(route):
    assert not is_link(route)


def test_what_a_length_is_fit_for():
    found = [length_words("x" * most) for most, _ in LENGTHS]
    assert found == [words for _, words in LENGTHS]
    assert "file" in length_words("x" * 30_001)
