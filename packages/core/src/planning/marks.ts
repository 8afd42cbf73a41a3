/**
 * The lines that place the cuts, each with its expected error both ways: gauged from an edge, or taken from the foot
 * of a finished curve. The way that gives the join the smaller error is taken; in a band the one that holds its width.
 *
 * Errors are of first order (spread.ts) and run across the stick. How deep a curved plane goes is told by the lines at
 * both its ends being met, so its depth is no error of its own here.
 */
import type { PlanMark } from "../cutting/index.ts";
import { SAME_SCORE } from "../measure/index.ts";
import { GOOD_HAND, type HandAccuracy } from "./accuracy.ts";
import { type Bench, fromGaugeEdgeMm } from "./bench.ts";
import { isCurved, type PlaneDraft, tidy } from "./draft-cut.ts";
import { aimOf, type Foot, feetOf, type LinePlace, linesOf, openerOf } from "./line-places.ts";
import { apart, NO_SPREAD, type Spread, spreadMm, spreadOf, together } from "./spread.ts";
import type { TriedCut } from "./try-cut.ts";
import { cutOfWall } from "./wall-of-cut.ts";

/** A mark with both ways of placing it, so that the maker sees what the choice was worth. */
export interface ReasonedMark extends PlanMark {
  readonly serves: NonNullable<PlanMark["serves"]>;
  readonly errorFromEdge: number;
}

/** From what the lines of a band are taken; all others serve their join. */
export type LinesFrom = "gauge edge" | "foot";
export type BandLines = (piece: number) => LinesFrom | null;

/** Where a cut comes to lie, as it is placed and as it would be placed the other way. */
export interface PlacedCut {
  readonly number: number;
  readonly taken: Spread;
  readonly fromEdge: Spread;
  /** Null where no finished foot stands beside it. */
  readonly fromFoot: Spread | null;
}

export interface PlacedLines {
  readonly marks: readonly ReasonedMark[];
  /** By cut number; cuts that no line places (floors, cuts against a standing wall) among them. */
  readonly cuts: readonly PlacedCut[];
}

/** The lines to scribe before each cut, numbered through; `cuts` in order, cut numbers counted from 1. */
export function marksFor(
  bench: Bench,
  cuts: readonly TriedCut[],
  hand: HandAccuracy = GOOD_HAND,
): readonly ReasonedMark[] {
  return placedLines(bench, cuts, hand).marks;
}

/**
 * The lines with what their errors are made of. `bandLines` says from what the lines of a piece (its place in the
 * planned ring) are taken where it stands in a band, and null where it stands in none.
 */
export function placedLines(
  bench: Bench,
  cuts: readonly TriedCut[],
  hand: HandAccuracy,
  bandLines: BandLines = () => null,
): PlacedLines {
  const marks: ReasonedMark[] = [];
  const settings: Settings = [];
  const placed: PlacedCut[] = [];
  const linesOfCut: (PlacedLine | null)[] = [];
  const feet: Foot[] = [];
  cuts.forEach((cut, i) => {
    const number = i + 1;
    const opener = openerOf(cuts, i);
    const follow = followSpread(cut, number, hand);
    const lines =
      opener === null
        ? linesOf(bench, cut, feet).map((line, k): PlacedLine => {
            const id = `m${marks.length + 1 + k}`;
            return placedLine(line, {
              id,
              cut,
              follow,
              placed,
              settings,
              hand,
              band: bandOf(cut, bandLines),
            });
          })
        : [];
    for (const line of lines) marks.push(markOf(bench, line, number));
    const guiding = opener === null ? lines.find((line) => !line.place.isFloor) : linesOfCut[opener];
    linesOfCut.push(guiding ?? null);
    placed.push(placedCut(number, guiding ?? null, follow, standingWall(bench, cuts, i, placed)));
    if (cut.draft.kind === "plane" && isCurved(cut.draft)) feet.push(...feetOf(bench, cut, number));
  });
  return { marks, cuts: placed };
}

/** A line with what it is out by each way, and the way taken. */
interface PlacedLine {
  readonly id: string;
  readonly place: LinePlace;
  readonly fromEdge: Spread;
  readonly fromFoot: Spread | null;
  readonly taken: LinesFrom;
  readonly serves: ReasonedMark["serves"];
  /** Expected error of what the line serves, mm, each way. */
  readonly errorFromEdgeMm: number;
  readonly errorFromFootMm: number | null;
}

interface LineSetting {
  readonly id: string;
  readonly cut: TriedCut;
  /** The error of following the line. */
  readonly follow: Spread;
  readonly placed: readonly PlacedCut[];
  readonly settings: Settings;
  readonly hand: HandAccuracy;
  readonly band: LinesFrom | null;
}

function placedLine(place: LinePlace, setting: LineSetting): PlacedLine {
  const { id, cut, follow, placed, settings, hand, band } = setting;
  const knife = spreadOf(`line ${id}`, hand.lineMm);
  const { from, distanceMm } = place.gauged;
  const fromEdge = together(settingSpread(settings, from, distanceMm, hand), knife);
  const beside = place.foot;
  const footCut = beside && placed[beside.foot.cut - 1];
  const base = { id, place, fromEdge };
  if (!beside || !footCut) {
    const rest = place.isFloor ? spreadOf(`depth ${id}`, hand.depthMm) : follow;
    const errorFromEdgeMm = spreadMm(together(fromEdge, rest));
    const serves = band ? "band" : "place";
    return { ...base, fromFoot: null, taken: "gauge edge", serves, errorFromEdgeMm, errorFromFootMm: null };
  }
  const foot = together(footCut.taken, soleSpread(beside.foot.draft, beside.foot.at.x, hand));
  const fromFoot = together(foot, settingSpread(settings, "foot", beside.distanceMm, hand), knife);
  const ownEnd =
    beside.meetsAt && cut.draft.kind === "plane" ? soleSpread(cut.draft, beside.meetsAt.x, hand) : NO_SPREAD;
  const errorFromEdgeMm = spreadMm(apart(together(fromEdge, follow, ownEnd), foot));
  const errorFromFootMm = spreadMm(apart(together(fromFoot, follow, ownEnd), foot));
  const smaller = errorFromFootMm < errorFromEdgeMm - SAME_SCORE ? "foot" : "gauge edge";
  // A line in the foot's own corner is not gauged for a band's sake: a second one beside it would only spoil the foot.
  const isInCorner = beside.distanceMm < AT_THE_FOOT_MM;
  return {
    ...base,
    fromFoot,
    taken: band === null || isInCorner ? smaller : band,
    serves: band === null || isInCorner ? "join" : "band",
    errorFromEdgeMm,
    errorFromFootMm,
  };
}

/** The settings of gauges and dividers made so far, each by where it is measured from. */
type Settings = { readonly from: string; readonly distanceMm: number }[];

/** The gauge, or the dividers, stay as they are for every line of one distance. */
function settingSpread(settings: Settings, from: string, distanceMm: number, hand: HandAccuracy): Spread {
  // A line in the foot itself needs no setting: the point runs in the corner.
  if (from === "foot" && distanceMm < AT_THE_FOOT_MM) return NO_SPREAD;
  const known = settings.findIndex(
    (one) => one.from === from && Math.abs(one.distanceMm - distanceMm) < SAME_SETTING_MM,
  );
  const number = known < 0 ? settings.push({ from, distanceMm }) - 1 : known;
  return spreadOf(`setting ${number + 1}`, hand.gaugeMm);
}

const AT_THE_FOOT_MM = 0.05;
/** Distances this near are one setting to any hand, mm. */
const SAME_SETTING_MM = 0.02;

/** How far a place on the sole is out because the sole is wider or narrower than the shelf says. */
export function soleSpread(draft: PlaneDraft, placeXMm: number, hand: HandAccuracy): Spread {
  const { plane, sole } = draft.tool;
  const share = (placeXMm - aimOf(draft).x) / sole.widthMm;
  return spreadOf(`width of ${plane.id}`, share * hand.widthMm);
}

/** What a cut adds to its line: a plane wanders along it, a fence is set to it, a saw follows it. */
function followSpread(cut: TriedCut, number: number, hand: HandAccuracy): Spread {
  if (cut.draft.kind === "saw") return spreadOf(`saw ${number}`, hand.sawMm);
  return cut.guide?.kind === "edge"
    ? spreadOf(`fence ${number}`, hand.fenceMm)
    : spreadOf(`plane ${number}`, hand.sidewaysMm);
}

/** Where the wall came to stand that a plane runs against; null where it runs against none. */
function standingWall(
  bench: Bench,
  cuts: readonly TriedCut[],
  index: number,
  placed: readonly PlacedCut[],
): PlacedCut | null {
  const { draft, guide } = cuts[index];
  if (draft.kind !== "plane" || guide?.kind !== "wall") return null;
  const by = cutOfWall(cuts, index, draft, bench.limits);
  return by === null ? null : (placed[by - 1] ?? null);
}

function placedCut(
  number: number,
  line: PlacedLine | null,
  follow: Spread,
  wall: PlacedCut | null,
): PlacedCut {
  // A plane that runs against a wall comes to lie where the wall stands, however it was come by.
  if (wall) return { ...wall, number };
  if (!line) return { number, taken: follow, fromEdge: follow, fromFoot: null };
  const fromEdge = together(line.fromEdge, follow);
  const fromFoot = line.fromFoot && together(line.fromFoot, follow);
  return { number, taken: line.taken === "foot" ? (fromFoot ?? fromEdge) : fromEdge, fromEdge, fromFoot };
}

function bandOf(cut: TriedCut, bandLines: BandLines): LinesFrom | null {
  const { draft } = cut;
  if (draft.kind !== "plane") return null;
  for (const piece of [draft.onLine?.forPiece, draft.roomFor, ...draft.shapes]) {
    const from = piece === undefined ? null : bandLines(piece);
    if (from !== null) return from;
  }
  return null;
}

function markOf(bench: Bench, line: PlacedLine, before: number): ReasonedMark {
  const { place, errorFromEdgeMm, errorFromFootMm } = line;
  const beside = line.taken === "foot" ? place.foot : undefined;
  const errorMm = beside ? (errorFromFootMm ?? errorFromEdgeMm) : errorFromEdgeMm;
  return {
    id: line.id,
    before,
    kind: place.kind,
    at: [tidy(place.at.x), tidy(place.at.y)],
    from: beside ? `foot of cut ${beside.foot.cut}` : place.gauged.from,
    distance: tidy(beside ? beside.distanceMm : place.gauged.distanceMm),
    fromGaugeEdge: tidy(fromGaugeEdgeMm(bench, place.at)),
    error: toThousandths(errorMm),
    serves: line.serves,
    errorFromEdge: toThousandths(errorFromEdgeMm),
    ...(errorFromFootMm === null ? {} : { errorFromFoot: toThousandths(errorFromFootMm) }),
  };
}

export function toThousandths(valueMm: number): number {
  return Math.round(valueMm * 1000) / 1000;
}
