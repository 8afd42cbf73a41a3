/** A moulding in the light: its section as it hangs with shade and shadow along it, and beside it what is seen from the front. */
import { circleOf, flattenPiece, type Piece, type Point } from "../curve/index.ts";
import { type LightState, type SectionInLight, type Stretch, tonesOf } from "../light/index.ts";
import { FLATTEN_MM, formatDeg, SAME_POINT_MM, writerFor } from "../measure/index.ts";
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
import { type FitPictureOptions, fitPage, type PagePanel } from "./fit-page.ts";
import { arrowItems, groundItems, woodItems } from "./fit-sketch.ts";
import { type Box, boxOf } from "./flat-path.ts";
import { CENTRED_RATIO } from "./labels.ts";
import { figureMm, LABEL_MM } from "./lettering.ts";
import { type Colour, colour, FAINT_INK, INK } from "./palette.ts";
import { textWidthMm } from "./text-width.ts";

/** A moulding in its light, with the name it is told by. */
export interface LitVersion {
  readonly name: string;
  readonly lit: SectionInLight;
}

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

/** What stands where, on paper: room for the section, the gap to the strip, the strip, and its words. */
interface Layout {
  readonly run: "level" | "upright";
  readonly scaleRatio: number;
  readonly heightMm: number;
  readonly stripMm: number;
  readonly projectionMm: number;
}

const PAGE_INNER_MM = 174;
const PANEL_GAP_MM = 5;
const HEADING_MM = 13;
const WALL_MM = 4;
const GAP_MM = 10;
const LEADER_MM = 5;
const STRIP_MM = { alone: 44, beside: 15, upright: 30 } as const;
/** Wall shown beyond an edge that throws a shadow on it. */
const MOST_WALL_MM = 17;
const OVER_SHADOW_MM = 2.5;
const ENDS_MM = 13;
const MOST_RATIO = 3;
const MOST_TALL_MM = 150;

function layoutOf(versions: readonly LitVersion[], options: FitPictureOptions): Layout {
  const run = versions[0]?.lit.hanging.run ?? "level";
  const count = Math.max(1, versions.length);
  const panelMm = (PAGE_INNER_MM - PANEL_GAP_MM * (count - 1)) / count;
  const widthMm = Math.max(...versions.map(({ lit }) => lit.widthMm), SAME_POINT_MM);
  const projectionMm = Math.max(...versions.map(({ lit }) => lit.projectionMm), SAME_POINT_MM);
  const wordsMm = Math.max(
    ...versions
      .flatMap(({ lit }) => labelledBands(lit, options))
      .map(({ words }) => textWidthMm(words, figureMm(options.unit))),
    0,
  );
  if (run === "upright") {
    const scaleRatio = Math.min((panelMm - 2 * ENDS_MM) / widthMm, MOST_RATIO, 70 / projectionMm);
    const heightMm =
      HEADING_MM + WALL_MM + projectionMm * scaleRatio + GAP_MM + STRIP_MM.upright + LEADER_MM + wordsMm + 1;
    return { run, scaleRatio, heightMm, stripMm: STRIP_MM.upright, projectionMm };
  }
  const stripMm = count > 1 ? STRIP_MM.beside : STRIP_MM.alone;
  const room = panelMm - WALL_MM - GAP_MM - stripMm - LEADER_MM - wordsMm;
  const scaleRatio = Math.min(room / projectionMm, (MOST_TALL_MM - 2 * ENDS_MM) / widthMm, MOST_RATIO);
  const below = Math.max(...versions.map(({ lit }) => wallMm(lit.onWall.beyondLastMm, scaleRatio)));
  const heightMm = HEADING_MM + ENDS_MM + widthMm * scaleRatio + Math.max(ENDS_MM, below + 2);
  return { run, scaleRatio, heightMm, stripMm, projectionMm };
}

/** Millimetres of wall on paper beyond an edge: none where no shadow falls on it. */
function wallMm(beyondMm: number, scaleRatio: number): number {
  return beyondMm <= SAME_POINT_MM ? 0 : Math.min(beyondMm * scaleRatio + OVER_SHADOW_MM, MOST_WALL_MM);
}

/** One panel's places: how far out of the wall, and how far from the first edge, both on paper. */
interface View {
  readonly at: (outMm: number, acrossMm: number) => PaperPoint;
  readonly scaleRatio: number;
  readonly lit: SectionInLight;
  readonly layout: Layout;
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

function viewIn(box: Box, lit: SectionInLight, layout: Layout): View {
  const { scaleRatio, run } = layout;
  const at =
    run === "level"
      ? (out: number, across: number): PaperPoint => [
          box.minX + WALL_MM + out * scaleRatio,
          box.minY + ENDS_MM + across * scaleRatio,
        ]
      : (out: number, across: number): PaperPoint => [
          (box.minX + box.maxX) / 2 + (across - lit.widthMm / 2) * scaleRatio,
          box.minY + WALL_MM + out * scaleRatio,
        ];
  return { at, scaleRatio, lit, layout };
}

const placed = ({ at, lit }: View, { x, y }: Point): PaperPoint => at(x, lit.widthMm - y);

function pointsOf(view: View, pieces: readonly Piece[]): readonly PaperPoint[] {
  return pieces.flatMap((piece, index) => {
    const points = flattenPiece(piece, FLATTEN_MM / view.scaleRatio);
    return (index === 0 ? points : points.slice(1)).map((place) => placed(view, place));
  });
}

function outlinePoints(view: View): readonly PaperPoint[] {
  return pointsOf(view, view.lit.outline).slice(1);
}

function wallItems({ at, lit, layout: { run }, scaleRatio }: View): readonly Item[] {
  const over = (beyondMm: number): number => Math.max(4, wallMm(beyondMm, scaleRatio)) / scaleRatio;
  const first = at(0, -over(lit.onWall.beyondFirstMm));
  const last = at(0, lit.widthMm + over(lit.onWall.beyondLastMm));
  // The wall's strokes stand behind it, left of the way.
  return run === "level" ? groundItems(last, first) : groundItems(first, last);
}

const BAND_MM = 1;
const BAND_COLOURS: Readonly<Record<LightState, Colour | null>> = {
  light: null,
  shade: FAINT_INK,
  shadow: INK,
};

/** A band off the face along everything that lies in shade or shadow. */
function stateBands(view: View): readonly Item[] {
  return view.lit.stretches.flatMap((stretch): readonly Item[] => {
    const bandColour = BAND_COLOURS[stretch.state];
    return bandColour === null ? [] : bandsOf(view, stretch).map((path) => fill([path], bandColour));
  });
}

/** One shape for each line and arc: neighbours may lie over each other at hollow corners. */
function bandsOf(view: View, { pieces }: Stretch) {
  return pieces.flatMap((piece) => {
    const points = pointsOf(view, [piece]);
    const offMm = offsetMm(piece, view.scaleRatio);
    const outer = points.map((place, index) => {
      const before = points[Math.max(0, index - 1)] as PaperPoint;
      const after = points[Math.min(points.length - 1, index + 1)] as PaperPoint;
      const length = Math.hypot(after[0] - before[0], after[1] - before[1]) || 1;
      // From the first edge on the wood lies to the right as seen of a level run, to the left of an upright one.
      const side = (view.layout.run === "level" ? offMm : -offMm) / length;
      return [place[0] + (after[1] - before[1]) * side, place[1] - (after[0] - before[0]) * side] as const;
    });
    return points.length < 2 ? [] : [closedPath([...points, ...outer.reverse()])];
  });
}

/** The band's width, less in hollows too tight for it. */
function offsetMm(piece: Piece, scaleRatio: number): number {
  return piece.kind === "line" ? BAND_MM : Math.min(BAND_MM, circleOf(piece).radiusMm * scaleRatio);
}

function rayItems(view: View): readonly Item[] {
  const { lit } = view;
  const { beyondFirstMm, beyondLastMm, firstCaster, lastCaster } = lit.onWall;
  const onWall = [
    ...(isShown(beyondFirstMm, view)
      ? [{ caster: firstCaster, end: { x: 0, y: lit.widthMm + beyondFirstMm } }]
      : []),
    ...(isShown(beyondLastMm, view) ? [{ caster: lastCaster, end: { x: 0, y: -beyondLastMm } }] : []),
  ];
  return [...lit.shadowEnds, ...onWall].map(({ caster, end }) =>
    stroke(openPath([placed(view, caster), placed(view, end)]), { line: "dashed" }),
  );
}

/** A shadow on the wall whose end lies within the wall that is shown. */
function isShown(beyondMm: number, { scaleRatio }: View): boolean {
  return beyondMm > SAME_POINT_MM && beyondMm * scaleRatio <= MOST_WALL_MM;
}

/** Narrow lines from where a band begins on the section to where it begins on the strip. */
function carriedAcross(view: View): readonly Item[] {
  const { lit, at, layout } = view;
  const edge = stripStart(view);
  return seenBands(lit)
    .slice(1)
    .map(({ startMm, outMm }) => {
      const from = at(outMm + (BAND_MM + 0.6) / view.scaleRatio, startMm);
      const to: PaperPoint = layout.run === "level" ? [edge, from[1]] : [from[0], edge];
      return stroke(openPath([from, to]), { weight: "hatch", colour: FAINT_INK });
    });
}

const ARROW_MM = 7;
const ARROWS_APART_MM = 2.6;

/** Three arrows that come in at the corner the lamp stands at, clear of the wood. */
function lightArrows(view: View): readonly Item[] {
  const { lit, at, layout } = view;
  const { right, up, out } = lit.direction;
  const along = layout.run === "level" ? -up : right;
  const length = Math.hypot(out, along);
  const way: PaperPoint =
    layout.run === "level" ? [out / length, along / length] : [along / length, out / length];
  const corner = at(lit.projectionMm, along >= 0 ? 0 : lit.widthMm);
  return [-1, 0, 1].flatMap((step) => {
    const tip: PaperPoint = [
      corner[0] - way[0] * 2 - way[1] * step * ARROWS_APART_MM,
      corner[1] - way[1] * 2 + way[0] * step * ARROWS_APART_MM,
    ];
    return arrowItems([tip[0] - way[0] * ARROW_MM, tip[1] - way[1] * ARROW_MM], tip);
  });
}

/** The eye answers to light about as a screen does; this is the exponent of both. */
const EYE_EXPONENT = 1 / 2.2;

function toneColour(brightnessRatio: number): Colour {
  return colour("black", 1 - Math.max(0, Math.min(1, brightnessRatio)) ** EYE_EXPONENT);
}

/** What is seen from the front, with the wall beside it where a shadow falls on that. */
function stripItems(view: View): readonly Item[] {
  const { lit } = view;
  const { beyondFirstMm, beyondLastMm } = lit.onWall;
  const { ambientRatio } = lit.lamp;
  // The wall looks straight at the room.
  const wall = ambientRatio + (1 - ambientRatio) * -lit.direction.out;
  const beyond = (edgeMm: number, beyondMm: number, way: 1 | -1): readonly Item[] => {
    const shownMm = wallMm(beyondMm, view.scaleRatio) / view.scaleRatio;
    if (shownMm === 0) return [];
    return [
      bar(view, edgeMm, edgeMm + way * shownMm, wall),
      bar(view, edgeMm, edgeMm + way * Math.min(beyondMm, shownMm), ambientRatio),
      ...wallWord(view, edgeMm, edgeMm + way * shownMm),
    ];
  };
  return [
    ...beyond(0, beyondFirstMm, -1),
    ...beyond(lit.widthMm, beyondLastMm, 1),
    // Each is painted on to the last edge and the next over it, so that no seam shows between them.
    ...tonesOf(lit).map(({ startMm, brightnessRatio }) => bar(view, startMm, lit.widthMm, brightnessRatio)),
    stroke(closedPath(barCorners(view, 0, lit.widthMm))),
  ];
}

/** What the strip shows beyond the moulding, where there is room to say it. */
function wallWord(view: View, startMm: number, endMm: number): readonly Item[] {
  const corners = barCorners(view, startMm, endMm);
  const { minX, minY, maxX, maxY } = boxOf(corners);
  const isTooSmall = maxY - minY < LABEL_MM * 1.4 || maxX - minX < textWidthMm(WALL_WORD, LABEL_MM) + 1;
  if (isTooSmall) return [];
  const at: PaperPoint = [(minX + maxX) / 2, (minY + maxY) / 2 + CENTRED_RATIO * LABEL_MM];
  return [text(at, WALL_WORD, { sizeMm: LABEL_MM, anchor: "middle" })];
}

const WALL_WORD = "wall";

function bar(view: View, startMm: number, endMm: number, brightnessRatio: number): Item {
  return fill([closedPath(barCorners(view, startMm, endMm))], toneColour(brightnessRatio));
}

/** A piece of the strip between two distances from the first edge. */
function barCorners(view: View, startMm: number, endMm: number): readonly PaperPoint[] {
  const { at, layout } = view;
  const nearMm = stripStart(view);
  const start = at(layout.projectionMm, startMm);
  const end = at(layout.projectionMm, endMm);
  return layout.run === "level"
    ? [
        [nearMm, start[1]],
        [nearMm + layout.stripMm, start[1]],
        [nearMm + layout.stripMm, end[1]],
        [nearMm, end[1]],
      ]
    : [
        [start[0], nearMm],
        [start[0], nearMm + layout.stripMm],
        [end[0], nearMm + layout.stripMm],
        [end[0], nearMm],
      ];
}

function stripStart({ at, layout }: View): number {
  const [x, y] = at(layout.projectionMm, 0);
  return (layout.run === "level" ? x : y) + GAP_MM;
}

/** Neighbours of one state, as the eye takes them together. */
interface SeenBand {
  readonly state: LightState;
  readonly startMm: number;
  readonly endMm: number;
  /** How far out of the wall it begins. */
  readonly outMm: number;
}

function seenBands({ stretches }: SectionInLight): readonly SeenBand[] {
  const bands: SeenBand[] = [];
  for (const { state, startMm, endMm, showsMm, from } of stretches) {
    if (showsMm <= SAME_POINT_MM) continue;
    const last = bands.at(-1);
    if (last?.state === state) bands[bands.length - 1] = { ...last, endMm };
    else bands.push({ state, startMm, endMm, outMm: from.x });
  }
  return bands;
}

/** The bands wide enough for words, with them. */
function labelledBands(lit: SectionInLight, { unit }: FitPictureOptions) {
  const write = writerFor(unit);
  return seenBands(lit)
    .filter(({ startMm, endMm }) => endMm - startMm >= LEAST_LABELLED_MM)
    .map((band) => ({
      ...band,
      words: `${band.state} ${write.length(band.endMm - band.startMm).replace(UNSAID, "")}`,
    }));
}

/** The unit stands in the note; and a rule's "light" would be taken for light. */
const UNSAID = /\s*(?:mm|light|full)$/;
const LABEL_STEP_RATIO = 1.25;
const LEAST_LABELLED_MM = 0.1;

/** The words of each band in a row past the strip, in their order, each with a leader from the band's middle. */
function bandLabels(view: View, box: Box, options: FitPictureOptions): readonly Item[] {
  const { lit, layout, at } = view;
  const sizeMm = figureMm(options.unit);
  const isLevel = layout.run === "level";
  const bands = labelledBands(lit, options);
  const middles = bands.map(({ startMm, endMm }) => at(0, (startMm + endMm) / 2)[isLevel ? 1 : 0]);
  const room = isLevel ? { from: box.minY, to: box.maxY } : { from: box.minX, to: box.maxX };
  const edge = stripStart(view) + layout.stripMm;
  return spread(middles, room, sizeMm * LABEL_STEP_RATIO).flatMap((place, index): readonly Item[] => {
    const words = bands[index]?.words ?? "";
    const middle = middles[index] as number;
    if (place === null) return [];
    const run: readonly PaperPoint[] = [
      [edge, middle],
      [edge + 1, middle],
      [edge + LEADER_MM - 1, place],
      [edge + LEADER_MM - 0.4, place],
    ];
    if (isLevel) {
      return [
        stroke(openPath(run), { weight: "hatch" }),
        text([edge + LEADER_MM, place + CENTRED_RATIO * sizeMm], words, { sizeMm }),
      ];
    }
    const foot = edge + LEADER_MM + textWidthMm(words, sizeMm);
    const upright = text([place + CENTRED_RATIO * sizeMm, foot], words, { sizeMm });
    return [
      stroke(openPath(run.map(([y, x]): PaperPoint => [x, y])), { weight: "hatch" }),
      { ...upright, turnDeg: 90 },
    ];
  });
}

/**
 * Places for labels near their wishes, in the same order and a label apart; null for those past what the room holds,
 * the last ones first.
 */
function spread(
  wishes: readonly number[],
  { from, to }: { readonly from: number; readonly to: number },
  stepMm: number,
): readonly (number | null)[] {
  const most = Math.floor((to - from) / stepMm);
  const places: number[] = [];
  for (const wish of wishes.slice(0, most)) {
    const before = places.at(-1);
    places.push(Math.max(wish, before === undefined ? from + stepMm / 2 : before + stepMm));
  }
  // Pushed past the end they are moved back, the last one first.
  let limit = to - stepMm / 2;
  for (let index = places.length - 1; index >= 0; index--) {
    places[index] = Math.min(places[index] as number, limit);
    limit = (places[index] as number) - stepMm;
  }
  return wishes.map((_, index) => places[index] ?? null);
}
