"""Bring the translations in step with the sources: /usr/bin/python3 tests/release/translation.py

Each file of plugin/i18n/ (tautline_LANGUAGE.ts) gets the texts that the sources have, in their order, with the
translations that it has. A text without one is marked as unfinished, one that no source has any more is left out.
``archive.py`` compiles the files.

The texts are the literal arguments of ``tr`` and ``translatable``, labels of output fields, sentences of the core and
words in them, and what an entry states of itself.
"""

import ast
import pathlib
import sys
import xml.etree.ElementTree as ElementTree

ROOT = pathlib.Path(__file__).resolve().parents[2]
PLACE = ROOT / "plugin" / "i18n"
CORE = ROOT / "algorithms" / "core"
CONTEXT = "Tautline"
# Names of calls: which of their arguments are texts.
CALLS = {"tr": (0,), "translatable": (0,), "OutputField": (3,)}
# The same in the core, which words nothing itself: ``algorithms/language/core_sentences.py`` does.
CALLS_OF_CORE = {"InputError": (0,), "Sentence": (0,), "Word": (0,)}
# What a class of an entry states, a text or several.
STATED = ("TITLE", "GROUP", "HELP", "TAGS")


def sources():
    """The plugin's Python files, in order."""
    return sorted([*(ROOT / "algorithms").rglob("*.py"), *(ROOT / "plugin").rglob("*.py")])


def literals(node):
    """Texts of a literal, of several in a tuple, or of both branches of a choice."""
    if isinstance(node, ast.Constant):
        return [node.value] if isinstance(node.value, str) and node.value else []
    if isinstance(node, (ast.Tuple, ast.List)):
        return [text for one in node.elts for text in literals(one)]
    if isinstance(node, ast.IfExp):
        return literals(node.body) + literals(node.orelse)
    return []


def _stated(node):
    """Texts that a class of an entry assigns."""
    for line in node.body:
        if isinstance(line, ast.Assign):
            for target in line.targets:
                pairs = [(target, line.value)]
                if isinstance(target, ast.Tuple) and isinstance(line.value, ast.Tuple):
                    pairs = zip(target.elts, line.value.elts)
                for name, value in pairs:
                    if isinstance(name, ast.Name) and name.id in STATED:
                        yield from literals(value)


def called(node):
    """The name of a call's function, '' for none."""
    return getattr(node.func, "id", getattr(node.func, "attr", "")) if isinstance(node, ast.Call) else ""


def texts():
    """{text: the first file that has it, as a path below the root} in the order of files and lines."""
    found = {}
    for path in sources():
        tree, mine = ast.parse(path.read_text(encoding="utf-8")), []
        calls = CALLS_OF_CORE if CORE in path.parents else CALLS
        for node in ast.walk(tree):
            for number in calls.get(called(node), ()):
                if number < len(node.args):
                    argument = node.args[number]
                    mine += [(argument.lineno, argument.col_offset, text) for text in literals(argument)]
            if isinstance(node, ast.ClassDef) and path.parent.name == "algorithms":
                mine += [(node.lineno, 0, text) for text in _stated(node)]
        for _, _, text in sorted(mine):
            found.setdefault(text, path.relative_to(ROOT).as_posix())
    return found


def kept(path):
    """{text: translation} of a file; those without one are left out."""
    if not path.stat().st_size:
        return {}
    messages = ElementTree.parse(path).getroot().iter("message")  # noqa: S314 - a file of our own
    pairs = [(message.findtext("source"), message.findtext("translation")) for message in messages]
    return {text: translation for text, translation in pairs if translation}


def document(language, translations):
    """The file of a language as text; ``translations``: {text: translation}."""
    root = ElementTree.Element("TS", version="2.1", language=language, sourcelanguage="en")
    context = ElementTree.SubElement(root, "context")
    ElementTree.SubElement(context, "name").text = CONTEXT
    for text, path in texts().items():
        message = ElementTree.SubElement(context, "message")
        ElementTree.SubElement(message, "location", filename=f"../../{path}")
        ElementTree.SubElement(message, "source").text = text
        translation = ElementTree.SubElement(message, "translation")
        translation.text = translations.get(text)
        if translation.text is None:
            translation.set("type", "unfinished")
    ElementTree.indent(root, " ")
    return (
        '<?xml version="1.0" encoding="utf-8"?>\n<!DOCTYPE TS>\n'
        + ElementTree.tostring(root, encoding="unicode")
        + "\n"
    )


def files():
    """{language: path} of the translations that there are."""
    return {path.stem.partition("_")[2]: path for path in sorted(PLACE.glob("tautline_*.ts"))}


def main():
    for language, path in files().items():
        translations = kept(path)
        path.write_text(document(language, translations), encoding="utf-8")
        due = [text for text in texts() if text not in translations]
        print(f"{path.name}: {len(texts()) - len(due)} of {len(texts())} texts translated")


if __name__ == "__main__":
    sys.exit(main())
