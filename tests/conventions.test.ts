import { readdirSync, readFileSync } from "node:fs";
import { dirname, join, relative, resolve } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { expect, test } from "vitest";
import { ALL_CODES } from "../packages/core/src/measure/index.ts";

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "..");

interface Source {
  readonly path: string;
  readonly tree: ts.SourceFile;
}

/** The shipped sources of the core and of its faces, parsed; tests and their helpers left out. */
const sources: readonly Source[] = ["core", "pdf", "cli", "app"].flatMap((name) => {
  const folder = join(ROOT, "packages", name, "src");
  return readdirSync(folder, { recursive: true, encoding: "utf8" })
    .filter((file) => /\.tsx?$/.test(file) && !/\.(test|bench)\.tsx?$|(^|[\\/])testing[\\/]/.test(file))
    .map((file) => ({
      path: relative(ROOT, join(folder, file)).replaceAll("\\", "/"),
      tree: ts.createSourceFile(file, readFileSync(join(folder, file), "utf8"), ts.ScriptTarget.ES2022, true),
    }));
});

/** What `find` gives for any node of a source, each as `file:line text`. */
function found(source: Source, find: (node: ts.Node) => string | null): string[] {
  const hits: string[] = [];
  const visit = (node: ts.Node): void => {
    const text = find(node);
    if (text !== null) {
      const { line } = source.tree.getLineAndCharacterOfPosition(node.getStart(source.tree));
      hits.push(`${source.path}:${line + 1} ${text}`);
    }
    ts.forEachChild(node, visit);
  };
  visit(source.tree);
  return hits;
}

test("the sources are there to be read", () => {
  expect(sources.map(({ path }) => path)).toContain("packages/core/src/measure/tolerance.ts");
});

test("tolerances stand in tolerance.ts and nowhere else", () => {
  const bare = sources
    .filter(({ path }) => path !== "packages/core/src/measure/tolerance.ts")
    .flatMap((source) =>
      found(source, (node) =>
        ts.isNumericLiteral(node) && /e-\d/i.test(node.getText(source.tree))
          ? node.getText(source.tree)
          : null,
      ),
    );
  expect(bare).toEqual([]);
});

test("every trouble that is made has a sentence", () => {
  const known = new Set<string>(ALL_CODES);
  const unknown = sources.flatMap((source) =>
    found(source, (node) => {
      if (!ts.isCallExpression(node) || !ts.isIdentifier(node.expression)) return null;
      if (!["trouble", "cataloguedTrouble"].includes(node.expression.text)) return null;
      const code = node.arguments[0];
      return code !== undefined && ts.isStringLiteral(code) && !known.has(code.text) ? code.text : null;
    }),
  );
  expect(unknown).toEqual([]);
});

test("every sentence has a trouble that it is said for", () => {
  const written = new Set<string>();
  for (const { path, tree } of sources) {
    if (path.startsWith("packages/core/src/measure/say/")) continue;
    const visit = (node: ts.Node): void => {
      if (ts.isStringLiteral(node)) written.add(node.text);
      ts.forEachChild(node, visit);
    };
    visit(tree);
  }
  expect(ALL_CODES.filter((code) => !written.has(code))).toEqual([]);
});

test("no default exports", () => {
  const wrong = sources.flatMap((source) =>
    found(source, (node) => {
      const isDefault =
        ts.isExportAssignment(node) ||
        (ts.canHaveModifiers(node) &&
          (ts.getModifiers(node) ?? []).some(({ kind }) => kind === ts.SyntaxKind.DefaultKeyword));
      return isDefault ? "export default" : null;
    }),
  );
  expect(wrong).toEqual([]);
});
