/**
 * Where TypeScript's core can be made wrong, and what the tests say to it.
 *
 * The slips are of the kinds that `python_slips.py` has. One is put in where its module is served; all modules are then
 * evaluated anew, and vectors, tests and the questions of Python's comparison run up to the first that fails, all in
 * this one process. Vitest would start afresh each time, so what the tests ask of it stands here.
 */

import { readFileSync } from "node:fs";
import vm from "node:vm";
import { chai, JestAsymmetricMatchers, JestChaiExpect, JestExtend } from "@vitest/expect";
import fc from "fast-check";
import ts from "typescript";
import { createServer, createServerModuleRunner, type Plugin, type UserConfig } from "vite";

import { differences } from "../vectors";

/** From one character to another, what stands there instead. */
type Splice = readonly [from: number, to: number, now: string];
type Slip = { file: string; start: number; end: number; now: string };
type Test = { name: string; run: () => unknown };
type Job = { files?: string[]; slips?: Slip[]; tests: string[]; asked: Asked[] };
type Found = [by: string, test: string];
type Load = <T>(file: string) => Promise<T>;
type Tell = (what: unknown) => void;
type Asked = { questions: unknown[]; answers: unknown[] };

// biome-ignore format: a table
const SWAPS: Readonly<Record<string, string>> = {
  "<": "<=", "<=": "<", ">": ">=", ">=": ">", "===": "!==", "!==": "===", "&&": "||", "||": "&&", "??": "&&",
  "+": "-", "-": "+", "*": "/", "/": "*", "%": "*", "**": "*", "+=": "-=", "-=": "+=", "*=": "/=", "/=": "*=",
  min: "max", max: "min", some: "every", every: "some",
};
const COMMUTES = new Set(["min", "max", "add", "multiply", "dot", "gcd"]); // swapping their arguments changes nothing
const ANSWER = new URL("../answer.ts", import.meta.url).pathname;
const MOST_MS = 20_000; // for a test
const SAME = 1e-10; // as close as the comparison of the two languages asks at the most

/** Writes lines of JSON: of the slips in `files`, or what the tests said to each of `slips`. */
export async function main({ files, slips, tests, asked }: Job, resolve: UserConfig["resolve"]): Promise<void> {
  const tell = (what: unknown) => process.stdout.write(`${JSON.stringify(what)}\n`);
  for (const file of files ?? []) for (const splice of slipsIn(file)) tell([file, ...splice]);
  if (slips) await run(slips, tests, asked, resolve, tell);
}

function slipsIn(file: string): Splice[] {
  const tree = ts.createSourceFile(file, readFileSync(file, "utf8"), ts.ScriptTarget.Latest, true);
  return spoken(tree).flatMap((node) => slipsOf(node, tree));
}

/** The nodes that say something at run time. */
function spoken(node: ts.Node): ts.Node[] {
  const isSilent = ts.isTypeNode(node) || ts.isImportDeclaration(node) || ts.isExportDeclaration(node);
  const isType = ts.isTypeAliasDeclaration(node) || ts.isInterfaceDeclaration(node);
  if (isSilent || isType) return [];
  const inner: ts.Node[] = [];
  ts.forEachChild(node, (child) => {
    inner.push(...spoken(child));
  });
  return [node, ...inner];
}

function slipsOf(node: ts.Node, tree: ts.SourceFile): Splice[] {
  const instead = (of: ts.Node, now: string): Splice => [of.getStart(tree), of.getEnd(), now];
  const swapped = (of: ts.Node) => {
    const text = of.getText(tree);
    return Object.hasOwn(SWAPS, text) ? [instead(of, SWAPS[text] as string)] : [];
  };
  const conditions = (of: ts.Node, ...words: string[]) => words.map((word) => instead(of, word));
  if (ts.isBinaryExpression(node)) return swapped(node.operatorToken);
  if (ts.isPrefixUnaryExpression(node)) {
    const isSign = [ts.SyntaxKind.ExclamationToken, ts.SyntaxKind.MinusToken].includes(node.operator);
    return isSign ? [[node.getStart(tree), node.getStart(tree) + 1, ""]] : [];
  }
  if (node.kind === ts.SyntaxKind.TrueKeyword) return [instead(node, "false")];
  if (node.kind === ts.SyntaxKind.FalseKeyword) return [instead(node, "true")];
  if (ts.isNumericLiteral(node)) return [instead(node, String(Number(node.text) + 1))];
  if (ts.isBigIntLiteral(node)) return [instead(node, `${BigInt(node.text.slice(0, -1)) + 1n}n`)];
  if (ts.isStringLiteral(node) || ts.isNoSubstitutionTemplateLiteral(node)) {
    return isName(node) ? [] : [instead(node, node.text ? '""' : '"x"')];
  }
  if (ts.isTemplateExpression(node)) return [instead(node, '""')];
  if (ts.isIfStatement(node)) return conditions(node.expression, "true", "false");
  if (ts.isConditionalExpression(node)) return conditions(node.condition, "true", "false");
  if (ts.isWhileStatement(node)) return conditions(node.expression, "false");
  if (ts.isThrowStatement(node)) return [instead(node, ";")];
  if (ts.isExpressionStatement(node) && ts.isCallExpression(node.expression)) return [instead(node, ";")];
  if (ts.isCallExpression(node)) return ofCall(node, tree, swapped);
  return [];
}

function isName(node: ts.Node): boolean {
  return ts.isPropertyAssignment(node.parent) && node.parent.name === node;
}

function ofCall(node: ts.CallExpression, tree: ts.SourceFile, swapped: (of: ts.Node) => Splice[]): Splice[] {
  const { expression } = node;
  const [one, other] = node.arguments;
  const found: Splice[] = [];
  if (ts.isPropertyAccessExpression(expression)) {
    found.push(...swapped(expression.name));
    if (expression.name.text === "filter") found.push([expression.expression.getEnd(), node.getEnd(), ""]);
  }
  const commutes = COMMUTES.has(
    (ts.isPropertyAccessExpression(expression) ? expression.name : expression).getText(tree),
  );
  if (one && other && !commutes && !ts.isSpreadElement(one) && !ts.isSpreadElement(other)) {
    const middle = tree.text.slice(one.getEnd(), other.getStart(tree));
    found.push([one.getStart(tree), other.getEnd(), other.getText(tree) + middle + one.getText(tree)]);
  }
  return found;
}

let collected: Test[] = [];
const collect = (name: string, run: () => unknown) => collected.push({ name, run });
const each = (take: (name: string, run: () => unknown) => void) => (rows: readonly unknown[]) => {
  return (name: string, run: (...row: unknown[]) => unknown) => {
    for (const row of rows) take(`${name}: ${(row as { name?: string }).name}`, () => run(...[row].flat(1)));
  };
};
const describe = (_: string, run: () => unknown) => run();
chai.use(JestExtend);
chai.use(JestChaiExpect);
chai.use(JestAsymmetricMatchers);
Object.assign(globalThis, {
  mutants: {
    expect: chai.expect,
    test: Object.assign(collect, { each: each(collect) }),
    describe: Object.assign(describe, { each: each(describe) }),
    run: () => undefined as unknown,
  },
});

async function run(slips: Slip[], tests: string[], asked: Asked[], resolve: UserConfig["resolve"], tell: Tell) {
  fc.configureGlobal({ seed: 1, endOnFailure: true });
  let slip = null as Slip | null;
  const plugin: Plugin = {
    name: "slips",
    enforce: "pre",
    resolveId: (id) => (id === "vitest" ? "\0vitest" : null),
    load: (id) => (id === "\0vitest" ? "export const { describe, expect, test } = globalThis.mutants;" : null),
    transform: (code, id) => (id === slip?.file ? code.slice(0, slip.start) + slip.now + code.slice(slip.end) : null),
  };
  const server = await createServer({
    configFile: false,
    logLevel: "error",
    resolve,
    plugins: [plugin],
    server: { middlewareMode: true, hmr: false, watch: null, ws: false },
  });
  const { ssr } = server.environments;
  const runner = createServerModuleRunner(ssr, { hmr: false });
  const load = <T>(file: string) => runner.import<T>(file);
  for (const next of [null, ...slips]) {
    const changed = [slip, next].flatMap((one) => (one ? [...(ssr.moduleGraph.getModulesByFile(one.file) ?? [])] : []));
    for (const module of changed) ssr.moduleGraph.invalidateModule(module);
    slip = next;
    runner.clearCache();
    const started = performance.now();
    const [by, test] = (await failingTest(tests, load)) ?? (await failingAnswer(asked, load)) ?? ["", ""];
    if (slip) tell({ by, test, seconds: (performance.now() - started) / 1000 });
    else tell({ failed: by && test });
  }
  await server.close();
}

async function failingTest(files: readonly string[], load: Load): Promise<Found | null> {
  for (const file of files) {
    collected = [];
    try {
      await load(file);
    } catch {
      return ["tests", `importing ${file}`];
    }
    for (const test of collected) if (!(await holds(test.run))) return ["tests", `${file} ${test.name}`];
  }
  return null;
}

/** Whether it ends in time and throws nothing. */
async function holds(run: () => unknown): Promise<boolean> {
  (globalThis as unknown as { mutants: { run: () => unknown } }).mutants.run = run;
  try {
    await vm.runInThisContext("globalThis.mutants.run()", { timeout: MOST_MS });
    return true;
  } catch {
    return false;
  }
}

async function failingAnswer(asked: readonly Asked[], load: Load): Promise<Found | null> {
  const { answers } = await load<{ answers: (questions: unknown[]) => unknown[] }>(ANSWER);
  for (const { questions, answers: wanted } of asked) {
    for (const [at, question] of questions.entries()) {
      const same = () => {
        const [found] = JSON.parse(JSON.stringify(answers([question]))) as unknown[];
        if (differences(found, wanted[at], SAME).length) throw new Error("unlike");
      };
      if (!(await holds(same))) return ["comparison", (question as { function: string }).function];
    }
  }
  return null;
}
