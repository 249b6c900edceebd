"""What the window shows of data is shown letter by letter: no name of a layer is taken for markup."""

import ast
import pathlib

import pytest

ROOT = pathlib.Path(__file__).resolve().parents[2]
# Labels that show markup of our own; what they say of data is escaped where it is put together.
OWN_MARKUP = {("decisions/panel.py", "story")}


def test_a_sentence_in_the_message_bar():
    from tautline.plugin.message_bar import shown, tell

    said = []

    class Bar:
        def pushMessage(self, *given):  # noqa: N802 - the host's name
            said.append(given)

    tell(Bar(), "Layer '<img src=x>' & more", 2, 6)
    assert said == [("Tautline", "Layer '&lt;img src=x&gt;' &amp; more", 2, 6)]
    assert shown("plain") == "plain"


@pytest.mark.parametrize("path", sorted((ROOT / "plugin").rglob("*.py")), ids=lambda p: p.stem)
def test_nothing_goes_past_it(path):
    text = path.read_text(encoding="utf-8")
    if path.name != "message_bar.py":
        assert ".pushMessage(" not in text
    for line in text.splitlines():
        if "createMessage(" in line:
            assert "shown(" in line


@pytest.mark.parametrize("name", ["decisions/panel.py", "profile/panel.py", "guided/widgets.py"])
def test_labels_are_plain(name):
    """Every label whose text is set later, from data, says that it is plain."""
    tree = ast.parse((ROOT / "plugin" / name).read_text(encoding="utf-8"))
    labels, plain = set(), set()
    for node in ast.walk(tree):
        if isinstance(node, ast.Assign) and isinstance(node.value, ast.Call):
            target, made = node.targets[0], node.value
            empty = not made.args or not (isinstance(made.args[0], ast.Name) and made.args[0].id in ("text", "title"))
            if getattr(made.func, "id", "") == "QLabel" and isinstance(target, ast.Attribute) and empty:
                labels.add(target.attr)
        if isinstance(node, ast.Call) and getattr(node.func, "attr", "") == "setTextFormat":
            if isinstance(node.func.value, ast.Attribute) and "PlainText" in ast.dump(node.args[0]):
                plain.add(node.func.value.attr)
    pictures = {"_sign"}
    assert labels - plain - pictures <= {label for file, label in OWN_MARKUP if file == name} | {"label"}
