import { writeJob } from "mouldwright/job";
import { readSectionFile } from "mouldwright/section";
import type { ShelfFile } from "mouldwright/shelf";
import { describe, expect, test } from "vitest";
import {
  type DrawingReader,
  isSizeInDoubt,
  LARGEST_FILE_BYTES,
  type ReadFile,
  readFile,
} from "./read-file.ts";
import { plinth } from "./testing/jobs.ts";

const SHELF: ShelfFile = {
  format: "mouldwright/shelf",
  version: 1,
  unit: "in",
  planes: [{ id: "round-1-2", kind: "round", radius: "1/2 in", width: "1/2 in" }],
};

/** As the worker reads, in the same turn. */
const readDrawing: DrawingReader = async (file) => {
  const section = readSectionFile(file);
  return section.ok
    ? { kind: "section", section: section.value, warnings: section.warnings }
    : { kind: "refused", troubles: [section.trouble] };
};

function read(name: string, text: string, given: Parameters<typeof readFile>[1] = {}): Promise<ReadFile> {
  return readFile({ name, size: text.length, text: async () => text }, given, { readDrawing });
}

const svg = (inside: string): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" width="40mm" height="20mm" viewBox="0 0 40 20">${inside}</svg>`;
const OUTLINE = `<path id="section" d="M0 20 V4 H10 A8 8 0 0 0 26 4 H40 V20 Z"/>`;
const STICK = `<rect id="stick" width="40" height="20"/>`;

describe("a drawing", () => {
  test("becomes a job: its outline the path, its stick the stick, the shelf that of the bench", async () => {
    const found = await read("Cove.svg", svg(STICK + OUTLINE), { shelf: SHELF, unit: "in" });
    expect(found).toMatchObject({
      kind: "job",
      job: { name: "Cove", unit: "in", shelf: SHELF, stick: { widthMm: 40, thicknessMm: 20 } },
    });
    if (found.kind !== "job") return;
    expect(found.job.section.parts).toBeUndefined();
    expect(found.job.section.path).toContainEqual([26, 16, expect.closeTo(-1, 6)]);
  });

  test("whose curve is free becomes a job of arcs, and that is said", async () => {
    const wave = `<path id="section" d="M0 20 V4 C10 4 14 14 24 14 S34 8 40 8 V20 Z"/>`;
    const found = await read("Wave.svg", svg(STICK + wave));
    expect(found).toMatchObject({ kind: "job", remarks: [{ kind: "curves as arcs" }] });
    if (found.kind !== "job") return;
    const path = found.job.section.path ?? [];
    expect(path.length).toBeLessThan(16);
    expect(path.some(([, , bulge]) => bulge !== undefined && bulge !== 0)).toBe(true);
  });

  test("that does not say its unit is in doubt, until the maker says what its numbers are", async () => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 40 20">${STICK}${OUTLINE}</svg>`;
    const unsaid = await read("cove.svg", text);
    expect(isSizeInDoubt(unsaid)).toBe(true);
    expect(unsaid).toMatchObject({ job: { stick: { widthMm: 40, thicknessMm: 20 } } });
    const said = await readFile(
      { name: "cove.svg", size: text.length, text: async () => text },
      {},
      { readDrawing, numberMm: 2.54 },
    );
    expect(isSizeInDoubt(said)).toBe(false);
    expect(said).toMatchObject({
      job: { stick: { widthMm: expect.closeTo(101.6, 6), thicknessMm: expect.closeTo(50.8, 6) } },
    });
    expect(isSizeInDoubt(await read("cove.svg", svg(STICK + OUTLINE)))).toBe(false);
  });

  test("too large as it is read is in doubt too: it may be drawn in pixels", async () => {
    const text = `<svg xmlns="http://www.w3.org/2000/svg"><path d="M0 200 V40 H400 V200 Z"/></svg>`;
    const large = await read("large.svg", text);
    expect(large.kind).toBe("refused");
    expect(isSizeInDoubt(large)).toBe(true);
  });

  test("with a script in it is read as data: what is no outline is passed over or refused", async () => {
    const hostile = svg(`<script>globalThis.planted = 1</script>${STICK}${OUTLINE}`);
    const found = await read("hostile.svg", hostile);
    expect(["job", "refused"]).toContain(found.kind);
    expect(Reflect.get(globalThis, "planted")).toBeUndefined();
  });

  test("with a name that is markup keeps it as letters", async () => {
    const found = await read("<img src=x onerror=alert(1)>.svg", svg(STICK + OUTLINE));
    expect(found).toMatchObject({ kind: "job", job: { name: "<img src=x onerror=alert(1)>" } });
  });

  test.each([
    ["empty.svg", ""],
    ["open.svg", svg(`<path id="section" d="M0 0 H10"/>`)],
    ["entities.svg", `<!DOCTYPE svg [<!ENTITY a "b">]>${svg(OUTLINE)}`],
    ["letter.txt", "Dear sir"],
  ])("%s is refused with its trouble", async (name, text) => {
    const found = await read(name, text);
    expect(found.kind).toBe("refused");
    if (found.kind === "refused") expect(found.troubles.length).toBeGreaterThan(0);
  });
});

describe("a job file", () => {
  test("is read as it is", async () => {
    const job = plinth({ shelf: SHELF });
    expect(await read("plinth.json", writeJob(job))).toEqual({
      kind: "job",
      fileName: "plinth.json",
      job,
      warnings: [],
      remarks: [],
    });
  });

  test("that names a shelf file takes the bench's, and that is said", async () => {
    const job = plinth({ shelf: { file: "planes.json" } });
    expect(await read("plinth.json", writeJob(job), { shelf: SHELF })).toMatchObject({
      job: { shelf: SHELF },
      remarks: [{ kind: "shelf from the bench", file: "planes.json" }],
    });
  });

  test("of a newer version is refused by its version", async () => {
    const text = writeJob(plinth()).replace('"version": 1', '"version": 2');
    expect(await read("plinth.json", text)).toMatchObject({
      kind: "refused",
      troubles: [{ code: "file-version-newer" }],
    });
  });

  test.each(["{}", "[]", '{"format": "mouldwright/shelf", "version": 1}', "[1, 2]"])(
    "%s is no job",
    async (text) => {
      expect(await read("other.json", text)).toEqual({ kind: "no job file", fileName: "other.json" });
    },
  );

  test("with a hostile key is refused", async () => {
    const text = writeJob(plinth()).replace('"name"', '"__proto__": { "planted": true }, "name"');
    expect((await read("plinth.json", text)).kind).toBe("refused");
    expect(Reflect.get({}, "planted")).toBeUndefined();
  });
});

test("a file larger than any drawing is not even opened", async () => {
  const file = {
    name: "film.svg",
    size: LARGEST_FILE_BYTES + 1,
    text: async (): Promise<string> => expect.unreachable("opened"),
  };
  expect(await readFile(file, {}, { readDrawing })).toMatchObject({ kind: "too large" });
});

test("a file that the browser cannot open is told as that", async () => {
  const file = { name: "gone.svg", size: 1, text: () => Promise.reject(new Error("gone")) };
  expect(await readFile(file, {}, { readDrawing })).toEqual({
    kind: "cannot be opened",
    fileName: "gone.svg",
  });
});
