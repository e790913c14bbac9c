"""The generator of chance: Knuth's MMIX, and even shares."""

from collections import Counter

from engine.generator import mixed, share_of, stepped


def test_two_steps_by_hand():
    """0 → c; c → a c + c modulo 2⁶⁴ in whole numbers."""
    c = 1442695040888963407
    assert stepped(0) == c
    assert stepped(c) == (6364136223846793005 * c + c) % 2**64


def test_shares_are_even():
    """20000 draws in ten boxes: chi² below 27.9, which luck passes once in a thousand."""
    state, boxes = mixed(1, "boxes"), Counter[int]()
    for _ in range(20000):
        state = stepped(state)
        boxes[int(share_of(state) * 10)] += 1
    assert sum((boxes[box] - 2000) ** 2 / 2000 for box in range(10)) < 27.9


def test_texts_part_the_ways():
    assert len({mixed(1, text) for text in ("", "a", "b", "ab", "ba")}) == 5
