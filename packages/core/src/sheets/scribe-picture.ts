/** Scribed ends: in small, for what is cut away and what is kept, and their outlines at full size. */
import type { Point } from "../curve/index.ts";
import type { ScribedEnds } from "../making/index.ts";
import { INCH_MM, type LengthUnit, writerFor } from "../measure/index.ts";
import { linearDimension } from "./dimension.ts";
import {
  closedPath,
  type Drawing,
  fill,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { type FitPictureOptions, type PagePanel, wordLines } from "./fit-page.ts";
import { arrowItems, boundsOfPoints, groundItems, sketch, spotOn } from "./fit-sketch.ts";
import { figureMm } from "./lettering.ts";
import { GAUGE_LINE, WOOD_TINT } from "./palette.ts";
import { printable } from "./printable-text.ts";
import { sawDeg } from "./saw-picture.ts";

function endsNamed({ end, pieces }: ScribedEnds, unit: LengthUnit): string {
  const numbers = writerFor(unit).list(pieces.map(String));
  return `${end} end of ${pieces.length === 1 ? "piece" : "pieces"} ${numbers}`;
}

/** A right end is the left end turned over. */
function handed(points: readonly Point[], end: ScribedEnds["end"]): readonly Point[] {
  return end === "left" ? points : points.map(({ x, y }) => ({ x: -x, y }));
}

/** The scribed end in small: what is cut away and what is kept. */
export function scribePanel(ends: ScribedEnds, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  const { scribe: answer, end } = ends;
  const side = end === "left" ? 1 : -1;
  return {
    heading: `Scribe, ${endsNamed(ends, unit)}: seen square to its wall`,
    draw: (box) => {
      const { maxX, maxY } = boundsOfPoints(answer.faceLine);
      const reach = maxX * 2;
      const bounds = boundsOfPoints([
        { x: 0, y: 0 },
        { x: side * reach, y: maxY },
      ]);
      const view = sketch({ bounds, box, marginMm: 13 });
      view.draw("scribe", scribeShapes(ends, reach, view.at));
      const wall = view.at({ x: 0, y: maxY });
      view.label("the other wall", [
        { at: [wall[0], wall[1] - 2.5], anchor: end === "left" ? "start" : "end" },
      ]);
      view.label("keep", [spotOn(view.at({ x: side * maxX * 1.5, y: maxY * 0.45 }))], { bold: true });
      const lines = linearDimension({
        from: view.at({ x: 0, y: 0 }),
        to: view.at({ x: side * maxX, y: 0 }),
        aside: [0, 1],
        offMm: 6,
        sizeMm: figureMm(unit),
      });
      view.draw("dimension", [lines.items]);
      view.label(write.length(maxX), lines.spots, { sizeMm: figureMm(unit) });
      return view.items();
    },
  };
}

function scribeShapes(
  { scribe: { faceLine, wallLine }, end }: ScribedEnds,
  reachMm: number,
  at: (place: Point) => PaperPoint,
): readonly Item[] {
  const { maxY } = boundsOfPoints(faceLine);
  const face = handed(faceLine, end);
  const endX = end === "left" ? reachMm : -reachMm;
  const kept = [...face, { x: endX, y: face.at(-1)?.y ?? maxY }, { x: endX, y: face[0]?.y ?? 0 }];
  const foot = at({ x: 0, y: 0 });
  const head = at({ x: 0, y: maxY });
  return [
    // The wall's strokes stand behind it, away from the piece.
    ...(end === "left" ? groundItems(foot, head) : groundItems(head, foot)),
    fill([closedPath(kept.map(at))], WOOD_TINT),
    stroke(openPath(handed(wallLine, end).map(at)), { line: "dashed" }),
    stroke(openPath(face.map(at)), { weight: "wide" }),
  ];
}

const SHEET = { marginMm: 10, topMm: 40, wordsMm: 22, gapMm: 12, keptMm: 40, leastWidthMm: 190 } as const;
/** Whole lengths of the maker's own rule, across and up, mm. */
const CHECKS_MM: Readonly<Record<LengthUnit, { readonly across: number; readonly up: number }>> = {
  mm: { across: 100, up: 50 },
  in: { across: 4 * INCH_MM, up: 2 * INCH_MM },
};

/** Every scribe's outline at full size: a millimetre on paper is a millimetre of wood, with a check bar each way. */
export function drawScribes(
  scribes: readonly ScribedEnds[],
  name: string,
  options: FitPictureOptions,
): Drawing {
  const write = writerFor(options.unit);
  const sizeMm = figureMm(options.unit);
  const check = CHECKS_MM[options.unit];
  const sizes = scribes.map(({ scribe: { faceLine, wallLine } }) =>
    boundsOfPoints([...faceLine, ...wallLine]),
  );
  const inner = Math.max(...sizes.map(({ maxX }) => maxX + SHEET.keptMm), check.across + 26);
  const widthMm = Math.max(SHEET.leastWidthMm, inner + 2 * SHEET.marginMm + 8);
  const left = SHEET.marginMm + 6;
  const items: Item[] = [];
  let y: number = SHEET.topMm;
  for (const [index, ends] of scribes.entries()) {
    const { maxX = 0, maxY = 0 } = sizes[index] ?? {};
    const reach = maxX + SHEET.keptMm;
    const foot = y + SHEET.wordsMm + maxY;
    const wallX = ends.end === "left" ? left : left + reach;
    items.push(
      ...wordLines(scribeWords(ends, options.unit), {
        minX: SHEET.marginMm,
        minY: y,
        maxX: widthMm - SHEET.marginMm,
        maxY: foot,
      }),
      group(
        "scribe",
        scribeShapes(ends, reach, (place) => [wallX + place.x, foot - place.y]),
      ),
    );
    y = foot + SHEET.gapMm;
  }
  const level = y + 6;
  const upright = left + check.across + 20;
  items.push(
    ...checkBar([left, level], [left + check.across, level]),
    text([left + check.across / 2, level - 1.8], write.length(check.across), { sizeMm, anchor: "middle" }),
    ...checkBar([upright, level], [upright, level + check.up]),
    text([upright + 2, level + check.up / 2], write.length(check.up), { sizeMm }),
  );
  const title = `${printable(name)}: ${scribes.length === 1 ? "scribe" : "scribes"}, full size`;
  return {
    widthMm,
    heightMm: level + check.up + SHEET.marginMm,
    title,
    description: "The outline to cut each scribed end to, at full size.",
    items: [
      text([SHEET.marginMm, 12], title, { sizeMm: 5.6, bold: true }),
      ...wordLines(
        [
          "Seen from the room, square to the scribed piece's own wall; the hatched line is the other wall. Wide line: the arris to follow on the face; dashed: where the cut comes out at the wall.",
          "Print at 100 % and measure both lines at the foot of the sheet before use.",
        ],
        { minX: SHEET.marginMm, minY: 15, maxX: widthMm - SHEET.marginMm, maxY: SHEET.topMm },
      ),
      ...items,
    ],
  };
}

function scribeWords(ends: ScribedEnds, unit: LengthUnit): readonly string[] {
  const { corner, mitreFirst, sawLeanDeg } = ends.scribe;
  const lean =
    sawLeanDeg === 0
      ? "saw square to the wall"
      : `lean the coping saw ${sawDeg(Math.abs(sawLeanDeg))}, taking ${sawLeanDeg > 0 ? "more" : "less"} off the back than off the face`;
  const named = endsNamed(ends, unit);
  return [
    `${named.charAt(0).toUpperCase()}${named.slice(1)}, inside corner of ${sawDeg(corner.cornerDeg)}. Saw mitre ${sawDeg(mitreFirst.mitreDeg)}, bevel ${sawDeg(mitreFirst.bevelDeg)} first, then follow the arris; ${lean}.`,
  ];
}

function checkBar(from: PaperPoint, to: PaperPoint): readonly Item[] {
  const middle: PaperPoint = [(from[0] + to[0]) / 2, (from[1] + to[1]) / 2];
  return [
    group("check", [
      stroke(openPath([from, to]), { colour: GAUGE_LINE }),
      ...arrowItems(middle, from),
      ...arrowItems(middle, to),
    ]),
  ];
}
