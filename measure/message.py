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


#: What a system says most often about a file, as `OSError.strerror` has it.
_SYSTEM_REASONS = {
    message.template: message
    for message in (
        TranslatableMessage("Permission denied"),
        TranslatableMessage("Operation not permitted"),
        TranslatableMessage("No space left on device"),
        TranslatableMessage("Disk quota exceeded"),
        TranslatableMessage("Read-only file system"),
        TranslatableMessage("Input/output error"),
        TranslatableMessage("No such file or directory"),
        TranslatableMessage("Not a directory"),
        TranslatableMessage("Is a directory"),
        TranslatableMessage("File exists"),
        TranslatableMessage("File name too long"),
        TranslatableMessage("Device or resource busy"),
        TranslatableMessage("Too many open files"),
        TranslatableMessage("Too many levels of symbolic links"),
        TranslatableMessage("File too large"),
        TranslatableMessage("Stale file handle"),
        TranslatableMessage("Invalid argument"),
    )
}


def system_reason(error: OSError) -> TranslatableMessage | str:
    """Return why the system refused; rare reasons stay in the system's own words."""
    reason = error.strerror or str(error)
    return _SYSTEM_REASONS.get(reason, reason)
