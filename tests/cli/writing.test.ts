/** What is written is written whole or not at all, and never over something else unless asked. */
import { chmod, mkdir, symlink } from "node:fs/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import {
  refusalToFill,
  refusalToWrite,
  removeStalePictures,
  writeAll,
} from "../../packages/cli/src/write-files.ts";
import { stemOf } from "../../packages/core/src/job/index.ts";
import { type Bench, newBench } from "./run.ts";

const NEVER = new AbortController().signal;

let bench: Bench;
beforeEach(async () => {
  bench = await newBench();
});
afterEach(() => bench.clear());

describe("writeAll", () => {
  test("several files, folders made on the way, no leftovers", async () => {
    const files = [
      { path: bench.path("plan.json"), text: "plan" },
      { path: bench.path("a/b/cut.svg"), text: "cut" },
    ];
    expect(await writeAll(files, { force: false }, NEVER)).toMatchObject({ ok: true });
    expect(await bench.names()).toEqual(["a", "a/b", "a/b/cut.svg", "plan.json"]);
    expect(await bench.read("a/b/cut.svg")).toBe("cut");
  });

  test("one place taken: nothing at all is written, what stands there stays", async () => {
    await bench.put("second.svg", "mine");
    const files = ["first.svg", "second.svg", "third.svg"].map((name) => ({
      path: bench.path(name),
      text: "new",
    }));
    const written = await writeAll(files, { force: false }, NEVER);
    expect(written).toMatchObject({
      ok: false,
      trouble: { code: "path-exists", where: bench.path("second.svg") },
    });
    expect(await bench.names()).toEqual(["second.svg"]);
    expect(await bench.read("second.svg")).toBe("mine");
  });

  test("with force a file is replaced", async () => {
    await bench.put("plan.json", "old");
    await writeAll([{ path: bench.path("plan.json"), text: "new" }], { force: true }, NEVER);
    expect(await bench.read("plan.json")).toBe("new");
    expect(await bench.names()).toEqual(["plan.json"]);
  });

  test("interrupted before it began: nothing, not even a folder", async () => {
    const written = await writeAll(
      [{ path: bench.path("a/b.svg"), text: "" }],
      { force: false },
      AbortSignal.abort(),
    );
    expect(written).toMatchObject({ ok: false, trouble: { code: "interrupted" } });
    expect(await bench.names()).toEqual([]);
  });

  test("interrupted between two files: the hidden ones go too, and the folders made for them", async () => {
    const stop = new AbortController();
    const files = Array.from({ length: 50 }, (_, i) => ({
      path: bench.path(`card/${i}.svg`),
      text: "x".repeat(9),
    }));
    const writing = writeAll(files, { force: false }, stop.signal);
    setImmediate(() => stop.abort());
    expect(await writing).toMatchObject({ ok: false, trouble: { code: "interrupted" } });
    expect(await bench.names()).toEqual([]);
  });

  test("a folder that is a file", async () => {
    await bench.put("card", "");
    const written = await writeAll([{ path: bench.path("card/1.svg"), text: "" }], { force: true }, NEVER);
    expect(written).toMatchObject({ ok: false, trouble: { code: expect.stringMatching(/^path-/) } });
    expect(await bench.names()).toEqual(["card"]);
  });
});

describe("asked beforehand", () => {
  test.each<[string, string, boolean, string | null]>([
    ["a free place", "plan.json", false, null],
    ["a taken place", "taken.json", false, "path-exists"],
    ["a taken place with force", "taken.json", true, null],
    ["a folder", "folder", true, "path-is-folder"],
    ["a folder that is not there", "gone/plan.json", false, "folder-missing"],
    ["a file as a folder", "taken.json/plan.json", false, "folder-missing"],
    ["a link to nowhere", "link.json", false, "path-exists"],
  ])("%s", async (_, name, force, code) => {
    await bench.put("taken.json", "");
    await mkdir(bench.path("folder"));
    await symlink(bench.path("nowhere"), bench.path("link.json"));
    const refusal = await refusalToWrite(bench.path(name), { force });
    expect(refusal?.code ?? null).toBe(code);
  });

  test("a folder nobody may write in", async () => {
    await mkdir(bench.path("locked"));
    await chmod(bench.path("locked"), 0o555);
    // The superuser writes all the same.
    const expected = process.getuid?.() === 0 ? null : "path-not-writable";
    const refusal = await refusalToWrite(bench.path("locked/plan.json"), { force: false });
    expect(refusal?.code ?? null).toBe(expected);
    await chmod(bench.path("locked"), 0o755);
  });

  test("a folder for pictures: free, taken by pictures of the same stem, by others, by a file", async () => {
    const ask = (name: string, force: boolean) => refusalToFill(bench.path(name), "cornice", { force });
    expect(await ask("new/deeper", false)).toBeNull();
    await mkdir(bench.path("card"));
    await bench.put("card/plinth-cut-01.svg", "");
    expect(await ask("card", false)).toBeNull();
    await bench.put("card/cornice-cut-01.svg", "");
    expect((await ask("card", false))?.code).toBe("path-exists");
    expect(await ask("card", true)).toBeNull();
    await bench.put("file", "");
    expect((await ask("file", true))?.code).toBe("path-not-a-folder");
  });
});

test("pictures of an earlier, longer plan go; everything else in the folder stays", async () => {
  const names = [
    "cornice-cut-01.svg",
    "cornice-cut-02.svg",
    "cornice-cut-notes.svg",
    "plinth-cut-02.svg",
    "x.svg",
  ];
  for (const name of names) await bench.put(name, "");
  const gone = await removeStalePictures(
    bench.folder,
    "cornice",
    new Set([bench.path("cornice-cut-01.svg")]),
  );
  expect(gone).toBe(1);
  expect(await bench.names()).toEqual(names.filter((name) => name !== "cornice-cut-02.svg").sort());
});

test.each([
  ["Cornice", "cornice"],
  ["Glazing bar, 1⅜ in", "glazing-bar-1-3-8-in"],
  ["../../etc/passwd", "etc-passwd"],
  ["a\u001b[31m\u202eb\0", "a-31m-b"],
  ["", "moulding"],
  ["///", "moulding"],
  ["CON", "moulding-con"],
  ["Überzug", "uberzug"],
  ["x".repeat(500), "x".repeat(60)],
])("the name %j begins its files' names with %j", (name, stem) => {
  expect(stemOf(name)).toBe(stem);
});
