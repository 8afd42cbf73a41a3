import { type Drawing, group, KNOWN_LETTERS, letterWidthRatio, openPath, stroke } from "mouldwright/sheets";
import { describe, expect, test } from "vitest";
import { nodeFonts } from "./node-fonts.ts";
import { groupPlacing, pagePlacing, placed, sizeRatio, stepsOf } from "./placing.ts";
import { writePdf } from "./write-pdf.ts";

const fonts = await nodeFonts();

function page(items: Drawing["items"]): Drawing {
  return { widthMm: 100, heightMm: 50, title: "Page", description: "", items };
}

describe("arcs as curves", () => {
  /** The furthest that the curves of an arc leave its circle, over 200 points of each. */
  function errorMm(bulge: number, radiusMm: number): number {
    const sweepRad = 4 * Math.atan(bulge);
    const from = [radiusMm, 0] as const;
    // Anticlockwise as seen: paper's y runs down.
    const to = [radiusMm * Math.cos(sweepRad), -radiusMm * Math.sin(sweepRad)] as const;
    let at: readonly [number, number] = from;
    let worst = 0;
    for (const step of stepsOf({ start: from, steps: [{ to, bulge }], closed: false })) {
      if (step.kind !== "curve") throw new Error("a line");
      const [one, two] = step.by;
      for (let i = 0; i <= 200; i++) {
        const t = i / 200;
        const s = 1 - t;
        const mix = (k: 0 | 1): number =>
          s ** 3 * at[k] + 3 * s * s * t * one[k] + 3 * s * t * t * two[k] + t ** 3 * step.to[k];
        worst = Math.max(worst, Math.abs(Math.hypot(mix(0), mix(1)) - radiusMm));
      }
      at = step.to;
    }
    expect(at).toEqual(to);
    return worst;
  }

  test.each([
    ["a sixth of a circle", Math.tan(Math.PI / 12)],
    ["a quarter, the other way round", -Math.tan(Math.PI / 8)],
    ["a half circle", 1],
    ["a hair's breadth", 0.001],
  ])("%s of 50 mm radius is out by less than a hundred-thousandth of a millimetre", (_, bulge) => {
    expect(errorMm(bulge, 50)).toBeLessThan(0.00001);
  });

  test("lines stay lines", () => {
    expect(
      stepsOf(
        openPath([
          [0, 0],
          [3, 4],
        ]),
      ),
    ).toEqual([{ kind: "line", to: [3, 4] }]);
  });
});

describe("frames", () => {
  test("25.4 mm are 72 points; a stretch goes on top", () => {
    expect(placed(pagePlacing({ acrossRatio: 1, upRatio: 1 }), [25.4, 50.8])).toEqual([72, 144]);
    const [x, y] = placed(pagePlacing({ acrossRatio: 1.01, upRatio: 0.98 }), [25.4, 25.4]);
    expect(x).toBeCloseTo(72.72, 9);
    expect(y).toBeCloseTo(70.56, 9);
  });

  test("a group turned by 90° has its right side up, as seen", () => {
    const turned = { ...group("turned", [], [10, 20]), turnDeg: 90, scaleRatio: 2 };
    const placing = groupPlacing(pagePlacing({ acrossRatio: 1, upRatio: 1 }), turned);
    const [x, y] = placed(placing, [5, 0]);
    expect(x / (72 / 25.4)).toBeCloseTo(10, 9);
    expect(y / (72 / 25.4)).toBeCloseTo(10, 9);
    expect(sizeRatio(placing) / (72 / 25.4)).toBeCloseTo(2, 9);
  });
});

describe("the file", () => {
  test("starts and ends as a PDF, carries no date and no word of a standard font", async () => {
    const bytes = await writePdf([page([])], { title: "Cornice", fonts });
    const text = Buffer.from(bytes).toString("latin1");
    expect(text.startsWith("%PDF-1.")).toBe(true);
    expect(text.trimEnd().endsWith("%%EOF")).toBe(true);
    expect(text).not.toMatch(/CreationDate|ModDate|Helvetica/);
    expect(text).toContain("(Cornice)");
  });

  test("a number that is not finite, and no page at all, are our own mistakes", async () => {
    const broken = page([
      stroke(
        openPath([
          [0, 0],
          [Number.NaN, 1],
        ]),
      ),
    ]);
    await expect(writePdf([broken], { title: "Cornice", fonts })).rejects.toThrow(/not finite/);
    await expect(writePdf([], { title: "Cornice", fonts })).rejects.toThrow(/no pages/);
  });

  test("fonts that are none are refused, not written around", async () => {
    const none = { regular: new Uint8Array(8), bold: new Uint8Array(8) };
    const text = {
      kind: "text",
      at: [1, 9],
      text: "Bead",
      sizeMm: 4,
      anchor: "start",
      turnDeg: 0,
      bold: false,
      colour: { name: "black", strengthRatio: 1 },
    } as const;
    await expect(writePdf([page([text])], { title: "Cornice", fonts: none })).rejects.toThrow();
  });
});

describe("the table of widths in the core", () => {
  test.each(["regular", "bold"] as const)("is that of the %s font, letter by letter", (weight) => {
    const widthOf = widthsIn(fonts[weight]);
    expect(KNOWN_LETTERS.length).toBeGreaterThan(500);
    const wrong = KNOWN_LETTERS.filter(
      (code) => Math.abs((letterWidthRatio(code, weight) ?? 0) - widthOf(code)) > 0.0001,
    );
    expect(wrong.map((code) => String.fromCodePoint(code))).toEqual([]);
  });

  test("knows every sign that fractions and angles are written with", () => {
    const known = new Set(KNOWN_LETTERS);
    const signs = [..."¼½¾⅛⅜⅝⅞⅓⅔⁰¹²³⁴⁵⁶⁷⁸⁹⁄₀₁₂₃₄₅₆₇₈₉°″′×±–—…·"];
    expect(signs.filter((sign) => !known.has(sign.codePointAt(0) ?? 0))).toEqual([]);
  });
});

/** Widths out of a TrueType file's own tables (head, hhea, hmtx, cmap of format 4), as ratios of the font's size. */
function widthsIn(font: Uint8Array): (code: number) => number {
  const view = new DataView(font.buffer, font.byteOffset, font.byteLength);
  const tableAt = (name: string): number => {
    for (let i = 0; i < view.getUint16(4); i++) {
      const entry = 12 + 16 * i;
      const tag = String.fromCharCode(...font.subarray(entry, entry + 4));
      if (tag === name) return view.getUint32(entry + 8);
    }
    throw new Error(`no table ${name}`);
  };
  const unitsPerSize = view.getUint16(tableAt("head") + 18);
  const widthsCount = view.getUint16(tableAt("hhea") + 34);
  const hmtx = tableAt("hmtx");
  const cmap = tableAt("cmap");
  const table = Array.from(
    { length: view.getUint16(cmap + 2) },
    (_, i) => cmap + view.getUint32(cmap + 8 + 8 * i),
  ).find((at) => view.getUint16(at) === 4);
  if (table === undefined) throw new Error("no map of letters of format 4");
  const doubled = view.getUint16(table + 6);
  const glyphOf = (code: number): number => {
    for (let i = 0; i < doubled; i += 2) {
      if (view.getUint16(table + 14 + i) < code) continue;
      const start = view.getUint16(table + 16 + doubled + i);
      if (start > code) return 0;
      const delta = view.getUint16(table + 16 + 2 * doubled + i);
      const offsetAt = table + 16 + 3 * doubled + i;
      const offset = view.getUint16(offsetAt);
      if (offset === 0) return (code + delta) & 0xffff;
      const glyph = view.getUint16(offsetAt + offset + 2 * (code - start));
      return glyph === 0 ? 0 : (glyph + delta) & 0xffff;
    }
    return 0;
  };
  return (code) => view.getUint16(hmtx + 4 * Math.min(glyphOf(code), widthsCount - 1)) / unitsPerSize;
}
