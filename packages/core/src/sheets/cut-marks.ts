/** What places a cut on the wood: gauge lines with their foot, depths, fence or batten. */
import type { Vertex } from "../curve/index.ts";
import type { Plan, PlanCut, PlanMark } from "../cutting/index.ts";
import { type InchDenominator, type LengthFormat, SAME_POINT_MM, writerFor } from "../measure/index.ts";
import { type DimensionLines, gaugeDimension, linearDimension } from "./dimension.ts";
import { group, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { type Box, boxOf } from "./flat-path.ts";
import { gaugeEdgeOf } from "./gauge-edge.ts";
import type { LabelWish } from "./labels.ts";
import { figureMm, LABEL_MM } from "./lettering.ts";
import { placedPoint, stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import { polygonsOnPaper, ringsBefore, surfaceY, type WasteExtent } from "./stick-end.ts";
import { directionToPaper, LOOKS_UPRIGHT_MM, type StickView, toPaper, turnedBox } from "./stick-view.ts";

export interface PictureOptions {
  readonly unit: "mm" | "in";
  /** Finest division of the maker's inch rule; 32nds if left out. */
  readonly inchStep?: InchDenominator | undefined;
}

/** Lines, and the lettering that goes with them, still to be placed. */
export interface Marked {
  readonly items: readonly Item[];
  readonly wishes: readonly LabelWish[];
}

const FIRST_ROW_MM = 5.5;
const ROW_MM = 6.4;
/** All rows of gauge dimensions stand within this. */
const ROWS_MM = 7;
const FENCE_THICK_MM = 5;
const FENCE_ABOVE_MM = 6;
const FENCE_REACH_MM = 14;
const SIDE_GAP_MM = 5;

/** Upright dimensions stay between these on the page, so that their lettering finds room. */
export interface UprightRoom {
  readonly leftmostMm: number;
  readonly rightmostMm: number;
}

export function lengthWords(lengthMm: number, options: PictureOptions): string {
  return writerFor(options.unit, "print", options.inchStep).length(lengthMm);
}

/** How lengths are read off the maker's rule. */
export function ruleOf({ unit, inchStep }: PictureOptions): LengthFormat {
  return inchStep === undefined ? { unit } : { unit, denominator: inchStep };
}

export function stickBox(plan: Plan, view: StickView): Box {
  return boxOf(polygonsOnPaper(view, [plan.stick]).flat());
}

/** What a picture's marks are drawn for. */
export interface MarkedPicture {
  readonly view: StickView;
  /** Tells the depth where no depth mark does; null leaves it out. */
  readonly waste: WasteExtent | null;
  readonly uprights: UprightRoom;
}

/** Everything that places this cut. */
export function cutMarks(plan: Plan, cut: PlanCut, picture: MarkedPicture, options: PictureOptions): Marked {
  const { view } = picture;
  const marks = plan.marks.filter((mark) => mark.before === cut.number);
  const across = marks.filter((mark) => mark.kind !== "depth");
  const rowsCount = across.length + (cut.fence !== undefined && cut.fence > 0 ? 1 : 0);
  const stepMm = Math.min(ROW_MM, ROWS_MM / Math.max(1, rowsCount - 1));
  const rowAt = (index: number): number => FIRST_ROW_MM + index * stepMm;
  return joined([
    ...across.map((mark, index) => gaugeMark(plan, cut, view, mark, rowAt(index), options)),
    fenceMark(plan, cut, view, rowAt(across.length), options),
    depthMark(plan, cut, picture, marks, options),
  ]);
}

function joined(parts: readonly Marked[]): Marked {
  return { items: parts.flatMap((part) => part.items), wishes: parts.flatMap((part) => part.wishes) };
}

function marked(words: string, lines: DimensionLines, options: PictureOptions): Marked {
  const look = { sizeMm: figureMm(options.unit) };
  return { items: [lines.items], wishes: [{ words, look, spots: lines.spots }] };
}

/** Steps on paper: off the side of the stick that lies towards the bench, where gauge dimensions stand. */
function dimensionSide(view: StickView): { readonly aside: PaperPoint; readonly isBack: boolean } {
  const up = directionToPaper({ ...view, scaleRatio: 1 }, [0, 1]);
  // The back, unless it looks up; half a unit so that a stick on its edge keeps to its back.
  const isBack = up[1] <= 0.5;
  return { aside: isBack ? [-up[0], -up[1]] : up, isBack };
}

/** How far a point of the stick lies from a line so far off the stick's side, mm on paper. */
function rowOffMm(plan: Plan, view: StickView, y: number, offSideMm: number): number {
  const stick = turnedBox(plan.stick, 0);
  const sideY = dimensionSide(view).isBack ? -stick.maxY : -stick.minY;
  return Math.abs(y - sideY) * view.scaleRatio + offSideMm;
}

function gaugeMark(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  mark: PlanMark,
  offSideMm: number,
  options: PictureOptions,
): Marked {
  const footX = footOf(plan, cut, mark);
  const lines = gaugeDimension({
    foot: toPaper(view, [footX, footY(plan, cut, footX, mark)]),
    line: toPaper(view, [mark.at[0], mark.at[1]]),
    aside: dimensionSide(view).aside,
    offMm: rowOffMm(plan, view, mark.at[1], offSideMm),
    sizeMm: figureMm(options.unit),
  });
  const name = mark.kind === "end" ? "end line " : "";
  const from = printable(mark.from);
  // A line in the very foot of an earlier cut is not measured: "0 mm from" would send the maker for a rule.
  const words =
    mark.distance < LOOKS_UPRIGHT_MM
      ? `at the ${from}`
      : `${lengthWords(mark.distance, options)} from the ${from}`;
  return marked(name + words, lines, options);
}

/** Where a mark is measured from, across the stick: the side of the line on which the wood has a corner so far off. */
function footOf(plan: Plan, cut: PlanCut, mark: PlanMark): number {
  const stick = turnedBox(plan.stick, 0);
  const isRight = gaugeEdgeOf(plan) === "right";
  if (mark.from === "gauge edge") return isRight ? stick.maxX : stick.minX;
  if (mark.from === "far edge") return isRight ? stick.minX : stick.maxX;
  const corners = cornersOf(plan, cut, mark).map((vertex) => vertex[0]);
  const nearest = (x: number): number => Math.min(...corners.map((corner) => Math.abs(corner - x)));
  const left = mark.at[0] - mark.distance;
  const right = mark.at[0] + mark.distance;
  return nearest(right) < nearest(left) ? right : left;
}

/** The corners a mark may be measured from: those that the cut it names has made, or all that stand. */
function cornersOf(plan: Plan, cut: PlanCut, mark: PlanMark): readonly Vertex[] {
  const number = /\bcut (\d+)/.exec(mark.from)?.[1];
  const maker = plan.cuts.find((candidate) => String(candidate.number) === number);
  const standing = ringsBefore(plan, cut).flat();
  if (maker === undefined) return standing;
  const older = ringsBefore(plan, maker).flat();
  const made = maker.after.flat().filter((vertex) => !older.some((other) => isSamePlace(vertex, other)));
  return made.length > 0 ? made : standing;
}

function isSamePlace(a: Vertex, b: Vertex): boolean {
  return Math.hypot(a[0] - b[0], a[1] - b[1]) <= SAME_POINT_MM;
}

/** The height of that corner: of an arris and a foot in one place the foot is meant. */
function footY(plan: Plan, cut: PlanCut, footX: number, mark: PlanMark): number {
  const stick = turnedBox(plan.stick, 0);
  if (footX === stick.minX || footX === stick.maxX) return mark.at[1];
  const corners = cornersOf(plan, cut, mark);
  if (corners.length === 0) return mark.at[1];
  const nearest = Math.min(...corners.map((corner) => Math.abs(corner[0] - footX)));
  const there = corners.filter((corner) => Math.abs(corner[0] - footX) <= nearest);
  return Math.min(...there.map((corner) => corner[1]));
}

/** Curves are stopped by their join or their lines, not by a depth. */
export function saysDepth(cut: PlanCut): boolean {
  return !["hollow", "round", "shaped", "saw", "bead", "smoother"].includes(cut.plane.kind);
}

function depthMark(
  plan: Plan,
  cut: PlanCut,
  { view, waste, uprights }: MarkedPicture,
  marks: readonly PlanMark[],
  options: PictureOptions,
): Marked {
  const up = directionToPaper({ ...view, scaleRatio: 1 }, [0, 1]);
  const sizeMm = figureMm(options.unit);
  const depth = marks.find((mark) => mark.kind === "depth");
  if (depth !== undefined) {
    const bottom = toPaper(view, [depth.at[0], depth.at[1]]);
    const distanceMm = depth.distance * view.scaleRatio;
    // From the back a depth is measured towards the face, from the face towards the back.
    const sense = depth.from === "back" ? -distanceMm : distanceMm;
    const top: PaperPoint = [bottom[0] + up[0] * sense, bottom[1] + up[1] * sense];
    // In a canted jaw the depth would lie aslant beside the stick; the mark stands on the bench card.
    if (Math.abs(top[0] - bottom[0]) > LOOKS_UPRIGHT_MM) return { items: [], wishes: [] };
    const lines = besideStick(plan, cut, view, { bottom, top }, { sizeMm, ...uprights });
    return marked(
      `${lengthWords(depth.distance, options)} from the ${printable(depth.from)}`,
      lines,
      options,
    );
  }
  if (waste === null || !saysDepth(cut)) return { items: [], wishes: [] };
  const { bottom, top } = waste.deepest;
  if (Math.abs(bottom[0] - top[0]) > LOOKS_UPRIGHT_MM) return { items: [], wishes: [] };
  const depthMm = Math.abs(bottom[1] - top[1]) / view.scaleRatio;
  const lines = besideStick(plan, cut, view, waste.deepest, { sizeMm, ...uprights });
  return marked(`${lengthWords(depthMm, options)} deep`, lines, options);
}

/**
 * An upright dimension beside the stick on the nearer side, clear of a fence and of a plane that overhangs; on the
 * other side where the overhang leaves no room for it on the page.
 */
function besideStick(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  { bottom, top }: WasteExtent["deepest"],
  { sizeMm, leftmostMm, rightmostMm }: UprightRoom & { readonly sizeMm: number },
): DimensionLines {
  const stick = stickBox(plan, view);
  const xs = [stick.minX, stick.maxX, ...soleOnPaper(cut, view).map((point) => point[0])];
  const hasFence = cut.runsAgainst === "gauge edge" || cut.runsAgainst === "far edge";
  const clearMm = hasFence ? FENCE_THICK_MM : 0;
  const left = Math.min(...xs, stick.minX - clearMm) - SIDE_GAP_MM;
  const right = Math.max(...xs, stick.maxX + clearMm) + SIDE_GAP_MM;
  const isNearerLeft = bottom[0] - stick.minX < stick.maxX - bottom[0];
  const isLeft = isNearerLeft ? left > leftmostMm : right > rightmostMm;
  return linearDimension({
    from: bottom,
    to: top,
    aside: [isLeft ? -1 : 1, 0],
    offMm: isLeft ? bottom[0] - Math.max(left, leftmostMm) : Math.min(right, rightmostMm) - bottom[0],
    sizeMm,
  });
}

/** The sole's ends where the plane comes to rest, on paper. */
export function soleOnPaper(cut: PlanCut, view: StickView): readonly PaperPoint[] {
  const last = stationsOf(cut).slice(-1);
  const ends = [...(cut.sole ?? []).slice(0, 1), ...(cut.sole ?? []).slice(-1)];
  return last.flatMap((pose) => ends.map((end) => toPaper(view, placedPoint(pose, [end[0], end[1]]))));
}

/** The fence against its edge, or the batten beside the plane, as the outline of a tool. */
function fenceMark(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  offSideMm: number,
  options: PictureOptions,
): Marked {
  if (cut.runsAgainst === "batten") return battenMark(plan, cut, view);
  if (cut.runsAgainst !== "gauge edge" && cut.runsAgainst !== "far edge") return { items: [], wishes: [] };
  // A plane that only hangs over the edge, level or leaned, has no fence there.
  if (cut.fence === undefined) return { items: [], wishes: [] };
  const stick = turnedBox(plan.stick, 0);
  const isLeftEdge = (cut.runsAgainst === "gauge edge") === (gaugeEdgeOf(plan) === "left");
  const edgeX = isLeftEdge ? stick.minX : stick.maxX;
  const outward = directionToPaper({ ...view, scaleRatio: 1 }, [isLeftEdge ? -1 : 1, 0]);
  // An edge that looks up or down has no room for a fence beside it; the sentence says what guides the plane.
  if (Math.abs(outward[0]) < 0.5) return { items: [], wishes: [] };
  const ends = [toPaper(view, [edgeX, -stick.maxY]), toPaper(view, [edgeX, -stick.minY])];
  const [corner, lower] = [...ends].sort((a, b) => a[1] - b[1]) as [PaperPoint, PaperPoint];
  const upper = standingCorner(plan, cut, view, corner, outward);
  const edgeMm = Math.hypot(lower[0] - upper[0], lower[1] - upper[1]) || 1;
  const down: PaperPoint = [(lower[0] - upper[0]) / edgeMm, (lower[1] - upper[1]) / edgeMm];
  const reachMm = Math.min(edgeMm * 0.8, FENCE_REACH_MM);
  const at = (outMm: number, downMm: number): PaperPoint => [
    upper[0] + outward[0] * outMm + down[0] * downMm,
    upper[1] + outward[1] * outMm + down[1] * downMm,
  ];
  const outline = openPath([
    at(0.5, -FENCE_ABOVE_MM),
    at(0.5, reachMm),
    at(FENCE_THICK_MM, reachMm),
    at(FENCE_THICK_MM, -FENCE_ABOVE_MM),
  ]);
  const block = group("fence", [stroke(outline, { line: "long-dashed double-dotted" })]);
  const name: LabelWish = {
    words: "fence",
    look: { sizeMm: LABEL_MM },
    spots: [
      { at: at(FENCE_THICK_MM + 1.4, reachMm + 1), anchor: outward[0] > 0 ? "start" : "end" },
      { at: at(FENCE_THICK_MM / 2, reachMm + 4.5), anchor: "middle" },
    ],
  };
  if (!(cut.fence > 0)) return { items: [block], wishes: [name] };
  const nearX = edgeX + (isLeftEdge ? 1 : -1) * cut.fence;
  const { aside, isBack } = dimensionSide(view);
  const sideY = isBack ? -stick.maxY : -stick.minY;
  const lines = linearDimension({
    from: toPaper(view, [edgeX, sideY]),
    to: toPaper(view, [nearX, sideY]),
    aside,
    offMm: rowOffMm(plan, view, sideY, offSideMm),
    sizeMm: figureMm(options.unit),
  });
  const set = marked(`fence ${lengthWords(cut.fence, options)}`, lines, options);
  return joined([{ items: [block], wishes: [] }, set]);
}

/** The upper corner of an upright edge as it stands before the cut: steps may have lowered it. */
function standingCorner(
  plan: Plan,
  cut: PlanCut,
  view: StickView,
  corner: PaperPoint,
  outward: PaperPoint,
): PaperPoint {
  if (Math.abs(outward[1]) > LOOKS_UPRIGHT_MM) return corner;
  const inside = corner[0] - outward[0] * LOOKS_UPRIGHT_MM;
  const y = surfaceY(polygonsOnPaper(view, ringsBefore(plan, cut)), inside);
  return y === null ? corner : [corner[0], y];
}

const BATTEN_WIDE_MM = 9;
const BATTEN_HIGH_MM = 6;
const BATTEN_CLEAR_MM = 0.5;

function battenMark(plan: Plan, cut: PlanCut, view: StickView): Marked {
  const stations = stationsOf(cut);
  const last = stations[stations.length - 1];
  const sole = cut.sole ?? [];
  if (last === undefined || sole.length === 0) return { items: [], wishes: [] };
  const xs = sole.map((vertex) => toPaper(view, [last[0] + vertex[0], last[1] + vertex[1]])[0]);
  const polygons = polygonsOnPaper(view, ringsBefore(plan, cut));
  const lefts = [Math.min(...xs) - BATTEN_CLEAR_MM - BATTEN_WIDE_MM, Math.max(...xs) + BATTEN_CLEAR_MM];
  for (const left of lefts) {
    const ys = [left + BATTEN_CLEAR_MM, left + BATTEN_WIDE_MM - BATTEN_CLEAR_MM].flatMap((x) => {
      const y = surfaceY(polygons, x);
      return y === null ? [] : [y];
    });
    if (ys.length < 2) continue;
    const y = Math.min(...ys);
    const outline = openPath([
      [left, y],
      [left, y - BATTEN_HIGH_MM],
      [left + BATTEN_WIDE_MM, y - BATTEN_HIGH_MM],
      [left + BATTEN_WIDE_MM, y],
    ]);
    return {
      items: [group("batten", [stroke(outline, { line: "long-dashed double-dotted" })])],
      wishes: [
        {
          words: "batten",
          look: { sizeMm: LABEL_MM },
          spots: [
            { at: [left - 1.2, y - 2], anchor: "end" },
            { at: [left + BATTEN_WIDE_MM + 1.2, y - 2], anchor: "start" },
            { at: [left + BATTEN_WIDE_MM / 2, y - BATTEN_HIGH_MM - 1.2], anchor: "middle" },
          ],
        },
      ],
    };
  }
  return { items: [], wishes: [] };
}
