"""Breathing air against the diving manual's own example and recomputed values."""

from __future__ import annotations

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import constants

from hardpoint.figures.air import ambient_pressure, endurance
from hardpoint.figures.bottles import gas_density

WARM_K, WATER_K = 293.15, 287.15


@pytest.mark.parametrize(("litres", "seconds"), [(0.4, (110, 66, 44)), (1.5, (414, 248, 165))])
def test_the_two_bottles_of_our_convention(litres: float, seconds: tuple[int, ...]) -> None:
    """V: 200 bar, 14 degC, 10 bar reserve, 3 m of fresh water, 30, 50, 75 L/min (the rates: common practice)."""
    for rate, wanted in zip((30, 50, 75), seconds, strict=True):
        assert int(endurance(litres / 1000, 200e5, 10e5, 3, rate / 60000, WARM_K, WATER_K)) == wanted


def test_an_ideal_gas_says_more_and_is_wrong() -> None:
    """V: 261 s for 1.5 L at 50 L/min, 256 s where the cooling is counted; the real gas 248 s."""
    ambient = ambient_pressure(3) / 1e5
    usable = 1.5 * (200 - 10) / ambient
    assert usable / 50 * 60 == pytest.approx(261, abs=1.5)
    cooled = 1.5 * (201.01325 * WATER_K / WARM_K - 11.01325) / ambient
    assert cooled / 50 * 60 == pytest.approx(256, abs=1.0)
    assert endurance(0.0015, 200e5, 10e5, 3, 50 / 60000, WARM_K, WATER_K) < cooled / 50 * 60 - 5


def test_the_emergency_supply_of_the_manual() -> None:
    """US Navy Diving Manual section 15-8 (R): 0.399 ft3, 3000 psig, 300 fsw, minimum 319 psi, 1.4 acfm: 5.18 min.

    The manual counts an ideal gas and (P + 14.7)/14.7; the real gas has less in it, by a tenth at most here.
    """
    foot3, psi = constants.foot**3, constants.psi
    ours = endurance(
        0.399 * foot3, 3000 * psi, 319 * psi, 300 * constants.foot, 1.4 * foot3 / 60, WARM_K, WARM_K, "salt"
    )
    assert 0.9 * 5.18 * 60 < ours < 5.18 * 60


def test_ten_litres_at_thirty_metres() -> None:
    """US Navy Diving Manual, worked example (R): 10 L, 20 bar used at 30 m in 2.5 min is 20 L/min.

    20 bar of 10 L are 200 L at the surface, 50 L at 30 m; at low pressure the real gas agrees.
    """
    ours = endurance(0.010, 60e5, 40e5, 30, 20 / 60000, WARM_K, WARM_K, "salt")
    assert ours == pytest.approx(2.5 * 60, rel=0.03)


def test_depth_by_the_rule_of_the_manual() -> None:
    """C = (D + 33)/33 in feet of sea water (R): two atmospheres at 33 ft."""
    assert ambient_pressure(33 * constants.foot, "salt") / constants.atm == pytest.approx(2.0, abs=0.005)


@given(st.floats(0, 60), st.floats(0, 60), st.floats(20, 100))
def test_deeper_never_lasts_longer(one: float, other: float, rate: float) -> None:
    low, high = sorted((one, other))
    shallow = endurance(0.0015, 200e5, 10e5, low, rate / 60000, WARM_K, WATER_K)
    assert endurance(0.0015, 200e5, 10e5, high, rate / 60000, WARM_K, WATER_K) <= shallow + 1e-9


@given(st.floats(10, 150), st.floats(10, 150))
def test_breathing_faster_never_lasts_longer(one: float, other: float) -> None:
    low, high = sorted((one, other))
    slow, fast = (endurance(0.0015, 200e5, 10e5, 3, rate / 60000, WARM_K, WATER_K) for rate in (low, high))
    assert fast <= slow
    assert fast * high == pytest.approx(slow * low)


@given(st.floats(275, 300))
def test_mass_is_kept_from_the_filling_to_the_water(water_k: float) -> None:
    """What is breathed is what was filled less what stays: by the densities alone, apart from the formula's order."""
    seconds = endurance(0.01, 200e5, 20e5, 10, 40 / 60000, WARM_K, water_k)
    breathed = seconds * 40 / 60000 * gas_density("air", ambient_pressure(10), water_k)
    stays = 0.01 * gas_density("air", 20e5 + 101325, water_k)
    assert breathed + stays == pytest.approx(0.01 * gas_density("air", 200e5 + 101325, WARM_K))


@pytest.mark.parametrize(
    ("change", "says"),
    [
        ({"depth_m": -1}, "0 to 100 m"),
        ({"depth_m": 101}, "0 to 100 m"),
        ({"rate_m3_s": 0}, "above 0"),
        ({"volume_m3": 0}, "above 0"),
        ({"reserve_pa": 250e5}, "nothing is left"),
        ({"water": "brackish"}, "fresh or salt"),
        ({"water_k": 100}, "230 to 700 K"),
    ],
)
def test_outside_its_range_nothing_is_said(change: dict[str, object], says: str) -> None:
    given_: dict[str, object] = {
        "volume_m3": 0.0015, "filled_pa": 200e5, "reserve_pa": 10e5, "depth_m": 3, "rate_m3_s": 50 / 60000,
        "fill_k": WARM_K, "water_k": WATER_K,
    }  # fmt: skip
    with pytest.raises(ValueError, match=says):
        endurance(**(given_ | change))  # type: ignore[arg-type]
