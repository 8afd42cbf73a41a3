/** The points of the stick's drawing: end view with bevels and board. */
import { flatRingOf, type Ring } from "../../curve/index.ts";
import { FLATTEN_MM } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import type { DrawnShape, DrawnView } from "../fit/index.ts";
import { viewSection } from "./section-view.ts";
import type { SpringBevel } from "./spring-bevels.ts";
import type { StickingBoard } from "./sticking-board.ts";
import type { WayOfWorking } from "./types.ts";

/** One view, on its end, in the section's own frame; the board's bed is its back's line. */
export function stickDrawing(
  section: Section,
  way: WayOfWorking,
  bevels: readonly SpringBevel[],
  board: StickingBoard,
): readonly DrawnView[] {
  const { stick } = viewSection(section);
  const bed = [
    { x: stick.minX, y: stick.minY - board.thicknessMm },
    { x: stick.minX + board.widthMm, y: stick.minY - board.thicknessMm },
    { x: stick.minX + board.widthMm, y: stick.minY },
    { x: stick.minX, y: stick.minY },
  ];
  const shapes: DrawnShape[] = [
    closed("stick", "stick", pointsOf(section.stick)),
    closed("stick", "section", pointsOf(section.outline)),
    closed("table", "sticking board", bed),
    ...fenceShapes(board, stick.minY),
    ...board.fillers.map((filler) => closed("hidden", "filler strip", filler.corners)),
    ...bevels.map(
      (bevel): DrawnShape => ({
        kind: "cut",
        name: `bevel at the ${bevel.edge}`,
        run: "open",
        points: [bevel.from, bevel.to],
      }),
    ),
  ];
  const angles = bevels.map((bevel) => ({
    name: `bevel at the ${bevel.edge}, from the back`,
    at: bevel.from,
    radiusMm: bevel.widthMm / 2,
    // The waste lies between the bevel and the back's line run on to the edge.
    fromDeg: bevel.edge === "far edge" ? 0 : 180 - bevel.fromBackDeg,
    sweepDeg: bevel.fromBackDeg,
    valueDeg: bevel.fromBackDeg,
  }));
  return [{ title: `Stick on its board, ${way}`, shapes, angles, places: [] }];
}

function fenceShapes(board: StickingBoard, backMm: number): DrawnShape[] {
  if (board.fence === null) return [];
  const { atMm, topMm, widthMm } = board.fence;
  return [
    closed("fence", "fence", [
      { x: atMm, y: backMm },
      { x: atMm + widthMm, y: backMm },
      { x: atMm + widthMm, y: backMm + topMm },
      { x: atMm, y: backMm + topMm },
    ]),
  ];
}

function closed(kind: DrawnShape["kind"], name: string, points: DrawnShape["points"]): DrawnShape {
  return { kind, name, run: "closed", points };
}

function pointsOf(ring: Ring): DrawnShape["points"] {
  const { xs, ys } = flatRingOf(ring, FLATTEN_MM);
  return Array.from(xs, (x, index) => ({ x, y: ys[index] ?? 0 }));
}
