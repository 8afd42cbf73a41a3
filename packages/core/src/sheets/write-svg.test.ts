import { parseXml, XmlElement } from "@rgrove/parse-xml";
import { describe, expect, test } from "vitest";
import {
  circlePath,
  closedPath,
  type Drawing,
  fill,
  group,
  type Item,
  openPath,
  stroke,
  text,
} from "./drawing.ts";
import { WOOD_TINT } from "./palette.ts";
import { writeSvg } from "./write-svg.ts";

function drawingOf(items: readonly Item[], title = "title"): Drawing {
  return { widthMm: 100, heightMm: 50, title, description: "what it shows", items };
}

function rootOf(svg: string): XmlElement {
  const root = parseXml(svg).root;
  if (!(root instanceof XmlElement)) throw new Error("no root");
  return root;
}

describe("SVG of a drawing", () => {
  test("millimetres in the size, one unit a millimetre in the view box", () => {
    const { attributes } = rootOf(writeSvg(drawingOf([])));
    expect(attributes).toMatchObject({ width: "100mm", height: "50mm", viewBox: "0 0 100 50" });
  });

  test("an arc that turns anticlockwise as seen has sweep flag 0", () => {
    // From the right end of a circle of radius 5 over its top to the left end.
    const over = stroke({ start: [10, 5], steps: [{ to: [0, 5], bulge: 1 }], closed: false });
    expect(writeSvg(drawingOf([over]))).toContain('d="M10 5A5 5 0 0 0 0 5"');
    const quarter = Math.tan(Math.PI / 8);
    const clockwise = stroke({ start: [0, 5], steps: [{ to: [5, 0], bulge: -quarter }], closed: false });
    expect(writeSvg(drawingOf([clockwise]))).toContain('d="M0 5A5 5 0 0 1 5 0"');
  });

  test("numbers have at most three decimals and no minus zero", () => {
    const items = [
      stroke(
        openPath([
          [1 / 3, -0.0001],
          [2 / 3, 1e-9],
        ]),
      ),
      stroke(circlePath([Math.PI, Math.E], Math.SQRT2)),
    ];
    const svg = writeSvg(drawingOf(items));
    expect(svg).toContain('d="M0.333 0L0.667 0"');
    expect(svg).not.toMatch(/\d\.\d{4,}|-0(?![.\d])|\de-/);
  });

  test("names cannot break out of the text or say anything to a terminal", () => {
    const name = '</text><script>alert("1")</script>\u0000\u001b[31m\u202e & \ud800 ½″';
    const svg = writeSvg(drawingOf([text([1, 1], name, { sizeMm: 4 }), group(name, [])], name));
    expect(svg).not.toContain("<script");
    expect(svg).not.toMatch(/[\p{Cf}\p{Cs}]|[^\P{Cc}\n]/u);
    const root = rootOf(svg);
    expect(root.text).toContain('</text><script>alert("1")</script> [31m & ½″');
  });

  test("no ids, scripts, styles or references", () => {
    const items = [
      fill(
        [
          closedPath([
            [0, 0],
            [1, 0],
            [1, 1],
          ]),
        ],
        WOOD_TINT,
      ),
      text([0, 0], "href id", { sizeMm: 4 }),
    ];
    expect(writeSvg(drawingOf(items))).not.toMatch(
      /\s(?:id|href|style|class|on\w+)=|<(?:script|style|image|use)/,
    );
  });

  test("groups move, turn anticlockwise as seen, and scale", () => {
    const turned = {
      ...group(
        "r",
        [
          stroke(
            openPath([
              [0, 0],
              [1, 0],
            ]),
          ),
        ],
        [2, 3],
      ),
      turnDeg: 30,
      scaleRatio: 0.5,
    };
    expect(writeSvg(drawingOf([turned]))).toContain('transform="translate(2 3) rotate(-30) scale(0.5)"');
  });

  test("a number that is not finite is our own mistake", () => {
    expect(() =>
      writeSvg(
        drawingOf([
          stroke(
            openPath([
              [0, 0],
              [Number.NaN, 1],
            ]),
          ),
        ]),
      ),
    ).toThrow("not finite");
  });

  test("inside a page there is no XML declaration", () => {
    expect(writeSvg(drawingOf([]), { inPage: true }).startsWith("<svg ")).toBe(true);
    expect(writeSvg(drawingOf([]))).toBe(writeSvg(drawingOf([])));
  });
});
