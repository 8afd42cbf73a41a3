/** Sentences about marking pieces along sticks. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const lengthsTroubles = catalogue({
  "lengths-allowance": {
    example: { size: "kerf", valueMm: -1, mostMm: 1000 },
    sentence: (facts, write) =>
      `The ${write.text(facts.size)} is ${write.length(facts.valueMm)}; it can be nothing, and at most ${write.length(facts.mostMm)}.`,
    hint: () => "Usual are a kerf of 1 to 3 mm, a trim of 2 to 5 mm and 50 mm at each end for planing.",
  },
  "lengths-pieces": {
    example: { count: 0, most: 200 },
    sentence: (facts) => `${facts.count} pieces are asked for.`,
    hint: (facts) => `Give 1 to ${facts.most} pieces, in order round the frame; share a larger job out.`,
  },
  "lengths-piece-size": {
    example: { name: "Frame 2", valueMm: -300, mostMm: 100_000 },
    sentence: (facts, write) =>
      `${write.text(facts.name)} is ${write.length(facts.valueMm)} long; it must be more than nothing and at most ${write.length(facts.mostMm)}.`,
    hint: () => "Measure its longest edge, from mitre point to mitre point, and give it with its unit.",
  },
  "lengths-sticks": {
    example: { count: 0, most: 100 },
    sentence: (facts) => `${facts.count} sticks are at hand.`,
    hint: (facts) => `Give the lengths of 1 to ${facts.most} sticks, in whole sticks.`,
  },
  "lengths-stick-size": {
    example: { name: "Stick 2", valueMm: 0, mostMm: 100_000 },
    sentence: (facts, write) =>
      `${write.text(facts.name)} is ${write.length(facts.valueMm)} long; it must be more than nothing and at most ${write.length(facts.mostMm)}.`,
    hint: () => "Measure the stick and give its whole length, with its unit.",
  },
  "lengths-bad-places": {
    example: { name: "Stick 2", count: 51, most: 50 },
    sentence: (facts, write) => `${write.text(facts.name)} has ${facts.count} bad places.`,
    hint: (facts) => `Join those that lie close together to at most ${facts.most}, or leave the stick out.`,
  },
  "lengths-bad-place": {
    example: { name: "Stick 2", fromMm: 900, toMm: 850, lengthMm: 2400 },
    sentence: (facts, write) =>
      `A bad place of ${write.text(facts.name)} runs from ${write.length(facts.fromMm)} to ${write.length(facts.toMm)}, which is no part of its ${write.length(facts.lengthMm)}.`,
    hint: () => "Measure both its ends from the left end of the stick, the nearer one first.",
  },
  "lengths-piece-too-long": {
    example: { name: "Frame 2", neededMm: 2506, longestMm: 2300, buyMm: 2606 },
    sentence: (facts, write) =>
      `${write.text(facts.name)} takes ${write.length(facts.neededMm)} with its trim, but no stick has more than ${write.length(facts.longestMm)} of sound wood in one length.`,
    hint: (facts, write) =>
      `Get a stick of at least ${write.length(facts.buyMm)}, or make the piece of two, jointed where it shows least.`,
  },
  "lengths-too-few-sticks": {
    example: { shown: true as boolean, pieces: ["Frame 3", "Frame 4"], buyMm: 1200 },
    sentence: (facts, write) =>
      facts.shown === false
        ? `No way was found to take all pieces from the sticks at hand; left over: ${write.list(facts.pieces)}.`
        : `The sticks at hand do not hold all pieces; left over: ${write.list(facts.pieces)}.`,
    hint: (facts, write) =>
      `One more stick of ${write.length(facts.buyMm)} would do; a thinner saw or less planing allowance may.`,
  },
  "lengths-allowed-for": {
    example: { kerfMm: 3, trimMm: 3, planingMm: 50 },
    sentence: (facts, write) =>
      `Allowed for: a kerf of ${write.length(facts.kerfMm)}, ${write.length(facts.trimMm)} at each end of a piece for trimming, ${write.length(facts.planingMm)} at each end of a stick for planing.`,
    hint: () => "Measure your own saw's kerf in a scrap and give it.",
  },
  "lengths-one-way-up": {
    example: {},
    sentence: () =>
      "The section keeps its way round: no piece is turned end for end, and each is parted square before its mitres.",
    hint: () => "Number every piece on its back before the first saw cut.",
  },
});
