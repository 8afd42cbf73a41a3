/** Whatever is wrong with what is given: one clear message with the place and a hint, 2, nothing written, soon. */
import { chmod, mkdir } from "node:fs/promises";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Bench, newBench, runHere, SHELF_JSON, STEP_SVG } from "./run.ts";

/** The longest a refusal may take, ms: the promise made to the maker. */
const SOON_MS = 5000;

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("good.svg", STEP_SVG);
  await bench.put("good.json", SHELF_JSON);
});
afterAll(() => bench.clear());

/** Plans with every kind of output asked for, and holds the refusal to its promises. */
async function expectRefusal(
  section: string,
  shelf: string,
  says: readonly (string | RegExp)[],
): Promise<void> {
  const before = await bench.names();
  const started = performance.now();
  const ran = await runHere([
    "plan",
    section,
    "--shelf",
    shelf,
    "--out",
    bench.path("plan.json"),
    "--pictures",
    bench.path("pictures"),
  ]);
  expect(performance.now() - started).toBeLessThan(SOON_MS);
  expect(ran.err).toMatch(/^Refused: /m);
  expect(ran).toMatchObject({ code: 2, out: "" });
  const said = ran.err.replace(/\s+/g, " ");
  for (const text of says) {
    if (typeof text === "string") expect(said).toContain(text);
    else expect(said).toMatch(text);
  }
  // What is quoted from the file may be anything; nothing else may look like our insides.
  expect(said.replace(/“[^”]*”/g, "")).not.toMatch(
    /\bNaN\b|undefined|\[object|no sentence for|\.ts:\d|node_modules/,
  );
  expectHarmless(ran.err);
  expect(await bench.names()).toEqual(before);
}

function expectHarmless(text: string): void {
  for (const character of text) {
    const code = character.codePointAt(0)!;
    expect(code === 0x0a || (code >= 0x20 && code < 0x7f) || code >= 0xa0).toBe(true);
  }
}

const svg = (inside: string, root = 'width="30mm" height="12mm" viewBox="0 0 30 12"'): string =>
  `<svg xmlns="http://www.w3.org/2000/svg" ${root}>${inside}</svg>`;

const path = (d: string): string => svg(`<path id="section" d="${d}"/>`);

/** A DXF of one closed LWPOLYLINE, in the unit of that code (1 inches, 2 feet, 4 mm). */
const dxf = (unitCode: number, points: readonly (readonly [number, number])[]): string =>
  [
    ["0", "SECTION", "2", "HEADER", "9", "$INSUNITS", "70", String(unitCode), "0", "ENDSEC"],
    [
      "0",
      "SECTION",
      "2",
      "ENTITIES",
      "0",
      "LWPOLYLINE",
      "8",
      "SECTION",
      "90",
      String(points.length),
      "70",
      "1",
    ],
    points.flatMap(([x, y]) => ["10", String(x), "20", String(y)]),
    ["0", "ENDSEC", "0", "EOF", ""],
  ]
    .flat()
    .join("\n");

describe("files", () => {
  test("a section that is not there", () =>
    expectRefusal(bench.path("gone.svg"), bench.path("good.json"), ["gone.svg", "no such file"]));
  test("a folder", async () => {
    await mkdir(bench.path("folder.svg"));
    await expectRefusal(bench.path("folder.svg"), bench.path("good.json"), ["folder.svg", "a folder"]);
  });
  test("a file nobody may read", async () => {
    const file = await bench.put("locked.svg", STEP_SVG);
    await chmod(file, 0o000);
    // The superuser reads it all the same; then there is nothing to refuse.
    if (process.getuid?.() === 0) return;
    await expectRefusal(file, bench.path("good.json"), ["locked.svg", "permission denied"]);
  });
  test("a device that never ends", () =>
    expectRefusal("/dev/zero", bench.path("good.json"), ["no ordinary file"]));
  test("another kind of drawing", async () =>
    expectRefusal(await bench.put("drawing.pdf", "%PDF-1.7"), bench.path("good.json"), ["drawing.pdf"]));
  test.each(["svg", "dxf", "json"])("an empty %s", async (ending) =>
    expectRefusal(await bench.put(`empty.${ending}`, ""), bench.path("good.json"), ["empty"]),
  );
  test("an empty shelf file", async () =>
    expectRefusal(bench.path("good.svg"), await bench.put("nothing.json", ""), ["nothing.json"]));
  test("a truncated SVG", async () =>
    expectRefusal(await bench.put("half.svg", STEP_SVG.slice(0, 150)), bench.path("good.json"), [
      "half.svg",
    ]));
  test("a truncated DXF", async () => {
    const whole = dxf(4, [
      [0, 0],
      [30, 0],
      [30, 12],
      [0, 12],
    ]);
    await expectRefusal(await bench.put("half.dxf", whole.slice(0, 150)), bench.path("good.json"), [
      "half.dxf",
    ]);
  });
  test("a truncated shelf", async () =>
    expectRefusal(bench.path("good.svg"), await bench.put("half.json", SHELF_JSON.slice(0, 80)), [
      "half.json",
    ]));
  test.each(["svg", "dxf", "json"])("a %s of 50 megabytes, refused before it is read", async (ending) => {
    const file = await bench.put(`large.${ending}`, new Uint8Array(50_000_000).fill(0x20));
    await expectRefusal(file, bench.path("good.json"), ["50 megabytes", "at most 5"]);
    await expectRefusal(bench.path("good.svg"), file, ["50 megabytes"]);
    await bench.put(`large.${ending}`, "");
  });
  test("text that is not UTF-8", async () =>
    expectRefusal(await bench.put("latin.svg", new Uint8Array([0x3c, 0xe9, 0x3e])), bench.path("good.json"), [
      "UTF-8",
    ]));
});

describe("drawings", () => {
  test.each<[string, string, readonly (string | RegExp)[]]>([
    ["no number in the path", path("M0 12 H30 V4 H20 VNaN H0 Z"), []],
    ["1e308 in the path", path("M0 12 H1e308 V4 H20 V0 H0 Z"), []],
    ["a path that crosses itself", path("M0 12 L30 12 L10 2 L28 0 L0 4 Z"), [/cross/]],
    ["a path that encloses nothing", path("M0 0 L30 0 Z"), []],
    ["a DTD", `<!DOCTYPE svg [<!ENTITY a "aaaa">]>${STEP_SVG}`, [/DTD|document type|DOCTYPE/i]],
    ["no section at all", svg('<rect id="stick" width="30" height="12"/>'), []],
    ["two closed paths and no id", svg('<path d="M0 0H5V5H0Z"/><path d="M6 0H9V5H6Z"/>'), []],
    ["another kind of XML", "<html><body/></html>", []],
    ["not XML", "just words", []],
    [
      "a size beyond all boards",
      svg(
        '<path id="section" d="M0 0H3000V200H0Z"/>',
        'width="3000mm" height="200mm" viewBox="0 0 3000 200"',
      ),
      [],
    ],
  ])("%s", async (name, text, says) => {
    const file = await bench.put(`${name.replace(/\W+/g, "-")}.svg`, text);
    await expectRefusal(file, bench.path("good.json"), says);
  });

  test("100,000 points", async () => {
    const steps = Array.from(
      { length: 100_000 },
      (_, i) => `L${(i * 29) / 100_000 + 0.5} ${(i % 2) * 0.001}`,
    );
    const file = await bench.put("points.svg", path(`M0 12 H30 V0 ${steps.join(" ")} Z`));
    await expectRefusal(file, bench.path("good.json"), []);
  });

  test("10,000 groups one inside the other", async () => {
    const deep = svg(`${"<g>".repeat(10_000)}<path id="section" d="M0 0H5V5H0Z"/>${"</g>".repeat(10_000)}`);
    await expectRefusal(await bench.put("deep.svg", deep), bench.path("good.json"), []);
  });

  test("a DXF in feet, whose section is wider than any stick", async () => {
    const file = await bench.put(
      "feet.dxf",
      dxf(2, [
        [0, 0],
        [30, 0],
        [30, 12],
        [0, 12],
      ]),
    );
    await expectRefusal(file, bench.path("good.json"), ["feet.dxf"]);
  });

  test("control characters in a file's name", async () => {
    const file = await bench.put("a\u001b[31mred.svg", "");
    await expectRefusal(file, bench.path("good.json"), ["red.svg"]);
  });
});

describe("shelves", () => {
  const shelf = (planes: readonly unknown[], more: Readonly<Record<string, unknown>> = {}): string =>
    JSON.stringify({ format: "mouldwright/shelf", version: 1, unit: "mm", planes, ...more });

  test.each<[string, string, readonly (string | RegExp)[]]>([
    ["an empty shelf", shelf([]), [/no plane/i]],
    ["a plane wider than twice its radius", shelf([{ kind: "round", radius: 5, width: 12 }]), ["planes[0]"]],
    ["an unknown key", shelf([{ kind: "round", radius: 12, widht: 12 }]), ["planes[0]", "widht", "width"]],
    ["an unknown key beside the planes", shelf([], { plains: [] }), ["plains", "planes"]],
    ["an unknown kind", shelf([{ kind: "rond", radius: 12, width: 12 }]), ["rond", "round"]],
    ["a size of nought", shelf([{ kind: "rebate", width: 0 }]), ["planes[0]"]],
    ["a size below nought", shelf([{ kind: "rebate", width: -19 }]), ["planes[0]"]],
    ["a size of 1e308", shelf([{ kind: "rebate", width: 1e308 }]), ["planes[0]"]],
    ["a size of 1e400", shelf([{ kind: "rebate", width: 19 }]).replace("19", "1e400"), ["planes[0]"]],
    ["no number for a size", shelf([{ kind: "rebate", width: 19 }]).replace("19", "NaN"), []],
    ["__proto__ as a key", shelf([]).replace("{", '{"__proto__": {"planes": [1]}, '), ["__proto__"]],
    [
      "__proto__ as a key of a plane",
      shelf([{ kind: "rebate", width: 19 }]).replace('{"kind"', '{"__proto__": {"width": 3}, "kind"'),
      ["__proto__"],
    ],
    ["a newer version", shelf([], { version: 7 }), ["7"]],
    ["a plan instead", JSON.stringify({ format: "mouldwright/plan", version: 1 }), ["mouldwright/plan"]],
    ["brackets without end", "[".repeat(200_000), []],
    [
      "control characters in an unknown key",
      shelf([{ kind: "rebate", width: 19, "\u001b[2Jx\u009b": 1 }]),
      [],
    ],
  ])("%s", async (name, text, says) => {
    const file = await bench.put(`${name.replace(/\W+/g, "-")}.json`, text);
    await expectRefusal(bench.path("good.svg"), file, says);
  });

  test("no shelf named", async () => {
    const ran = await runHere(["plan", bench.path("good.svg")]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    expect(ran.err).toContain("--shelf");
  });
});

describe("jobs", () => {
  const job = (more: Readonly<Record<string, unknown>>): string =>
    JSON.stringify({
      format: "mouldwright/job",
      version: 1,
      name: "Plinth",
      section: {
        parts: [
          { kind: "fillet", widthMm: 20 },
          { kind: "step", riseMm: -4 },
          { kind: "fillet", widthMm: "rest" },
        ],
      },
      stick: { widthMm: 30, thicknessMm: 12 },
      ...more,
    });

  test.each<[string, string, readonly (string | RegExp)[]]>([
    ["an unknown key", job({ sticks: 1 }), ["sticks", "Was “stick” meant?"]],
    ["a newer version", job({ version: 9 }), ["version 9", "left untouched"]],
    ["parts wider than the stick", job({ stick: { widthMm: 10, thicknessMm: 12 } }), []],
    [
      "an arc of no length",
      job({
        section: {
          path: [
            [0, 0],
            [30, 0],
            [30, 12, 0.5],
            [30, 12],
            [0, 12],
          ],
        },
      }),
      ["section.path[3]"],
    ],
    [
      "a radius smaller than half the chord",
      job({ section: { parts: [{ kind: "arc", acrossMm: 30, riseMm: -4, radiusMm: 5, bend: "round" }] } }),
      ["section.parts[0]"],
    ],
    ["__proto__ as a key", job({}).replace("{", '{"__proto__": {"unit": "in"}, '), ["__proto__"]],
    ["not JSON", "{name: Plinth}", ["line 1, column 2"]],
  ])("%s", async (name, text, says) => {
    const file = await bench.put(`job-${name.replace(/\W+/g, "-")}.json`, text);
    await expectRefusal(file, bench.path("good.json"), says);
  });
});
