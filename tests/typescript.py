"""Runs the phone's functions from a Python test, so that both languages can be asked the same question."""

import json
import subprocess
from pathlib import Path
from typing import Any

from build_app import need_node

from tests.machine import ROOT

# Vite comes with the app and runs TypeScript as it is; no built file can be stale.
PROGRAM = """
import { readFileSync, writeFileSync } from "node:fs";
import { runnerImport } from "vite";
const [module, questions, target] = process.argv.slice(1);
const { module: { answers } } = await runnerImport(module, { configFile: false, logLevel: "error" });
writeFileSync(target, JSON.stringify(answers(JSON.parse(readFileSync(questions, "utf8")))));
"""


def answers(questions: list[dict[str, Any]], folder: Path) -> list[Any]:
    """For each `{function, in}` what TypeScript's claim gives; `folder` holds what goes to and fro."""
    node, source, target = need_node(), folder / "questions.json", folder / "answers.json"
    source.write_text(json.dumps(questions), encoding="utf-8")
    command = ["node", "--input-type=module", "--eval", PROGRAM, "--"]
    paths = [str(ROOT / "tests" / "answer.ts"), str(source), str(target)]
    subprocess.run([*command, *paths], cwd=ROOT / "webapp", env=node.env, check=True, timeout=120)
    given: list[Any] = json.loads(target.read_text(encoding="utf-8"))
    return given
