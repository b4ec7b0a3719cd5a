"""Translatable messages: English templates with named values, formatted by the user interface."""

from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Union


@dataclass(frozen=True, slots=True)
class TranslatableMessage:
    """One sentence, or a part of one.

    Attributes
    ----------
    template
        English text with named placeholders; a literal at the call, so that the extractor of
        texts to translate finds it.
    values
        What the placeholders hold: text that is the same in every language, or another message.
    """

    template: str
    values: Mapping[str, Union[str, "TranslatableMessage"]] = field(default_factory=dict)

    def __str__(self) -> str:
        return self.template.format(**{name: str(value) for name, value in self.values.items()})


def join_messages(messages: tuple[TranslatableMessage, ...]) -> str:
    """Return several messages in English, joined by spaces."""
    return " ".join(map(str, messages))
