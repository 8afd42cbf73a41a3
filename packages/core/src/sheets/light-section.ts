/** The section in the light as it hangs: wall, bands along shade and shadow, rays that end shadows, the light's way. */
import { circleOf, type Piece } from "../curve/index.ts";
import type { LightState, Stretch } from "../light/index.ts";
import { SAME_POINT_MM } from "../measure/index.ts";
import { closedPath, fill, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { arrowItems, groundItems } from "./fit-sketch.ts";
import { MOST_WALL_MM, placed, pointsOf, seenBands, stripStart, type View, wallMm } from "./light-view.ts";
import { type Colour, FAINT_INK, INK } from "./palette.ts";

export function wallItems({ at, lit, layout: { run }, scaleRatio }: View): readonly Item[] {
  const over = (beyondMm: number): number => Math.max(4, wallMm(beyondMm, scaleRatio)) / scaleRatio;
  const first = at(0, -over(lit.onWall.beyondFirstMm));
  const last = at(0, lit.widthMm + over(lit.onWall.beyondLastMm));
  // The wall's strokes stand behind it, left of the way.
  return run === "level" ? groundItems(last, first) : groundItems(first, last);
}

const BAND_MM = 1;
const BAND_COLOURS: Readonly<Record<LightState, Colour | null>> = {
  light: null,
  shade: FAINT_INK,
  shadow: INK,
};

/** A band off the face along everything that lies in shade or shadow. */
export function stateBands(view: View): readonly Item[] {
  return view.lit.stretches.flatMap((stretch): readonly Item[] => {
    const bandColour = BAND_COLOURS[stretch.state];
    return bandColour === null ? [] : bandsOf(view, stretch).map((path) => fill([path], bandColour));
  });
}

/** One shape for each line and arc: neighbours may lie over each other at hollow corners. */
function bandsOf(view: View, { pieces }: Stretch) {
  return pieces.flatMap((piece) => {
    const points = pointsOf(view, [piece]);
    const offMm = offsetMm(piece, view.scaleRatio);
    const outer = points.map((place, index) => {
      const before = points[Math.max(0, index - 1)] as PaperPoint;
      const after = points[Math.min(points.length - 1, index + 1)] as PaperPoint;
      const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
      // From the first edge on the wood lies to the right as seen of a level run, to the left of an upright one.
      const side = (view.layout.run === "level" ? offMm : -offMm) / length;
      return [place[0] + (after[1] - before[1]) * side, place[1] - (after[0] - before[0]) * side] as const;
    });
    return points.length < 2 ? [] : [closedPath([...points, ...outer.reverse()])];
  });
}

/** The band's width, less in hollows too tight for it. */
function offsetMm(piece: Piece, scaleRatio: number): number {
  return piece.kind === "line" ? BAND_MM : Math.min(BAND_MM, circleOf(piece).radiusMm * scaleRatio);
}

export function rayItems(view: View): readonly Item[] {
  const { lit } = view;
  const { beyondFirstMm, beyondLastMm, firstCaster, lastCaster } = lit.onWall;
  const onWall = [
    ...(isShown(beyondFirstMm, view)
      ? [{ caster: firstCaster, end: { x: 0, y: lit.widthMm + beyondFirstMm } }]
      : []),
    ...(isShown(beyondLastMm, view) ? [{ caster: lastCaster, end: { x: 0, y: -beyondLastMm } }] : []),
  ];
  return [...lit.shadowEnds, ...onWall].map(({ caster, end }) =>
    stroke(openPath([placed(view, caster), placed(view, end)]), { line: "dashed" }),
  );
}

/** A shadow on the wall whose end lies within the wall that is shown. */
function isShown(beyondMm: number, { scaleRatio }: View): boolean {
  return beyondMm > SAME_POINT_MM && beyondMm * scaleRatio <= MOST_WALL_MM;
}

/** Narrow lines from where a band begins on the section to where it begins on the strip. */
export function carriedAcross(view: View): readonly Item[] {
  const { lit, at, layout } = view;
  const edge = stripStart(view);
  return seenBands(lit)
    .slice(1)
    .map(({ startMm, outMm }) => {
      const from = at(outMm + (BAND_MM + 0.6) / view.scaleRatio, startMm);
      const to: PaperPoint = layout.run === "level" ? [edge, from[1]] : [from[0], edge];
      return stroke(openPath([from, to]), { weight: "hatch", colour: FAINT_INK });
    });
}

const ARROW_MM = 7;
const ARROWS_APART_MM = 2.6;

/** Three arrows that come in at the corner the lamp stands at, clear of the wood. */
export function lightArrows(view: View): readonly Item[] {
  const { lit, at, layout } = view;
  const { right, up, out } = lit.direction;
  const along = layout.run === "level" ? -up : right;
  const length = Math.hypot(out, along);
  const way: PaperPoint =
    layout.run === "level" ? [out / length, along / length] : [along / length, out / length];
  const corner = at(lit.projectionMm, along >= 0 ? 0 : lit.widthMm);
  return [-1, 0, 1].flatMap((step) => {
    const tip: PaperPoint = [
      corner[0] - way[0] * 2 - way[1] * step * ARROWS_APART_MM,
      corner[1] - way[1] * 2 + way[0] * step * ARROWS_APART_MM,
    ];
    return arrowItems([tip[0] - way[0] * ARROW_MM, tip[1] - way[1] * ARROW_MM], tip);
  });
}
