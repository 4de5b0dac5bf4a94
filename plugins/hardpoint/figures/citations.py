"""The published sources of the formulas, under the keys that figures and method pages name.

A station's own ``sources.yaml`` holds what its records cite; what the formulas rest on comes with them. ``standing``
says whether the text was read, its figures recomputed, or whether it is cited from memory and still to be checked.
"""

from __future__ import annotations

from collections.abc import Mapping

from hardpoint.records.sources import Source

COMMON_PRACTICE = "common practice"
"""What stands in place of a key where the trade does something so and no source says it."""

CITATIONS: Mapping[str, Source] = {
    "faa-h-8083-1": Source(
        title="Aircraft Weight and Balance Handbook, FAA-H-8083-1",
        publisher="Federal Aviation Administration",
        edition="not recorded",
        section="moment = weight x arm",
        standing="read",
    ),
    "faa-h-8083-30": Source(
        title="Aviation Maintenance Technician Handbook, General, FAA-H-8083-30",
        publisher="Federal Aviation Administration",
        edition="not recorded",
        section="chapter 4, weight and balance; mass of fluids",
        standing="read",
    ),
    "mil-hdbk-1022a": Source(
        title="Petroleum Fuel Facilities, MIL-HDBK-1022A",
        publisher="United States Department of Defense",
        edition="not recorded",
        section="density of Jet A-1 at 15 degC",
        standing="read",
    ),
    "nist-sp-811": Source(
        title="Guide for the Use of the International System of Units (SI), Special Publication 811",
        publisher="National Institute of Standards and Technology",
        edition="not recorded",
        section="appendix B, factors; B.7.2, rounding",
        standing="read",
    ),
    "rigging-factors": Source(
        title="Factors 1/sin of the angle between sling leg and horizontal, table of a rigging handbook",
        publisher="not recorded",
        edition="not recorded",
        section="1.000 at 90 deg to 2.000 at 30 deg",
        standing="read",
    ),
    "en-13414-1": Source(
        title="Steel wire rope slings, safety, part 1: slings for general lifting service, EN 13414-1",
        publisher="European Committee for Standardization",
        edition="2003",
        section="table 4",
        standing="read",
    ),
    "us-navy-steelworker": Source(
        title="Steelworker, volume 2, a training manual",
        publisher="United States Navy",
        edition="not recorded",
        section="figure 6-60",
        standing="read",
    ),
    "cfr-29-1926-251": Source(
        title="29 CFR 1926.251, rigging equipment for material handling",
        publisher="United States",
        edition="not recorded",
        section="(a)(4)",
        standing="read",
    ),
    "asme-pcc-2": Source(
        title="PCC-2, Repair of Pressure Equipment and Piping",
        publisher="American Society of Mechanical Engineers",
        edition="2008",
        section="article 5.1, appendices II and III",
        standing="read",
    ),
    "coolprop": Source(
        title="CoolProp, thermophysical properties of real fluids",
        publisher="the CoolProp project",
        edition="as locked",
        section="equations of state of air, oxygen, nitrogen, helium, carbon dioxide",
        standing="recomputed",
    ),
    "cfr-49-173-304a": Source(
        title="49 CFR 173.304a, filling of cylinders with liquefied compressed gases",
        publisher="United States",
        edition="not recorded",
        section="filling density of carbon dioxide",
        standing="read",
    ),
    "cfr-49-180-209": Source(
        title="49 CFR 180.209, requalification of cylinders",
        publisher="United States",
        edition="not recorded",
        section="(a), table 1",
        standing="read",
    ),
    "iso-cylinders": Source(
        title="Gas cylinders by ISO: working pressure at most two thirds of the test pressure",
        publisher="International Organization for Standardization",
        edition="not recorded",
        standing="from memory",
    ),
    "us-navy-diving": Source(
        title="U.S. Navy Diving Manual",
        publisher="United States Navy",
        edition="not recorded",
        section="duration of a gas supply; emergency gas supply, section 15-8",
        standing="read",
    ),
    "icao-annex-14": Source(
        title="Annex 14 to the Convention on International Civil Aviation, volume I, Aerodromes",
        publisher="International Civil Aviation Organization",
        edition="not recorded",
        section="table 9-1",
        standing="read",
    ),
    "icao-annex-14-agents": Source(
        title="Annex 14 to the Convention on International Civil Aviation, volume I, Aerodromes",
        publisher="International Civil Aviation Organization",
        edition="not recorded",
        section="table 9-2",
        standing="from memory",
    ),
    "amc2-adr-ops-b-010": Source(
        title="AMC2 ADR.OPS.B.010, rescue and fire-fighting services",
        publisher="United Kingdom Civil Aviation Authority",
        edition="not recorded",
        section="(a)(2)",
        standing="read",
    ),
    "icao-doc-9137": Source(
        title="Airport Services Manual, part 1, Rescue and Fire Fighting, Doc 9137",
        publisher="International Civil Aviation Organization",
        edition="not recorded",
        section="critical area",
        standing="from memory",
    ),
    "cfr-14-139-315": Source(
        title="14 CFR 139.315, aircraft rescue and firefighting: index determination",
        publisher="United States",
        edition="not recorded",
        section="index A",
        standing="read",
    ),
    "nureg-1805": Source(
        title="Fire Dynamics Tools, NUREG-1805",
        publisher="United States Nuclear Regulatory Commission",
        edition="with supplement 1",
        section="burning rates of pools; point source",
        standing="read",
    ),
    "nureg-1805-burning-time": Source(
        title="Fire Dynamics Tools, NUREG-1805",
        publisher="United States Nuclear Regulatory Commission",
        edition="with supplement 1",
        section="burning time; flame height by Heskestad; depth of a spill",
        standing="from memory",
    ),
    "api-521": Source(
        title="Standard 521, Pressure-relieving and Depressuring Systems",
        publisher="American Petroleum Institute",
        edition="not recorded",
        section="thermal radiation levels",
        standing="read",
    ),
    "fire-kit-tests": Source(
        title="Tests of fire kit at 4.6 kW/m2, as quoted in guidance",
        publisher="not recorded",
        edition="not recorded",
        section="about 3 minutes",
        standing="read",
    ),
    "orifice-flow": Source(
        title="Flow out of a hole under a falling head, Torricelli with a coefficient of discharge",
        publisher="not recorded",
        edition="not recorded",
        section="t = 2 V / (Cd A sqrt(2 g h))",
        standing="recomputed",
    ),
    "fire-service-rockets": Source(
        title="Guidance on rocket parachutes of light aircraft",
        publisher="United Kingdom fire services",
        edition="not recorded",
        section="undeployed rocket, 100 m",
        standing="read",
    ),
}
"""By key. A key that a figure names and that is missing here fails a test."""
