/** Pieces marked along real sticks, as on a rod: every place measured from the stick's left end. */
import type { MarkedPiece, MarkedStick, SharedOut } from "../making/index.ts";
import { formatLength, type LengthUnit, writerFor } from "../measure/index.ts";
import {
  closedPath,
  type Drawing,
  fill,
  group,
  type Item,
  openPath,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { type FitPictureOptions, fitPage, innerWidthMm, type PageRow } from "./fit-page.ts";
import { fitsIn, sketch, spotOn, wasteItems, woodItems } from "./fit-sketch.ts";
import type { Box } from "./flat-path.ts";
import { wasteLines } from "./hatch.ts";
import { LABEL_MM, LEAST_LETTERING_MM } from "./lettering.ts";
import { GAUGE_LINE, INK } from "./palette.ts";
import { printable } from "./printable-text.ts";
import { shortened } from "./text-width.ts";

export function drawRod(answer: SharedOut, name: string, options: FitPictureOptions): Drawing {
  const write = writerFor(options.unit);
  const { sticksUsed, neighbours, sticks, allowances } = answer;
  const longestMm = Math.max(...sticks.map((stick) => stick.lengthMm));
  const perMm = (innerWidthMm(options) - 1) / longestMm;
  const count = `${sticksUsed.count} ${sticksUsed.count === 1 ? "stick" : "sticks"}`;
  const together =
    neighbours.meetings === 0
      ? ""
      : ` ${neighbours.together} of ${neighbours.meetings} meeting ends lie side by side: a hook joins them.`;
  return fitPage(
    {
      title: `${name}: ${count}`,
      notes: [
        `Places are measured from the left end to where each piece is sawn off, ${write.length(allowances.trimMm)} of trim at each end of it; saw lines are ${write.length(allowances.kerfMm)} wide. Hatched: ends lost to planing, bad places and offcuts.${together}`,
      ],
    },
    sticks.map((stick): PageRow => stickRow(stick, perMm, options.unit)),
    options,
  );
}

function stickRow(stick: MarkedStick, perMm: number, unit: LengthUnit): PageRow {
  const write = writerFor(unit);
  return {
    heightMm: 40,
    panels: [
      {
        heading: `${printable(stick.name)}, ${write.length(stick.lengthMm)}`,
        draw: (box) => stickItems(stick, perMm, unit, box),
      },
    ],
  };
}

/** On a rod the unit stands in the stick's heading, not at every place. */
function placeText(placeMm: number, unit: LengthUnit): string {
  return unit === "in"
    ? formatLength(placeMm, { unit: "in", sides: "none" })
    : formatLength(placeMm, { unit: "mm" }).replace(/\s*mm$/, "");
}

const BAR_MM = 11;

function stickItems(stick: MarkedStick, perMm: number, unit: LengthUnit, box: Box): readonly Item[] {
  const top = box.minY + 6;
  const bottom = top + BAR_MM;
  const at = (placeMm: number): number => box.minX + placeMm * perMm;
  const bar = (fromMm: number, toMm: number): readonly PaperPoint[] => [
    [at(fromMm), top],
    [at(toMm), top],
    [at(toMm), bottom],
    [at(fromMm), bottom],
  ];
  const view = sketch({ bounds: { minX: 0, minY: 0, maxX: 1, maxY: 1 }, box, marginMm: 0, scaleRatio: 1 });
  for (const { fromMm, toMm } of [...stick.ends, ...stick.offcuts]) {
    if (toMm > fromMm) view.draw("lost", wasteItems(bar(fromMm, toMm)));
  }
  for (const piece of stick.pieces) view.draw("piece", pieceItems(piece, bar));
  for (const { fromMm, toMm } of stick.kerfs) view.draw("kerf", [fill([closedPath(bar(fromMm, toMm))], INK)]);
  for (const { fromMm, toMm } of stick.badPlaces) {
    const place = bar(fromMm, toMm);
    const mirrored = place.map(([x, y]): PaperPoint => [-x, y]);
    const crossed = wasteLines([mirrored], []).flatMap((item) =>
      item.kind === "stroke"
        ? [
            stroke(
              openPath(
                [item.path.start, ...item.path.steps.map(({ to }) => to)].map(
                  ([x, y]): PaperPoint => [-x, y],
                ),
              ),
              { weight: "hatch" },
            ),
          ]
        : [],
    );
    view.draw("bad place", [...wasteItems(place), group("waste pattern", crossed)]);
  }
  view.draw("outline", [stroke(closedPath(bar(0, stick.lengthMm)), { weight: "wide" })]);
  const figures: Item[] = [];
  for (const piece of stick.pieces) {
    const wide = (piece.toMm - piece.fromMm) * perMm - 1;
    const name = printable(piece.name);
    const words = fitsIn(name, wide) ? name : fitsIn(String(piece.number), wide) ? String(piece.number) : "";
    if (words === "") continue;
    const spot = spotOn([at((piece.fromMm + piece.toMm) / 2), (top + bottom) / 2 - 2]);
    figures.push(text(spot.at, words, { sizeMm: LABEL_MM, anchor: "middle", bold: true }));
    const long = placeText(piece.toMm - piece.fromMm, unit);
    if (fitsIn(long, wide)) {
      figures.push(
        text([spot.at[0], spot.at[1] + 4.4], long, { sizeMm: LEAST_LETTERING_MM, anchor: "middle" }),
      );
    }
  }
  view.draw("names", figures);
  view.draw("neighbours", hooks(stick, at, top));
  const places = placesOf(stick);
  view.draw(
    "places",
    places.map((placeMm) =>
      stroke(
        openPath([
          [at(placeMm), bottom],
          [at(placeMm), bottom + 2.4],
        ]),
        { weight: "gauge", colour: GAUGE_LINE },
      ),
    ),
  );
  for (const placeMm of places) {
    const rows = [6.2, 10.6, 15].map((down) => ({
      at: [at(placeMm), bottom + down] as const,
      anchor: "middle" as const,
    }));
    view.label(
      placeText(placeMm, unit),
      [
        ...rows,
        { at: [at(placeMm), bottom + 6.2], anchor: "start" },
        { at: [at(placeMm), bottom + 6.2], anchor: "end" },
      ],
      {
        sizeMm: LEAST_LETTERING_MM,
      },
    );
  }
  for (const bad of stick.badPlaces) {
    const why = shortened(printable(bad.why ?? "bad place"), LEAST_LETTERING_MM, 40);
    view.label(why, [{ at: [at((bad.fromMm + bad.toMm) / 2), top - 1.6], anchor: "middle" }], {
      sizeMm: LEAST_LETTERING_MM,
    });
  }
  return view.items();
}

/** A piece with its trim marked off by thin lines. */
function pieceItems(
  piece: MarkedPiece,
  bar: (fromMm: number, toMm: number) => readonly PaperPoint[],
): readonly Item[] {
  const [start, end] = [bar(piece.fromMm, piece.fromMm), bar(piece.toMm, piece.toMm)];
  return [
    ...woodItems(bar(piece.roughFromMm, piece.roughToMm), "along the grain"),
    ...[start, end].map((line) =>
      stroke(openPath([line[0] as PaperPoint, line[3] as PaperPoint]), { line: "dashed", weight: "hatch" }),
    ),
  ];
}

/** Where a saw line begins or ends: each piece's rough ends. */
function placesOf(stick: MarkedStick): readonly number[] {
  const all = stick.pieces.flatMap(({ roughFromMm, roughToMm }) => [roughFromMm, roughToMm]);
  return [...new Set(all)].sort((a, b) => a - b);
}

function hooks(stick: MarkedStick, at: (placeMm: number) => number, top: number): readonly Item[] {
  const inOrder = [...stick.pieces].sort((a, b) => a.fromMm - b.fromMm);
  return inOrder.flatMap((piece, index) => {
    const before = inOrder[index - 1];
    if (before === undefined || piece.follows !== "its neighbour") return [];
    const left = at(before.toMm) - 3;
    const right = at(piece.fromMm) + 3;
    return [
      stroke({
        start: [left, top - 0.6],
        steps: [{ to: [right, top - 0.6], bulge: -0.6 }],
        closed: false,
      }),
    ];
  });
}
