import { execFileSync } from "node:child_process";
import { mkdirSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join, relative, resolve, sep } from "node:path";
import { fileURLToPath } from "node:url";
import ts from "typescript";
import { afterAll, describe, expect, test } from "vitest";

const ROOT = resolve(dirname(fileURLToPath(import.meta.url)), "..");
const CORE = join(ROOT, "packages/core/src");

interface FloorTable {
  readonly floors: Readonly<Record<string, number>>;
  readonly exceptions: readonly { readonly from: string; readonly to: string }[];
}

const { floors, exceptions } = JSON.parse(
  readFileSync(join(ROOT, "scripts/floors.json"), "utf8"),
) as FloorTable;

const folders = readdirSync(CORE, { withFileTypes: true })
  .filter((entry) => entry.isDirectory())
  .map(({ name }) => name);

/** Every import of a shipped file, as the folder it comes from and the file it reaches. Read by TypeScript, not by the cruiser. */
function importsOf(folder: string): { file: string; specifier: string; target: string | null }[] {
  const files = readdirSync(join(CORE, folder), { recursive: true, encoding: "utf8" }).filter(
    (name) => name.endsWith(".ts") && !/\.(test|bench)\.ts$|(^|[\\/])testing[\\/]/.test(name),
  );
  return files.flatMap((name) => {
    const file = join(CORE, folder, name);
    const { importedFiles } = ts.preProcessFile(readFileSync(file, "utf8"));
    return importedFiles.map(({ fileName: specifier }) => ({
      file: relative(ROOT, file),
      specifier,
      target: specifier.startsWith(".") ? relative(CORE, resolve(dirname(file), specifier)) : null,
    }));
  });
}

describe("the core as it stands", () => {
  test("every folder has a floor", () => {
    expect(folders.filter((folder) => floors[folder] === undefined)).toEqual([]);
  });

  test.each(folders)("%s imports only from floors below, through their index", (folder) => {
    const wrong = importsOf(folder).filter(({ target }) => {
      if (target === null) return false;
      const [other = "", ...rest] = target.split(sep);
      if (other === folder) return false;
      const isBelow =
        floors[other] !== undefined &&
        (floors[other] < floors[folder]! ||
          exceptions.some(({ from, to }) => from === folder && to === other));
      return !isBelow || rest.join("/") !== "index.ts";
    });
    expect(wrong).toEqual([]);
  });

  test("no folder imports a module of Node", () => {
    const wrong = folders.flatMap(importsOf).filter(({ specifier }) => specifier.startsWith("node:"));
    expect(wrong).toEqual([]);
  });
});

describe("the gate refuses", () => {
  const place = mkdtempSync(join(tmpdir(), "mouldwright-floors-"));
  afterAll(() => rmSync(place, { recursive: true, force: true }));

  /** Lays out a few files of an imagined core and gives the names of the rules that the gate finds broken. */
  function brokenRules(name: string, files: Readonly<Record<string, string>>): string[] {
    const root = join(place, name);
    for (const [path, text] of Object.entries(files)) {
      mkdirSync(dirname(join(root, path)), { recursive: true });
      writeFileSync(join(root, path), text);
    }
    const cruiser = join(ROOT, "node_modules/dependency-cruiser/bin/dependency-cruise.mjs");
    const config = join(ROOT, ".dependency-cruiser.cjs");
    const output = execFileSync(
      process.execPath,
      [cruiser, "--config", config, "--output-type", "json", "packages"],
      { cwd: root, encoding: "utf8", stdio: ["ignore", "pipe", "pipe"] },
    );
    const { summary } = JSON.parse(output) as {
      summary: { violations: readonly { rule: { name: string } }[] };
    };
    return [...new Set(summary.violations.map(({ rule }) => rule.name))].sort();
  }

  const core = "packages/core/src";

  test("nothing where all is well", () => {
    const files = {
      [`${core}/measure/index.ts`]: "export const one = 1;\n",
      [`${core}/curve/index.ts`]: 'export { one } from "../measure/index.ts";\n',
      [`${core}/section/index.ts`]: 'export { one } from "../curve/index.ts";\n',
    };
    expect(brokenRules("well", files)).toEqual([]);
  });

  test("an import from a floor above, even of a type", () => {
    const files = {
      [`${core}/measure/index.ts`]:
        'import type { Two } from "../section/index.ts";\nexport type One = Two;\n',
      [`${core}/section/index.ts`]: "export type Two = 2;\n",
    };
    expect(brokenRules("above", files)).toEqual(["floor-of-measure"]);
  });

  test("an import from a neighbour on the same floor", () => {
    const files = {
      [`${core}/shelf/index.ts`]: 'export { two } from "../section/index.ts";\n',
      [`${core}/section/index.ts`]: "export const two = 2;\n",
    };
    expect(brokenRules("neighbour", files)).toEqual(["floor-of-shelf"]);
  });

  test("an import past a folder's index", () => {
    const files = {
      [`${core}/section/index.ts`]: 'export { two } from "../measure/tolerance.ts";\n',
      [`${core}/measure/tolerance.ts`]: "export const two = 2;\n",
    };
    expect(brokenRules("past-index", files)).toEqual(["only-through-index"]);
  });

  test("a cycle", () => {
    const files = {
      [`${core}/measure/a.ts`]: 'import { b } from "./b.ts";\nexport const a = () => b;\n',
      [`${core}/measure/b.ts`]: 'import { a } from "./a.ts";\nexport const b = () => a;\n',
    };
    expect(brokenRules("cycle", files)).toEqual(["no-cycles"]);
  });

  test("a module of Node in the core, but not in its tests", () => {
    const files = {
      [`${core}/measure/index.ts`]: 'export { readFileSync } from "node:fs";\n',
      [`${core}/curve/index.test.ts`]: 'export { readFileSync } from "node:fs";\n',
    };
    expect(brokenRules("node", files)).toEqual(["core-without-node"]);
  });

  test("the boolean library outside its one file", () => {
    const files = {
      [`${core}/cutting/index.ts`]: 'export { union } from "clipper2-ts";\n',
      "node_modules/clipper2-ts/package.json": '{ "name": "clipper2-ts", "main": "index.js" }\n',
      "node_modules/clipper2-ts/index.js": "exports.union = () => {};\n",
    };
    expect(brokenRules("booleans", files)).toEqual(["one-home-of-booleans"]);
    const moved = {
      [`${core}/curve/region.ts`]: files[`${core}/cutting/index.ts`]!,
      "node_modules/clipper2-ts/package.json": files["node_modules/clipper2-ts/package.json"],
      "node_modules/clipper2-ts/index.js": files["node_modules/clipper2-ts/index.js"],
    };
    expect(brokenRules("booleans-at-home", moved)).toEqual([]);
  });

  test("a path from the command line into the core", () => {
    const files = {
      "packages/cli/src/main.ts": 'export { one } from "../../core/src/measure/index.ts";\n',
      [`${core}/measure/index.ts`]: "export const one = 1;\n",
    };
    expect(brokenRules("path", files)).toEqual(["faces-through-entries"]);
  });

  test("a folder that has no floor", () => {
    const files = {
      [`${core}/attic/index.ts`]: "export const one = 1;\n",
      "packages/cli/src/main.ts": 'export { one } from "../../core/src/attic/index.ts";\n',
    };
    expect(brokenRules("attic", files)).toContain("folder-without-floor");
  });
});
