"""Messages carry codes and parameters, and nothing is decided from the words of a sentence: read from the sources."""

import ast
import functools
import gc
import pathlib

import pytest

from tautline.algorithms.core.errors import InputError
from tautline.algorithms.entry import messages
from tautline.algorithms.entry.messages import DOUBT, FACT, REFUSAL, ROW_REJECTED, Message, hand, listen

ROOT = pathlib.Path(__file__).resolve().parents[1]
ALGORITHMS, SHELL = ROOT / "algorithms", ROOT / "plugin"


def id_of(path):
    return str(path.relative_to(ROOT))


# --- messages


class Feedback:
    """As much of the host's as a message needs; equal to every other, as only identity may count."""

    def __eq__(self, other):
        return True

    __hash__ = None


def test_messages_go_to_the_feedback_that_is_listened_to():
    mine, other, nobody = Feedback(), Feedback(), Feedback()
    heard, elsewhere = listen(mine), listen(other)
    said = Message(DOUBT, ROW_REJECTED, "Row 3 is rejected.", ("INPUT",))
    hand(mine, said)
    hand(nobody, said)
    assert heard == [said] and elsewhere == []
    assert listen(mine) is heard


def test_what_was_heard_goes_with_its_feedback():
    before = len(messages._LISTENING)
    feedback = Feedback()
    listen(feedback)
    assert len(messages._LISTENING) == before + 1
    del feedback
    gc.collect()
    assert len(messages._LISTENING) == before


@pytest.mark.parametrize("wrong", [("remark", "", "x"), (FACT, "row is rejected", "x"), (FACT, "", "x", "INPUT")])
def test_unknown_kinds_and_codes_are_refused(wrong):
    with pytest.raises(ValueError):
        Message(*wrong)


def test_every_code_has_its_line_in_the_table():
    named = {
        value
        for name, value in vars(messages).items()
        if name.isupper() and isinstance(value, str) and value not in messages.KINDS
    }
    assert named == set(messages.CODES) and all(messages.CODES.values())


def test_a_refusal_keeps_its_code_and_keys_in_other_words():
    error = InputError("It is open.", code=ROW_REJECTED, keys=["AXIS"])
    other = error.reworded("Layer 'a': It is open.")
    assert (str(other), other.code, other.keys) == ("Layer 'a': It is open.", ROW_REJECTED, ("AXIS",))
    assert isinstance(other, InputError) and InputError("x").keys == () and InputError("x").code == ""


# --- nothing is decided from words

# Replacing and splitting are left alone: they show a sentence otherwise.
_SEARCHES = {"search", "match", "fullmatch", "findall", "finditer"}
_TEXT_METHODS = {"startswith", "endswith", "find", "rfind", "index", "count", "partition", "rpartition"} | _SEARCHES
# What holds a sentence where entries' messages arrive.
_SENTENCES = {"text", "message", "sentence", "warning", "reason", "error"}


def is_translated(node):
    return isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "tr"


def is_sentence(node):
    """A translated sentence, or words with blanks between them."""
    return (
        is_translated(node)
        or isinstance(node, ast.Constant)
        and isinstance(node.value, str)
        and " " in node.value.strip()
    )


def holds_sentence(node):
    """A name or attribute that holds a sentence, or an error turned into one."""
    if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "str" and node.args:
        return holds_sentence(node.args[0])
    name = node.id if isinstance(node, ast.Name) else node.attr if isinstance(node, ast.Attribute) else ""
    return name in _SENTENCES


def decisions_from_words(source, messages_arrive):
    """Lines of a source in which something is decided from the words of a sentence.

    Everywhere: a translated sentence compared, and words with blanks looked for. Where ``messages_arrive`` also:
    anything looked for in a sentence, and any search by a regular expression.
    """
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Compare):
            inside = any(isinstance(op, (ast.In, ast.NotIn)) for op in node.ops)
            parts = [node.left, *node.comparators]
            if any(map(is_translated, parts)) or inside and is_sentence(node.left):
                yield node.lineno, ast.unparse(node)
            elif messages_arrive and inside and any(holds_sentence(part) for part in node.comparators):
                yield node.lineno, ast.unparse(node)
        elif isinstance(node, ast.Call) and isinstance(node.func, ast.Attribute) and node.func.attr in _TEXT_METHODS:
            if any(is_sentence(part) for part in (node.func.value, *node.args)):
                yield node.lineno, ast.unparse(node)
            elif messages_arrive and (node.func.attr in _SEARCHES or holds_sentence(node.func.value)):
                yield node.lineno, ast.unparse(node)


@pytest.mark.parametrize(
    "line",
    [
        'if tr("names an axis") in warning: pass',
        'if "is rejected" in warning: pass',
        'if "Traceback" in text: pass',
        "new = [text for text in warnings if any(words in text for words in said)]",
        "found = _KEYS.search(message)",
        'if "compatible with scratch layers" not in warning: pass',
        'if str(error).startswith("Layer"): pass',
        'if message.text.endswith("slope."): pass',
        'if text == tr("Cancelled; no output was written."): pass',
        'if "SLOPE" in str(error): pass',
    ],
)
def test_decisions_from_words_are_found(line):
    assert list(decisions_from_words(line, True))


@pytest.mark.parametrize(
    "line",
    [
        "if doubt.code in (ROW_REJECTED, STATION_TWICE): pass",
        'if answer in ("", "heights", "place"): pass',
        "shown = _NAMED.sub(label, text)",
        'if "height_field" in found.beside: pass',
        'text = " ".join(text.split())',
        'words = words.replace(" (AXIS)", "")',
        'if flag == "suspected blunder": pass',
        "if doubt not in outcome.doubts: pass",
    ],
)
def test_other_comparisons_are_left_alone(line):
    assert not list(decisions_from_words(line, True))


def arrives(path):
    """Whether messages of entries arrive in a file of the shell."""
    return path == SHELL / "toolbox.py" or bool({SHELL / "guided", SHELL / "review"} & set(path.parents))


@pytest.mark.parametrize("path", sorted(SHELL.rglob("*.py")), ids=id_of)
def test_shell_decides_nothing_from_words(path):
    assert not list(decisions_from_words(path.read_text(encoding="utf-8"), arrives(path)))


# --- one door: the request


def attributes_of_asked(source):
    """Names asked of what is called ``asked``, also as ``self.asked`` or ``run.asked``: [(line, name)]."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Attribute):
            owner = node.value
            name = owner.id if isinstance(owner, ast.Name) else owner.attr if isinstance(owner, ast.Attribute) else ""
            if name == "asked":
                yield node.lineno, node.attr


OUTSIDE_ENTRY = [path for path in sorted(ALGORITHMS.rglob("*.py")) if ALGORITHMS / "entry" not in path.parents]


@pytest.mark.parametrize("path", OUTSIDE_ENTRY, ids=id_of)
def test_only_the_room_of_requests_goes_behind_one(path):
    """What an entry was given is asked for by key; the host's algorithm and context are the room's own business."""
    own = {"entry", "parameters", "context"}
    assert not [found for found in attributes_of_asked(path.read_text(encoding="utf-8")) if found[1] in own]


def test_going_behind_a_request_is_found():
    assert list(attributes_of_asked("a = asked.context\nb = self.asked.entry")) == [(1, "context"), (2, "entry")]


@pytest.mark.parametrize("path", OUTSIDE_ENTRY, ids=id_of)
def test_sentences_go_through_the_request(path):
    """A sentence pushed past the request is heard by nobody; the report's map has only the feedback so far."""
    if path == ALGORITHMS / "report" / "map.py":
        return
    pushed = [
        node.lineno
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute) and node.attr in ("pushInfo", "pushWarning")
    ]
    assert not pushed


# --- refusals name their parameters


@functools.cache
def parameter_keys():
    """Keys of parameters: what their builders are given first, and what a request is asked for."""
    found = set()
    for path in ALGORITHMS.rglob("*.py"):
        for node in ast.walk(ast.parse(path.read_text(encoding="utf-8"))):
            if isinstance(node, ast.Call) and node.args and isinstance(node.args[0], ast.Constant):
                key, called = node.args[0].value, ast.unparse(node.func)
                if isinstance(key, str) and key.isupper() and ("arameter" in called or "asked" in called):
                    found.add(key)
    return found


def sentences_with_keys(source, known):
    """(line, parameters in the sentence, whether keys are stated) of each InputError in a source."""
    for node in ast.walk(ast.parse(source)):
        if isinstance(node, ast.Call) and isinstance(node.func, ast.Name) and node.func.id == "InputError":
            texts = [
                part.value
                for argument in node.args
                for part in ast.walk(argument)
                if isinstance(part, ast.Constant) and isinstance(part.value, str)
            ]
            words = {word.strip("(),.;:'") for text in texts for word in text.split() if " " in text}
            yield node.lineno, words & known, any(keyword.arg == "keys" for keyword in node.keywords)


# The core knows no parameters; where one of its refusals has a place to be mended, the room above says it.
STATING = [path for path in OUTSIDE_ENTRY if not {ALGORITHMS / "core", ALGORITHMS / "documents"} & set(path.parents)]


@pytest.mark.parametrize("path", [p for p in STATING if ALGORITHMS / "report" not in p.parents], ids=id_of)
def test_a_refusal_that_names_a_parameter_states_it(path):
    known = parameter_keys()
    found = sentences_with_keys(path.read_text(encoding="utf-8"), known)
    assert not [(line, keys) for line, keys, stated in found if keys and not stated]


def test_refusals_without_their_parameters_are_found():
    known = parameter_keys()
    assert {"HEIGHT_FIELD", "UNDULATION_VALUE", "SIGMA", "AXIS", "HTML"} <= known and "QGIS" not in known
    line = "raise InputError(tr('Choose the field (HEIGHT_FIELD).').format(1){})"
    assert list(sentences_with_keys(line.format(""), known)) == [(1, {"HEIGHT_FIELD"}, False)]
    assert list(sentences_with_keys(line.format(", keys=('HEIGHT_FIELD',)"), known)) == [(1, {"HEIGHT_FIELD"}, True)]


def test_refusal_is_one_of_the_kinds():
    assert REFUSAL in messages.KINDS and len(set(messages.KINDS)) == 4
