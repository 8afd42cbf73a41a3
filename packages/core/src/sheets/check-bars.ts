/** The bars that tell whether a page came out at full size: millimetres on one side, inches on the other. */
import { INCH_MM } from "../measure/index.ts";
import { group, type Item, openPath, type PaperPoint, stroke, type Text, text } from "./drawing.ts";
import type { Box } from "./flat-path.ts";
import { ASCENT_RATIO } from "./labels.ts";
import { CHECK_MM } from "./paper.ts";

const LETTERING_MM = 3.5;
const CHECK_IN = 4;
/** Where the bars' common corner stands in the room's lower left corner. */
const CORNER_MM = { right: 15, up: 14 } as const;
const STEP_MM = 10;
const LONG_STEP_MM = 50;
const SHORT_TICK_MM = 1.4;
const LONG_TICK_MM = 2.8;
/** Room kept behind a bar's end for half of its last figure. */
const END_ROOM_MM = 5;

/** A bar: along its line and away from it on the side of the millimetres. */
interface Bar {
  readonly from: PaperPoint;
  readonly along: PaperPoint;
  readonly aside: PaperPoint;
  readonly lengthMm: number;
  readonly turnDeg: 0 | 90;
}

/**
 * A bar across and one up from a common corner, as long as the room allows, in steps of 50 mm, at least 100; 0, 100 mm
 * and 4 in have the longest ticks. `words` stand below, line by line.
 */
export function checkBars(room: Box, words: readonly string[]): readonly Item[] {
  const corner: PaperPoint = [room.minX + CORNER_MM.right, room.maxY - CORNER_MM.up];
  const across: Bar = {
    from: corner,
    along: [1, 0],
    aside: [0, -1],
    lengthMm: longest(room.maxX - corner[0]),
    turnDeg: 0,
  };
  const up: Bar = {
    from: [room.minX + 7, corner[1]],
    along: [0, -1],
    aside: [1, 0],
    lengthMm: longest(corner[1] - room.minY),
    turnDeg: 90,
  };
  const below = words.map((line, index) =>
    text([corner[0], room.maxY - 3.6 + index * 4.4], line, { sizeMm: LETTERING_MM }),
  );
  return [group("check bar across", barItems(across)), group("check bar up", barItems(up)), ...below];
}

function longest(roomMm: number): number {
  return Math.max(CHECK_MM, Math.floor((roomMm - END_ROOM_MM) / LONG_STEP_MM) * LONG_STEP_MM);
}

function barItems(bar: Bar): readonly Item[] {
  const at = (alongMm: number, asideMm: number): PaperPoint => [
    bar.from[0] + bar.along[0] * alongMm + bar.aside[0] * asideMm,
    bar.from[1] + bar.along[1] * alongMm + bar.aside[1] * asideMm,
  ];
  const tick = (placeMm: number, asideMm: number): Item =>
    stroke(openPath([at(placeMm, 0), at(placeMm, asideMm)]));
  const items: Item[] = [stroke(openPath([at(0, 0), at(bar.lengthMm, 0)]))];
  for (let place = 0; place <= bar.lengthMm; place += STEP_MM) {
    items.push(tick(place, place % LONG_STEP_MM === 0 ? LONG_TICK_MM : SHORT_TICK_MM));
  }
  for (let inches = 0; inches <= CHECK_IN; inches++) {
    items.push(tick(inches * INCH_MM, inches % CHECK_IN === 0 ? -LONG_TICK_MM : -SHORT_TICK_MM));
  }
  // Letters that read upwards have their feet on the right, so beside an upright bar near and far change places.
  const near = LONG_TICK_MM + 0.8;
  const far = near + ASCENT_RATIO * LETTERING_MM;
  const [beside, behind] = bar.turnDeg === 0 ? [near, -far] : [far, -near];
  const label = (placeMm: number, asideMm: number, words: string): Text => ({
    ...text(at(placeMm, asideMm), words, { sizeMm: LETTERING_MM, anchor: "middle" }),
    turnDeg: bar.turnDeg,
  });
  for (let place = 0; place <= bar.lengthMm; place += LONG_STEP_MM) {
    items.push(label(place, beside, place === CHECK_MM ? "100 mm" : String(place)));
  }
  items.push(label(CHECK_IN * INCH_MM, behind, "4 in"));
  return items;
}
