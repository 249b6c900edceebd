"""A refusal on its way out: InputError becomes the host's processing error here and nowhere else."""

import traceback
from contextlib import contextmanager

from qgis.core import QgsProcessingException

from ..boundary.cancel import Cancelled
from ..core.errors import InputError
from ..language.core_sentences import worded
from ..language.translation import tr
from .messages import REFUSAL, Message, hand

# Characters of a refusal at most.
_MOST_SAID = 1200


def sentence_of(error):
    """The sentence of a refusal, its middle left out where a path or a value in it is longer than anybody reads."""
    text = worded(error)
    return text if len(text) <= _MOST_SAID else text[: _MOST_SAID // 2] + " ... " + text[-_MOST_SAID // 2 :]


def tell_refusal(feedback, error):
    """Hand the refusal of an InputError to who listens to ``feedback``."""
    hand(feedback, Message(REFUSAL, error.code, sentence_of(error), error.keys))


@contextmanager
def refusals_told(feedback):
    """What ends a run is handed to who listens, and becomes the host's processing error where it is a sentence."""
    try:
        yield
    except InputError as error:
        tell_refusal(feedback, error)
        raise QgsProcessingException(sentence_of(error)) from None
    except Cancelled:
        error = InputError(tr("Cancelled; no output was written."))
        tell_refusal(feedback, error)
        raise QgsProcessingException(str(error)) from None
    except QgsProcessingException as error:
        hand(feedback, Message(REFUSAL, "", str(error)))
        raise
    except Exception as error:
        # A fault of ours: the host shows its traceback, who listens gets its last line.
        hand(feedback, Message(REFUSAL, "", traceback.format_exception_only(type(error), error)[-1].strip()))
        raise
