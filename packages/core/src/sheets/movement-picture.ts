/** A board's end before and after, with its growth rings the way it was sawn; and what moisture wood comes to in air. */
import type { Point } from "../curve/index.ts";
import { type LengthUnit, writerFor } from "../measure/index.ts";
import { equilibriumMoisture, type Moisture, type Movement, type Sawn } from "../timber/index.ts";
import { linearDimension } from "./dimension.ts";
import {
  circlePath,
  closedPath,
  type Drawing,
  fill,
  group,
  openPath,
  type PaperPoint,
  stroke,
  text,
} from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { arrowItems, boundsOfPoints, sketch, spotsRound } from "./fit-sketch.ts";
import { growthRings } from "./hatch.ts";
import { figureMm, LEAST_LETTERING_MM } from "./lettering.ts";
import { FAINT_INK, GAUGE_LINE, INK, MOVEMENT, WOOD_TINT } from "./palette.ts";

export interface SeasonSaid {
  readonly sawn: Sawn;
  readonly fromPercent: number;
  readonly toPercent: number;
}

/** Movement is drawn so many times as large, or nothing would be seen. */
const DRAWN_TIMES = 8;
/** Of the width, where no thickness was given. */
const THICK_RATIO = 0.4;

export function drawMovement(answer: Movement, season: SeasonSaid, options: FitPictureOptions): Drawing {
  const { sawn, fromPercent, toPercent } = season;
  const width = answer.width;
  return fitPage(
    {
      title: `${answer.timber}, ${sawn} sawn, from ${percent(fromPercent)} to ${percent(toPercent)}`,
      notes: [
        `${width.direction === "tangential" ? "The width runs along the growth rings" : "The width runs across the growth rings"}. Drying shrinks, damp swells. The wide line is the wood before, the dashed one after, its movement drawn many times as large.`,
      ],
    },
    [{ heightMm: 100, panels: [boardPanel(answer, sawn, options.unit)] }],
    options,
  );
}

function percent(value: number): string {
  return `${tenths(value)} %`;
}

function tenths(value: number): string {
  return String(Number(value.toFixed(1))).replace("-", "\u2212");
}

export function boardPanel(
  answer: Movement,
  sawn: Sawn,
  unit: LengthUnit,
  heading = "The end of the board",
): PagePanel {
  const write = writerFor(unit);
  const { width, thickness } = answer;
  return {
    heading,
    draw: (box) => {
      const thickMm = thickness?.beforeMm ?? width.beforeMm * THICK_RATIO;
      const thickStrain = thickness?.strainRatio ?? 0;
      const times = Math.min(
        DRAWN_TIMES,
        0.4 / Math.max(Math.abs(width.strainRatio), Math.abs(thickStrain), 0.05),
      );
      const before = rectangle(width.beforeMm, thickMm);
      const after = rectangle(
        width.beforeMm * (1 + times * width.strainRatio),
        thickMm * (1 + times * thickStrain),
      );
      const bounds = boundsOfPoints([...before, ...after]);
      const view = sketch({ bounds, box, marginMm: 24 });
      const onPaper = before.map(view.at);
      const { minX, maxX, minY, maxY } = { ...boxOfPaper(onPaper) };
      // The tree's middle lies below a flat-sawn board and far to the side of a quarter-sawn one.
      const pith: PaperPoint =
        sawn === "flat"
          ? [(minX + maxX) / 2, maxY + (maxY - minY) * 1.6]
          : [minX - (maxX - minX) * 2.5, (minY + maxY) / 2];
      view.draw("wood", [
        fill([closedPath(onPaper)], WOOD_TINT),
        group("grain", growthRings([onPaper], pith)),
        stroke(closedPath(onPaper), { weight: "wide" }),
      ]);
      view.draw("after", [stroke(closedPath(after.map(view.at)), { line: "dashed", colour: MOVEMENT })]);
      const sizeMm = figureMm(unit);
      const across = linearDimension({
        from: [minX, maxY],
        to: [maxX, maxY],
        aside: [0, 1],
        offMm: 8,
        sizeMm,
      });
      view.draw("dimension", [across.items]);
      view.label(
        `${write.length(width.beforeMm)} before, ${write.length(width.afterMm)} after`,
        across.spots,
        {
          sizeMm,
        },
      );
      const grows = width.changeMm > 0 ? "wider" : "narrower";
      view.label(
        width.changeMm === 0 ? "no change" : `${changeText(width.changeMm, unit)} ${grows}`,
        [{ at: [(minX + maxX) / 2, Math.min(minY, view.at(after[2] as Point)[1]) - 6], anchor: "middle" }],
        { bold: true, sizeMm: sizeMm * 1.2 },
      );
      if (thickness !== null) {
        const up = linearDimension({
          from: [minX, maxY],
          to: [minX, minY],
          aside: [-1, 0],
          offMm: 7,
          sizeMm,
        });
        view.draw("dimension", [up.items]);
        view.label(`${write.length(thickness.beforeMm)}`, up.spots, { sizeMm });
        view.label(
          `${changeText(thickness.changeMm, unit)} ${thickness.changeMm > 0 ? "thicker" : "thinner"}`,
          [{ at: [Math.max(maxX, view.at(after[1] as Point)[0]) + 2, (minY + maxY) / 2], anchor: "start" }],
          { bold: true },
        );
      }
      return view.items();
    },
  };
}

/** A change to the hundredth of a millimetre or the thousandth of an inch: what a rule cannot show. */
export function changeText(changeMm: number, unit: LengthUnit): string {
  const size = Math.abs(changeMm);
  return unit === "mm" ? `${size.toFixed(2)}\u00a0mm` : `${(size / 25.4).toFixed(3)}\u2033`;
}

function rectangle(widthMm: number, thickMm: number): readonly Point[] {
  return [
    { x: -widthMm / 2, y: 0 },
    { x: widthMm / 2, y: 0 },
    { x: widthMm / 2, y: thickMm },
    { x: -widthMm / 2, y: thickMm },
  ];
}

function boxOfPaper(points: readonly PaperPoint[]): {
  readonly minX: number;
  readonly maxX: number;
  readonly minY: number;
  readonly maxY: number;
} {
  const xs = points.map(([x]) => x);
  const ys = points.map(([, y]) => y);
  return { minX: Math.min(...xs), maxX: Math.max(...xs), minY: Math.min(...ys), maxY: Math.max(...ys) };
}

const CURVE_POINTS = 100;
const MOST_MOISTURE = 30;

export function drawMoisture(answer: Moisture, options: FitPictureOptions): Drawing {
  const { temperatureC, humidityPercent, moisturePercent } = answer;
  const temperature = `${tenths(temperatureC)} °C (${tenths((temperatureC * 9) / 5 + 32)} °F)`;
  return fitPage(
    {
      title: `${percent(moisturePercent)} moisture at ${tenths(temperatureC)} °C and ${percent(humidityPercent)} humidity`,
      notes: [
        "What wood comes to that has lain long enough in this air: its water as a share of its ovendry weight.",
      ],
    },
    [{ heightMm: 120, panels: [curvePanel(answer, temperature)] }],
    options,
  );
}

function curvePanel(
  { temperatureC, humidityPercent, moisturePercent }: Moisture,
  temperature: string,
): PagePanel {
  return {
    heading: `The air at ${temperature}`,
    draw: (box) => {
      const view = sketch({
        bounds: { minX: 0, minY: 0, maxX: 100, maxY: 60 },
        box: { ...box, minX: box.minX + 6, maxY: box.maxY - 6 },
        marginMm: 9,
      });
      const at = (humidity: number, moisture: number): PaperPoint =>
        view.at({ x: humidity, y: (moisture * 60) / MOST_MOISTURE });
      const curve: PaperPoint[] = [];
      for (let step = 0; step <= CURVE_POINTS; step++) {
        const humidity = (step * 100) / CURVE_POINTS;
        const here = equilibriumMoisture({ celsius: temperatureC }, humidity);
        if (here.ok && here.value.moisturePercent <= MOST_MOISTURE)
          curve.push(at(humidity, here.value.moisturePercent));
      }
      const figures = [];
      for (let mark = 0; mark <= 100; mark += 20) {
        const foot = at(mark, 0);
        view.draw("scale", [
          stroke(openPath([foot, at(mark, MOST_MOISTURE)]), { weight: "hatch", colour: FAINT_INK }),
        ]);
        figures.push(
          text([foot[0], foot[1] + 5], String(mark), { sizeMm: LEAST_LETTERING_MM, anchor: "middle" }),
        );
      }
      for (let mark = 0; mark <= MOST_MOISTURE; mark += 5) {
        const foot = at(0, mark);
        view.draw("scale", [stroke(openPath([foot, at(100, mark)]), { weight: "hatch", colour: FAINT_INK })]);
        figures.push(
          text([foot[0] - 2, foot[1] + 1.2], String(mark), { sizeMm: LEAST_LETTERING_MM, anchor: "end" }),
        );
      }
      const foot = at(50, 0);
      figures.push(
        text([foot[0], foot[1] + 10.5], "humidity of the air, %", {
          sizeMm: LEAST_LETTERING_MM,
          anchor: "middle",
        }),
      );
      const corner = at(0, MOST_MOISTURE);
      figures.push(
        text([corner[0] - 4, corner[1] - 3], "moisture in the wood, %", { sizeMm: LEAST_LETTERING_MM }),
      );
      view.draw("axes", [
        stroke(openPath([at(0, MOST_MOISTURE), at(0, 0), at(100, 0)]), { weight: "wide" }),
        stroke(openPath(curve), { weight: "wide" }),
      ]);
      const found = at(humidityPercent, Math.min(moisturePercent, MOST_MOISTURE));
      view.draw("found", [
        stroke(openPath([at(humidityPercent, 0), found]), { weight: "gauge", colour: GAUGE_LINE }),
        ...arrowItems(found, [at(0, 0)[0], found[1]]),
        fill([circlePath(found, 1.2)], INK),
      ]);
      view.label(
        percent(moisturePercent),
        [{ at: [found[0] + 3, found[1] + 5], anchor: "start" }, ...spotsRound(found, 4)],
        { bold: true, sizeMm: 5 },
      );
      return [...view.items(), group("figures", figures)];
    },
  };
}
