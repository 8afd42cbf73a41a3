/**
 * Planes at full size: the sole, the edge to scribe on the iron for its pitch and skew, and how the iron lies on its
 * bed; with a sheet of arcs to lay a real plane on and read its radius.
 */
import { type Vertex, verticesOf } from "../curve/index.ts";
import { type Plan, planeOfEntry } from "../cutting/index.ts";
import { formatDeg, INCH_MM, type Outcome, toRad } from "../measure/index.ts";
import {
  type Bed,
  clearanceDeg,
  curvedIron,
  GROUND_BEVEL_DEG,
  ironEdge,
  NAMED_PITCHES_DEG,
  type Plane,
  type Sole,
  soleAngleDeg,
  solesOf,
} from "../shelf/index.ts";
import { lengthWords, type PictureOptions } from "./cut-marks.ts";
import {
  closedPath,
  group,
  type Item,
  openPath,
  type PaperPoint,
  type Path,
  stroke,
  text,
} from "./drawing.ts";
import { boxOf, flatPoints, pathOf } from "./flat-path.ts";
import { paragraph } from "./flow.ts";
import { type Figure, fullSizePages } from "./full-size.ts";
import { FAINT_INK } from "./palette.ts";
import { printable } from "./printable-text.ts";
import { type PageContent, pageBody, type SheetPaper } from "./sheet-frame.ts";
import { textWidthMm, wrapText } from "./text-width.ts";

const SMALL_MM = 3.6;
const LINE_MM = SMALL_MM * 1.36;
const GAP_MM = 9;
/** How much of a plane's body and of an iron is drawn above its edge, mm. */
const BODY_MM = 9;
const BED_MM = 25;

/** Every curved or shaped plane of the plan, then the arcs. Trouble: `sheet-too-large`. */
export function planePages(
  plan: Plan,
  sheetPaper: SheetPaper,
  options: PictureOptions,
): Outcome<readonly PageContent[]> {
  const body = pageBody(sheetPaper, true);
  const widthMm = body.maxX - body.minX;
  const figures = planesOf(plan).flatMap((plane) =>
    solesOf(plane).map((sole) => planeFigure(plane, sole, widthMm, options)),
  );
  const note = paragraph(
    "Lay the sole on its outline; scribe the iron's edge from the second outline, seen on the face that lies on the bed. The iron stands deeper than the sole because it lies aslant.",
    widthMm,
    { sizeMm: SMALL_MM },
  );
  const planes = fullSizePages("planes", "Planes and irons", figures, sheetPaper, [note]);
  if (!planes.ok) return planes;
  const arcs = fullSizePages("planes", "Arcs to compare", arcFigures(widthMm, options), sheetPaper, [
    paragraph(
      "Stand the plane, iron drawn back, on the arc it comes nearest to: a hollow closes on its arc from above, a round from below. Light at the middle: the sole is tighter than the arc; light at its corners: flatter.",
      widthMm,
      { sizeMm: SMALL_MM },
    ),
  ]);
  return arcs.ok ? { ...arcs, value: [...planes.value, ...arcs.value] } : arcs;
}

/** The planes of the plan whose edge is more than a straight line, each once, in the order of use. */
function planesOf(plan: Plan): readonly Plane[] {
  const planes = new Map<string, Plane>();
  for (const cut of plan.cuts) {
    const plane = planeOfEntry(cut.plane);
    if (plane !== null && !planes.has(plane.id) && !isStraight(plane)) planes.set(plane.id, plane);
  }
  return [...planes.values()];
}

function isStraight({ kind }: Plane): boolean {
  return ["rebate", "smoother", "moving fillister", "plough", "side rebate"].includes(kind);
}

/** The bed that a plane's own pitch and skew say, or a common one. */
function bedOf(plane: Plane): { readonly bed: Bed; readonly isAssumed: boolean } {
  const curved = plane.kind === "hollow" || plane.kind === "round" ? plane : null;
  return {
    bed: {
      pitchDeg: curved?.pitchDeg ?? NAMED_PITCHES_DEG.York,
      skewDeg: curved?.skewDeg ?? 0,
      pitchMeasured: "square to edge",
    },
    isAssumed: curved?.pitchDeg === undefined,
  };
}

function planeFigure(plane: Plane, sole: Sole, roomMm: number, options: PictureOptions): Figure {
  const { bed, isAssumed } = bedOf(plane);
  const soleShape = outlined(verticesOf(sole.chain));
  const edge = ironEdge(sole, bed).map((at): Vertex => [at.x, at.y]);
  const ironShape = outlined(edge);
  const bedShape = bedItems(bed);
  const shapes = [
    { caption: "sole", ...soleShape },
    { caption: "iron's edge", ...ironShape },
    { caption: "iron on its bed", ...bedShape },
  ];
  const heights = Math.max(...shapes.map((shape) => shape.heightMm));
  const wides = shapes.map((shape) => Math.max(shape.widthMm, textWidthMm(shape.caption, SMALL_MM)));
  let x = 0;
  const drawn = shapes.flatMap((shape, index): readonly Item[] => {
    const wide = wides[index] ?? shape.widthMm;
    const at: PaperPoint = [x + (wide - shape.widthMm) / 2, heights - shape.heightMm];
    const caption = text([x + wide / 2, heights + LINE_MM], shape.caption, {
      sizeMm: SMALL_MM,
      anchor: "middle",
    });
    x += wide + GAP_MM;
    return [group(shape.caption, shape.items, at), caption];
  });
  const words = planeWords(plane, sole, bed, isAssumed, options);
  const isBeside = roomMm - x >= 60;
  const wordsMm = isBeside ? roomMm - x : roomMm;
  const lines = words.flatMap((sentence) => wrapText(printable(sentence), SMALL_MM, wordsMm));
  const wordsLeft = isBeside ? x : 0;
  const wordsTop = isBeside ? 0 : heights + 2 * LINE_MM;
  return {
    heading: printable(plane.name).trim() || plane.kind,
    widthMm: isBeside ? roomMm : Math.max(x - GAP_MM, roomMm),
    heightMm: Math.max(heights + LINE_MM * 1.4, wordsTop + lines.length * LINE_MM) + 1,
    items: [
      ...drawn,
      ...lines.map((line, index) =>
        text([wordsLeft, wordsTop + SMALL_MM + index * LINE_MM], line, { sizeMm: SMALL_MM }),
      ),
    ],
  };
}

interface Shape {
  readonly items: readonly Item[];
  readonly widthMm: number;
  readonly heightMm: number;
}

/** A chain with the sides above it, its top broken off. */
function outlined(vertices: readonly Vertex[]): Shape {
  const box = boxOf(flatPoints(pathOf(vertices, (point) => point, "chain")));
  const top = box.maxY + BODY_MM;
  const place = ([x, y]: PaperPoint): PaperPoint => [x - box.minX, top - y];
  const chain = pathOf(vertices, place, "chain");
  const last = chain.steps[chain.steps.length - 1]?.to ?? chain.start;
  const sides: readonly Path[] = [
    openPath([[chain.start[0], 0], chain.start]),
    openPath([last, [last[0], 0]]),
  ];
  return {
    items: [
      group("edge", [stroke(chain, { weight: "wide" })]),
      ...sides.map((side) => stroke(side)),
      stroke(
        openPath([
          [0, 0],
          [box.maxX - box.minX, 0],
        ]),
        { line: "dashed" },
      ),
    ],
    widthMm: box.maxX - box.minX,
    heightMm: top - box.minY,
  };
}

/** The iron from the side: bed, bevel, and the clearance behind the edge. Not at full size across its thickness. */
function bedItems(bed: Bed): Shape {
  const pitchRad = toRad(bed.pitchDeg);
  const bevelRad = toRad(bed.pitchDeg - GROUND_BEVEL_DEG);
  const runMm = BED_MM * Math.cos(pitchRad);
  const riseMm = BED_MM * Math.sin(pitchRad);
  const thickMm = 4;
  const base = riseMm + 2;
  const left = 12;
  const edge: PaperPoint = [left, base];
  // The bevel runs up at the clearance angle until it meets the back of the iron, so many mm below its face.
  const bevelMm = thickMm / Math.sin(toRad(GROUND_BEVEL_DEG));
  const heel: PaperPoint = [left + bevelMm * Math.cos(bevelRad), base - bevelMm * Math.sin(bevelRad)];
  const faceTop: PaperPoint = [left + runMm, base - riseMm];
  const backTop: PaperPoint = [
    faceTop[0] + thickMm * Math.sin(pitchRad),
    faceTop[1] + thickMm * Math.cos(pitchRad),
  ];
  const clearance = formatDeg(clearanceDeg(bed.pitchDeg, GROUND_BEVEL_DEG), { stepDeg: 0.25 });
  const pitch = formatDeg(bed.pitchDeg, { stepDeg: 0.25 });
  const widthMm = Math.max(backTop[0] + 2, left + 34);
  return {
    items: [
      stroke(
        openPath([
          [0, base],
          [widthMm, base],
        ]),
      ),
      stroke(closedPath([edge, heel, backTop, faceTop]), { weight: "gauge" }),
      arcStroke(edge, 9, 0, bed.pitchDeg - GROUND_BEVEL_DEG),
      text([left + 10.5, base - 1.2], clearance, { sizeMm: SMALL_MM }),
      text([left - 1, base - 6], pitch, { sizeMm: SMALL_MM, anchor: "end" }),
      stroke(
        openPath([
          [left - 0.5, base - 5],
          [left + 3 * Math.cos(pitchRad), base - 3 * Math.sin(pitchRad) - 1],
        ]),
        {
          colour: FAINT_INK,
        },
      ),
    ],
    widthMm,
    heightMm: base + 1,
  };
}

function arcStroke(centre: PaperPoint, radiusMm: number, fromDeg: number, sweepDeg: number): Item {
  const at = (turnedDeg: number): PaperPoint => [
    centre[0] + radiusMm * Math.cos(toRad(turnedDeg)),
    centre[1] - radiusMm * Math.sin(toRad(turnedDeg)),
  ];
  return stroke({
    start: at(fromDeg),
    steps: [{ to: at(fromDeg + sweepDeg), bulge: Math.tan(toRad(sweepDeg) / 4) }],
    closed: false,
  });
}

function planeWords(
  plane: Plane,
  sole: Sole,
  bed: Bed,
  isAssumed: boolean,
  options: PictureOptions,
): readonly string[] {
  const length = (valueMm: number): string => lengthWords(valueMm, options);
  const pitch = `${formatDeg(bed.pitchDeg, { stepDeg: 0.25 })}${isAssumed ? " (York pitch, assumed: measure yours)" : ""}`;
  const skew = bed.skewDeg === 0 ? "" : `, skewed ${formatDeg(Math.abs(bed.skewDeg), { stepDeg: 0.25 })}`;
  const bedWords = `Bedded at ${pitch}${skew}; ground at ${GROUND_BEVEL_DEG}° it clears by ${formatDeg(clearanceDeg(bed.pitchDeg, GROUND_BEVEL_DEG), { stepDeg: 0.25 })}.`;
  if (plane.kind !== "hollow" && plane.kind !== "round") {
    return [`Sole ${length(sole.widthMm)} wide.`, bedWords];
  }
  const arc = `Sole ${length(plane.widthMm)} wide, radius ${length(plane.radiusMm)}, ${Math.round(soleAngleDeg(plane))}° of the circle.`;
  if (bed.skewDeg !== 0) return [arc, bedWords];
  const iron = curvedIron(plane, bed.pitchDeg);
  const plain = iron.plainArc;
  return [
    arc,
    bedWords,
    ...(plain === undefined
      ? []
      : [
          `The edge is part of an ellipse, ${length(iron.depthMm)} deep. A plain arc of radius ${length(plain.radiusMm)} comes within ${formatThin(plain.errorMm, options)} of it; the sole's own radius does not.`,
        ]),
  ];
}

function formatThin(lengthMm: number, { unit }: PictureOptions): string {
  return unit === "mm"
    ? `${Math.max(0.01, Math.round(lengthMm * 100) / 100)} mm`
    : `${Math.max(1, Math.round((lengthMm * 1000) / INCH_MM))} thousandths of an inch`;
}

const LEAST_RADIUS_MM = 3;
const MOST_RADIUS_MM = 38.5;
const LEAST_RADIUS_32NDS = 4;
const MOST_RADIUS_32NDS = 48;
/** A sole is a sixth of the circle; the arcs go on a little, so that its corners stand on a line. */
const ARC_DEG = 72;
const ARC_GAP_MM = 6;

/** Arcs every half millimetre, or every 32nd of an inch, in rows. */
function arcFigures(roomMm: number, { unit }: PictureOptions): readonly Figure[] {
  const radii =
    unit === "mm"
      ? Array.from(
          { length: Math.round((MOST_RADIUS_MM - LEAST_RADIUS_MM) / 0.5) },
          (_, i) => LEAST_RADIUS_MM + i * 0.5,
        )
      : Array.from(
          { length: MOST_RADIUS_32NDS - LEAST_RADIUS_32NDS + 1 },
          (_, i) => ((LEAST_RADIUS_32NDS + i) * INCH_MM) / 32,
        );
  const rows: { readonly radiusMm: number; readonly left: number }[][] = [[]];
  let x = 0;
  for (const radiusMm of radii) {
    const wide = arcWideMm(radiusMm, unit);
    if (x + wide > roomMm && x > 0) {
      rows.push([]);
      x = 0;
    }
    rows[rows.length - 1]?.push({ radiusMm, left: x });
    x += wide + ARC_GAP_MM;
  }
  return rows.map((row, index): Figure => {
    const deepest = Math.max(...row.map(({ radiusMm }) => arcDeepMm(radiusMm)));
    const last = row[row.length - 1];
    return {
      heading:
        index === 0
          ? `Radii ${unit === "mm" ? "in millimetres, every 0.5" : "in inches, every 1/32".replace("1/32", "¹⁄₃₂")}`
          : "",
      widthMm: last === undefined ? 0 : last.left + arcWideMm(last.radiusMm, unit),
      heightMm: deepest + LINE_MM + 1,
      items: row.flatMap(({ radiusMm, left }) => arcItems(radiusMm, left, deepest, unit)),
    };
  });
}

function arcWideMm(radiusMm: number, unit: "mm" | "in"): number {
  const chordMm = 2 * radiusMm * Math.sin(toRad(ARC_DEG / 2));
  return Math.max(chordMm, textWidthMm(radiusWords(radiusMm, unit), SMALL_MM));
}

function arcDeepMm(radiusMm: number): number {
  return radiusMm * (1 - Math.cos(toRad(ARC_DEG / 2)));
}

function radiusWords(radiusMm: number, unit: "mm" | "in"): string {
  return unit === "mm" ? String(radiusMm) : lengthWords(radiusMm, { unit });
}

function arcItems(radiusMm: number, left: number, deepest: number, unit: "mm" | "in"): readonly Item[] {
  const wide = arcWideMm(radiusMm, unit);
  const halfMm = radiusMm * Math.sin(toRad(ARC_DEG / 2));
  const middle = left + wide / 2;
  const base = deepest;
  const arc = stroke({
    start: [middle + halfMm, base],
    steps: [{ to: [middle - halfMm, base], bulge: Math.tan(toRad(ARC_DEG / 4)) }],
    closed: false,
  });
  return [
    group("arc", [arc]),
    text([middle, base + LINE_MM], radiusWords(radiusMm, unit), { sizeMm: SMALL_MM, anchor: "middle" }),
  ];
}
