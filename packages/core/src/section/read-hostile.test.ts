import { describe, expect, it } from "vitest";
import { ALL_CODES, sayTrouble, type Trouble } from "../measure/index.ts";
import { readSectionFile } from "./read-file.ts";

/** However bad a file is, the answer comes within this, ms; the machine the tests run on may be busy. */
const SOON_MS = 5000;

function open(text: string, fileName = "drawing") {
  const start = Date.now();
  const outcome = readSectionFile({ fileName, text });
  expect(Date.now() - start).toBeLessThan(SOON_MS);
  return outcome;
}

function refusal(text: string, fileName?: string): Trouble {
  const outcome = open(text, fileName);
  if (outcome.ok) throw new Error("was read");
  const said = sayTrouble(outcome.trouble, { unit: "mm" });
  expect(ALL_CODES).toContain(outcome.trouble.code);
  expect(`${said.sentence} ${said.hint}`).not.toMatch(/\?|NaN|undefined|Infinity/);
  return outcome.trouble;
}

const MM = `xmlns="http://www.w3.org/2000/svg" width="42mm" height="18mm" viewBox="0 0 42 18"`;
const STEP = `<path id="section" d="M0 18V6H20V10H42V18Z"/>`;
const svg = (inside: string, root = MM): string => `<svg ${root}>${inside}</svg>`;
const path = (d: string): string => svg(`<path d="${d}"/>`);
const repeated = (count: number, of: (i: number) => string): string =>
  Array.from({ length: count }, (_, i) => of(i)).join("");

describe("hostile SVG", () => {
  it.each<[string, string, string]>([
    [
      "a document type",
      `<!DOCTYPE svg PUBLIC "-//W3C//DTD SVG 1.1//EN" "http://example.org/svg11.dtd">${svg(STEP)}`,
      "svg-doctype",
    ],
    [
      "entities that grow",
      `<!DOCTYPE svg [<!ENTITY a "aaaaaaaa"><!ENTITY b "&a;&a;&a;&a;">]>${svg("&b;")}`,
      "svg-doctype",
    ],
    [
      "an entity that reads a file",
      `<!DOCTYPE svg [<!ENTITY x SYSTEM "file:///etc/hostname">]>${svg("<title>&x;</title>")}`,
      "svg-doctype",
    ],
    ["an entity nobody declared", svg("&x;"), "svg-broken"],
    ["cut short", svg(STEP).slice(0, 120), "svg-broken"],
    ["no SVG", "<html><body/></html>", "svg-not-svg"],
    ["200 groups deep", svg(`${"<g>".repeat(200)}${STEP}${"</g>".repeat(200)}`), "drawing-too-deep"],
    ["200 000 groups deep", svg(`${"<g>".repeat(200_000)}${"</g>".repeat(200_000)}`), "drawing-too-deep"],
    ["a million signs of less", svg("<".repeat(1e6)), "svg-broken"],
    ["a million ampersands", `<svg a="${"&".repeat(1e6)}"/>`, "svg-broken"],
    ["more than 20 MB", svg(" ".repeat(20_000_001)), "drawing-too-long"],
    [
      "200 000 points",
      path(`M0 0${repeated(200_000, (i) => `L${i % 40} ${(i * 7) % 18}`)}Z`),
      "drawing-too-many-points",
    ],
    [
      "a million arcs",
      path(`M0 0A1 1 0 0 1${repeated(1e6, (i) => ` ${i % 40} 1 1 1 0 0 1`)} 3 3`),
      "drawing-too-many-points",
    ],
    [
      "20 000 paths of ten lines",
      svg(repeated(20_000, () => `<path d="M0 0h1v1h1v1h1v1h1v1h1v1z"/>`)),
      "drawing-too-many-points",
    ],
    ["a curve wider than a county", path("M0 0C1e5 0 1e308 1e5 3 3Z"), "drawing-number-absurd"],
    ["numbers beyond all", path("M0 0H1e999V1e999Z"), "drawing-number-absurd"],
    ["an ellipse of half a million points", path("M0 0A1e9 1e8 0 1 1 3 3Z"), "drawing-too-many-points"],
    ["a circle of an enormous radius", path("M0 0A1e9 1e9 0 1 1 3 3Z"), "drawing-number-absurd"],
    ["a scale of nothing", svg(`<g transform="scale(0)">${STEP}</g>`), "outline-flat"],
    [
      "a scale beyond all",
      svg(`<g transform="scale(1e308) scale(1e308)">${STEP}</g>`),
      "svg-transform-broken",
    ],
    [
      "an enormous page",
      svg(STEP, `width="1e300mm" height="1e300mm" viewBox="0 0 1e-300 1e-300"`),
      "drawing-number-absurd",
    ],
    ["a page of less than nothing", svg(STEP, `width="-4mm" height="3mm"`), "svg-size-unreadable"],
    ["a page in ems", svg(STEP, `width="4em" height="3em"`), "svg-size-unreadable"],
    ["a viewBox of three", svg(STEP, `width="4mm" viewBox="0 0 3"`), "svg-size-unreadable"],
    ["a viewBox of nothing", svg(STEP, `width="4mm" viewBox="0 0 0 0"`), "svg-size-unreadable"],
    ["a path of prose", path("mould me a cornice"), "svg-path-broken"],
    ["a path of NaN", path("M0 0LNaN NaNZ"), "svg-path-broken"],
    ["a flag of two", path("M0 0A1 1 0 2 0 3 3Z"), "svg-path-broken"],
    [
      "transforms by the thousand",
      svg(`<g transform="${"rotate(1)".repeat(2000)}">${STEP}</g>`),
      "svg-transform-broken",
    ],
    [
      "megabytes of brackets in a transform",
      svg(`<g transform="${"(".repeat(5e6)}">${STEP}</g>`),
      "svg-transform-broken",
    ],
    ["a star that crosses itself", path("M0 0L40 9L0 18L30 0L30 18Z"), "section-crosses-itself"],
  ])("%s", (_, text, code) => {
    expect(refusal(text).code).toBe(code);
  });

  it("control and turning characters do not get into names", () => {
    const id = "ri\u202em\u200b\u0085";
    const trouble = refusal(svg(`<path id="${id}" d="M0 0H9V9Z"/><path d="M0 0H9V9Z"/>`));
    expect(trouble.facts.names).toEqual(["rim", "path 2"]);
    const outcome = open(svg(STEP), "../a/\u0007cor\u202enice\u0000.svg");
    expect(outcome.ok && outcome.value.name).toBe("cornice");
  });

  it("a name is cut at 60 characters; a file of no name is called section", () => {
    const long = open(svg(STEP), `${"x".repeat(500)}.svg`);
    expect(long.ok && long.value.name).toHaveLength(60);
    const none = open(svg(STEP), "");
    expect(none.ok && none.value.name).toBe("section");
  });

  it("names from the language itself are only names", () => {
    const named = svg(`<path id="__proto__" d="M0 18V6H20V10H42V18Z"/><path id="constructor" d="M0 0H9"/>`);
    expect(open(named).ok).toBe(true);
  });

  it("a curve of 50 000 short lines is read in time", () => {
    const points = repeated(50_000, (i) => `L${(i * 42) / 50_000} ${9 + 4 * Math.sin(i / 5000)}`);
    const outcome = open(path(`M0 18${points}V18Z`));
    expect(outcome.ok || outcome.trouble.code).toBe(true);
  });
});

const dxfOf = (entities: string): string => `0\nSECTION\n2\nENTITIES\n${entities}0\nENDSEC\n0\nEOF\n`;
const dxfLine = (a: number, b: number, c: number, d: number): string =>
  `0\nLINE\n8\n0\n10\n${a}\n20\n${b}\n11\n${c}\n21\n${d}\n`;

describe("hostile DXF", () => {
  it.each<[string, string, string]>([
    ["binary", "AutoCAD Binary DXF\r\n\u001a\u0000\u0000", "dxf-binary"],
    [
      "a polyline that never ends",
      dxfOf("0\nPOLYLINE\n66\n1\n70\n1\n0\nLINE\n10\n0\n20\n0\n11\n9\n21\n0\n"),
      "outline-open",
    ],
    ["7 million groups", dxfOf("0\n\n".repeat(6_000_000)), "drawing-too-many-points"],
    [
      "150 000 lines",
      dxfOf(repeated(150_000, (i) => dxfLine(i % 300, 0, (i + 1) % 300, 1))),
      "drawing-too-many-points",
    ],
    [
      "50 000 ends at one spot",
      dxfOf(repeated(50_000, (i) => dxfLine(0, 0, (i % 250) + 1, Math.floor(i / 250) + 1))),
      "outline-branches",
    ],
    ["a block called by the language", dxfOf("0\nINSERT\n2\n__proto__\n"), "dxf-block-missing"],
    ["cut short in the middle of a line", dxfOf(dxfLine(0, 0, 9, 0)).slice(0, 60), "dxf-cut-short"],
    [
      "circles by the thousand",
      dxfOf(repeated(5000, (i) => `0\nCIRCLE\n10\n${i}\n20\n0\n40\n3\n`)),
      "outline-several",
    ],
    [
      "a spline of 90 000 wild points",
      dxfOf(wildSpline(90_000) + dxfLine(0, 0, (89_999 * 97) % 300, (89_999 * 61) % 300)),
      "drawing-too-many-points",
    ],
  ])("%s", (_, text, code) => {
    expect(refusal(text).code).toBe(code);
  });
});

/** A zigzag whose spans all need many chords. */
function wildSpline(count: number): string {
  const knots = repeated(count + 4, (i) => `40\n${Math.min(Math.max(i - 3, 0), count - 3)}\n`);
  const points = repeated(count, (i) => `10\n${(i * 97) % 300}\n20\n${(i * 61) % 300}\n`);
  return `0\nSPLINE\n8\n0\n71\n3\n${knots}${points}`;
}

describe("files of other kinds", () => {
  it.each<[string, string, string]>([
    ["nothing", "", "drawing-empty"],
    ["blanks by the megabyte", " \n".repeat(5e6), "drawing-empty"],
    ["a plan", `{ "format": "mouldwright/plan" }`, "drawing-kind-unknown"],
    ["bytes", "\u0000\u0001\u0002", "drawing-kind-unknown"],
    ["a picture", "\ufffdPNG\r\n\u001a\n", "drawing-kind-unknown"],
  ])("%s", (_, text, code) => {
    expect(refusal(text).code).toBe(code);
  });

  it("the ending does not matter, nor a byte order mark", () => {
    expect(open(`\uFEFF${svg(STEP)}`, "cornice.dxf").ok).toBe(true);
  });
});
