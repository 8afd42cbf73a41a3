import { describe, expect, it } from "vitest";
import { areaMm2, extentsOf, verticesOf } from "../curve/index.ts";
import { readSvgSection } from "./svg-read.ts";
import type { Section } from "./types.ts";

const MM = `xmlns="http://www.w3.org/2000/svg" width="42mm" height="18mm" viewBox="0 0 42 18"`;
const STICK = `<rect id="stick" width="42" height="18"/>`;
/** A rebated block, 20 wide and 10 high, its upper right quarter gone. */
const STEP = `d="M10 15h20v-5h-10v-5h-10z"`;

function svg(inside: string, root = MM): string {
  return `<?xml version="1.0" encoding="UTF-8"?>\n<svg ${root}>${inside}</svg>`;
}

/** Reads and expects exactly the warnings named; what `inspectSection` adds is tested beside it. */
function read(text: string, warnings: readonly string[] = [], options = {}): Section {
  const outcome = readSvgSection(text, { name: "test", ...options });
  if (!outcome.ok) throw new Error(JSON.stringify(outcome.trouble));
  const codes = outcome.warnings.map(({ code }) => code).filter((code) => !code.startsWith("section-"));
  expect(codes).toEqual(warnings);
  return outcome.value;
}

function refusal(text: string, options = {}) {
  const outcome = readSvgSection(text, { name: "test", ...options });
  if (outcome.ok) throw new Error("was read");
  return outcome.trouble;
}

function corners(section: Section): string {
  return verticesOf(section.outline)
    .map(([x, y, bulge]) => (bulge ? `${x},${y},${bulge.toFixed(9)}` : `${x},${y}`))
    .join(" ");
}

describe("the frame", () => {
  it("a step with a quarter hollow: y flipped about the stick, the arc exact, anticlockwise", () => {
    const section = read(svg(`${STICK}<path id="section" d="M0 18 V6 H20 A8 8 0 0 0 28 14 H42 V18 Z"/>`));
    expect(corners(section)).toBe("0,0 42,0 42,4 28,4,-0.414213562 20,12 0,12");
    expect(verticesOf(section.stick)).toEqual([
      [0, 0],
      [42, 0],
      [42, 18],
      [0, 18],
    ]);
    expect(section.freeSpans).toEqual([]);
    expect(section.name).toBe("test");
  });

  it("numbers that the maker knows the size of, whatever the page says", () => {
    const doubled = read(svg(`<path ${STEP}/>`), [], { numberMm: 2 });
    expect(extentsOf(doubled.stick)).toEqual({ minX: 0, minY: 0, maxX: 40, maxY: 20 });
    const unsaid = svg(`<path ${STEP}/>`, `xmlns="http://www.w3.org/2000/svg"`);
    expect(extentsOf(read(unsaid, [], { numberMm: 1 }).stick).maxX).toBe(20);
    expect(extentsOf(read(unsaid, ["size-without-unit"]).stick).maxX).toBe(20);
  });

  it("without a stick, the section's box", () => {
    const section = read(svg(`<path ${STEP}/>`));
    expect(extentsOf(section.stick)).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 10 });
    expect(areaMm2(section.outline)).toBe(150);
  });

  it("a given stick: against the gauge edge and top, or where it is put; the drawn one is passed over", () => {
    const text = svg(`${STICK}<path id="section" ${STEP}/>`);
    const stickMm = { widthMm: 42, thicknessMm: 20 };
    expect(extentsOf(read(text, [], { stickMm }).outline)).toEqual({ minX: 0, minY: 10, maxX: 20, maxY: 20 });
    const at = read(text, [], { stickMm, atMm: { x: 3, y: 0 } });
    expect(extentsOf(at.outline)).toEqual({ minX: 3, minY: 0, maxX: 23, maxY: 10 });
    expect(refusal(text, { stickMm, atMm: { x: 30, y: 0 } }).code).toBe("section-outside-stick");
    expect(refusal(text, { stickMm: { widthMm: 0, thicknessMm: 20 } }).code).toBe("stick-size");
  });

  it("a stick of another shape than a rectangle", () => {
    const stick = `<polygon id="stick" points="0,18 42,18 42,4 38,0 0,0"/>`;
    const section = read(svg(`${stick}<path id="section" ${STEP}/>`));
    expect(verticesOf(section.stick)).toHaveLength(5);
    expect(extentsOf(section.outline)).toEqual({ minX: 10, minY: 3, maxX: 30, maxY: 13 });
  });
});

describe("units", () => {
  const PIXELS_MM = (200 * 25.4) / 96;
  it.each<[string, string, number, string[]]>([
    ["mm", `width="20mm" height="10mm" viewBox="0 0 200 100"`, 20, []],
    ["cm", `width="2cm" height="1cm" viewBox="0 0 200 100"`, 20, []],
    ["in", `width="2in" height="1in" viewBox="0 0 200 100"`, 50.8, []],
    ["pt", `width="144pt" height="72pt" viewBox="0 0 200 100"`, 50.8, []],
    ["px", `width="192px" height="96px" viewBox="0 0 200 100"`, 50.8, []],
    ["left out", `width="192" height="96" viewBox="0 0 200 100"`, 50.8, ["size-in-pixels-assumed"]],
    ["but no viewBox: user units are pixels", `width="80mm" height="40mm"`, PIXELS_MM, []],
    ["nor viewBox: millimetres", `width="200" height="100"`, 200, ["size-without-unit"]],
    ["nor anything: millimetres", ``, 200, ["size-without-unit"]],
    ["but a viewBox: millimetres", `viewBox="0 0 200 100"`, 200, ["size-without-unit"]],
    [
      "of a window: millimetres",
      `width="100%" height="100%" viewBox="0 0 200 100"`,
      200,
      ["size-without-unit"],
    ],
    ["only one: the other follows", `width="20mm" viewBox="0 0 200 100"`, 20, []],
    ["taller than the box: even scale", `width="20mm" height="40mm" viewBox="0 0 200 100"`, 20, []],
  ])("unit %s", (_, root, widthMm, warnings) => {
    const section = read(svg(`<path d="M0 0H100V50H200V100H0z"/>`, root), warnings);
    const { maxX, maxY } = extentsOf(section.outline);
    expect(maxX).toBeCloseTo(widthMm, 5);
    expect(maxY).toBeCloseTo(widthMm / 2, 5);
  });

  it("stretched on purpose: each axis its own scale", () => {
    const root = `width="20mm" height="40mm" viewBox="0 0 200 100" preserveAspectRatio="none"`;
    const section = read(svg(`<path d="M0 0H100V50H200V100H0z"/>`, root));
    expect(extentsOf(section.outline)).toEqual({ minX: 0, minY: 0, maxX: 20, maxY: 40 });
  });

  it("a doubtful size is said with the size that follows", () => {
    const outcome = readSvgSection(svg(`<path ${STEP}/>`, ""), { name: "test" });
    expect(outcome.ok && outcome.warnings[0]?.facts).toEqual({ widthMm: 20, heightMm: 10 });
  });
});

describe("paths", () => {
  it.each([
    ["relative", "m10 15h20v-5h-10v-5h-10z"],
    ["absolute", "M10 15H30V10H20V5H10Z"],
    ["lines after a moveto without a letter", "M10 15 30 15 30 10 20 10 20 5 10 5Z"],
    ["relative lines after a moveto", "m10,15 20,0 0-5-10,0 0-5-10 0z"],
    ["signs and points without spaces", "M10+15L3e1 15 30 1e1L20 10.0L20.0.5e1L10 5z"],
    ["no Z, but back at the start", "M10 15H30V10H20V5H10V15"],
    ["a moveto too many", "M1 1M10 15H30V10H20V5H10Z"],
  ])("%s", (_, d) => {
    expect(corners(read(svg(`<path d="${d}"/>`)))).toBe("0,0 20,0 20,5 10,5 10,10 0,10");
  });

  it("flags of an arc run together", () => {
    const apart = read(svg(`<path d="M0 18V6H20A8 8 0 0 0 28 14H42V18Z"/>`));
    const together = read(svg(`<path d="M0 18V6H20a8 8 0 008 8H42V18Z"/>`));
    expect(together.outline).toEqual(apart.outline);
  });

  it("an arc past a half circle is two, of the same circle", () => {
    // Three quarters of a circle of radius 5 about (15, 10), the rest a notch to its centre.
    const section = read(svg(`<path d="M15 10H20A5 5 0 1 1 15 5Z"/>`));
    expect(areaMm2(section.outline)).toBeCloseTo((3 / 4) * Math.PI * 25, 5);
    expect(verticesOf(section.outline).filter(([, , bulge]) => bulge)).toHaveLength(2);
  });

  it("an arc too small for its ends grows, and that is said", () => {
    const section = read(svg(`<path d="M0 18V8H10A2 2 0 0 1 20 8H30V18Z"/>`), ["arc-radius-grown"]);
    expect(extentsOf(section.outline).maxY).toBeCloseTo(15, 9);
  });

  it("a radius of nothing is a line; an arc between equal ends is nothing", () => {
    const section = read(svg(`<path d="M10 15H30V10A0 5 0 0 1 20 10A5 5 0 0 1 20 10V5H10Z"/>`));
    expect(corners(section)).toBe("0,0 20,0 20,5 10,5 10,10 0,10");
  });

  it("smooth and quadratic Béziers are free curves whose chords stay within 0.0001 mm", () => {
    const section = read(svg(`<path d="M0 18V8Q5 2 10 8T20 8S24 10 26 12V18Z"/>`));
    expect(section.freeSpans).toHaveLength(3);
    const total = section.freeSpans.reduce((sum, { count }) => sum + count, 0);
    expect(total).toBe(section.outline.pieces.length - 3);
    // Area under the first parabola above y = 8 on the page: 2/3 of chord 10 by its rise 3; the second dips as much.
    const flat = read(svg(`<path d="M0 18V8H20S24 10 26 12V18Z"/>`));
    expect(areaMm2(section.outline)).toBeCloseTo(areaMm2(flat.outline), 2);
    const [first] = section.freeSpans;
    expect(section.outline.pieces[first!.first]!.kind).toBe("line");
  });
});

describe("Béziers that are arcs", () => {
  it.each([
    ["0.5522847498", 0.5522847498],
    ["rounded, 0.5523", 0.5523],
    ["the other usual one, 0.5519", 0.5519],
  ])("a quarter saved with handles of %s of the radius is an arc again", (_, ratio) => {
    const h = 8 * ratio;
    const d = `M0 18V6H20C20 ${6 + h} ${28 - h} 14 28 14H42V18Z`;
    const section = read(svg(`${STICK}<path id="section" d="${d}"/>`));
    expect(corners(section)).toBe("0,0 42,0 42,4 28,4,-0.414213562 20,12 0,12");
  });

  it("two quarters of one circle are one half circle", () => {
    const h = 5 * 0.5522847498;
    const d = `M0 18V8H10C10 ${8 - h} ${15 - h} 3 15 3S20 ${8 - h} 20 8H30V18Z`;
    const section = read(svg(`<path d="${d}"/>`));
    expect(corners(section)).toBe("0,0 30,0 30,10 20,10,1.000000000 10,10 0,10");
  });

  it("an ellipse's quarter is not, nor one that leans", () => {
    const h = 0.5522847498;
    const oval = `M0 18V6H20C20 ${6 + 8 * h} ${28 - 8 * h} 14.2 28 14.2H42V18Z`;
    expect(read(svg(`<path d="${oval}"/>`)).freeSpans).toHaveLength(1);
    const leaning = `M0 18V6H20C20.3 ${6 + 8 * h} ${28 - 8 * h} 14 28 14H42V18Z`;
    expect(read(svg(`<path d="${leaning}"/>`)).freeSpans).toHaveLength(1);
  });
});

describe("shapes", () => {
  it.each([
    ["polygon", `<polygon points="10,15 30,15 30,10 20,10 20,5 10,5"/>`],
    ["polyline back at its start", `<polyline points="10 15 30 15 30 10 20 10 20 5 10 5 10 15"/>`],
  ])("%s", (_, shape) => {
    expect(corners(read(svg(shape)))).toBe("0,0 20,0 20,5 10,5 10,10 0,10");
  });

  it("rect with round corners: quarter arcs between the lines", () => {
    const section = read(svg(`${STICK}<rect id="section" x="2" y="4" width="20" height="10" rx="3"/>`));
    expect(areaMm2(section.outline)).toBeCloseTo(200 - (4 - Math.PI) * 9, 9);
    expect(section.outline.pieces.map(({ kind }) => kind).sort()).toEqual([
      ...["arc", "arc", "arc", "arc"],
      ...["line", "line", "line", "line"],
    ]);
  });

  it("circle: two half circles; ellipse: one free curve", () => {
    const circle = read(svg(`${STICK}<circle id="section" cx="20" cy="9" r="6"/>`));
    expect(areaMm2(circle.outline)).toBeCloseTo(36 * Math.PI, 9);
    expect(circle.outline.pieces).toHaveLength(2);
    const ellipse = read(svg(`${STICK}<ellipse id="section" cx="20" cy="9" rx="12" ry="6"/>`));
    expect(areaMm2(ellipse.outline)).toBeCloseTo(72 * Math.PI, 2);
    expect(ellipse.freeSpans).toEqual([{ first: 0, count: ellipse.outline.pieces.length }]);
  });
});

describe("transforms", () => {
  const plain = corners(read(svg(`${STICK}<path id="section" d="M0 18V6H20A8 8 0 0 0 28 14H42V18Z"/>`)));

  it.each([
    ["moved and back", `translate(5 3)`, `translate(-5,-3)`],
    ["halved and doubled", `scale(.5)`, `matrix(2 0 0 2 0 0)`],
    ["turned and back, about a point", `rotate(30 20 9)`, `rotate(-30,20,9)`],
    ["mirrored twice", `scale(-1 1)`, `scale(-1,1)`],
    ["sheared and back", `skewX(20)`, `skewX(-20)`],
    ["several in one", `translate(1) rotate(90)`, `rotate(-90), translate(-1)`],
  ])("nested: %s", (_, outer, inner) => {
    const path = `<path id="section" transform="${inner}" d="M0 18V6H20A8 8 0 0 0 28 14H42V18Z"/>`;
    const section = read(svg(`${STICK}<g transform="${outer}"><g>${path}</g></g>`));
    expect(corners(section)).toBe(plain);
  });

  it("a mirrored arc is the mirror image", () => {
    const path = `<path id="section" d="M0 18V6H20A8 8 0 0 0 28 14H42V18Z"/>`;
    const section = read(svg(`<g transform="scale(-1 1)">${path}</g>`));
    expect(corners(section)).toBe("42,0 42,12 22,12,-0.414213562 14,4 0,4 0,0");
  });

  it("a circle stretched one way is a free curve; an ellipse stretched round is a circle", () => {
    const circle = `<circle id="section" cx="10" cy="4" r="3" transform="scale(2 1)"/>`;
    expect(read(svg(`${STICK}${circle}`)).freeSpans).toHaveLength(1);
    const ellipse = `<ellipse id="section" cx="10" cy="9" rx="3" ry="6" transform="scale(2 1)"/>`;
    expect(read(svg(`${STICK}${ellipse}`)).freeSpans).toHaveLength(0);
  });

  it.each([
    ["transform that is none", `<g transform="wobble(3)"><path ${STEP}/></g>`, "svg-transform-broken"],
    ["transform cut short", `<path transform="rotate(3" ${STEP}/>`, "svg-transform-broken"],
    ["transform in a style", `<path style="transform: rotate(3deg)" ${STEP}/>`, "svg-style-transform"],
    [
      "origin of its own",
      `<path transform-origin="3 4" transform="rotate(3)" ${STEP}/>`,
      "svg-style-transform",
    ],
  ])("refused: %s", (_, inside, code) => {
    expect(refusal(svg(inside)).code).toBe(code);
  });
});

describe("which outline is the section", () => {
  const OTHER = `<circle cx="30" cy="9" r="3"/>`;

  it.each([
    ["the id", `${OTHER}<path id="section" ${STEP}/>`],
    ["the id in other letters", `${OTHER}<path id="Section" ${STEP}/>`],
    ["a label of the drawing program", `${OTHER}<path id="path7" inkscape:label="section" ${STEP}/>`],
    ["its group", `${OTHER}<g id="section"><path id="p" ${STEP}/></g>`],
    ["the only closed one", `<path d="M0 0H40"/><path ${STEP}/><rect id="stick" width="42" height="18"/>`],
    ["others hidden by attribute", `<circle display="none" cx="30" cy="9" r="3"/><path ${STEP}/>`],
    ["others hidden by style", `<g style="display:none">${OTHER}</g><path ${STEP}/>`],
    ["others invisible", `<g visibility="hidden">${OTHER}<path visibility="visible" ${STEP}/></g>`],
    ["others only defined", `<defs>${OTHER}</defs><symbol>${OTHER}</symbol><path ${STEP}/>`],
    ["others clip or mask", `<clipPath>${OTHER}</clipPath><mask>${OTHER}</mask><path ${STEP}/>`],
  ])("%s", (_, inside) => {
    expect(areaMm2(read(svg(inside)).outline)).toBe(150);
  });

  it("scripts, links, images, uses and foreign elements are passed over", () => {
    const inside = `<script href="http://example.org/a.js">alert(1)</script><image href="http://example.org/a.png"/>
      <a href="http://example.org">${OTHER}</a><use href="#x"/><foreignObject>${OTHER}</foreignObject>
      <style>@import url(http://example.org/a.css);</style><path onclick="alert(1)" ${STEP}/>`;
    expect(areaMm2(read(svg(inside)).outline)).toBe(150);
  });

  it("one in a rectangle down to its back is the section, the rectangle its stick, and that is said", () => {
    const inside = `<rect x="10" y="3" width="24" height="12"/><path ${STEP}/>`;
    const section = read(svg(inside), ["drawn-stick-assumed"]);
    expect(extentsOf(section.stick)).toEqual({ minX: 0, minY: 0, maxX: 24, maxY: 12 });
    expect(areaMm2(section.outline)).toBe(150);
    const named = read(svg(`${inside}<circle cx="39" cy="3" r="1" id="section"/>`));
    expect(extentsOf(named.stick)).toEqual({ minX: 0, minY: 0, maxX: 2, maxY: 2 });
  });

  it.each([
    ["a border around the page", `<rect width="42" height="18"/>`],
    ["a rectangle that leaves out a part of it", `<rect x="10" y="5" width="18" height="10"/>`],
    ["a frame that is no rectangle", `<path d="M10 15h24v-12h-23l-1 1z"/>`],
    ["a rectangle beside it", `<rect x="32" y="5" width="8" height="10"/>`],
  ])("%s is not its stick", (_, other) => {
    expect(refusal(svg(`${other}<path ${STEP}/>`)).code).toBe("outline-several");
  });

  it("several: refused by name", () => {
    const trouble = refusal(svg(`<path id="rim" ${STEP}/><path ${STEP}/>${OTHER}`));
    expect(trouble.code).toBe("outline-several");
    expect(trouble.facts).toEqual({ names: ["rim", "path 2", "circle 1"], more: 0 });
  });

  it.each([
    ["nothing drawn", `<g/>`, "outline-missing"],
    ["only an open line", `<path d="M0 0H20V10"/>`, "outline-open"],
    ["the section open", `${OTHER}<path id="section" d="M0 0H20V10"/>`, "outline-open"],
    [
      "two runs in one path",
      `<path id="section" d="M0 0H20V18H0Z M4 4H8V8H4Z"/>`,
      "outline-of-several-rings",
    ],
    ["a line there and back", `<path d="M0 0H20H0Z"/>`, "outline-flat"],
    ["two sticks", `${STICK}${STICK}<path id="section" ${STEP}/>`, "drawn-stick-several"],
    [
      "a stick of two runs",
      `<path id="stick" d="M0 0H9V9H0ZM20 0h9v9h-9z"/><path ${STEP}/>`,
      "outline-of-several-rings",
    ],
    ["crossing itself", `<path d="M0 0L30 10V0L0 12Z"/>`, "section-crosses-itself"],
    [
      "outside the stick",
      `<rect id="stick" width="25" height="18"/><path ${STEP}/>`,
      "section-outside-stick",
    ],
    ["the whole stick", `<rect id="section" width="42" height="18"/>`, "section-not-worked"],
    ["a path that breaks off", `<path id="section" d="M0 0H20V10L3"/>`, "svg-path-broken"],
    ["a path that does not begin", `<path id="section" d="L0 0H20V10Z"/>`, "svg-path-broken"],
    ["a rect without a width", `<rect id="section" width="wide" height="3"/>`, "svg-size-unreadable"],
  ])("refused: %s", (_, inside, code) => {
    expect(refusal(svg(inside)).code).toBe(code);
  });

  it("an open outline says its gap", () => {
    expect(refusal(svg(`<path id="section" d="M0 0H20V3L3 4"/>`)).facts).toEqual({
      element: "section",
      gapMm: 5,
    });
  });
});

describe("what other programs leave", () => {
  it("ends a hair apart are joined, once and said", () => {
    const section = read(svg(`<path d="M10 15H30V10H20V5H10V14.995"/>`), ["noise-ends"]);
    expect(corners(section)).toBe("0,0 20,0 20,5 10,5 10,10 0,10");
  });

  it("corners a hair off the stick's sides lie on them", () => {
    const path = `<path id="section" d="M0.004 18.003V6H20A8 8 0 0 0 28 14H41.996V17.998Z"/>`;
    const section = read(svg(`${STICK}${path}`), ["noise-sides"]);
    expect(corners(section)).toBe(
      "0,0 42,0 42,4 28,4,-0.414213562 20,12 0.004,12".replace("0.004,12", "0,12"),
    );
  });

  it("a crown a hair above the face touches it", () => {
    const path = `<path id="section" d="M0 18V6H10A6.004 6.004 0 0 1 22.008 6H42V18Z"/>`;
    const section = read(svg(`${STICK}${path}`), ["noise-sides"]);
    expect(extentsOf(section.outline).maxY).toBeCloseTo(18, 9);
  });

  it("0.02 mm is no noise", () => {
    expect(refusal(svg(`<path d="M10 15H30V10H20V5H10V14.98"/>`)).code).toBe("outline-open");
    const path = `<path id="section" d="M0.02 18V6H20A8 8 0 0 0 28 14H42V18Z"/>`;
    expect(extentsOf(read(svg(`${STICK}${path}`)).outline).minX).toBe(0.02);
  });

  it("coordinates lie on a grid of 1e-6 mm", () => {
    const section = read(svg(`<path d="M10 15h20.0000004v-5.00000049h-10v-5h-10z"/>`));
    expect(corners(section)).toBe("0,0 20,0 20,5 10,5 10,10 0,10");
  });
});
