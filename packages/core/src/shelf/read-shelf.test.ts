import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { sayTrouble } from "../measure/index.ts";
import { readShelf } from "./read-shelf.ts";
import { planeEntry, shelfFile } from "./shelf-entry.ts";
import type { ShelfTrouble } from "./shelf-trouble.ts";
import type { Plane, Shelf } from "./types.ts";

type Entry = Readonly<Record<string, unknown>>;

function file(planes: readonly unknown[], more: Entry = {}): Entry {
  return { format: "mouldwright/shelf", version: 1, unit: "mm", planes, ...more };
}

function shelfOf(input: unknown): Shelf {
  const read = readShelf(input);
  if (!read.ok)
    throw new Error(`${read.trouble.code} ${read.trouble.where} ${JSON.stringify(read.trouble.facts)}`);
  expect(read.warnings).toEqual([]);
  return read.value;
}

function onlyPlane(entry: Entry, more: Entry = {}): Plane {
  const [plane] = shelfOf(file([entry], more)).planes;
  return plane!;
}

function troublesOf(input: unknown): readonly ShelfTrouble[] {
  const read = readShelf(input);
  return read.ok ? [] : [read.trouble, ...(read.more ?? [])];
}

/** The one trouble of a file with this one plane. */
function troubleWith(entry: unknown, more: Entry = {}): ShelfTrouble {
  const troubles = troublesOf(file([entry], more));
  expect(troubles.map(({ code }) => code)).toHaveLength(1);
  return troubles[0]!;
}

const HOLLOW = { kind: "hollow", radius: 12, width: 12 };

describe("a file as it should be", () => {
  test("lengths as numbers come in the file's unit, as texts in their own", () => {
    const inch = { kind: "hollow", radius: 0.375, width: "3/8 in" };
    expect(onlyPlane(inch, { unit: "in" })).toMatchObject({ radiusMm: 9.525, widthMm: 9.525 });
    expect(onlyPlane({ kind: "rebate", width: "12 mm" }, { unit: "in" })).toMatchObject({ widthMm: 12 });
    expect(onlyPlane({ kind: "rebate", width: "1/2 in" })).toMatchObject({ widthMm: 12.7 });
  });

  test("text and parsed JSON read the same, a byte order mark is passed over", () => {
    const text = JSON.stringify(file([HOLLOW]));
    expect(readShelf(`\uFEFF${text}`)).toEqual(readShelf(JSON.parse(text)));
  });

  test("every key of a hollow arrives", () => {
    const entry = {
      id: "small",
      name: "my small hollow",
      kind: "hollow",
      radius: 6,
      width: 5,
      pitch: 55,
      skew: 10,
      shoulder: { width: 9, height: 14 },
      wall: 0.3,
    };
    expect(onlyPlane(entry)).toEqual({
      id: "small",
      name: "my small hollow",
      kind: "hollow",
      radiusMm: 6,
      widthMm: 5,
      pitchDeg: 55,
      skewDeg: 10,
      shoulder: { widthMm: 9, heightMm: 14 },
      wallMm: 0.3,
    });
  });

  test("a missing snipe bill's size is filled in and said in one sentence", () => {
    const shelf = shelfOf(file([{ kind: "snipe bill", hand: "left", nose: 0.5 }]));
    expect(shelf.planes[0]).toMatchObject({ widthMm: 6, noseMm: 0.5, slopeDeg: 60, reachMm: 5 });
    expect(shelf.assumed).toEqual([
      "left snipe bill: beak 6 mm, flank 60° from level and reach 5 mm are assumed; measure the plane and enter what differs.",
    ]);
  });

  test("nothing is assumed where everything is given", () => {
    const entry = { kind: "snipe bill", hand: "right", width: 7, nose: 0, slope: 55, reach: 4 };
    expect(shelfOf(file([entry])).assumed).toEqual([]);
  });

  test("fillister, plough, side planes and bead are completed too", () => {
    const shelf = shelfOf(
      file([
        { kind: "moving fillister", width: 38 },
        { kind: "plough", widths: [3, "1/4 in"] },
        { kind: "side rebate", hand: "left" },
        { kind: "side round", hand: "right", width: 8 },
        { kind: "bead", width: 5 },
      ]),
    );
    expect(shelf.planes).toMatchObject([
      { fenceMm: 38, depthMm: 20 },
      { widthsMm: [3, 6.35], fenceMm: 100, depthMm: 20 },
      { hand: "left", widthMm: 3 },
      { hand: "right", widthMm: 8, radiusMm: 8 },
      { widthMm: 5, quirkMm: 1 },
    ]);
    expect(shelf.assumed).toHaveLength(5);
  });

  test("an empty shelf is a shelf", () => {
    expect(shelfOf(file([]))).toEqual({ planes: [], assumed: [] });
  });

  test("a shaped sole comes through with its arcs", () => {
    const sole = [
      [-5, 1],
      [-1, 0, 0.5],
      [3, 0],
    ];
    const plane = onlyPlane({ kind: "shaped", sole, cutsWall: "left" });
    expect(plane).toMatchObject({
      cutsWall: "left",
      sole: {
        pieces: [
          { kind: "line", from: { x: -5, y: 1 }, to: { x: -1, y: 0 } },
          { kind: "arc", from: { x: -1, y: 0 }, to: { x: 3, y: 0 }, bulge: 0.5 },
        ],
      },
    });
  });

  test.each(["small", "full"])("the example shelf %s reads without a warning", (name) => {
    const url = new URL(`../../../../examples/shelves/${name}.json`, import.meta.url);
    const shelf = shelfOf(readFileSync(url, "utf8"));
    expect(shelf.planes).toHaveLength(name === "small" ? 10 : 43);
    for (const plane of shelf.planes) {
      if (plane.kind === "hollow" || plane.kind === "round") expect(plane.widthMm).toBe(plane.radiusMm);
    }
  });
});

describe("made names and ids", () => {
  const cases: readonly (readonly [string, Entry, string, string, string])[] = [
    ["in", { kind: "hollow", radius: "3/8", width: "3/8" }, "hollow-3-8in", "⅜ in hollow", "a fraction"],
    ["in", { kind: "round", radius: 1.375, width: 1.375 }, "round-1-3-8in", "1⅜ in round", "a mixed number"],
    ["in", { kind: "rebate", width: "12 mm" }, "rebate-12mm", "12 mm rebate plane", "its own unit"],
    ["in", { kind: "smoother", width: 1.9 }, "smoother-1.9in", "1.9 in smoother", "no fraction"],
    [
      "mm",
      { kind: "round", radius: 12.5, width: 12 },
      "round-12.5mm",
      "12.5 mm round, 12 mm wide",
      "two sizes",
    ],
    ["mm", { kind: "snipe bill", hand: "left" }, "snipe-bill-left", "left snipe bill", "handed"],
    ["mm", { kind: "plough", widths: [4] }, "plough", "plough", "a plough"],
    ["mm", { kind: "bead", width: 6, quirk: 1 }, "bead-6mm", "6 mm bead plane", "a bead"],
  ];
  test.each(cases)("%s %j: %s, %s (%s)", (unit, entry, id, name) => {
    expect(onlyPlane(entry, { unit })).toMatchObject({ id, name });
  });

  test("the second of two alike gets a number, and given ids come first", () => {
    const planes = [HOLLOW, HOLLOW, { ...HOLLOW, id: "hollow-12mm" }];
    expect(shelfOf(file(planes)).planes.map(({ id }) => id)).toEqual([
      "hollow-12mm-2",
      "hollow-12mm-3",
      "hollow-12mm",
    ]);
  });

  test("a note stays with its plane, on one line, and goes back into the file", () => {
    const shelf = shelfOf(file([{ ...HOLLOW, note: "boxed;\n iron  new" }, HOLLOW]));
    expect(shelf.planes.map(({ note }) => note)).toEqual(["boxed; iron new", undefined]);
    expect(shelfFile(shelf).planes.map(({ note }) => note)).toEqual(["boxed; iron new", undefined]);
    expect(planeEntry(shelf.planes[0]!)).not.toHaveProperty("note");
    expect(troubleWith({ ...HOLLOW, note: "x".repeat(501) }).where).toBe("planes[0].note");
    expect(troubleWith({ ...HOLLOW, note: 7 }).code).toBe("shelf-wrong-value");
  });

  test("unseen characters are left out of a name, with a warning", () => {
    const read = readShelf(file([{ ...HOLLOW, name: "my\u001b[31m \u202eold\nhollow" }]));
    expect(read.ok && read.value.planes[0]!.name).toBe("my[31m old hollow");
    expect(read.ok && read.warnings.map(({ code }) => code)).toEqual(["shelf-name-cleaned"]);
  });
});

describe("refused, with the place", () => {
  test("text that is no JSON says where", () => {
    const [trouble] = troublesOf('{\n  "format": "mouldwright/shelf",,\n}');
    expect(trouble).toMatchObject({ code: "shelf-not-json", facts: { line: 2, column: 33 } });
  });

  test.each([null, 3, "[]", "null", [], undefined, "", "\u0000"])("no shelf: %j", (input) => {
    const [trouble] = troublesOf(input);
    expect(["shelf-wrong-format", "shelf-not-json"]).toContain(trouble?.code);
  });

  test("a newer version is told apart from nonsense", () => {
    expect(troublesOf(file([], { version: 2 }))[0]).toMatchObject({
      code: "shelf-version-newer",
      where: "version",
      facts: { found: "2", known: 1 },
    });
    expect(troublesOf(file([], { version: "1" }))[0]!.code).toBe("shelf-version-unknown");
    expect(troublesOf(file([], { version: 0 }))[0]!.code).toBe("shelf-version-unknown");
  });

  test("another unit, another format, no list of planes", () => {
    expect(troublesOf(file([], { unit: "cm" }))[0]).toMatchObject({ code: "shelf-unit-unknown" });
    expect(troublesOf(file([], { format: "mouldwright/plan" }))[0]!.code).toBe("shelf-wrong-format");
    expect(troublesOf(file([], { planes: {} }))[0]).toMatchObject({
      code: "shelf-wrong-value",
      where: "planes",
    });
    const { planes: _, ...without } = file([]);
    expect(troublesOf(without)[0]!.code).toBe("shelf-missing-key");
  });

  test("an unknown key, with the one that was meant, once", () => {
    expect(troubleWith({ kind: "hollow", raduis: 12, width: 12 })).toMatchObject({
      code: "shelf-unknown-key",
      where: "planes[0].raduis",
      facts: { key: "raduis", nearest: "radius" },
    });
    expect(troublesOf(file([], { plains: [] }))[0]).toMatchObject({ facts: { nearest: "planes" } });
    expect(troubleWith({ ...HOLLOW, shoulder: { widht: 20, width: 20, height: 9 } })).toMatchObject({
      where: "planes[0].shoulder.widht",
      facts: { nearest: "width" },
    });
    expect(troubleWith({ kind: "smoother", width: 50, colour: "red" })).toMatchObject({
      facts: { nearest: "" },
    });
  });

  test("an unknown kind, with the one that was meant", () => {
    expect(troubleWith({ kind: "Snipe Bil", hand: "left" })).toMatchObject({
      code: "shelf-unknown-kind",
      facts: { nearest: "snipe bill" },
    });
    expect(troubleWith({ kind: ["hollow"] })).toMatchObject({
      code: "shelf-unknown-kind",
      facts: { nearest: "" },
    });
    expect(troubleWith({ width: 3 })).toMatchObject({ code: "shelf-missing-key", facts: { key: "kind" } });
  });

  test("keys that reach into the language", () => {
    for (const key of ["__proto__", "constructor", "prototype"]) {
      const text = JSON.stringify(file([HOLLOW])).replace('"kind"', `"${key}":{"a":1},"kind"`);
      expect(troublesOf(text)[0], key).toMatchObject({
        code: "shelf-forbidden-key",
        where: `planes[0].${key}`,
      });
    }
    expect(({} as Entry).a).toBeUndefined();
  });

  test.each([
    ["NaN", Number.NaN, "shelf-wrong-value"],
    ["infinite", Number.POSITIVE_INFINITY, "shelf-wrong-value"],
    ["negative", -3, "shelf-size-not-positive"],
    ["nought", 0, "shelf-size-not-positive"],
    ["less than a millionth", 1e-9, "shelf-size-not-positive"],
    ["1e308", 1e308, "length-too-great"],
    ["two metres", 2000, "shelf-size-too-large"],
    ["negative text", "-3 mm", "length-negative"],
    ["words", "a thumb", "length-unreadable"],
    ["a list", [3], "shelf-wrong-value"],
    ["null", null, "shelf-wrong-value"],
  ])("a width that is %s", (_, width, code) => {
    expect(troubleWith({ kind: "rebate", width })).toMatchObject({ code, where: "planes[0].width" });
  });

  test("1e999 in the text is no length", () => {
    const text = JSON.stringify(file([{ kind: "rebate", width: 7 }])).replace(":7", ":1e999");
    expect(troublesOf(text)[0]!.code).toBe("shelf-wrong-value");
  });

  test("a sole wider than its circle; a half circle is allowed, in inches too", () => {
    expect(troubleWith({ kind: "hollow", radius: 10, width: 20.1 })).toMatchObject({
      code: "shelf-wider-than-circle",
      where: "planes[0].width",
      facts: { mostMm: 20 },
    });
    const read = readShelf(file([{ kind: "round", radius: "1/3 in", width: "2/3 in" }]));
    expect(read.ok && read.warnings.map(({ code }) => code)).toEqual(["shelf-angle-unusual"]);
  });

  test("parts larger than the whole", () => {
    const code = "shelf-part-larger-than-whole";
    expect(troubleWith({ kind: "snipe bill", hand: "left", width: 3, nose: 3 })).toMatchObject({ code });
    expect(troubleWith({ ...HOLLOW, shoulder: { width: 11, height: 9 } })).toMatchObject({ code });
    expect(troubleWith({ kind: "side round", hand: "left", width: 9, radius: 8 })).toMatchObject({ code });
  });

  test("angles that no plane has", () => {
    expect(troubleWith({ ...HOLLOW, pitch: 120 })).toMatchObject({ code: "shelf-angle-out-of-range" });
    expect(troubleWith({ ...HOLLOW, skew: -75 })).toMatchObject({ code: "shelf-angle-out-of-range" });
    expect(troubleWith({ kind: "snipe bill", hand: "left", slope: 90 })).toMatchObject({
      code: "shelf-angle-out-of-range",
      facts: { mostDeg: 85 },
    });
  });

  test("an id given twice, whatever its capitals", () => {
    const troubles = troublesOf(
      file([
        { ...HOLLOW, id: "A6" },
        { ...HOLLOW, id: "a6" },
      ]),
    );
    expect(troubles).toMatchObject([
      { code: "shelf-duplicate-id", where: "planes[1].id", facts: { id: "a6", firstAt: "planes[0]" } },
    ]);
  });

  test.each(["", " ", "-a", "a\u0000b", "\u202eabc", "a".repeat(61), "constructor", "__proto__", "<b>"])(
    "an id that cannot be one: %j",
    (id) => {
      const trouble = troubleWith({ ...HOLLOW, id });
      expect(trouble).toMatchObject({ code: "shelf-bad-id", where: "planes[0].id" });
      expect(JSON.stringify(trouble)).not.toMatch(/\\u0000|\u202e/);
    },
  );

  test.each([
    [
      "turns back to the left",
      [
        [0, 0],
        [3, 0],
        [2, 1],
      ],
      2,
    ],
    [
      "turns back to the left",
      [
        [0, 0, 0.9],
        [1, 5],
      ],
      1,
    ],
    [
      "turns back on itself",
      [
        [0, 0],
        [0, 5],
        [0, 2],
        [3, 2],
      ],
      2,
    ],
    [
      "is an arc of more than a half circle",
      [
        [0, 0, 1.1],
        [4, 0],
      ],
      1,
    ],
    [
      "lies where the point before lies",
      [
        [0, 0],
        [2, 0],
        [2, 0],
      ],
      3,
    ],
    [
      "has no width",
      [
        [0, 0],
        [0, 3],
      ],
      2,
    ],
  ])("a drawn sole that %s", (reason, sole, vertex) => {
    expect(troubleWith({ kind: "shaped", sole, cutsWall: "none" })).toMatchObject({
      code: "shelf-bad-sole",
      facts: { reason, vertex },
    });
  });

  test("too many planes, too large a file", () => {
    expect(troublesOf(file(Array(501).fill(HOLLOW)))[0]).toMatchObject({
      code: "shelf-too-many-planes",
      facts: { planes: 501, most: 500 },
    });
    expect(troublesOf(`"${"x".repeat(5_000_001)}"`)[0]!.code).toBe("shelf-too-large");
  });

  test("many troubles are told together, up to a score", () => {
    expect(troublesOf(file(Array(60).fill({ kind: "rebate" })))).toHaveLength(20);
    expect(
      troublesOf(file([{ kind: "rebate" }, 7, { kind: "hollow", radius: -1, width: "?" }])),
    ).toMatchObject([
      { code: "shelf-missing-key", where: "planes[0].width" },
      { code: "shelf-wrong-value", where: "planes[1]" },
      { code: "shelf-size-not-positive", where: "planes[2].radius" },
      { code: "length-unreadable", where: "planes[2].width" },
    ]);
  });

  test("a plane with a thousand strange keys is refused with the first few", () => {
    const strange = Object.fromEntries(Array.from({ length: 1000 }, (_, index) => [`note${index}`, 1]));
    const troubles = troublesOf(file([{ ...HOLLOW, ...strange }]));
    expect(troubles).toHaveLength(20);
    expect(troubles[0]).toMatchObject({ code: "shelf-unknown-key", where: "planes[0].note0" });
  });

  test("lists without end are refused before they are read", () => {
    const sole = Array(2001).fill([]);
    expect(troubleWith({ kind: "shaped", sole, cutsWall: "none" })).toMatchObject({
      code: "shelf-wrong-value",
      where: "planes[0].sole",
    });
    expect(troubleWith({ kind: "plough", widths: Array(41).fill(3) })).toMatchObject({
      code: "shelf-wrong-value",
      where: "planes[0].widths",
    });
  });

  test("in a larger file the place says where the shelf stands", () => {
    const read = readShelf(file([{ kind: "rebate", width: -1 }]), { at: "shelf" });
    expect(!read.ok && read.trouble.where).toBe("shelf.planes[0].width");
  });

  test("data that refers back to itself is refused, not followed for ever", () => {
    const loop: Record<string, unknown> = { kind: "hollow", radius: 3, width: 3 };
    loop.shoulder = loop;
    expect(troublesOf(file([loop]))[0]!.code).toBe("shelf-unknown-key");
  });

  test("a trouble becomes a sentence for the bench", () => {
    const trouble = troubleWith({ kind: "hollow", radius: "3/8 in", width: 30 });
    const said = sayTrouble(trouble, { unit: "in", form: "plain" });
    expect(said.sentence).toBe(
      "3/8 in hollow, 30 mm wide: a sole 1 3/16 in wide cannot be part of a circle of radius 3/8 in.".replace(
        "3/8 in hollow",
        "⅜ in hollow",
      ),
    );
    expect(said.hint).toContain("at most 3/4 in wide");
  });
});

describe("possible but unusual", () => {
  const warningsOf = (entry: Entry) => {
    const read = readShelf(file([entry]));
    return read.ok ? read.warnings.map(({ code, where }) => [code, where]) : read.trouble;
  };

  test.each([
    [{ kind: "hollow", radius: 240, width: 90 }, "shelf-size-unusual", "planes[0].radius"],
    [{ kind: "rebate", width: 300 }, "shelf-size-unusual", "planes[0].width"],
    [{ kind: "plough", widths: [3, 40], fence: 90, depth: 20 }, "shelf-size-unusual", "planes[0].widths[1]"],
    [{ ...HOLLOW, pitch: 30 }, "shelf-angle-unusual", "planes[0]"],
  ])("%j", (entry, code, where) => {
    expect(warningsOf(entry)).toContainEqual([code, where]);
  });

  test("a very flat sole", () => {
    expect(warningsOf({ kind: "hollow", radius: 100, width: 20 })).toEqual([
      ["shelf-angle-unusual", "planes[0]"],
    ]);
  });
});
