/** A section built up of several sticks: its parts drawn apart, with the order they come together; the runner-up beside. */
import { flattenPiece, type Point, type Ring } from "../curve/index.ts";
import type { BuiltUp, BuiltUpWay } from "../making/index.ts";
import { FLATTEN_MM, type LengthUnit, writerFor } from "../measure/index.ts";
import { type PagePanel, type PageRow, wordLines } from "./fit-page.ts";
import { boundsOfPoints, sketch, spotOn, spotsRound, woodItems } from "./fit-sketch.ts";

/** The best way alone where there is no other; else the best above, the runner-up below it. */
export function builtUpRows({ best, runnerUp }: BuiltUp, unit: LengthUnit): readonly PageRow[] {
  const write = writerFor(unit);
  const wood = ({ parts, woodMm2 }: BuiltUpWay): string =>
    `${parts.length === 1 ? "one part" : `${parts.length} parts`}, ${write.area(woodMm2)} of section bought`;
  const row = (way: BuiltUpWay, heading: string): PageRow => ({
    heightMm: 70 + 6.5 * way.parts.length,
    panels: [partsPanel(way, heading, unit)],
  });
  return [
    row(best, `Built up with least wood: ${wood(best)}`),
    ...(runnerUp === null ? [] : [row(runnerUp, `The runner-up: ${wood(runnerUp)}`)]),
  ];
}

/** The parts drawn apart, numbered, with the order they come together. */
function partsPanel(built: BuiltUpWay, heading: string, unit: LengthUnit): PagePanel {
  const write = writerFor(unit);
  return {
    heading,
    draw: (box) => {
      const room = { ...box, maxY: box.maxY - 6.5 * built.parts.length - 2 };
      const outlines = built.parts.map(({ section, at, number }) => ({
        number,
        points: pointsOf(section.outline).map(({ x, y }) => ({ x: x + at.x, y: y + at.y })),
      }));
      const whole = boundsOfPoints(outlines.flatMap(({ points }) => points));
      const middle = { x: (whole.minX + whole.maxX) / 2, y: (whole.minY + whole.maxY) / 2 };
      // Each part moves away from the middle by a share of where it lies, so that no two close up again.
      const apart = outlines.map(({ number, points }) => {
        const own = boundsOfPoints(points);
        const dx = ((own.minX + own.maxX) / 2 - middle.x) * APART_RATIO;
        const dy = ((own.minY + own.maxY) / 2 - middle.y) * APART_RATIO;
        return { number, points: points.map(({ x, y }) => ({ x: x + dx, y: y + dy })) };
      });
      const view = sketch({
        bounds: boundsOfPoints(apart.flatMap(({ points }) => points)),
        box: room,
        marginMm: 4,
      });
      for (const { number, points } of apart) {
        view.draw("part", woodItems(points.map(view.at), "end grain"));
        const own = boundsOfPoints(points);
        const centre = view.at({ x: (own.minX + own.maxX) / 2, y: (own.minY + own.maxY) / 2 });
        view.label(String(number), [spotOn(centre), ...spotsRound(centre, 4)], { bold: true, sizeMm: 5 });
      }
      const words = built.gluing.map(({ part, onto, faceMm, hold }) => {
        const own = built.parts.find(({ number }) => number === part);
        const size =
          own === undefined
            ? ""
            : `${write.length(own.planed.widthMm)} × ${write.length(own.planed.thicknessMm)}`;
        return onto.length === 0
          ? `Part ${part}, ${size}: first.`
          : `Part ${part}, ${size}: ${hold} to ${onto.join(" and ")} on ${write.length(faceMm)} of face.`;
      });
      return [...view.items(), ...wordLines(words, { ...box, minY: room.maxY + 1 })];
    },
  };
}

const APART_RATIO = 0.25;

function pointsOf(ring: Ring): readonly Point[] {
  return ring.pieces.flatMap((piece) => flattenPiece(piece, FLATTEN_MM).slice(1));
}
