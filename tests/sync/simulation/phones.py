"""The phones' side: one Node that runs the app's own code for all of them, a line of JSON to and fro."""

from __future__ import annotations

import atexit
import json
from functools import cache
from pathlib import Path
from subprocess import PIPE, Popen
from typing import Any

from tests.machine import ROOT

# Packages are found from here; tests stand beside the app. A page is a function's body, so each has its own modules.
PROGRAM = """
import { createInterface } from "node:readline";
import { build, runnerImport } from "vite";
const options = { configFile: false, logLevel: "error" };
const lib = { entry: process.argv[1] + "/page.ts", formats: ["iife"], name: "page" };
const rolldownOptions = { external: ["dexie"], output: { globals: { dexie: "dexie" } } };
const built = await build({ ...options, build: { write: false, minify: false, lib, rolldownOptions } });
const alias = {
  dexie: import.meta.resolve("dexie/dist/modern/dexie.mjs"),
  "fake-indexeddb": import.meta.resolve("fake-indexeddb"),
};
const settings = { ...options, resolve: { alias } };
const { module: { answer, begin } } = await runnerImport(process.argv[1] + "/phones.ts", settings);
begin(built[0].output[0].code);
for await (const line of createInterface({ input: process.stdin })) {
  process.stdout.write(JSON.stringify(await answer(JSON.parse(line))) + "\\n");
}
"""


@cache
def _node() -> Popen[bytes]:
    from build_app import need_node  # found once tests.machine says where

    here = str(Path(__file__).parent)
    command = ["node", "--input-type=module", "--eval", PROGRAM, "--", here]
    node = Popen(command, cwd=ROOT / "webapp", env=need_node().env, stdin=PIPE, stdout=PIPE)
    atexit.register(node.kill)
    return node


def ask(do: str, **given: Any) -> str:
    """What came of a command (`COMMANDS` of `phones.ts`), as a line of JSON."""
    node = _node()
    assert node.stdin is not None
    assert node.stdout is not None
    node.stdin.write(json.dumps({"do": do, **given}).encode() + b"\n")
    node.stdin.flush()
    line = node.stdout.readline().decode()
    assert line, "the phones' side has ended"
    return line
