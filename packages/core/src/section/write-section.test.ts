import DxfParser from "dxf-parser";
import { describe, expect, it } from "vitest";
import { ringFromVertices } from "../curve/index.ts";
import type { Section } from "./types.ts";
import { writeDxfSection } from "./write-dxf.ts";
import { numberText, svgPathOfRing } from "./write-path.ts";
import { writeSvgSection } from "./write-svg.ts";

const COVE: Section = {
  name: "cove <no. 1> & co.",
  stick: ringFromVertices([
    [0, 0],
    [42, 0],
    [42, 18],
    [0, 18],
  ]),
  outline: ringFromVertices([
    [0, 0],
    [42, 0],
    [42, 4],
    [28, 4, 1 - Math.SQRT2],
    [20, 12],
    [0, 12],
  ]),
  freeSpans: [],
  named: [],
};

describe("numbers", () => {
  it.each([
    [1, "1"],
    [1.5, "1.5"],
    [-0.0000001, "0"],
    [100, "100"],
    [1 / 3, "0.333333"],
    [-2.5, "-2.5"],
  ])("%s", (value, text) => {
    expect(numberText(value, 6)).toBe(text);
  });
});

describe("path data", () => {
  it("lines and arcs, the last line left to Z", () => {
    expect(svgPathOfRing(COVE.outline, 3)).toBe("M0 0L42 0L42 4L28 4A8 8 0 0 0 20 12L0 12Z");
  });

  it("a half circle that is rounded keeps its crown", () => {
    const third = 10 / 3;
    const ring = ringFromVertices([
      [0, 0],
      [20, 0],
      [10 + third, 0.1, 0.9999],
      [10 - third, 0.1],
    ]);
    const [, radius] = /A(\S+)/.exec(svgPathOfRing(ring, 3))!;
    // Chord 6.666 after rounding; radius c/4 (b + 1/b); the crown must stay within 0.0005 mm of b c/2.
    const half = 3.333;
    const crown = Number(radius) - Math.sqrt(Math.max(0, Number(radius) ** 2 - half ** 2));
    expect(Math.abs(crown - 0.9999 * half)).toBeLessThanOrEqual(0.0006);
  });
});

describe("SVG", () => {
  it("millimetres", () => {
    const lines = writeSvgSection(COVE, { unit: "mm" }).split("\n");
    expect(lines[1]).toContain(`width="42mm" height="18mm" viewBox="0 0 42 18"`);
    expect(lines[2]).toBe("  <title>cove &lt;no. 1&gt; &amp; co.</title>");
    expect(lines[4]).toBe(`    <rect id="stick" x="0" y="0" width="42" height="18"/>`);
    // y runs down on the page, so the same quarter hollow turns the other way.
    expect(lines[5]).toBe(`    <path id="section" d="M0 18L42 18L42 14L28 14A8 8 0 0 1 20 6L0 6Z"/>`);
  });

  it("inches: page and numbers", () => {
    const text = writeSvgSection(COVE, { unit: "in" });
    expect(text).toContain(`width="1.65354331in" height="0.70866142in" viewBox="0 0 1.65354331 0.70866142"`);
    expect(text).toContain("L1.65354331 0.5511811L");
  });

  it("a stick that is no rectangle is a path", () => {
    const stick = ringFromVertices([
      [0, 0],
      [42, 0],
      [42, 14],
      [38, 18],
      [0, 18],
    ]);
    expect(writeSvgSection({ ...COVE, stick }, { unit: "mm" })).toContain(
      `<path id="stick" d="M0 18L42 18L42 4L38 0L0 0Z"/>`,
    );
  });
});

describe("DXF", () => {
  it("is what a general DXF library reads: layers, unit, closed polylines with bulges", () => {
    const parsed = new DxfParser().parseSync(writeDxfSection(COVE))!;
    expect(parsed.header.$INSUNITS).toBe(4);
    expect(Object.keys(parsed.tables.layer.layers)).toEqual(["0", "SECTION", "STICK"]);
    const [stick, outline] = parsed.entities as unknown as {
      layer: string;
      shape: boolean;
      vertices: { x: number; y: number; bulge?: number }[];
    }[];
    expect(stick).toMatchObject({ layer: "STICK", shape: true });
    expect(outline).toMatchObject({ layer: "SECTION", shape: true });
    expect(outline!.vertices[3]).toMatchObject({ x: 28, y: 4, bulge: -0.414213562373 });
  });

  it("a name cannot begin a record", () => {
    const text = writeDxfSection({ ...COVE, name: "x\n0\nEOF\r…" });
    expect(text.startsWith("999\nx0EOF\\U+2026\n")).toBe(true);
  });
});
