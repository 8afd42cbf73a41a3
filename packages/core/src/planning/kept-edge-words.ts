/** What a plan says of an edge that was to stay square: until when it does, what is left of it, and why no longer. */
import type { PlanCut, PlanMark, UncutRule } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import type { KeptEdge } from "./edges-to-keep.ts";
import { isUntouched, sideMm, touchesEdge } from "./kept-edge.ts";
import type { BenchWriting } from "./plan-cuts.ts";
import { makeAll, type Sequence } from "./sequence.ts";
import type { TriedCut } from "./try-cut.ts";
import { sayLength } from "./words.ts";

export interface KeptEdgeFacts {
  readonly made: Sequence;
  readonly cuts: readonly PlanCut[];
  readonly marks: readonly PlanMark[];
  readonly writing: BenchWriting;
}

/** A sentence or two for each edge that was to be kept. */
export function keptEdgeWords(bench: Bench, facts: KeptEdgeFacts): string[] {
  return bench.keptEdges.map((edge) => wordsFor(bench, edge, facts));
}

/** Less of a side than this bears no gauge, mm: it goes as good as wholly (common practice, no source). */
const LEAST_BEARING_MM = 3;

function wordsFor(bench: Bench, edge: KeptEdge, facts: KeptEdgeFacts): string {
  const { made, writing } = facts;
  const first = made.cuts.findIndex(({ after }) => !isUntouched(bench, after, edge));
  const cut = made.cuts[first];
  if (!cut) return `The ${edge} stays square and untouched to the end.`;
  const say = (mm: number) => sayLength(mm, writing.unit, writing.inchStep);
  const leftMm = sideMm(bench, made.wood, edge);
  const takesMm = sideMm(bench, cut.before, edge) - sideMm(bench, cut.after, edge);
  const takes =
    leftMm < LEAST_BEARING_MM
      ? `which takes it away`
      : `which takes ${say(takesMm)} of its side; ${say(leftMm)} of it are flat at the end`;
  const number = first + 1;
  const users = usersAfter(edge, first, facts);
  const own = users.filter((one) => touchesEdge(bench, made.cuts[one - 1] as TriedCut, edge));
  const others = users.filter((one) => !own.includes(one));
  if (others.length > 0) {
    const why = whyNotLater(bench, edge, first, Math.max(...others), made);
    return `The ${edge} could not be kept untouched until the last line: it goes with cut ${number}, ${takes}. ${capital(cutsWords(others))} ${others.length === 1 ? "is" : "are"} still measured from it or ${others.length === 1 ? "runs" : "run"} on it after that: ${why}.`;
  }
  const until = `The ${edge} stays square and untouched until cut ${number}, ${takes}.`;
  return own.length === 0
    ? `${until} Nothing is measured from it and no fence runs on it after that.`
    : `${until} After that only its own part is worked from it, with ${cutsWords(own)}.`;
}

/** The cuts after one that have a line gauged from the edge, or their fence on it. */
function usersAfter(edge: KeptEdge, first: number, { cuts, marks }: KeptEdgeFacts): number[] {
  return cuts
    .filter(
      ({ number, runsAgainst }) =>
        number > first + 1 &&
        (runsAgainst === edge || marks.some((mark) => mark.before === number && mark.from === edge)),
    )
    .map(({ number }) => number);
}

/** What would come of it if the cuts that touch the edge were left until after the last that uses it. */
function whyNotLater(bench: Bench, edge: KeptEdge, first: number, last: number, made: Sequence): string {
  const order = made.cuts.map((_, i) => i);
  const upTo = order.slice(0, last);
  const touching = upTo.filter((i) => i >= first && touchesEdge(bench, made.cuts[i] as TriedCut, edge));
  const moved = [...upTo.filter((i) => !touching.includes(i)), ...touching, ...order.slice(last)];
  const tried = makeAll(
    bench,
    bench.startRegion,
    moved.map((i) => (made.cuts[i] as TriedCut).draft),
  );
  for (const [k, cut] of tried.cuts.entries()) {
    const index = moved[k] as number;
    const refusal = cut.refusals[0];
    const later = `if cut ${first + 1} came later, cut ${index + 1}`;
    if (refusal) return `${later} ${REFUSED[refusal.rule]}`;
    if (cut.guide?.kind === "batten" && made.cuts[index]?.guide?.kind !== "batten")
      return `${later} would have nothing to run on`;
  }
  return `if cut ${first + 1} came later, curved planes would be held less well or take more waste`;
}

const REFUSED: Readonly<Record<UncutRule, string>> = {
  "out of reach": "would not reach its place",
  wall: "would have wood standing beside it that its iron does not clear",
  seat: "would have nothing to stand on",
  body: "would strike wood with its body",
  bench: "would strike the bench",
  "loose wood": "would leave wood hanging loose",
  bearing: "would hang by a corner",
  lean: "would have to lean too far",
  guide: "would have nothing to run on",
};

function cutsWords(numbers: readonly number[]): string {
  const told = [...numbers];
  const last = told.pop();
  return told.length === 0 ? `cut ${last}` : `cuts ${told.join(", ")} and ${last}`;
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
