"""Cloudy spells and the climatology, against SciPy, counted spells and measured years.

Spells: days below 0.6 of the month's mean in runs of 2, 3 and 4 or more, a station-year, counted in
nine hourly station-years (93, 30 and 8 in all of them); the model should count nearly as many, and
days drawn apart far fewer. Measured years: Miami TMY2, Greensboro TMY3 and Sand Point TMY3, as
pvlib 0.16.1 carries them. Named areas: their cell of the climatology, which
is kept to 0.04, as listed to 0.1.
"""

from itertools import pairwise
from math import sqrt
from pathlib import Path
from statistics import NormalDist, fmean, pstdev

import pvlib
import pytest
from scipy.stats import beta, norm, pearsonr

from engine.solar.cloud import LIKE_YESTERDAY, Clearness, at_score, below, clearness_of, spell
from engine.solar.month import month_irradiation, month_sun
from engine.solar.place import grid
from engine.units import Share

MONTHS_OF = [
    Clearness(Share(0.30), 0.15, Share(0.74)),
    Clearness(Share(0.50), 0.14, Share(0.75)),
    Clearness(Share(0.60), 0.11, Share(0.76)),
    Clearness(Share(0.66), 0.06, Share(0.75)),
]
AREAS = {
    (15, -60): (4.6, 5.5, 5.9, 6.0, 5.9, 5.6, 5.8, 5.8, 5.6, 5.2, 4.6, 4.3),
    (39, -30): (1.9, 2.7, 3.6, 4.6, 5.5, 5.7, 5.8, 5.6, 4.3, 3.1, 2.2, 1.8),
    (51, -3): (0.9, 1.6, 2.8, 4.1, 5.1, 5.6, 5.5, 4.5, 3.5, 2.0, 1.1, 0.7),
    (36, 24): (2.4, 3.1, 4.6, 6.2, 7.0, 7.5, 7.7, 6.8, 5.6, 3.8, 2.8, 2.2),
    (-18, 177): (5.2, 4.7, 4.5, 4.1, 3.7, 3.5, 3.7, 4.1, 4.7, 5.1, 5.2, 5.5),
    (-36, 174): (6.6, 5.9, 4.7, 3.5, 2.5, 2.0, 2.2, 2.9, 3.9, 5.0, 6.1, 6.5),
}
STATIONS = {
    "12839.tm2": (25.8, -80.3), "723170TYA.CSV": (36.1, -79.9), "703165TY.csv": (55.3, -160.5),
}  # fmt: skip


@pytest.mark.parametrize(("a", "b"), [(0.4, 0.7), (1.0, 3.0), (2.5, 1.5), (30.0, 12.0)])
@pytest.mark.parametrize("x", [0.0, 0.001, 0.1, 0.35, 0.5, 0.72, 0.95, 0.9999, 1.0])
def test_the_share_of_a_beta_below_a_value_as_scipy_gives_it(a, b, x):
    assert below(a, b, x) == pytest.approx(beta.cdf(x, a, b), rel=1e-9, abs=1e-12)


@pytest.mark.parametrize("days", MONTHS_OF)
@pytest.mark.parametrize("score", [-2.0, -1.2816, -0.013, 0.6, 2.3])
def test_a_day_s_clearness_is_the_beta_quantile_of_its_score(days, score):
    width = days.clearest - 0.03
    mean = (days.mean - 0.03) / width
    total = mean * (1 - mean) / (days.spread / width) ** 2 - 1
    true = 0.03 + width * beta.ppf(norm.cdf(score), mean * total, (1 - mean) * total)
    assert at_score(days, score) == pytest.approx(true, abs=0.0002)


@pytest.mark.parametrize("days", MONTHS_OF)
def test_mean_spread_and_memory_of_many_days(days):
    drawn = spell(days, 10000, 11)
    assert fmean(drawn) == pytest.approx(days.mean, abs=0.005)
    assert pstdev(drawn) == pytest.approx(days.spread, rel=0.03)
    width = days.clearest - 0.03
    a, b = days.shape()
    shares = [below(a, b, (day - 0.03) / width) for day in drawn]
    scores = [NormalDist().inv_cdf(min(max(share, 1e-6), 1 - 1e-6)) for share in shares]
    lag, _ = pearsonr(scores[:-1], scores[1:])
    assert lag == pytest.approx(LIKE_YESTERDAY, abs=0.025)
    assert abs(pearsonr(scores[:-2], scores[2:])[0] - LIKE_YESTERDAY**2) < 0.025


def test_no_day_passes_the_ends():
    days = MONTHS_OF[1]
    drawn = spell(days, 5000, 3)
    assert min(drawn) >= 0.03
    assert max(drawn) <= days.clearest


def test_the_same_seed_gives_the_same_days_and_another_others():
    days = MONTHS_OF[1]
    assert spell(days, 30, 5) == spell(days, 30, 5)
    assert spell(days, 30, 5)[:10] == spell(days, 10, 5)
    assert spell(days, 30, 5) != spell(days, 30, 6)


def test_a_cloudy_spell_lasts_longer_than_luck():
    """Dull days follow dull days more often than their own share."""
    drawn = spell(MONTHS_OF[1], 20000, 2)
    dull = [day < 0.6 * 0.5 for day in drawn]
    alone = sum(dull) / len(dull)
    after = sum(one and other for one, other in pairwise(dull)) / sum(dull)
    assert 1.35 * alone < after < 2.5 * alone


def test_the_clearest_day_is_a_little_above_the_clear_sky():
    assert clearness_of(Share(0.5), 0.1, Share(0.70)).clearest == pytest.approx(0.73)
    assert clearness_of(Share(0.5), 0.1, Share(0.84)).clearest == pytest.approx(0.85)
    assert clearness_of(Share(0.74), 0.1, Share(0.70)).clearest == pytest.approx(0.77)


@pytest.mark.parametrize("place", AREAS)
def test_named_areas_as_listed(place):
    for month, printed in enumerate(AREAS[place], start=1):
        found = month_irradiation(float(place[0]), float(place[1]), month).likely
        assert found == pytest.approx(printed, abs=0.071)


@pytest.mark.parametrize("name", STATIONS)
def test_measured_years_lie_near(name):
    """Twelve months' mean within 15 %; months within 20 % rms: hills, coast and one year's luck."""
    path = Path(pvlib.__file__).parent / "data" / name
    if name.endswith("tm2"):
        data, _ = pvlib.iotools.read_tmy2(path)
        suns = data["GHI"]
    else:
        data, _ = pvlib.iotools.read_tmy3(path, coerce_year=1990, map_variables=True)
        suns = data["ghi"]
    measured = (suns.groupby(suns.index.month).mean() * 24 / 1000).tolist()
    place = STATIONS[name]
    found = [month_irradiation(*place, month).likely for month in range(1, 13)]
    assert fmean(found) == pytest.approx(fmean(measured), rel=0.15)
    out = [ours / theirs - 1 for ours, theirs in zip(found, measured, strict=True)]
    assert sqrt(fmean(one**2 for one in out)) < 0.20


def test_the_whole_climatology_lies_within_nature():
    """At least 0.04 kWh/m² a day, at most 80 % of the sun outside (12.4 kWh/m²)."""
    cells = grid()
    assert len(cells.sun) == len(cells.spread) == len(cells.wind) == 41 * 120 * 12
    known = [cell * 0.04 for cell in cells.sun if cell]
    assert len(known) == 4915 * 12
    assert max(known) < 0.8 * 12.4
    assert max(cells.spread) * 0.002 < 0.3
    assert max(cells.wind) * 0.1 < 25


def test_a_clear_a_likely_and_a_dull_day_stand_in_order():
    for latitude, longitude in AREAS:
        for month in (1, 4, 7, 10):
            found = month_sun(float(latitude), float(longitude), month)
            assert found.dull < found.irradiation.likely < found.clear
