/** The cuts of a proven sequence as the plan file holds them: figures, guide, setting, sentences. */
import { ringsOf, type Vertex, verticesOf } from "../curve/index.ts";
import {
  isFlatKind,
  leanDeg,
  type PlanCut,
  type PlaneEntry,
  STANDING_WALL,
  turned,
  turnOf,
  withoutFallen,
} from "../cutting/index.ts";
import { FLATTEN_MM, type InchDenominator } from "../measure/index.ts";
import { planeEntry } from "../shelf/index.ts";
import type { Bench } from "./bench.ts";
import { isCurved, type PlaneDraft, tidy } from "./draft-cut.ts";
import { openerOf } from "./line-places.ts";
import type { ReasonedMark } from "./marks.ts";
import { type CutTime, minutesOf, planeTime, sawTime, type Working } from "./minutes.ts";
import { passesOf } from "./passes.ts";
import { runningLine } from "./running-line.ts";
import { sameCurve } from "./smooth-curve.ts";
import { bladeLeanDeg } from "./strategy.ts";
import type { TriedCut } from "./try-cut.ts";
import { cutOfWall } from "./wall-of-cut.ts";
import { type BenchUnit, type CutFacts, cutSentence, doneSentence, sayLength, type Work } from "./words.ts";

/** What the sentences are written in. */
export interface BenchWriting {
  readonly unit: BenchUnit;
  readonly inchStep?: InchDenominator | undefined;
}

export interface PlannedCuts {
  readonly cuts: readonly PlanCut[];
  readonly settings: number;
  readonly times: readonly CutTime[];
}

export function planCuts(
  bench: Bench,
  cuts: readonly TriedCut[],
  marks: readonly ReasonedMark[],
  working: Working,
  writing: BenchWriting,
): PlannedCuts {
  const made: PlanCut[] = [];
  const times: CutTime[] = [];
  let setting = 0;
  let lastSetting = "";
  cuts.forEach((cut, i) => {
    const number = i + 1;
    const opener = openerOf(cuts, i);
    const own = marks.filter((m) => m.before === (opener === null ? number : opener + 1));
    const figures =
      cut.draft.kind === "plane"
        ? planeFigures(bench, cuts, cut, cut.draft, own, writing)
        : sawFigures(cut, own, writing);
    const key = figures.settingKey;
    const isNewSetting = key !== lastSetting;
    if (isNewSetting) setting++;
    lastSetting = key;
    const time =
      cut.draft.kind === "saw"
        ? sawTime(isNewSetting, working)
        : planeTime(
            figures.cut.passes,
            !isNewSetting ? "kept" : isCarried(cuts.slice(0, i), cut) ? "carried" : "set",
            working,
          );
    times.push(time);
    made.push({
      number,
      purpose: cut.draft.purpose,
      cant: cut.draft.cantDeg,
      ...figures.cut,
      // A crumb that is parted off is swept away: no picture shows it.
      after: ringsOf(
        withoutFallen(cut.after, bench.limits.shavingMm2),
        bench.book.circles,
        FLATTEN_MM * 2,
      ).map((ring) => verticesOf(ring).map(tidyVertex)),
      takes: round4(cut.takesMm2),
      wall: [round4(cut.wallMm[0]), round4(cut.wallMm[1])],
      seat: cut.seat ? { lift: round4(cut.seat.lift), shift: round4(cut.seat.shift) } : null,
      setting,
      minutes: minutesOf(time),
    });
  });
  return { cuts: made, settings: setting, times };
}

/**
 * Whether a plane is taken up again as it was laid down: leaned as it was, where only a line or a seat places it. What
 * other planes did in between sets nothing of it anew.
 */
function isCarried(earlier: readonly TriedCut[], cut: TriedCut): boolean {
  const draft = cut.draft;
  if (draft.kind !== "plane" || !isPlacedByWood(cut)) return false;
  const last = earlier
    .filter((other) => other.draft.kind === "plane" && other.draft.tool === draft.tool)
    .at(-1);
  if (last?.draft.kind !== "plane" || !isPlacedByWood(last)) return false;
  return last.draft.cantDeg === draft.cantDeg && String(leansOf(last.draft)) === String(leansOf(draft));
}

function isPlacedByWood({ guide }: TriedCut): boolean {
  return guide === null || guide.kind === "lines";
}

function leansOf({ runs, cantDeg }: PlaneDraft): readonly number[] {
  return runs.flatMap((run) => run.map((pose) => Math.round(leanDeg(pose[2], cantDeg))));
}

type Figures = Pick<
  PlanCut,
  "plane" | "sole" | "runs" | "line" | "runsAgainst" | "fence" | "passes" | "shaving" | "says" | "doneWhen"
>;

function planeFigures(
  bench: Bench,
  cuts: readonly TriedCut[],
  cut: TriedCut,
  draft: PlaneDraft,
  own: readonly ReasonedMark[],
  writing: BenchWriting,
): { readonly cut: Figures; readonly settingKey: string } {
  const passes = passesOf(bench, cut.before, draft, cut.takesMm2);
  const runsAgainst = guideText(bench, cuts, cut, draft, own);
  const lean = leanDeg(draft.runs[0][0][2], draft.cantDeg);
  // What leaves no wall is set by nothing across, and a leaned plane's fence would not stand square on its edge.
  const isSet = leavesWall(cut) && Math.abs(lean) < bench.limits.leaningFromDeg;
  const fence = cut.guide?.kind === "edge" && isSet ? round4(cut.guide.fenceMm) : undefined;
  const facts = factsOf(bench, cuts, cut, draft, own, passes, runsAgainst, fence, writing);
  return {
    settingKey: [
      draft.tool.plane.id,
      draft.tool.sole.widthMm,
      draft.cantDeg,
      lean.toFixed(1),
      runsAgainst,
      fence,
    ].join("/"),
    cut: {
      plane: entryOf(draft, writing),
      sole: verticesOf(draft.tool.sole.chain).map(tidyVertex),
      runs: draft.runs,
      runsAgainst,
      ...(fence === undefined ? {} : { fence }),
      passes: passes.passes,
      shaving: passes.shavingMm,
      says: cutSentence(facts),
      doneWhen: doneSentence(facts),
    },
  };
}

/** A plough's entry names the iron in use, so that its sole can be told from the file alone. */
function entryOf(draft: PlaneDraft, writing: BenchWriting): PlaneEntry {
  const entry = planeEntry(draft.tool.plane) as PlaneEntry;
  return draft.tool.plane.kind === "plough"
    ? { ...entry, name: nameOf(draft, writing), width: tidy(draft.tool.sole.widthMm) }
    : entry;
}

/** What the plane is called at the bench; of a plough also which iron is in it. */
function nameOf(draft: PlaneDraft, { unit, inchStep }: BenchWriting): string {
  const { plane, sole } = draft.tool;
  if (plane.kind !== "plough") return plane.name;
  return `${plane.name} with the ${sayLength(sole.widthMm, unit, inchStep)} iron`;
}

function guideText(
  bench: Bench,
  cuts: readonly TriedCut[],
  cut: TriedCut,
  draft: PlaneDraft,
  own: readonly ReasonedMark[],
): string | null {
  const guide = cut.guide;
  if (!guide) return null;
  switch (guide.kind) {
    case "edge":
      return guide.edge;
    case "batten":
      return "batten";
    case "lines": {
      const line =
        own[
          runningLine(
            draft,
            own.map(({ at: [x, y] }) => ({ x, y })),
          )
        ];
      return line ? `line ${line.id}` : "batten";
    }
    case "wall": {
      const by = cutOfWall(cuts, cuts.indexOf(cut), draft, bench.limits);
      return by === null ? STANDING_WALL : `wall of cut ${by}`;
    }
  }
}

function factsOf(
  bench: Bench,
  cuts: readonly TriedCut[],
  cut: TriedCut,
  draft: PlaneDraft,
  own: readonly ReasonedMark[],
  passes: { readonly passes: number; readonly shavingMm: number; readonly depthMm: number },
  runsAgainst: string | null,
  fence: number | undefined,
  writing: BenchWriting,
): CutFacts {
  const tilts = draft.runs.flat().map((pose) => leanDeg(pose[2], draft.cantDeg));
  const low = Math.min(...tilts);
  const high = Math.max(...tilts);
  const rocked =
    draft.work === "curve" && high - low > LEAST_SAID_ROCK_DEG ? rockWords(low, high, tilts[0]) : null;
  const betweenLines = (draft.work === "chamfer" || draft.work === "facets") && own.length > 1;
  const place = betweenLines ? own[0] : own.find((m) => m.kind === "place");
  const work = workWord(cut, draft, passes);
  return {
    purpose: draft.purpose,
    planeName: nameOf(draft, writing),
    kind: draft.tool.plane.kind,
    leanDeg: leanDeg(draft.runs[0][0][2], draft.cantDeg),
    cantDeg: draft.cantDeg,
    rocked,
    seatOn: isCurved(draft) ? seatWords(cuts, cut) : null,
    runsAgainst,
    fenceMm: fence ?? null,
    line: place ? { distanceMm: place.distance, from: place.from } : null,
    ...(betweenLines && own[1] ? { otherLine: { distanceMm: own[1].distance, from: own[1].from } } : {}),
    ...(leavesWall(cut) ? {} : { leavesWall: false }),
    depthMm: passes.depthMm > 0 ? passes.depthMm : null,
    passes: passes.passes,
    shavingMm: passes.shavingMm,
    ...written(writing),
    ...(work && !rocked ? { work } : {}),
    ...(draft.runs.length > 1 ? { placesCount: draft.runs.length } : {}),
    ...(draft.work === "step" ? { laterWalls: laterWalls(bench, cuts, cut, draft) } : {}),
    ...(draft.work === "ridges" || draft.work === "facets"
      ? {
          leansDeg: draft.runs.map((run) => leanDeg(run[0][2], draft.cantDeg)),
          acrossMm: draft.runs.map(([[x, y]]) => turned(turnOf(-draft.cantDeg), { x, y }).x),
          curveSettings: settingsOfCurve(bench, cuts, draft),
        }
      : {}),
    ...(draft.ridgeMm === undefined ? {} : { ridgeMm: draft.ridgeMm }),
  };
}

/** Which of the widths after the first run on a wall that an earlier cut left, and that cut's number. */
function laterWalls(
  bench: Bench,
  cuts: readonly TriedCut[],
  cut: TriedCut,
  draft: PlaneDraft,
): NonNullable<CutFacts["laterWalls"]> {
  return draft.runs.slice(1).flatMap(([pose], i) => {
    const by = cutOfWall(cuts, cuts.indexOf(cut), draft, bench.limits, pose);
    return by === null ? [] : [{ width: i + 2, ofCut: by }];
  });
}

/** A rock smaller than this is one lean to the hand, degrees. */
const LEAST_SAID_ROCK_DEG = 2;

/** A rock told from the lean it is begun in. */
function rockWords(low: number, high: number, first: number): NonNullable<CutFacts["rocked"]> {
  const nearHigh = high - first < first - low;
  return { fromDeg: nearHigh ? high : low, toDeg: nearHigh ? low : high, begunDeg: first };
}

/** A lower wall than this is none to the hand, mm. */
const LEAST_TOLD_WALL_MM = 0.05;

function leavesWall({ wallMm }: TriedCut): boolean {
  return Math.max(...wallMm) >= LEAST_TOLD_WALL_MM;
}

/** How often planes are set over the whole of a curve, in all the cuts that creep over it or plane it in flats. */
function settingsOfCurve(bench: Bench, cuts: readonly TriedCut[], draft: PlaneDraft): number {
  const curve = new Set(draft.shapes.flatMap((index) => sameCurve(bench, index)));
  return cuts.reduce(
    (count, { draft: other }) =>
      other.kind === "plane" &&
      (other.work === "ridges" || other.work === "facets") &&
      other.shapes.some((index) => curve.has(index))
        ? count + other.runs.length
        : count,
    0,
  );
}

/** Waste against a wall no thicker than this is pared off it; more is a floor taken down beside it, mm. */
const MOST_PARED_MM = 0.6;

function workWord(cut: TriedCut, draft: PlaneDraft, { depthMm }: { readonly depthMm: number }): Work | null {
  switch (draft.work) {
    case "wall":
      return isFlatKind(draft.tool.plane.kind) && cut.takesMm2 > MOST_PARED_MM * depthMm ? "step" : "wall";
    case "step":
    case "chamfer":
    case "flat":
    case "groove":
    case "snipe line":
    case "open V":
    case "curve":
    case "ridges":
    case "facets":
      return draft.work;
    default:
      return null;
  }
}

/** What holds a curved plane, told from the cuts just before it. */
function seatWords(cuts: readonly TriedCut[], cut: TriedCut): string | null {
  if (!cut.seat) return null;
  const index = cuts.indexOf(cut);
  const opener = openerOf(cuts, index);
  const opened = opener === null ? null : cuts[opener]?.draft.work;
  if (opened === "open V") return "the V";
  if (opened === "groove") return "the groove's two arrises";
  let lines = 0;
  for (let i = index - 1; i >= 0; i--) {
    const work = cuts[i].draft.work;
    if (work === "open V") return "the V";
    if (work === "groove") return "the groove's two arrises";
    if (work === "snipe line") lines++;
    else break;
  }
  if (lines >= 2) return "the two snipe lines";
  return "the two arrises";
}

function sawFigures(
  cut: TriedCut,
  own: readonly ReasonedMark[],
  writing: BenchWriting,
): { readonly cut: Figures; readonly settingKey: string } {
  const draft = cut.draft as Extract<TriedCut["draft"], { kind: "saw" }>;
  const bevel = bladeLeanDeg(draft.from, draft.to, draft.cantDeg);
  const place = own.find((m) => m.kind === "place");
  const facts: CutFacts = {
    purpose: "saw",
    planeName: "saw",
    kind: "saw",
    ...(draft.shapes.length === 0 ? { work: "ripped waste" as const } : {}),
    leanDeg: bevel,
    cantDeg: draft.cantDeg,
    rocked: null,
    seatOn: null,
    runsAgainst: null,
    fenceMm: null,
    line: place ? { distanceMm: place.distance, from: place.from } : null,
    depthMm: null,
    passes: 1,
    shavingMm: 0,
    ...written(writing),
  };
  return {
    settingKey: `saw/${bevel.toFixed(1)}`,
    cut: {
      plane: { id: "saw", kind: "saw", name: "saw" },
      line: [
        [tidy(draft.from.x), tidy(draft.from.y)],
        [tidy(draft.to.x), tidy(draft.to.y)],
      ],
      runsAgainst: place ? `line ${place.id}` : null,
      passes: 1,
      shaving: 0,
      says: cutSentence(facts),
      doneWhen: doneSentence(facts),
    },
  };
}

function written({ unit, inchStep }: BenchWriting): Pick<CutFacts, "unit" | "inchStep"> {
  return inchStep === undefined ? { unit } : { unit, inchStep };
}

function tidyVertex(vertex: Vertex): Vertex {
  const x = tidy(vertex[0]);
  const y = tidy(vertex[1]);
  const bulge = vertex[2];
  return bulge === undefined || bulge === 0 ? [x, y] : [x, y, Math.round(bulge * 1e9) / 1e9];
}

function round4(value: number): number {
  const rounded = Math.round(value * 1e4) / 1e4;
  return rounded === 0 ? 0 : rounded;
}
