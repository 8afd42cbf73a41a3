/**
 * The picture of one cut without its words: the stick's end as it lies on the bench, what goes, the plane in its place,
 * the marks that place it. It fills whatever room it is given; pages of a card and pictures on their own share it.
 */
import type { Plan, PlanCut, Pose } from "../cutting/index.ts";
import { type BrokenStick, breakItems } from "./broken-stick.ts";
import { leanInHandDeg, leanSpan, shortLean } from "./cut-facts.ts";
import { cutMarks, type PictureOptions, stickBox, type UprightRoom } from "./cut-marks.ts";
import { flatItems, group, type Item, type PaperPoint, text } from "./drawing.ts";
import { enlargementOf } from "./enlargement.ts";
import { type Box, boxOf, type Disc, flatPoints } from "./flat-path.ts";
import { type LabelWish, labelPlacer, textBox } from "./labels.ts";
import { LABEL_MM, LEAST_LETTERING_MM } from "./lettering.ts";
import { FAINT_INK, PLANE_LINE } from "./palette.ts";
import { axisOnPaper, leanArrow, type PlaneLines, planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { benchLine, stickEnd, wasteExtent } from "./stick-end.ts";
import { type StickRoom, type StickView, scaleFor, scaleWords, toPaper, viewOnBench } from "./stick-view.ts";

const BODY_MM = 27;
const LEAST_BODY_MM = 8;
const BODY_OVER_STICK_MM = 8;
/** A plane held flatter than this (its axis's rise) is drawn no longer for it. */
const LEAST_UP_RATIO = 0.7;
const AXIS_OVER_BODY_MM = 7;
/** Between a plane's lines and the enlargement. */
const DISC_CLEAR_MM = 2;
const LINE_STEP_MM = 2;

/** Where everything of the picture stands on its paper, mm. */
export interface SceneLayout {
  readonly picture: Box;
  readonly stickRoom: StickRoom;
  readonly bench: {
    readonly centreX: number;
    readonly lineY: number;
    readonly fromX: number;
    readonly toX: number;
  };
  /** Places for the round enlargement, in the order they are liked: the first that the plane leaves free is taken. */
  readonly enlarged: readonly [Disc, ...Disc[]];
  readonly uprights: UprightRoom;
}

/** The picture of a cut. A stick far thicker than what is worked on it comes broken off for the layout's room. */
export function cutScene(
  broken: BrokenStick,
  cutNumber: number,
  layout: SceneLayout,
  options: PictureOptions,
): readonly Item[] {
  const { plan } = broken;
  const cut = plan.cuts.find((candidate) => candidate.number === cutNumber) as PlanCut;
  const { picture, bench: place } = layout;
  const scaleRatio = scaleFor(plan, cut.cant, layout.stickRoom);
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio, place);
  const drawn = drawnPoses(plan, cut, view, picture);
  const poses = { ...drawn, items: keptIn(drawn.items, picture) };
  const waste = wasteExtent(plan, cut, view, firstAxis(cut, view));
  const disc = freeDisc(layout.enlarged, poses.items);
  const close = waste === null ? null : enlargementOf(plan, cut, view, waste, disc, options);
  const marks = cutMarks(
    plan,
    cut,
    { view, waste: close === null ? waste : null, uprights: layout.uprights },
    options,
  );
  const scale = text([picture.minX + 2, picture.maxY - 1], `Scale ${scaleWords(scaleRatio)}`, {
    sizeMm: LEAST_LETTERING_MM,
  });
  const end = [...stickEnd(plan, cut, view), ...breakItems(broken, view)];
  const bench = benchLine(place.fromX, place.toX, place.lineY);

  const placer = labelPlacer(picture);
  placer.keepFree(textBox(scale));
  if (close !== null) placer.keepFree(close.box);
  placer.avoidLines([bench, ...end, ...poses.items, ...marks.items, ...(close?.spot ?? [])]);
  const labels = [...poses.wishes, ...marks.wishes].flatMap((wish) => placer.place(wish)?.items ?? []);
  return [
    bench,
    ...end,
    ...poses.items,
    ...marks.items,
    ...(close?.spot ?? []),
    ...(close?.items ?? []),
    scale,
    group("labels", labels),
  ];
}

/** The first place that no line of the plane enters; where all are entered, the one whose middle is farthest from any. */
function freeDisc(places: SceneLayout["enlarged"], plane: readonly Item[]): Disc {
  const [first, ...others] = places;
  if (others.length === 0) return first;
  const points = pointsOn(plane);
  const clearMm = ({ centre, radiusMm }: Disc): number =>
    Math.min(...points.map(([x, y]) => Math.hypot(x - centre[0], y - centre[1]))) - radiusMm;
  const free = places.find((place) => points.length === 0 || clearMm(place) > DISC_CLEAR_MM);
  return free ?? places.reduce((kept, place) => (clearMm(place) > clearMm(kept) ? place : kept));
}

/** Points along the items' lines, close enough together that none passes between two of them unseen. */
function pointsOn(items: readonly Item[]): readonly PaperPoint[] {
  return flatItems(items).flatMap((item): readonly PaperPoint[] => {
    if (item.kind !== "stroke") return [];
    const points = flatPoints(item.path);
    return points.flatMap((to, index): readonly PaperPoint[] => {
      const from = points[index - 1] ?? to;
      const steps = Math.ceil(Math.hypot(to[0] - from[0], to[1] - from[1]) / LINE_STEP_MM);
      const between = Array.from({ length: Math.max(0, steps - 1) }, (_, step): PaperPoint => {
        const ratio = (step + 1) / steps;
        return [from[0] + (to[0] - from[0]) * ratio, from[1] + (to[1] - from[1]) * ratio];
      });
      return [...between, to];
    });
  });
}

/** A wide plane that reaches past the picture is cut off at its edge, so that it crosses no words. */
function keptIn(items: readonly Item[], picture: Box): readonly Item[] {
  const points = flatItems(items).flatMap((item): readonly PaperPoint[] => {
    if (item.kind === "text") return [item.at];
    return (item.kind === "stroke" ? [item.path] : item.paths).flatMap(flatPoints);
  });
  if (points.length === 0) return items;
  const box = boxOf(points);
  const isInside =
    box.minX >= picture.minX &&
    box.maxX <= picture.maxX &&
    box.minY >= picture.minY &&
    box.maxY <= picture.maxY;
  return isInside ? items : [{ ...group("cut off", items), window: picture }];
}

interface DrawnPoses {
  readonly items: readonly Item[];
  readonly wishes: readonly LabelWish[];
}

function drawnPoses(plan: Plan, cut: PlanCut, view: StickView, picture: Box): DrawnPoses {
  if (cut.line !== undefined) {
    const saw = sawLine(view, cut, PLANE_LINE);
    return { items: [group("saw", saw.items)], wishes: [leanWish(leanSpan(cut), saw, null)] };
  }
  const stations = stationsOf(cut);
  const bodyMm = bodyLengthMm(plan, view, stations, picture);
  const axisMm = bodyMm + AXIS_OVER_BODY_MM;
  const lines = stations.map((pose, index) =>
    planeLines(view, cut, pose, { colour: index === 0 ? PLANE_LINE : FAINT_INK, bodyMm, axisMm }),
  );
  const leans = stations.map((pose) => leanInHandDeg(cut, pose[2]));
  const [first, last] = lines;
  if (first === undefined) return { items: [], wishes: [] };
  const drawn = lines.map((plane, index) => group(index === 0 ? "plane" : "plane, last pose", plane.items));
  if (last === undefined) {
    return { items: drawn, wishes: [leanWish(shortLean(leans[0] ?? 0), first, null)] };
  }
  const arrow = leanArrow(first, last, axisMm - 3, (leans[1] ?? 0) - (leans[0] ?? 0));
  return {
    // The fainter last pose lies under the first one.
    items: [...drawn.reverse(), group("movement", arrow)],
    wishes: [
      leanWish(`from ${shortLean(leans[0] ?? 0)}`, first, last),
      leanWish(`to ${shortLean(leans[1] ?? 0)}`, last, first),
    ],
  };
}

/** As much of the body as clears the stick's top, and no more than the picture has room for; the same in both poses. */
function bodyLengthMm(plan: Plan, view: StickView, stations: readonly Pose[], picture: Box): number {
  const top = stickBox(plan, view).minY;
  const lengths = stations.map((pose) => {
    const sole = toPaper(view, [pose[0], pose[1]]);
    const up = Math.max(LEAST_UP_RATIO, -axisOnPaper(view, pose)[1]);
    const roomMm = (sole[1] - picture.minY - 1) / up - AXIS_OVER_BODY_MM;
    return Math.min(roomMm, Math.max(BODY_MM, (sole[1] - top) / up + BODY_OVER_STICK_MM));
  });
  return Math.max(LEAST_BODY_MM, Math.min(...lengths));
}

/** The lean beside the upper end of its axis, on the side away from the other pose. */
function leanWish(words: string, lines: PlaneLines, other: PlaneLines | null): LabelWish {
  const [x, y] = lines.tip;
  const right = { at: [x + 1.6, y + 2.4] as const, anchor: "start" as const };
  const left = { at: [x - 1.6, y + 2.4] as const, anchor: "end" as const };
  const above = { at: [x, y - 1.2] as const, anchor: "middle" as const };
  const isRightmost = other === null || other.tip[0] <= x;
  return {
    words,
    look: { sizeMm: LABEL_MM },
    spots: [...(isRightmost ? [right, left] : [left, right]), above],
  };
}

/** The axis of the first hold: depths are told along it, whatever the plane leans to afterwards. */
function firstAxis(cut: PlanCut, view: StickView): PaperPoint {
  const first = stationsOf(cut)[0];
  return first === undefined ? [0, -1] : axisOnPaper(view, first);
}
