"""Sentences with blanks: told in English as they are, and in other languages by who shows them."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Union


@dataclass(frozen=True, slots=True)
class TranslatableMessage:
    """One sentence, or a part of one.

    Attributes
    ----------
    template
        In English, with named blanks; a literal where it is written, so that it is found by
        who gathers the texts to be translated.
    values
        What the blanks hold: text that is the same in every language, or another remark.
    """

    template: str
    values: Mapping[str, Union[str, "TranslatableMessage"]] = field(default_factory=dict)

    def __str__(self) -> str:
        return self.template.format(**{name: str(each) for name, each in self.values.items()})


def join_messages(remarks: tuple[TranslatableMessage, ...]) -> str:
    """Return several remarks in English, one after the other."""
    return " ".join(map(str, remarks))
