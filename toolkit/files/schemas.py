"""The JSON Schemas of the files, for editors that check while one types."""

from __future__ import annotations

import json
from collections.abc import Callable
from pathlib import Path
from typing import Any

from toolkit.files.boards_file import boards_schema
from toolkit.files.box_file import box_schema
from toolkit.files.class_file import class_schema
from toolkit.files.records import FileSection

FOLDER = Path(__file__).parent
SCHEMAS: dict[str, Callable[[], type[FileSection]]] = {
    "box.schema.json": box_schema,
    "boards.schema.json": boards_schema,
    "class.schema.json": class_schema,
}


def schema_text(schema: type[FileSection]) -> str:
    """The JSON Schema of a kind of file, as it is kept beside this module."""
    whole = {
        "$schema": "https://json-schema.org/draft/2020-12/schema",
        **_plain(schema.model_json_schema(by_alias=True)),
    }
    return json.dumps(whole, indent=2, ensure_ascii=False) + "\n"


def write_schemas() -> None:
    """Write every schema anew."""
    for name, schema in SCHEMAS.items():
        (FOLDER / name).write_text(schema_text(schema()), encoding="utf-8")


def _plain(node: Any) -> Any:
    """A schema without what pydantic adds: titles made from names, and defaults of null."""
    if isinstance(node, list):
        return [_plain(item) for item in node]
    if not isinstance(node, dict):
        return node
    # Under "properties" a title is somebody's key, and then it holds a schema.
    return {
        key: _plain(item)
        for key, item in node.items()
        if (key != "title" or not isinstance(item, str)) and (key != "default" or item is not None)
    }


if __name__ == "__main__":
    write_schemas()
