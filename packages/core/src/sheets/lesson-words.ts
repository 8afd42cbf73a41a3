/** What a lesson says: the reason of each cut and what goes wrong without it, what parts are, questions. */
import type { Plan, PlanCut } from "../cutting/index.ts";
import { planeName } from "./cut-facts.ts";
import { printable } from "./printable-text.ts";

/** The words of the trade for parts of a section (common practice, no source). */
const MEANINGS: Readonly<Record<string, string>> = {
  fillet: "a narrow flat between shapes",
  step: "an upright wall between two heights",
  chamfer: "a flat aslant across an arris",
  bevel: "a flat aslant from edge to back",
  ovolo: "a convex quarter of a circle",
  cavetto: "a concave quarter of a circle, or less",
  cove: "a concave quarter of a circle, or less",
  scotia: "a deep cove of two radii or more",
  "cyma recta": "a hollow and a round in one S, hollow outermost",
  "cyma reversa": "a hollow and a round in one S, round outermost",
  ogee: "a hollow and a round in one S",
  bead: "a small half-round, parted from its neighbour by a quirk",
  "low bead": "the sixth of a circle that one hollow makes held upright",
  astragal: "a small half-round standing proud",
  torus: "a large half-round standing proud",
  quirk: "a narrow groove that draws a dark line beside a bead",
  reeds: "beads side by side",
  reed: "a bead among beads side by side",
  flutes: "coves side by side",
  flute: "a cove among coves side by side",
  rebate: "a step cut along an edge",
  groove: "a channel along the stick",
  arc: "part of a circle",
  line: "a flat",
};

/** What a part is, by the last word of its name where the trade knows it ("lower fillet"), else by its kinds. */
export function partMeaning(name: string, kinds: readonly string[]): string {
  const words = name.toLowerCase().split(" ");
  for (let first = 0; first < words.length; first++) {
    const known = MEANINGS[words.slice(first).join(" ")];
    if (known !== undefined) return known;
  }
  return kinds.map((kind) => MEANINGS[kind]).find((known) => known !== undefined) ?? "a shape of its own";
}

/** An idea told before, as a question. */
export function askedAgain(idea: string): string {
  return `${idea.slice(0, idea.indexOf(".") + 1)} Why here, and what would go wrong without it?`;
}

/** One or two sentences: what the cut is for, and what goes wrong otherwise. */
export function ideaOf(cut: PlanCut): string {
  switch (cut.purpose) {
    case "relief":
      return "Relief. The sides of a curved plane do not cut, so wherever it goes down beside standing wood a line has to be there first. Without it the plane rides up on that wood and tears it.";
    case "waste":
      return "Waste. A flat plane takes wood faster and truer than a curved one, and its corners leave arrises that the curved plane can ride on. Left to the curved plane, this wood would dull it and let it wander.";
    case "guide":
      return "Guide. It opens a place that holds the next plane on both sides. Set on a bare flat, a round has nothing to follow and runs away sideways.";
    case "shape":
      return shapeIdea(cut);
    case "finish":
      return "Finish. Little wood, much care: a fine shaving from end to end takes out the marks of the cuts before and brings the join to its line.";
    case "saw":
      return "Saw. Where much wood goes in one straight cut, a saw is quicker than any plane; the plane only cleans after it.";
  }
}

function shapeIdea(cut: PlanCut): string {
  switch (cut.plane.kind) {
    case "hollow":
      return "Shape. A hollow leaves its own curve turned over: convex. It first rides on two arrises and takes two ribbons; when the shaving is as wide as the sole, the curve is there.";
    case "round":
      return "Shape. A round leaves its own curve turned over: concave. It is held by the two arrises of its seat; drift is corrected while the cut is shallow, later there is no room.";
    case "snipe bill":
      return "Shape. The beak cuts the fine corner that no other plane reaches. Held too steep or too flat it leaves a second line beside the first.";
    default:
      return "Shape. The flat is cut to its line. Stop when the line is split along its whole length: deeper, and everything measured from it moves.";
  }
}

/** Questions that this plan gives cause for, at most seven. */
export function questionsOn(plan: Plan): readonly string[] {
  const questions: string[] = [];
  const ask = (question: string | null): void => {
    if (question !== null && questions.length < 7) questions.push(question);
  };
  ask(helperQuestion(plan));
  ask(markQuestion(plan));
  ask(ribbonQuestion(plan));
  ask(leanQuestion(plan));
  ask(planeQuestion(plan));
  ask("Where on this section does the light fall, and which line must be sharp for it to show?");
  ask("Which way do the fibres rise in your stick, and from which end will you push? Why from that one?");
  return questions;
}

function helperQuestion({ cuts }: Plan): string | null {
  const helper = cuts.find(({ purpose }) => purpose === "relief" || purpose === "guide");
  const helped =
    helper === undefined
      ? undefined
      : cuts.find(({ number, purpose }) => number > helper.number && purpose === "shape");
  if (helper === undefined || helped === undefined) return null;
  return `Cut ${helper.number} comes before cut ${helped.number}. What would the ${printable(planeName(helped))} do if it were the other way round?`;
}

function markQuestion({ marks }: Plan): string | null {
  const chained = marks.find(
    ({ from, kind }) => kind !== "depth" && from !== "gauge edge" && from !== "far edge",
  );
  if (chained !== undefined) {
    return `The line before cut ${chained.before} is measured from the ${printable(chained.from)}, not from the gauge edge. What does that save, and what would it spoil in a long row?`;
  }
  const first = marks.find(({ kind }) => kind !== "depth");
  return first === undefined
    ? null
    : `The line before cut ${first.before} is measured from the ${printable(first.from)}. What happens to every later line if that edge is not straight?`;
}

function ribbonQuestion({ cuts }: Plan): string | null {
  const curved = cuts.find(({ plane }) => plane.kind === "hollow" || plane.kind === "round");
  return curved === undefined
    ? null
    : `How many ribbons came from the ${printable(planeName(curved))} at the beginning of cut ${curved.number}, and how many at the end? What had changed under its sole?`;
}

function leanQuestion({ cuts }: Plan): string | null {
  const leaned = cuts.find(
    ({ runs, line, cant }) => line === undefined && Math.abs((runs?.at(-1)?.at(-1)?.[2] ?? 0) + cant) > 1,
  );
  return leaned === undefined
    ? null
    : `In cut ${leaned.number} the plane is leaned. Draw what the same plane would leave there if it were held upright.`;
}

function planeQuestion({ cuts }: Plan): string | null {
  const curved = [...cuts].reverse().find(({ plane }) => plane.kind === "hollow" || plane.kind === "round");
  return curved === undefined
    ? null
    : `Lay the ${printable(planeName(curved))} on the sheet of arcs. Is it the radius that it says? What would you change in the plan if it were flatter?`;
}
