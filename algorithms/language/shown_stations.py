"""Stations as people read them: with the minus of all other numbers.

Fields, tables for spreadsheets and what is to be typed keep the hyphen of the keyboard, which other software reads; our
own reader takes both.
"""

MINUS = "\u2212"


def shown_station(text):
    """A station as sentences, pages, charts and labels show it: before a figure the hyphen is a minus, '-0+050' is
    '−0+050'. styles/wording.py has the same for the map."""
    return MINUS + text[1:] if text[:1] == "-" and text[1:2].isdecimal() else text


def shown_stations(texts):
    """The same of several: a list."""
    return [shown_station(text) for text in texts]
