/** Sentences about planning, plans and their proof. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";
import type { Writer } from "./writer.ts";

/** Where in the section a place lies, as a maker would measure it on the stick's end. */
function placeOf(facts: { readonly xMm: number; readonly yMm: number }, write: Writer): string {
  return `${write.length(facts.xMm)} from the left edge and ${write.length(facts.yMm)} above the back`;
}

/** What meets a cut that is made before its time, or after it. */
function whyNotSwapped(
  facts: { readonly rule: string; readonly standsMm: number; readonly clearsMm: number },
  write: Writer,
): string {
  switch (facts.rule) {
    case "wall":
      return facts.standsMm > 0
        ? `has ${write.length(facts.standsMm)} of wood standing beside it and clears ${write.length(facts.clearsMm)}`
        : "has more wood standing beside it than it clears";
    case "nothing to cut":
      return "finds nothing left to cut";
    case "seat":
      return "has nothing left that holds it";
    case "guide":
      return "has nothing to run on";
    case "body":
      return "meets standing wood with its body";
    case "bench":
      return "runs into the bench under the stick";
    case "wood left":
      return "leaves wood standing that it took before";
    case "loose wood":
      return "parts off a piece of the stick";
    default:
      return "has no place to run";
  }
}

export const planTroubles = catalogue({
  "plan-tolerance-too-small": {
    example: { toleranceMm: 0.005, leastMm: 0.02 },
    sentence: (facts, write) =>
      `A face within ${write.length(facts.toleranceMm)} of the drawing is asked for; no plane is held as finely as that.`,
    hint: (facts, write) => `Ask for ${write.length(facts.leastMm)} or more; 0.2 mm is usual.`,
  },
  "section-nothing-to-cut": {
    example: {},
    sentence: () => "The section fills the whole stick, so there is nothing to cut.",
    hint: () => "Draw the moulding inside the stick, or take a larger stick.",
  },
  "swap-other-plan": {
    example: { first: 3, second: 4 },
    sentence: (facts) =>
      `Cuts ${facts.first} and ${facts.second} were swapped in another plan; in this one they are others, and the swap is left out.`,
    hint: () => "Swap them again in this plan, or take the swap out of the job.",
  },
  "swap-refused": {
    example: { first: 3, second: 4, cut: 4, plane: "⅝ in round", rule: "wall", standsMm: 3.2, clearsMm: 1 },
    sentence: (facts, write) =>
      `Cuts ${facts.first} and ${facts.second} cannot change places: made in that order, cut ${facts.cut} (${write.text(facts.plane)}) ${whyNotSwapped(facts, write)}.`,
    hint: () => "Keep the order as it is, or try two cuts that lie next to each other.",
  },
  "swap-unproven": {
    example: {},
    sentence: () =>
      "The cuts made in the swapped order do not hold against the plan's own proof, and the swap is left out.",
    hint: () => "Keep the order as it is, or try two cuts that lie next to each other.",
  },
  "plan-outside-stick": {
    example: { areaMm2: 12.5 },
    sentence: (facts, write) =>
      `The planned section lies outside the stick with ${write.area(facts.areaMm2)} of its area.`,
    hint: () => "Take a wider or thicker stick, or draw the section smaller.",
  },
  "recut-outline-crosses": {
    example: { xMm: 12.7, yMm: 9.5 },
    sentence: (facts, write) => `The outline crosses or touches itself ${placeOf(facts, write)}.`,
    hint: () => "Give its points once round, so that it meets itself only where it closes.",
  },
  "recut-sole-bent": {
    example: { cut: 4 },
    sentence: (facts) => `The sole of cut ${facts.cut} doubles back on itself or has no width.`,
    hint: () => "Give its points from left to right as seen looking along the stroke, without turning back.",
  },
  "recut-plane-unknown": {
    example: { cut: 4, kind: "hollo" },
    sentence: (facts, write) =>
      `Cut ${facts.cut} names a plane of the kind “${write.text(facts.kind)}”, which is not known here or lacks its sizes.`,
    hint: () => "Copy the plane from the shelf with all its sizes. Any other sole can be given as “shaped”.",
  },
  "recut-sole-other": {
    example: { cut: 4, name: "⅜ in hollow" },
    sentence: (facts, write) =>
      `The sole drawn for cut ${facts.cut} is not the sole of the ${write.text(facts.name)} that it names.`,
    hint: () => "Name the plane whose sole is drawn, or make the plan again from the shelf.",
  },
  "recut-number": {
    example: { number: 5, wanted: 4 },
    sentence: (facts) => `Cut ${facts.number} stands where cut ${facts.wanted} should.`,
    hint: () => "Number the cuts from 1 without a gap, in the order in which they are made.",
  },
  "recut-planned-off": {
    example: { apartMm: 0.5, toleranceMm: 0.2, xMm: 12.7, yMm: 9.5 },
    sentence: (facts, write) =>
      `The shape that the plan aims at lies ${write.length(facts.apartMm)} off the drawing ${placeOf(facts, write)}; ${write.length(facts.toleranceMm)} is allowed.`,
    hint: () => "Make the plan again, or allow the face to stand further from the drawing.",
  },
  "recut-overcut": {
    example: { cut: 3, depthMm: 0.4, xMm: 12.7, yMm: 9.5 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} overcuts: it goes ${write.length(facts.depthMm)} too deep ${placeOf(facts, write)}.`,
    hint: () => "Set that cut shallower or further off, or use a plane that fits the place.",
  },
  "recut-takes": {
    example: { cut: 3, saidMm2: 4.2, foundMm2: 4.9 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} takes ${write.area(facts.foundMm2)}; the plan says ${write.area(facts.saidMm2)}.`,
    hint: () => "Make the plan again from its section: figures changed by hand do not hold.",
  },
  "recut-after": {
    example: { cut: 3, areaMm2: 0.8 },
    sentence: (facts, write) =>
      `What cut ${facts.cut} leaves differs by ${write.area(facts.areaMm2)} from the picture in the plan.`,
    hint: () => "Make the plan again from its section: the pictures after this cut show other wood.",
  },
  "recut-poses-apart": {
    example: { cut: 3, apartMm: 0.6, apartDeg: 3, mostMm: 0.2, mostDeg: 1 },
    sentence: (facts, write) =>
      `In cut ${facts.cut} the plane moves ${write.length(facts.apartMm)} and ${write.degrees(facts.apartDeg)} from one place to the next; what it takes between them is not said.`,
    hint: (facts, write) =>
      `Give its places at most ${write.length(facts.mostMm)} and ${write.degrees(facts.mostDeg)} apart, or begin a new run.`,
  },
  "recut-wall-said": {
    example: { cut: 3, side: "left", saidMm: 0, foundMm: 1.2 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} leaves a wall of ${write.length(facts.foundMm)} on the ${write.text(facts.side)}; the plan says ${write.length(facts.saidMm)}.`,
    hint: () => "Make the plan again from its section: figures changed by hand do not hold.",
  },
  "recut-wall": {
    example: { cut: 3, side: "left", wallMm: 3.2, clearsMm: 1 },
    sentence: (facts, write) =>
      `Beside the plane of cut ${facts.cut} a wall of ${write.length(facts.wallMm)} would be left on the ${write.text(facts.side)}; the plane clears only ${write.length(facts.clearsMm)} there.`,
    hint: (facts, write) =>
      `Cut a snipe line or a rebate on the ${write.text(facts.side)} first, or use a plane that cuts a wall there.`,
  },
  "recut-leaning-wall": {
    example: { cut: 3, wallMm: 6, limitMm: 4 },
    sentence: (facts, write) =>
      `The flat plane of cut ${facts.cut} leans and would leave a wall of ${write.length(facts.wallMm)}; ${write.length(facts.limitMm)} is as much as it can be held to.`,
    hint: () =>
      "Take a step off with the plane upright first, or hold the stick canted so that it is upright.",
  },
  "recut-slot": {
    example: { cut: 3, depthMm: 20, limitMm: 16 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} sinks the plane ${write.length(facts.depthMm)} deep between two walls; ${write.length(facts.limitMm)} is as deep as it goes.`,
    hint: () => "Open the slot on one side first, or take it down in wider steps.",
  },
  "recut-bench": {
    example: { cut: 3, depthMm: 1.5 },
    sentence: (facts, write) => `Cut ${facts.cut} would run ${write.length(facts.depthMm)} into the bench.`,
    hint: () => "Lay the stick on a thicker board, or take a thicker stick and saw the spare off afterwards.",
  },
  "recut-body": {
    example: { cut: 3, areaMm2: 2.4 },
    sentence: (facts, write) =>
      `The plane's body in cut ${facts.cut} is wider than its sole and meets ${write.area(facts.areaMm2)} of standing wood.`,
    hint: () => "Take that wood off first, or use a plane without shoulders.",
  },
  "recut-lean": {
    example: { cut: 3, leanDeg: 75, limitDeg: 60 },
    sentence: (facts, write) =>
      `In cut ${facts.cut} the plane leans ${write.degrees(Math.abs(facts.leanDeg))} in the hand; ${write.degrees(facts.limitDeg)} is the most.`,
    hint: () => "Turn the stick, or hold it canted, so that the plane comes more upright.",
  },
  "recut-loose": {
    example: { cut: 3, areaMm2: 18 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} parts off a piece of ${write.area(facts.areaMm2)}, which would tear away or fall under the plane.`,
    hint: () => "Plane that piece away from an edge first, or saw it off.",
  },
  "recut-guide": {
    example: { cut: 3 },
    sentence: (facts) => `Nothing holds the plane in cut ${facts.cut}: it has neither a seat nor a guide.`,
    hint: () => "Clamp a batten on, or cut a line or a step that the plane can run against.",
  },
  "recut-guide-absent": {
    example: { cut: 3, guide: "wall of cut 2" },
    sentence: (facts, write) =>
      `Cut ${facts.cut} is to run against “${write.text(facts.guide)}”, and that is not there for it.`,
    hint: () => "Put another guide there, or clamp a batten on and say so in the plan.",
  },
  "recut-fence": {
    example: { cut: 3, reachMm: 64, limitMm: 50 },
    sentence: (facts, write) =>
      `Cut ${facts.cut} is to be fenced ${write.length(facts.reachMm)} in from its edge; the fence reaches ${write.length(facts.limitMm)}.`,
    hint: () => "Run it from the other edge, or against a batten or a wall.",
  },
  "recut-seat": {
    example: { cut: 3, liftMm: 0.4 },
    sentence: (facts) =>
      `The plan gives the plane a seat in cut ${facts.cut}, and the wood does not hold it there.`,
    hint: () => "Open its line or take the arrises off evenly first, or clamp a batten on.",
  },
  "recut-seat-said": {
    example: { cut: 3, saidMm: 0.4, foundMm: 0.2 },
    sentence: (facts, write) =>
      `Its seat lifts the plane of cut ${facts.cut} by ${write.length(facts.foundMm)} when it is pushed aside; the plan says ${write.length(facts.saidMm)}.`,
    hint: () => "Make the plan again from its section: figures changed by hand do not hold.",
  },
  "recut-bearing": {
    example: { cut: 3, bearsPercent: 12, leastPercent: 30 },
    sentence: (facts) =>
      `At the end of cut ${facts.cut} only ${facts.bearsPercent} parts in a hundred of the sole lie on the wanted curve; the plane hangs by a corner.`,
    hint: (facts) =>
      `Lean it so that at least ${facts.leastPercent} in a hundred bear, or use a narrower plane of that curve.`,
  },
  "recut-finish": {
    example: { side: "proud", saidMm: 0.03, foundMm: 0.15 },
    sentence: (facts, write) =>
      facts.side === "proud"
        ? `The finished face stands ${write.length(facts.foundMm)} proud of the drawing; the plan says ${write.length(facts.saidMm)}.`
        : `The finished face lies ${write.length(facts.foundMm)} under the drawing; the plan says ${write.length(facts.saidMm)}.`,
    hint: () => "Make the plan again from its section: figures changed by hand do not hold.",
  },
  "recut-under": {
    example: { depthMm: 0.5, toleranceMm: 0.2 },
    sentence: (facts, write) =>
      `The finished face lies ${write.length(facts.depthMm)} under the drawing; ${write.length(facts.toleranceMm)} is allowed.`,
    hint: () => "Make the plan again, or allow the face to lie further from the drawing.",
  },
  "recut-unlisted": {
    example: { leftMm: 0.8, xMm: 12.7, yMm: 9.5 },
    sentence: (facts, write) =>
      `Wood is left ${write.length(facts.leftMm)} high ${placeOf(facts, write)}, and the plan does not say so.`,
    hint: () => "Add a cut that takes it, or list the place among what stays uncut.",
  },
  "recut-uncut-said": {
    example: { leftMm: 0.8, xMm: 12.7, yMm: 9.5 },
    sentence: (facts, write) =>
      `The plan says that wood is left ${write.length(facts.leftMm)} high ${placeOf(facts, write)}, and none is.`,
    hint: () => "Take the place off the list of what stays uncut.",
  },
});
