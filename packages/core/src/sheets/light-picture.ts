/** A moulding in the light: its section as it hangs with shade and shadow along it, and beside it what is seen from the front. */
import type { SectionInLight } from "../light/index.ts";
import { formatDeg } from "../measure/index.ts";
import { type Drawing, group } from "./drawing.ts";
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { woodItems } from "./fit-sketch.ts";
import { carriedAcross, lightArrows, rayItems, stateBands, wallItems } from "./light-section.ts";
import { bandLabels, stripItems } from "./light-strip.ts";
import { type Layout, type LitVersion, layoutOf, outlinePoints, viewIn } from "./light-view.ts";

/** One version, or two to be compared: the same scale, side by side. */
export function drawLight(versions: readonly LitVersion[], options: FitPictureOptions): Drawing {
  const first = versions[0]?.lit;
  const layout = layoutOf(versions, options);
  return fitPage(
    {
      // Two names are too long for one line; each stands over its own picture.
      title: versions.length > 1 ? "In the same light" : `In the light: ${versions[0]?.name ?? ""}`,
      notes: [
        ...(first === undefined ? [] : [lampWords(first)]),
        `Along the section a black band marks cast shadow, a grey one a face turned from the light; dashed rays end the shadows. The strip is what is seen from the front. ${options.unit === "mm" ? "Millimetres." : "Inches."}`,
      ],
    },
    [
      {
        heightMm: layout.heightMm,
        panels: versions.map((version) => panelOf(version, layout, options)),
      },
    ],
  );
}

/** Where the lamp stands, in words: as drawn, and truly. */
export function lampWords({ lamp, trueHeightDeg, hanging }: SectionInLight): string {
  const { heightDeg, directionDeg } = lamp;
  const height =
    heightDeg === 0 ? "level" : `${degrees(Math.abs(heightDeg))} ${heightDeg > 0 ? "down" : "up"}`;
  const side =
    directionDeg === 0
      ? "from straight in front"
      : `${degrees(Math.abs(directionDeg))} from the ${directionDeg > 0 ? "left" : "right"} of straight in front`;
  const truly = `the lamp stands ${degrees(Math.abs(trueHeightDeg))} ${trueHeightDeg < 0 ? "below" : "above"} level`;
  return `Light as it is drawn: ${height} on the end of a level run, ${side} in plan; truly ${truly}. The run is ${hanging.run}, its face towards you.`;
}

/** How it hangs: which edge goes where, and how the back stands. */
export function hangingWords({ hanging }: SectionInLight): string {
  const { run, firstEdge, springFromWallDeg } = hanging;
  const edge = `${firstEdge} ${run === "level" ? "up" : "on the left"}`;
  if (springFromWallDeg === 0) return `${edge}, back flat against the wall`;
  const way = springFromWallDeg > 0 ? "" : run === "level" ? ", the foot forward" : ", the right forward";
  return `${edge}, back ${degrees(Math.abs(springFromWallDeg))} from the wall${way}`;
}

function degrees(angleDeg: number): string {
  return formatDeg(angleDeg, { stepDeg: 0.25 });
}

function panelOf({ name, lit }: LitVersion, layout: Layout, options: FitPictureOptions): PagePanel {
  return {
    heading: `${name}: ${hangingWords(lit)}`,
    draw: (box) => {
      const view = viewIn(box, lit, layout);
      return [
        group("wall", wallItems(view)),
        group("wood", woodItems(outlinePoints(view), "end grain")),
        group("states", stateBands(view)),
        group("rays", rayItems(view)),
        group("carried across", carriedAcross(view)),
        group("light", lightArrows(view)),
        group("strip", stripItems(view)),
        group("labels", bandLabels(view, box, options)),
      ];
    },
  };
}
