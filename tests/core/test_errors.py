"""The one error of the core."""

from tautline.algorithms.core.errors import InputError


def test_a_refusal_carries_its_sentence_code_and_parameters():
    error = InputError("SIGMA is 0; it must be positive.", code="x", keys=("SIGMA",))
    assert isinstance(error, ValueError) and str(error) == "SIGMA is 0; it must be positive."
    again = error.reworded("The standard deviation is 0.")
    assert (str(again), again.code, again.keys) == ("The standard deviation is 0.", "x", ("SIGMA",))
    assert InputError("plain").code == "" and InputError("plain").keys == ()
