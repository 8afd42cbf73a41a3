/** All cuts of a plan in one picture: small cards in reading order, one scale, each with number, plane and lean. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { leanInHandDeg, leanSpan, planeName } from "./cut-facts.ts";
import type { PictureOptions } from "./cut-picture.ts";
import { circlePath, type Drawing, group, type Item, type PaperPoint, stroke, text } from "./drawing.ts";
import { FAINT_INK, PLANE_LINE } from "./palette.ts";
import { leanArrow, planeLines, sawLine, stationsOf } from "./plane-lines.ts";
import { printable } from "./printable-text.ts";
import { benchLine, stickEnd } from "./stick-end.ts";
import { commonScale, scaleWords, turnedBox, viewOnBench } from "./stick-view.ts";
import { shortened } from "./text-width.ts";

const PAGE_WIDTH_MM = 190;
const MARGIN_MM = 8;
const GAP_MM = 5;
const TITLE_MM = 5;
const LABEL_MM = 3.3;
const HEAD_MM = 22;
const CARD_HEAD_MM = 12;
const BODY_MM = 13;
const AXIS_MM = 17;
const BELOW_BENCH_MM = 4;
const LEAST_CARD_MM = 50;
const SIDE_ROOM_MM = 9;
/** Largest stick on a card, so that at least three cards stand side by side where the scale allows. */
const STICK_ROOM = { widthMm: 46, heightMm: 40 } as const;

/** The whole plan at a glance; it shows no lengths, so `options` only keeps its call like that of the other pictures. */
export function drawStrip(plan: Plan, _options: PictureOptions): Drawing {
  const scaleRatio = commonScale(plan, STICK_ROOM);
  const boxes = [0, ...plan.cuts.map((cut) => cut.cant)].map((cant) => turnedBox(plan.stick, cant));
  const stickWidthMm = Math.max(...boxes.map((box) => box.maxX - box.minX)) * scaleRatio;
  const stickHeightMm = Math.max(...boxes.map((box) => box.maxY - box.minY)) * scaleRatio;
  const inner = PAGE_WIDTH_MM - 2 * MARGIN_MM;
  const wantedCardMm = Math.min(inner, Math.max(LEAST_CARD_MM, stickWidthMm + SIDE_ROOM_MM));
  const columns = Math.max(1, Math.floor((inner + GAP_MM) / (wantedCardMm + GAP_MM)));
  const cardMm = (inner - (columns - 1) * GAP_MM) / columns;
  const cardHeightMm = CARD_HEAD_MM + AXIS_MM + stickHeightMm + BELOW_BENCH_MM;
  const rows = Math.ceil(plan.cuts.length / columns);
  const lineY = CARD_HEAD_MM + AXIS_MM + stickHeightMm;
  const cards = plan.cuts.map((cut, index) => {
    const at: PaperPoint = [
      MARGIN_MM + (index % columns) * (cardMm + GAP_MM),
      HEAD_MM + Math.floor(index / columns) * (cardHeightMm + GAP_MM),
    ];
    return group("card", cardItems(plan, cut, { cardMm, lineY, scaleRatio }), at);
  });
  const title = printable(plan.name).trim();
  const heightMm = HEAD_MM + Math.max(1, rows) * (cardHeightMm + GAP_MM) + MARGIN_MM - GAP_MM;
  const empty = text(
    [MARGIN_MM, HEAD_MM + 6],
    "No cuts: the stick is the section already, or nothing on the shelf reaches it.",
    {
      sizeMm: LABEL_MM,
    },
  );
  return {
    widthMm: PAGE_WIDTH_MM,
    heightMm,
    title: `${title}: all cuts`,
    description: plan.cuts.map((cut) => `${cut.number}: ${planeName(cut)}, ${leanSpan(cut)}.`).join(" "),
    items: [
      text([MARGIN_MM, 12], shortened(title, TITLE_MM, inner, "bold"), { sizeMm: TITLE_MM, bold: true }),
      text([MARGIN_MM, 17.6], `${plan.cuts.length} cuts in order. Scale ${scaleWords(scaleRatio)}.`, {
        sizeMm: LABEL_MM,
      }),
      ...(plan.cuts.length === 0 ? [empty] : cards),
    ],
  };
}

interface CardLayout {
  readonly cardMm: number;
  readonly lineY: number;
  readonly scaleRatio: number;
}

function cardItems(plan: Plan, cut: PlanCut, layout: CardLayout): readonly Item[] {
  const view = viewOnBench(plan.stick, cut.cant, layout.scaleRatio, {
    centreX: layout.cardMm / 2,
    lineY: layout.lineY,
  });
  const textLeft = 10;
  const textWidth = layout.cardMm - textLeft;
  return [
    group("number", [
      stroke(circlePath([4, 4.2], 3.6), { weight: "gauge" }),
      text([4, 5.5], String(cut.number), { sizeMm: 3.6, anchor: "middle", bold: true }),
    ]),
    text([textLeft, 3.6], shortened(planeName(cut), LABEL_MM, textWidth), { sizeMm: LABEL_MM }),
    text([textLeft, 8], shortened(leanSpan(cut), LABEL_MM, textWidth), { sizeMm: LABEL_MM }),
    benchLine(0, layout.cardMm, layout.lineY),
    ...stickEnd(plan, cut, view),
    ...toolItems(cut, view),
  ];
}

function toolItems(cut: PlanCut, view: ReturnType<typeof viewOnBench>): readonly Item[] {
  if (cut.line !== undefined) return [group("saw", sawLine(view, cut, PLANE_LINE).items)];
  const stations = stationsOf(cut);
  const lines = stations.map((pose, index) =>
    planeLines(view, cut, pose, {
      colour: index === 0 ? PLANE_LINE : FAINT_INK,
      bodyMm: BODY_MM,
      axisMm: AXIS_MM,
    }),
  );
  const leans = stations.map((pose) => leanInHandDeg(cut, pose[2]));
  const [first, last] = lines;
  const arrow =
    first === undefined || last === undefined
      ? []
      : leanArrow(first, last, AXIS_MM - 2, (leans[1] ?? 0) - (leans[0] ?? 0));
  const drawn = lines.map((plane, index) => group(index === 0 ? "plane" : "plane, last pose", plane.items));
  return [...drawn.reverse(), group("movement", arrow)];
}
