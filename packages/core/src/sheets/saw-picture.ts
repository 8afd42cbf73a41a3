/** A stick at the saw: on the table from above, and the blade as the operator sees it. */
import type { SawCut } from "../making/index.ts";
import { formatDeg, toDeg, toRad } from "../measure/index.ts";
import { type Drawing, type Item, openPath, type PaperPoint, stroke } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { angleItems, groundItems, paperAside, sketch, spotOn, wasteItems, woodItems } from "./fit-sketch.ts";
import type { Box } from "./flat-path.ts";
import { GAUGE_LINE } from "./palette.ts";

/** A saw's scale can be set to a quarter of a degree. */
export function sawDeg(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

/** Sizes of the stick on the table, mm on paper. */
const TABLE = { backMm: 24, beyondMm: 22, handleMm: 15 } as const;

/** The stick from above, the fence at the top and the operator below; under it the blade as the operator sees it. */
export function sawPanel(heading: string, cut: SawCut, names: StickNames = MOULDING_NAMES): PagePanel {
  return {
    heading: `${heading}: ${names[cut.edgeAtFence]} at the fence`,
    draw: (box) => {
      const split = box.minY + 64;
      return [
        ...tableItems(cut, { ...box, maxY: split }, names),
        ...bladeItems(cut, { ...box, minY: split + 3 }, names),
      ];
    },
  };
}

const SAW_MM = 112;

/** One cut at the saw by itself: the stick on the table from above, and the blade as the operator sees it. */
export function drawSawCut(
  heading: string,
  cut: SawCut,
  options: FitPictureOptions,
  names: StickNames = MOULDING_NAMES,
): Drawing {
  const title = `${heading}: mitre ${sawDeg(cut.mitreDeg)}, bevel ${sawDeg(cut.bevelDeg)}`;
  return fitPage(
    { title, notes: [] },
    [{ heightMm: SAW_MM, panels: [sawPanel(heading, cut, names)] }],
    options,
  );
}

/** What the two edges of the stick are called, and which side of it lies up. */
export type StickNames = Readonly<Record<SawCut["edgeAtFence"] | "up", string>>;

const MOULDING_NAMES: StickNames = {
  "wall edge": "wall edge",
  "ceiling edge": "ceiling edge",
  up: "face up",
};

function tableItems(cut: SawCut, box: Box, names: StickNames): readonly Item[] {
  const slope = Math.tan(toRad(cut.mitreDeg)) * (cut.turnHandleTo === "left" ? 1 : -1);
  // Very long mitres are drawn as far as the room allows; the figure says the angle.
  const half = Math.max(-22, Math.min(22, (TABLE.backMm / 2) * slope));
  const fenceY = box.minY + 9;
  const nearY = fenceY + TABLE.backMm;
  const centreX = (box.minX + box.maxX) / 2;
  const far: PaperPoint = [centreX + half, fenceY];
  const near: PaperPoint = [centreX - half, nearY];
  const view = sketch({
    bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 },
    box,
    marginMm: 0,
    scaleRatio: 1,
  });
  const edge = (side: "left" | "right", y: number): PaperPoint => [
    side === "left" ? box.minX + 1 : box.maxX - 1,
    y,
  ];
  const other = cut.keep === "left" ? "right" : "left";
  const kept = [far, edge(cut.keep, fenceY), edge(cut.keep, nearY), near];
  const offcut = [far, edge(other, fenceY), edge(other, nearY), near];
  view.draw("waste", wasteItems(offcut));
  view.draw("wood", woodItems(kept, "along the grain"));
  view.draw("fence", groundItems([box.minX, fenceY], [box.maxX, fenceY]));
  const direction: PaperPoint = [near[0] - far[0], near[1] - far[1]];
  const lengthMm = Math.hypot(direction[0], direction[1]);
  const along: PaperPoint = [direction[0] / lengthMm, direction[1] / lengthMm];
  const handle: PaperPoint = [near[0] + along[0] * TABLE.handleMm, near[1] + along[1] * TABLE.handleMm];
  const beyond: PaperPoint = [far[0] - along[0] * 5, far[1] - along[1] * 5];
  view.draw("saw cut", [
    stroke(openPath([beyond, handle]), {
      line: "long-dashed double-dotted",
      colour: GAUGE_LINE,
      weight: "gauge",
    }),
  ]);
  // Less than the scale shows is nothing to draw.
  const isSwung = sawDeg(cut.mitreDeg) !== sawDeg(0);
  const squareFoot: PaperPoint = [far[0], handle[1] + 2];
  if (isSwung) view.draw("square", [stroke(openPath([far, squareFoot]), { line: "long-dashed dotted" })]);
  const sign = cut.turnHandleTo === "left" ? -1 : 1;
  const arc = angleItems({
    centre: far,
    radiusMm: TABLE.backMm + 9,
    fromDeg: 270,
    // The angle as drawn; its figure stands at the handle.
    sweepDeg: sign * toDeg(Math.atan(Math.abs(half) / (TABLE.backMm / 2))),
  });
  if (isSwung) view.draw("angle", arc.items);
  const isKeptLeft = cut.keep === "left";
  const keptX = isKeptLeft
    ? (box.minX + Math.min(far[0], near[0])) / 2
    : (box.maxX + Math.max(far[0], near[0])) / 2;
  const offX = isKeptLeft
    ? (box.maxX + Math.max(far[0], near[0])) / 2
    : (box.minX + Math.min(far[0], near[0])) / 2;
  const middleY = (fenceY + nearY) / 2;
  const start = isKeptLeft ? "start" : "end";
  const startX = isKeptLeft ? box.minX + 2.5 : box.maxX - 2.5;
  const nearEdge = names[cut.edgeAtFence === "ceiling edge" ? "wall edge" : "ceiling edge"];
  view.label("fence", [{ at: [box.minX, fenceY - 3], anchor: "start" }]);
  view.label(names[cut.edgeAtFence], [{ at: [startX, fenceY + 4.2], anchor: start }]);
  view.label(nearEdge, [{ at: [startX, nearY - 1.6], anchor: start }]);
  view.label("KEEP", [spotOn([keptX, middleY])], { bold: true });
  view.label("offcut", [spotOn([offX, middleY])], { on: "waste" });
  const isLongAtFence = isKeptLeft ? far[0] > near[0] : far[0] < near[0];
  if (isSwung) {
    const toKept = isKeptLeft ? -1 : 1;
    // Where the line of a square cut would run through the words they go to the other side of the blade.
    const nearSide = (far[0] - near[0]) * toKept > 0 ? -toKept : toKept;
    const farWords = isLongAtFence ? "long point" : "short point";
    const nearWords = isLongAtFence ? "short point" : "long point";
    view.label(farWords, [{ at: [far[0] + toKept * 1.5, fenceY - 3], anchor: toKept < 0 ? "end" : "start" }]);
    view.label(nearWords, [
      { at: [near[0] + nearSide * 4.5, nearY + 4.8], anchor: nearSide < 0 ? "end" : "start" },
    ]);
  }
  const turned =
    cut.turnHandleTo === "neither"
      ? "handle straight: 0°"
      : `handle to the ${cut.turnHandleTo}: ${sawDeg(cut.mitreDeg)}`;
  view.label(turned, [{ at: [handle[0], handle[1] + 5.5], anchor: "middle" }], { bold: true });
  view.label("you stand here", [{ at: [centreX, box.maxY - 1], anchor: "middle" }]);
  return view.items();
}

/** The blade from the operator's place: table, the stick's thickness, the cut through it. */
function bladeItems(cut: SawCut, box: Box, names: StickNames): readonly Item[] {
  const tableY = box.maxY - 6;
  const thick = 9;
  const centreX = (box.minX + box.maxX) / 2;
  const lean = cut.bladeLeans === "left" ? 1 : cut.bladeLeans === "right" ? -1 : 0;
  const directionDeg = 90 + lean * cut.bevelDeg;
  const foot: PaperPoint = [centreX, tableY];
  const topX = centreX - lean * Math.min(60, thick * Math.tan(toRad(Math.min(cut.bevelDeg, 75))));
  const top: PaperPoint = [topX, tableY - thick];
  const view = sketch({ bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 }, box, marginMm: 0, scaleRatio: 1 });
  const reach = 30;
  const side = (which: "left" | "right"): readonly PaperPoint[] => {
    const x = centreX + (which === "left" ? -reach : reach);
    return [foot, [x, tableY], [x, tableY - thick], top];
  };
  view.draw("waste", wasteItems(side(cut.keep === "left" ? "right" : "left")));
  view.draw("wood", woodItems(side(cut.keep), "along the grain"));
  view.draw("table", groundItems([box.maxX, tableY], [box.minX, tableY]));
  const tip = paperAside(foot, 27, directionDeg);
  view.draw("blade", [
    stroke(openPath([paperAside(foot, -4, directionDeg), tip]), {
      line: "long-dashed double-dotted",
      colour: GAUGE_LINE,
      weight: "gauge",
    }),
  ]);
  if (lean !== 0) {
    view.draw("upright", [
      stroke(openPath([foot, paperAside(foot, 27, 90)]), { line: "long-dashed dotted" }),
    ]);
    const arc = angleItems({ centre: foot, radiusMm: 22, fromDeg: 90, sweepDeg: lean * cut.bevelDeg });
    view.draw("angle", arc.items);
  }
  const words = lean === 0 ? "blade upright: 0°" : `blade leans ${cut.bladeLeans}: ${sawDeg(cut.bevelDeg)}`;
  const away = lean >= 0 ? "start" : "end";
  view.label(words, [{ at: [centreX + (lean >= 0 ? 3 : -3), tableY - 24], anchor: away }], { bold: true });
  view.label(names.up, [
    {
      at: [centreX + (cut.keep === "left" ? -reach : reach), tableY - thick - 1.4],
      anchor: cut.keep === "left" ? "start" : "end",
    },
  ]);
  view.label("table", [{ at: [box.minX, tableY + 5], anchor: "start" }]);
  return view.items();
}
