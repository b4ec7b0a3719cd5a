"""JSON codec: records as plain data (dicts, lists, text, numbers) and back, strictly.

Used for the columns of the store that hold lists and for exported files. Decoding trusts nothing:
every field is checked against its annotation, an unknown field is an error, and the error says
where it is.
"""

import dataclasses
import datetime as dt
import functools
import json
import math
import reprlib
import types
import typing
from collections.abc import Callable
from enum import Enum
from typing import Any, TypeVar

import numpy as np

from measure.errors import DataError, InputError, quoting
from measure.message import TranslatableMessage

T = TypeVar("T")

#: A decoder takes plain data and its place, for the error's text.
Decoder = Callable[[Any, str], Any]


def to_data(value: Any) -> Any:
    """Return `value` as dicts, lists, text, numbers, truth values and None.

    numpy scalars become Python numbers; a number that is not finite becomes None, since JSON
    has no such numbers. Moments of time become text in UTC.
    """
    if isinstance(value, np.generic):
        value = value.item()
    if isinstance(value, Enum):
        return value.value
    if value is None or isinstance(value, (str, bool, int)):
        return value
    if isinstance(value, float):
        return value if math.isfinite(value) else None
    if isinstance(value, dt.datetime):
        return utc_text(value)
    if isinstance(value, dt.date):
        return value.isoformat()
    if isinstance(value, (tuple, list)):
        return [to_data(item) for item in value]
    if isinstance(value, dict):
        return {str(name): to_data(item) for name, item in value.items()}
    if dataclasses.is_dataclass(value):
        return {name: to_data(getattr(value, name)) for name in _field_names(value.__class__)}
    raise TypeError(f"{type(value).__name__} is no plain data")


def from_data(kind: type[T], data: Any, where: str = "") -> T:
    """Return `data` as a value of the dataclass `kind`.

    Parameters
    ----------
    where
        Name of the place, for errors, such as "sessions[3]".

    Raises
    ------
    DataError
        When something is missing, unknown, of the wrong kind or out of range.
    """
    return typing.cast(T, _decoder(typing.cast(Any, kind))(data, where))


def to_json(value: Any) -> str:
    """Return `value` as compact JSON; equal values give equal text."""
    return json.dumps(to_data(value), ensure_ascii=False, sort_keys=True, separators=(",", ":"))


def json_reader(kind: Any) -> Callable[[str], Any]:
    """Return a function that reads the values of `kind` which :func:`to_json` wrote.

    It gives the same object for the same text, so that thousands of readings share one set-up.
    Not for texts from outside. It raises DataError when a text is no JSON or not of that kind.
    """

    @functools.lru_cache(maxsize=4096)
    def read(text: str) -> Any:
        try:
            data = json.loads(text)
        except (ValueError, RecursionError) as error:
            raise DataError(
                TranslatableMessage(
                    "A column that holds JSON is damaged: {detail}.", {"detail": str(error)}
                )
            ) from None
        return _decoder(kind)(data, "")

    return read


def utc_text(moment: dt.datetime) -> str:
    """Return an aware time as text of fixed width in UTC, so that text sorts as time does."""
    utc = moment.astimezone(dt.UTC)
    return utc.replace(tzinfo=None).isoformat(timespec="microseconds") + "Z"


def utc_from_text(text: str, where: str = "") -> dt.datetime:
    """Return the aware time that :func:`utc_text` wrote, or another ISO 8601 time with zone.

    Raises
    ------
    DataError
        When `text` is no time, or has no zone.
    """
    try:
        moment = dt.datetime.fromisoformat(text)
        aware = moment.astimezone(dt.UTC) if moment.tzinfo else None
    except (ValueError, OverflowError):
        aware = None
    if aware is None:
        raise DataError(
            TranslatableMessage(
                "{where}: {text} is not a time such as 2026-03-29T01:30:00Z.",
                {"where": where, "text": repr(text[:40])},
            )
        )
    return aware


@functools.cache
def _field_names(kind: Any) -> tuple[str, ...]:
    return tuple(field.name for field in dataclasses.fields(kind))


@functools.cache
def _decoder(kind: Any) -> Decoder:
    origin, arguments = typing.get_origin(kind), typing.get_args(kind)
    if origin in (types.UnionType, typing.Union):
        (inner,) = (_decoder(part) for part in arguments if part is not type(None))
        return lambda data, where: None if data is None else inner(data, where)
    if origin is tuple and arguments[-1] is Ellipsis:
        return _list(_decoder(arguments[0]))
    if origin is tuple:
        return _fixed_list([_decoder(part) for part in arguments])
    if origin is dict:
        return _mapping(_decoder(arguments[1]))
    if dataclasses.is_dataclass(kind):
        return _record(typing.cast(type, kind))
    if issubclass(kind, Enum):
        return _choice(kind)
    return _PLAIN[kind]


def _list(inner: Decoder) -> Decoder:
    def decode(data: Any, where: str) -> tuple[Any, ...]:
        if not isinstance(data, list):
            raise _wrong(data, where, TranslatableMessage("a list"))
        return tuple(inner(item, f"{where}[{number}]") for number, item in enumerate(data))

    return decode


def _fixed_list(inner: list[Decoder]) -> Decoder:
    def decode(data: Any, where: str) -> tuple[Any, ...]:
        if not isinstance(data, list) or len(data) != len(inner):
            message = TranslatableMessage("a list of {count}", {"count": str(len(inner))})
            raise _wrong(data, where, message)
        pairs = zip(inner, data, strict=True)
        return tuple(part(item, f"{where}[{k}]") for k, (part, item) in enumerate(pairs))

    return decode


def _mapping(inner: Decoder) -> Decoder:
    def decode(data: Any, where: str) -> dict[str, Any]:
        items = _object(data, where).items()
        return {_text(name, where): inner(item, f"{where}.{name[:40]}") for name, item in items}

    return decode


def _record(kind: type) -> Decoder:
    hints = typing.get_type_hints(kind)
    decoders = {name: _decoder(hints[name]) for name in _field_names(kind)}
    needed = {
        field.name
        for field in dataclasses.fields(kind)
        if field.default is dataclasses.MISSING and field.default_factory is dataclasses.MISSING
    }

    def decode(data: Any, where: str) -> Any:
        if unknown := _object(data, where).keys() - decoders.keys():
            raise DataError(
                TranslatableMessage(
                    "{where}: unknown field {name}; a later version may have written it.",
                    {"where": where, "name": repr(min(unknown)[:40])},
                )
            )
        if missing := needed - data.keys():
            raise DataError(
                TranslatableMessage(
                    "{where}: the field {name} is missing.",
                    {"where": where, "name": repr(min(missing))},
                )
            )
        prefix = f"{where}." if where else ""
        values = {name: decoders[name](item, prefix + name) for name, item in data.items()}
        try:
            return kind(**values)
        except DataError:
            raise
        except InputError as error:
            raise DataError(
                quoting(
                    TranslatableMessage(
                        "{where}: {error}", {"where": where, "error": error.message}
                    ),
                    error,
                )
            ) from None

    return decode


def _choice(kind: type[Enum]) -> Decoder:
    members = {member.value: member for member in kind}

    def decode(data: Any, where: str) -> Enum:
        if not isinstance(data, str) or data not in members:
            raise _wrong(
                data,
                where,
                TranslatableMessage("one of {choices}", {"choices": ", ".join(members)}),
            )
        return members[data]

    return decode


def _object(data: Any, where: str) -> dict[Any, Any]:
    if not isinstance(data, dict):
        raise _wrong(data, where, TranslatableMessage("an object"))
    return data


def _number(data: Any, where: str) -> float:
    if isinstance(data, bool) or not isinstance(data, (int, float)):
        raise _wrong(data, where, TranslatableMessage("a number"))
    try:
        number = float(data)
    except OverflowError:
        number = math.inf
    if not math.isfinite(number):
        raise _wrong(data, where, TranslatableMessage("a finite number"))
    return number


def _whole(data: Any, where: str) -> int:
    if isinstance(data, bool) or not isinstance(data, int) or abs(data) >= 2**63:
        raise _wrong(data, where, TranslatableMessage("a whole number"))
    return data


def _text(data: Any, where: str) -> str:
    if not isinstance(data, str):
        raise _wrong(data, where, TranslatableMessage("text"))
    if any("\ud800" <= letter <= "\udfff" for letter in data):
        raise DataError(
            TranslatableMessage("{where}: half a character; the file is damaged.", {"where": where})
        )
    return data


def _truth(data: Any, where: str) -> bool:
    if not isinstance(data, bool):
        raise _wrong(data, where, TranslatableMessage("true or false"))
    return data


def _time(data: Any, where: str) -> dt.datetime:
    return utc_from_text(_text(data, where), where)


def _day(data: Any, where: str) -> dt.date:
    try:
        return dt.date.fromisoformat(_text(data, where))
    except ValueError:
        raise _wrong(data, where, TranslatableMessage("a day such as 2026-03-29")) from None


_PLAIN: dict[Any, Decoder] = {
    int: _whole,
    float: _number,
    str: _text,
    bool: _truth,
    dt.datetime: _time,
    dt.date: _day,
}


def _wrong(data: Any, where: str, expected: TranslatableMessage) -> DataError:
    shown = TranslatableMessage("nothing") if data is None else reprlib.repr(data)
    return DataError(
        TranslatableMessage(
            "{where}: expected {expected}, not {shown}.",
            {"where": where, "expected": expected, "shown": shown},
        )
    )
