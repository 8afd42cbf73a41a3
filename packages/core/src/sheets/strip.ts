/** All cuts of a plan in one picture: small cards in reading order, one scale, each with number, plane and lean. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { type BrokenStick, breakItems, brokenAcross, brokenStick } from "./broken-stick.ts";
import { leanInHandDeg, leanSpan, planeName } from "./cut-facts.ts";
import { type PictureOptions, soleOnPaper } from "./cut-marks.ts";
import {
  circlePath,
  type Drawing,
  flatItems,
  group,
  type Item,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { closeUp } from "./enlargement.ts";
import { flatPoints } from "./flat-path.ts";
import { rim } from "./hatch.ts";
import { LEAST_LETTERING_MM } from "./lettering.ts";
import { FAINT_INK, PLANE_LINE } from "./palette.ts";
import { axisOnPaper, leanArrow, planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import { benchLine, stickEnd, uncutEnd, wasteExtent } from "./stick-end.ts";
import { commonScale, nextScales, scaleWords, turnedBox, viewOnBench } from "./stick-view.ts";
import { shortened, textWidthMm, wrapTextTo } from "./text-width.ts";

const PAGE_WIDTH_MM = 190;
const MARGIN_MM = 8;
const GAP_MM = 5;
const TITLE_MM = 5;
const HEAD_MM = 22;
const CARD_HEAD_MM = 10;
/** Lines of lettering in a card's head, mm apart; the plane's name stands on the first. */
const CARD_LINE_MM = 4.4;
const MOST_LEAN_LINES = 2;
/** Planes and enlargements keep so far off the words over them, mm. */
const UNDER_HEAD_MM = 1;
const BODY_MM = 13;
const AXIS_MM = 17;
const BELOW_BENCH_MM = 4;
const LEAST_CARD_MM = 50;
const EMPTY_MM = 12;
/** Cards are drawn larger and set down at this ratio, so that lines and hatches come out finer than on a page. */
const FINENESS = 0.7;
const SIDE_ROOM_MM = 9;
/** No picture is made smaller than this share of what it could be, to stand beside another. */
const LEAST_ABREAST_SHARE = 0.6;
/** Largest stick on a card, so that at least three cards stand side by side where the scale allows. */
const STICK_ROOM = { widthMm: 46, flatMm: 40, turnedMm: 48 } as const;

/** The whole plan at a glance; it shows no lengths, so `options` only keeps its call like that of the other pictures. */
export function drawStrip(whole: Plan, _options: PictureOptions): Drawing {
  const broken = brokenAcross(brokenStick(whole, STICK_ROOM), STICK_ROOM);
  const { plan } = broken;
  const inner = PAGE_WIDTH_MM - 2 * MARGIN_MM;
  const { scaleRatio, columns } = cardsAbreast(plan, inner);
  const cardMm = (inner - (columns - 1) * GAP_MM) / columns;
  const cards: Item[] = [];
  let rowTop = HEAD_MM;
  for (let first = 0; first < plan.cuts.length; first += columns) {
    const row = plan.cuts.slice(first, first + columns);
    const heads = row.map((cut) => cardHead(broken, cut, cardMm, scaleRatio));
    const headMm = Math.max(...heads.map(({ heightMm }) => heightMm));
    // Rows are as high as their highest picture: a stick that stands on its edge does not blow up the others.
    const sceneMm = Math.max(
      ...row.map((cut, column) => riseMm(plan, cut, cardMm, scaleRatio, heads[column]?.scale !== "")),
    );
    const lineY = headMm + UNDER_HEAD_MM + sceneMm;
    row.forEach((cut, column) => {
      const at: PaperPoint = [MARGIN_MM + column * (cardMm + GAP_MM), rowTop];
      const head = heads[column]?.items ?? [];
      cards.push(group("card", [...head, ...cardScene(broken, cut, { cardMm, lineY, scaleRatio })], at));
    });
    rowTop += lineY + BELOW_BENCH_MM + GAP_MM;
  }
  const title = printable(plan.name).trim();
  const bare = plan.cuts.length === 0 ? bareStick(broken, inner, scaleRatio) : null;
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm: rowTop + (bare?.heightMm ?? 0) + MARGIN_MM - GAP_MM,
    title: `${title}: all cuts`,
    description:
      bare?.words ?? plan.cuts.map((cut) => `${cut.number}: ${planeName(cut)}, ${leanSpan(cut)}.`).join(" "),
    items: [
      text([MARGIN_MM, 12], shortened(title, TITLE_MM, inner, "bold"), { sizeMm: TITLE_MM, bold: true }),
      text([MARGIN_MM, 17.6], headWords(plan, scaleRatio), { sizeMm: LEAST_LETTERING_MM }),
      ...(bare?.items ?? cards),
    ],
  };
}

/** What a plan without cuts has to show: the stick as it stays, what is wanted of it dashed, and why nothing is cut. */
function bareStick(
  broken: BrokenStick,
  innerMm: number,
  scaleRatio: number,
): { readonly items: readonly Item[]; readonly words: string; readonly heightMm: number } {
  const { plan } = broken;
  const words =
    plan.uncut.length === 0
      ? "No cuts: the stick is the section already."
      : "No cuts: the planes of the shelf do not get there. The section wanted is dashed.";
  const box = turnedBox(plan.stick, 0);
  const lineY = EMPTY_MM + (box.maxY - box.minY) * scaleRatio;
  const view = viewOnBench(plan.stick, 0, scaleRatio / FINENESS, {
    centreX: innerMm / 2 / FINENESS,
    lineY: lineY / FINENESS,
  });
  const scene = [
    benchLine(0, innerMm / FINENESS, lineY / FINENESS),
    ...uncutEnd(plan, view),
    ...breakItems(broken, view),
  ];
  return {
    words,
    heightMm: lineY + BELOW_BENCH_MM + GAP_MM,
    items: [
      text([MARGIN_MM, HEAD_MM + 4], words, { sizeMm: LEAST_LETTERING_MM }),
      group("card", [{ ...group("picture", scene), scaleRatio: FINENESS }], [MARGIN_MM, HEAD_MM]),
    ],
  };
}

/** Scale and cards in a row: somewhat smaller where a wide plane beside a small stick would leave each card a row of its own. */
function cardsAbreast(
  plan: Plan,
  innerMm: number,
): { readonly scaleRatio: number; readonly columns: number } {
  const columnsAt = (scaleRatio: number): number => {
    const neededMm = Math.max(LEAST_CARD_MM, ...plan.cuts.map((cut) => cardWidthMm(plan, cut, scaleRatio)));
    return Math.max(1, Math.floor((innerMm + GAP_MM) / (Math.min(innerMm, neededMm) + GAP_MM)));
  };
  const largest = commonScale(plan, STICK_ROOM);
  const isAbreast = (scale: number): boolean => columnsAt(scale) > 1;
  const scaleRatio =
    plan.cuts.length < 2 || isAbreast(largest)
      ? largest
      : (nextScales(largest, LEAST_ABREAST_SHARE).find(isAbreast) ?? largest);
  return { scaleRatio, columns: columnsAt(scaleRatio) };
}

function headWords(plan: Plan, scaleRatio: number): string {
  const scale = `Scale ${scaleWords(scaleRatio)}.`;
  if (plan.cuts.length === 0) return scale;
  return plan.cuts.length === 1 ? `1 cut. ${scale}` : `${plan.cuts.length} cuts in order. ${scale}`;
}

function stickHeightMm(plan: Plan, cut: PlanCut): number {
  const box = turnedBox(plan.stick, cut.cant);
  return box.maxY - box.minY;
}

/** Twice the reach of stick and plane from the card's middle, with room at the sides. */
function cardWidthMm(plan: Plan, cut: PlanCut, scaleRatio: number): number {
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio, { centreX: 0, lineY: 0 });
  const box = turnedBox(plan.stick, cut.cant);
  const stickMm = ((box.maxX - box.minX) / 2) * scaleRatio;
  const planeMm = soleOnPaper(cut, view).map((point) => Math.abs(point[0]));
  // A plane may reach into the gap between cards, where nothing else stands.
  const reachMm = planeMm.map((distanceMm) => distanceMm - GAP_MM + 1);
  return 2 * Math.max(stickMm + SIDE_ROOM_MM / 2, ...reachMm);
}

export interface CardLayout {
  readonly cardMm: number;
  readonly lineY: number;
  readonly scaleRatio: number;
}

interface CardHead {
  readonly items: readonly Item[];
  /** What the enlargement's scale is said to be; empty where there is none. */
  readonly scale: string;
  readonly heightMm: number;
}

/** Number, plane and lean: the lean on two lines where one is too short to say how the cut is begun. */
function cardHead(broken: BrokenStick, cut: PlanCut, cardMm: number, scaleRatio: number): CardHead {
  const textLeft = 10;
  const textWidth = cardMm - textLeft;
  const detail = detailOf(broken, cut, { cardMm, lineY: 0, scaleRatio });
  const scale = detail === null ? "" : `detail ${scaleWords(detail.scaleRatio)}`;
  const scaleMm = scale === "" ? 0 : textWidthMm(scale, LEAST_LETTERING_MM) + 2;
  const lineAt = (index: number): number => 3.6 + index * CARD_LINE_MM;
  const leans = wrapTextTo(MOST_LEAN_LINES, leanSpan(cut), LEAST_LETTERING_MM, textWidth - scaleMm);
  return {
    scale,
    heightMm: CARD_HEAD_MM + (leans.length - 1) * CARD_LINE_MM,
    items: [
      group("number", [
        stroke(circlePath([4, 4.2], 3.6), { weight: "gauge" }),
        text([4, 5.5], String(cut.number), { sizeMm: 3.6, anchor: "middle", bold: true }),
      ]),
      text([textLeft, lineAt(0)], shortened(planeName(cut), LEAST_LETTERING_MM, textWidth), {
        sizeMm: LEAST_LETTERING_MM,
      }),
      ...leans.map((line, index) =>
        text([textLeft, lineAt(index + 1)], line, { sizeMm: LEAST_LETTERING_MM }),
      ),
      ...(scale === ""
        ? []
        : [text([cardMm, lineAt(1)], scale, { sizeMm: LEAST_LETTERING_MM, anchor: "end" })]),
    ],
  };
}

/** How far a card's picture rises over its bench line, mm: stick, plane and enlargement. */
function riseMm(plan: Plan, cut: PlanCut, cardMm: number, scaleRatio: number, hasDetail: boolean): number {
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio / FINENESS, {
    centreX: cardMm / 2 / FINENESS,
    lineY: 0,
  });
  const toolMm = toolItems(cut, view).flatMap((item) => pointsOf(item).map(([, y]) => -y * FINENESS));
  const stickMm = stickHeightMm(plan, cut) * scaleRatio;
  return Math.max(stickMm + (hasDetail ? 2 * DETAIL_MM + DETAIL_OVER_MM : 0), ...toolMm);
}

function cardScene(broken: BrokenStick, cut: PlanCut, layout: CardLayout): readonly Item[] {
  return [smallScene(broken, cut, layout), ...(detailOf(broken, cut, layout)?.items ?? [])];
}

/** A cut thinner than this on the card is shown once more, larger, beside the plane. */
const UNSEEN_MM = 1.4;
const DETAIL_MM = 8;
const DETAIL_CLEAR_MM = 2;
/** The enlargement stands so far over the stick, mm. */
const DETAIL_OVER_MM = 0.6;

interface Detail {
  readonly items: readonly Item[];
  /** Of the section, as the card is printed. */
  readonly scaleRatio: number;
}

/** The round enlargement of shallow work, on the side where the plane leaves room for it; null where none is needed. */
function detailOf({ plan }: BrokenStick, cut: PlanCut, layout: CardLayout): Detail | null {
  const { cardMm, lineY, scaleRatio } = layout;
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio / FINENESS, {
    centreX: cardMm / 2 / FINENESS,
    lineY: lineY / FINENESS,
  });
  const station = stationsOf(cut)[0];
  const axis = station === undefined ? ([0, -1] as const) : axisOnPaper(view, station);
  const waste = wasteExtent(plan, cut, view, axis);
  if (waste === null) return null;
  const { minX, maxX, minY, maxY } = waste.box;
  if (Math.min(maxX - minX, maxY - minY) * FINENESS >= UNSEEN_MM) return null;
  const box = turnedBox(plan.stick, cut.cant);
  const stickTop = lineY - (box.maxY - box.minY) * scaleRatio;
  const spotX = ((minX + maxX) / 2) * FINENESS;
  const isLeft = spotX > cardMm / 2;
  const centreX = isLeft ? DETAIL_MM + 0.5 : cardMm - DETAIL_MM - 0.5;
  const reach = toolItems(cut, view).flatMap((item) => pointsOf(item).map(([x]) => x * FINENESS));
  const clearMm = isLeft
    ? Math.min(...reach) - centreX - DETAIL_MM
    : centreX - DETAIL_MM - Math.max(...reach);
  if (clearMm < DETAIL_CLEAR_MM) return null;
  const disc = {
    centre: [centreX / FINENESS, (stickTop - DETAIL_MM - DETAIL_OVER_MM) / FINENESS] as const,
    radiusMm: DETAIL_MM / FINENESS,
  };
  const close = closeUp(plan, cut, view, waste, disc, FINENESS);
  if (close === null) return null;
  return {
    items: [{ ...group("enlargement", [...close.spot, ...close.scene, rim(disc)]), scaleRatio: FINENESS }],
    scaleRatio: close.scaleRatio * FINENESS,
  };
}

function pointsOf(item: Item): readonly PaperPoint[] {
  return flatItems([item]).flatMap((one): readonly PaperPoint[] => {
    if (one.kind === "text") return [one.at];
    return (one.kind === "stroke" ? [one.path] : one.paths).flatMap(flatPoints);
  });
}

/** The bare picture of a cut, drawn larger and set down smaller, its bench line as high as the layout says. */
export function smallScene(broken: BrokenStick, cut: PlanCut, layout: CardLayout): Item {
  const { plan } = broken;
  const { cardMm, lineY, scaleRatio } = layout;
  const view = viewOnBench(plan.stick, cut.cant, scaleRatio / FINENESS, {
    centreX: cardMm / 2 / FINENESS,
    lineY: lineY / FINENESS,
  });
  const scene = [
    benchLine(0, cardMm / FINENESS, lineY / FINENESS),
    ...stickEnd(plan, cut, view),
    ...breakItems(broken, view),
    ...toolItems(cut, view),
  ];
  return { ...group("picture", scene), scaleRatio: FINENESS };
}

function toolItems(cut: PlanCut, view: ReturnType<typeof viewOnBench>): readonly Item[] {
  if (cut.line !== undefined) return [group("saw", sawLine(view, cut, PLANE_LINE).items)];
  const stations = stationsOf(cut);
  const lines = stations.map((pose, index) =>
    planeLines(view, cut, pose, {
      colour: index === 0 ? PLANE_LINE : FAINT_INK,
      bodyMm: BODY_MM / FINENESS,
      axisMm: AXIS_MM / FINENESS,
    }),
  );
  const leans = stations.map((pose) => leanInHandDeg(cut, pose[2]));
  const [first, last] = lines;
  const arrow =
    first === undefined || last === undefined
      ? []
      : leanArrow(first, last, (AXIS_MM - 2) / FINENESS, (leans[1] ?? 0) - (leans[0] ?? 0));
  const drawn = lines.map((plane, index) => group(index === 0 ? "plane" : "plane, last pose", plane.items));
  return [...drawn.reverse(), group("movement", arrow)];
}
