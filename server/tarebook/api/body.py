"""Reading what a request carries: strict JSON, and fields that hold no text a database or file would choke on."""

from typing import Any, NoReturn

from flask import Request
from marshmallow import ValidationError, fields, validate
from webargs.flaskparser import FlaskParser

from tarebook.errors import TarebookError
from tarebook.journal import entries
from tarebook.journal.entries import is_id, load_json, why_not_json

LARGEST = entries.LARGEST


class StrictParser(FlaskParser):
    """Refuses other content types, what is not UTF-8, NaN, and nesting that would exhaust the reader."""

    def load_json(self, req: Request, schema: Any) -> Any:
        self.check_type(req)
        try:
            return load_json(req.get_data(cache=True).decode("utf-8"))
        except (UnicodeDecodeError, ValueError) as problem:
            raise TarebookError("malformed_json", reason=why_not_json(problem)) from problem

    @staticmethod
    def check_type(req: Request) -> None:
        if req.mimetype != "application/json":
            raise TarebookError("unsupported_type")

    def handle_error(self, error: ValidationError, *_args: Any, **_kwargs: Any) -> NoReturn:
        raise TarebookError("bad_input", fields=error.messages) from error


class Line(fields.String):
    """A short text that people may read: well formed, without NUL."""

    def __init__(self, most: int, **kwargs: Any) -> None:
        super().__init__(validate=[validate.Length(max=most), self._sound], **kwargs)

    @staticmethod
    def _sound(text: str) -> None:
        if "\0" in text or entries.well_formed(text) != text:
            raise ValidationError("Not well formed text.")


class Id(fields.String):
    """1 to 80 printable ASCII characters without a space."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(validate=validate.Regexp(r"^[!-~]{1,80}\Z"), **kwargs)


class Hash(fields.String):
    """A SHA-256 in hexadecimal."""

    def __init__(self, **kwargs: Any) -> None:
        super().__init__(validate=validate.Regexp(r"^[0-9a-f]{64}\Z"), **kwargs)


def whole(least: int, most: int = LARGEST, **kwargs: Any) -> fields.Integer:
    return fields.Integer(strict=True, validate=validate.Range(min=least, max=most), **kwargs)


def checked_id(text: str, code: str) -> str:
    """A name from an address; raises the code when it cannot be one."""
    if not is_id(text):
        raise TarebookError(code)
    return text
