"""Help texts of parameters and entries promise nothing that is not so."""

import math
import re

import pytest

qgis_core = pytest.importorskip("qgis.core")


def entries():
    return qgis_core.QgsApplication.processingRegistry().providerById("tautline").algorithms()


def helps(host):
    for entry in entries():
        for parameter in entry.parameterDefinitions():
            yield entry.name(), parameter.name(), parameter.help()


def test_what_an_empty_parameter_means_is_said_once(host):
    twice = [(entry, key) for entry, key, text in helps(host) if len(re.findall(r"\bEmpty:", text)) > 1]
    assert twice == []


def test_no_status_is_promised_that_no_field_holds(host):
    """Stations off every axis are told by a status where there is one, by a flag, or by nothing."""
    told = {entry: text for entry, key, text in helps(host) if key == "MAX_DISTANCE"}
    words = {entry: re.findall(r"the (status|flag) 'off axis'", text) for entry, text in told.items()}
    assert words.pop("designheights") == ["status"] and words.pop("fitreference") == ["flag"]
    assert len(words) > 2 and not any(words.values())


def test_overrides_are_told_where_they_are(host):
    """Which fields of the axis layer count in which entry."""
    told = {entry: text for entry, key, text in helps(host) if key == "AXIS" and "'design'" in text}
    assert "chain_a, height_a, chain_b, height_b, slope, tolerance, chain_h and chain_0" in told.pop("designheights")
    assert "its fields tolerance, chain_h and chain_0" in told.pop("drawdeviations")
    assert len(told) >= 5 and not any("slope" in text or "tolerance" in text for text in told.values())


def test_every_parameter_has_help(host):
    assert [(entry, key) for entry, key, text in helps(host) if not text.strip()] == []


def test_numbers_are_explained_with_a_number(host):
    """Each parameter that takes a number, and each entry, tells one that was worked out."""
    plain = [
        (entry.name(), parameter.name())
        for entry in entries()
        for parameter in entry.parameterDefinitions()
        if parameter.type() == "number" and parameter.defaultValue() is None and not re.search(r"\d", parameter.help())
    ]
    assert plain == []
    # A page's format is no number.
    assert [entry.name() for entry in entries() if not re.search(r"(?<!A)\d", entry.shortHelpString())] == []


RADIUS = 6_371_000.0  # Of the Earth, in metres: mean radius of GRS 80 (Moritz 2000), to 1 km.
SECOND = math.pi / 648_000


def normal(value):
    """Distribution function of the standard normal distribution."""
    return math.erfc(-value / math.sqrt(2)) / 2


# What a help text says, and the number in it worked out anew: propagation of errors, similar triangles, and the
# curvature of a sphere.
WORKED = (
    ("the two feet are {} mm apart in 1,000 m", 1e6 * (1200 / 3937 / 0.3048 - 1)),
    ("a kilometre at 1,000 m by {} mm", 1e6 * 1000 / RADIUS),
    ("departures from about {} on", 3.2905 * 0.002),
    ("{} mm in a kilometre for each metre", 1e6 / RADIUS),
    ("5 seconds of arc are {} mm in 3 km", 5 * SECOND * 3e6),
    ("5 seconds raise N by {} mm in 3 km", 5 * SECOND * 3e6),
    ("one second is {} m of the point", SECOND * RADIUS),
    ("The mean one is {}.", RADIUS),
    ("level point, {} m apart for each second of arc", SECOND * RADIUS),
    ("10 mm drawn 10,000 times larger is {} m", 0.010 * 10_000),
    ("3742.600 and 43.612 give {}.", 3742.600 + 43.612),
    ("{} mm over 4 km where n is 4", 4 * math.sqrt(4)),
    ("takes away {} of the 78 mm", 0.13 * 1e9 / 2 / RADIUS),
    ("of the {} mm of the first kilometre", 1e9 / 2 / RADIUS),
    ("by {} mm at a kilometre", 1e9 / 2 / RADIUS),
    ("by {} mm in the middle of a kilometre", 1e9 / 8 / RADIUS),
    ("{} mm at 1 km with k = 0.13", 0.87 * 1e9 / 2 / RADIUS),
    ("0.003 for 3 mm per metre, which is {} percent", 0.003 * 100),
    ("times 1.41, so that 0.5 becomes {}", 0.5 * math.sqrt(2)),
    ("at 0.7 and 4 km {} mm", 0.7 * math.sqrt(4)),
    ("at 0.7 a line of 4 km has {} mm", 0.7 * math.sqrt(4)),
    ("At 0.1 a line of 16 setups has {} mm", 0.1 * math.sqrt(16)),
    ("4 allows 4 mm over 1 km and {} mm over 4 km", 4 * math.sqrt(4)),
    ("2 reads {} mm too high at 50 m", 2 * SECOND * 50e3),
    ("1 is {} mm at 300 m", SECOND * 300e3),
    ("With 0.3 the difference of two readings has {} mm", 0.3 * math.sqrt(2)),
    ("3 of the same instrument, {} mm in 2 km", 3e-6 * 2e6),
    ("1.5 makes {} mm of both together", 1.5 * math.sqrt(2)),
    ("0.05 makes {} mm of a sight of 1 km", 0.05 * 1e9 / 2 / RADIUS),
    ("With 0.0008 in metres a change has a standard deviation of {} mm", 0.8 * math.sqrt(2)),
    ("and is significant beyond {} mm", 3.29053 * 0.8 * math.sqrt(2)),
    ("0.000002 is {} mm in a kilometre", 0.000002 * 1e6),
    ("a movement is significant beyond {} mm", 3.29053 * 0.8 * math.sqrt(2)),
    ("is within 10 mm with a probability of {} %", 100 * (normal(2 / 3) - normal(-18 / 3))),
    ("reaches {} m to each side", 0.01 * 10_000),
    ("a bar of {} m stands for 1 mm", 0.001 * 10_000),
    ("0.01 in metres, drawn 5,000 times larger, is {} m to each side", 0.01 * 5_000),
    ("With 2000 a bar of {} m stands for 5 mm", 0.005 * 2_000),
    ("With 5000 a departure of 12 mm is drawn {} m", 0.012 * 5_000),
    ("8 mm high and 6 mm to the right are {} mm together", math.hypot(8, 6)),
    ("a sixth of the structure's length, {} of 2,600 m", 2600 / 6),
    ("With 500 a height of 200 mm is drawn {} m high", 0.2 * 500),
    ("a residual of -20.6 mm is raised by {} mm", round(20.6)),
)


@pytest.mark.parametrize("sentence, value", WORKED, ids=[sentence for sentence, _ in WORKED])
def test_worked_numbers(host, sentence, value):
    texts = [text for _, _, text in helps(host)] + [entry.shortHelpString() for entry in entries()]
    pattern = re.escape(sentence).replace(r"\{\}", r"(\d+(?:\.\d+)?)")
    found = {match for text in texts for match in re.findall(pattern, text)}
    (number,) = found
    assert number == f"{value:.{len(number.partition('.')[2])}f}"


def test_words_of_the_trade(host):
    """Words that no surveyor would use for these things."""
    unwanted = re.compile(r"\bshadow|handed in|known again|of the shims|make it again|answers for|look at\b|\barms?\b")
    texts = {(entry, key): text for entry, key, text in helps(host)}
    texts |= {(entry.name(), ""): entry.shortHelpString() for entry in entries()}
    texts |= {(e.name(), p.name(), "label"): p.description() for e in entries() for p in e.parameterDefinitions()}
    # The name of a field that is looked for is no word of ours.
    assert [place for place, text in texts.items() if unwanted.search(text.replace("axis, arm or line", ""))] == []
