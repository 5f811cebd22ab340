/** TypeScript functions stay short, like the Python ones: half within ten lines, nine in ten within thirty. */
import { execFileSync } from "node:child_process";
import { readFileSync } from "node:fs";
import { resolve } from "node:path";
import ts from "typescript";
import { expect, test } from "vitest";

const ROOT = resolve(import.meta.dirname, "../..");

function ownFiles(): string[] {
  const tracked = execFileSync("git", ["ls-files", "-z", "*.ts", "*.tsx"], { cwd: ROOT, encoding: "utf8" }).split("\0");
  return tracked.filter((path) => path !== "" && !path.includes("generated/"));
}

/** A function with a name: a declaration, a method, or a variable that holds one. Callbacks belong to their function. */
function isNamed(node: ts.Node): boolean {
  if (ts.isFunctionDeclaration(node) || ts.isMethodDeclaration(node)) return node.body !== undefined;
  const isFunction = ts.isArrowFunction(node) || ts.isFunctionExpression(node);
  return isFunction && (ts.isVariableDeclaration(node.parent) || ts.isPropertyAssignment(node.parent));
}

function saidLines(text: string): number {
  return text.split("\n").filter((line) => line.trim() !== "" && !/^\s*(\/\/|\/?\*)/.test(line)).length;
}

function lengthsIn(path: string): number[] {
  const source = ts.createSourceFile(path, readFileSync(resolve(ROOT, path), "utf8"), ts.ScriptTarget.Latest, true);
  const lengths: number[] = [];
  const visit = (node: ts.Node): void => {
    if (isNamed(node)) lengths.push(saidLines(node.getText(source)));
    ts.forEachChild(node, visit);
  };
  visit(source);
  return lengths;
}

test("half of the functions are within ten lines and nine in ten within thirty", () => {
  const lengths = ownFiles()
    .flatMap(lengthsIn)
    .sort((a, b) => a - b);
  const at = (share: number): number => lengths[Math.floor(share * (lengths.length - 1))] ?? Infinity;
  expect(at(0.5)).toBeLessThanOrEqual(10);
  expect(at(0.9)).toBeLessThanOrEqual(30);
});
