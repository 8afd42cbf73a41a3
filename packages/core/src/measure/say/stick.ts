/** Sentences about the stick: sizes, bevels, cant, holding, building up. The pattern stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const stickTroubles = catalogue({
  "stick-length": {
    example: { valueMm: -5, mostMm: 100_000 },
    sentence: (facts, write) =>
      `A moulding ${write.length(facts.valueMm)} long cannot be made; it must be more than nothing and at most ${write.length(facts.mostMm)}.`,
    hint: () => "Give the finished length, ends trimmed, with its unit.",
  },
  "stick-count": {
    example: { count: 0, most: 1000 },
    sentence: (facts) => `${facts.count} sticks are asked for.`,
    hint: (facts) => `Give a whole number from 1 to ${facts.most}.`,
  },
  "stick-cant": {
    example: { cantDeg: 90, mostDeg: 60 },
    sentence: (facts, write) =>
      `A stick canted by ${write.degrees(facts.cantDeg)} cannot be worked; ${write.degrees(facts.mostDeg)} either way is the most.`,
    hint: () => "Turn the stick on its edge instead, or leave the cant out and take the best one.",
  },
  "stick-grain": {
    example: { grainDeg: 45, mostDeg: 30 },
    sentence: (facts, write) =>
      `Grain that runs out by ${write.degrees(facts.grainDeg)} makes no moulding; ${write.degrees(facts.mostDeg)} is the most taken here.`,
    hint: () => "Choose straighter timber: a few degrees can be worked with, more tears and breaks.",
  },
  "stick-allowance": {
    example: { size: "sawn width", valueMm: -1, mostMm: 1000 },
    sentence: (facts, write) =>
      `The allowance “${write.text(facts.size)}” is ${write.length(facts.valueMm)}; it can be nothing, and at most ${write.length(facts.mostMm)}.`,
    hint: () => "Leave it out to take the usual one.",
  },
  "stick-no-curve": {
    example: {},
    sentence: () => "The section has no curve on its face, so no cant brings its planes more upright.",
    hint: () => "Work it flat, or give the cant.",
  },
  "stick-allowed-for": {
    example: { sawnWidthMm: 6, sawnThicknessMm: 4, planingMm: 50, endChecksMm: 25 },
    sentence: (facts, write) =>
      `Allowed for: ${write.length(facts.sawnWidthMm)} of width and ${write.length(facts.sawnThicknessMm)} of thickness for planing, ${write.length(facts.planingMm)} at each end for the planes to come on and run off, ${write.length(facts.endChecksMm)} at each end for checks.`,
    hint: () => "Give your own allowances if your timber is rougher or already planed.",
  },
  "stick-holding-common": {
    example: {},
    sentence: () => "What can be held safely is common practice; no source gives a figure.",
    hint: () => "Trust your own bench and hands first, and give your own limits.",
  },
  "stick-way-flat": {
    example: {},
    sentence: () =>
      "The stick lies flat and square while its face is moulded; bevels and rebates of the back come last.",
    hint: () => "The gauge runs on a square edge, and planes lean as their curves ask.",
  },
  "stick-way-bevelled": {
    example: { bevelPlaningMm: 1 },
    sentence: (facts, write) =>
      `The back's bevels are sawn first, ${write.length(facts.bevelPlaningMm)} proud, and planed; strips of the same bevel fill the gaps on the board.`,
    hint: () => "Gauge before the bevels are sawn: afterwards the edge is less sure.",
  },
  "stick-way-canted": {
    example: {},
    sentence: () => "The section lies turned in a square stick; what was its back is sawn last.",
    hint: () => "A jaw or cradle at the same cant saves the extra wood, but holds less surely.",
  },
  "stick-cant-worth": {
    example: { cantDeg: 15, gainDeg: 15, worthDeg: 8 },
    sentence: (facts, write) =>
      `Turned by ${write.degrees(facts.cantDeg)}, the planes stand nearer to upright by ${write.degrees(facts.gainDeg)} on average.`,
    hint: () => "It is worth a sawcut or a canted jaw.",
  },
  "stick-cant-little": {
    example: { cantDeg: 3, gainDeg: 3, worthDeg: 8 },
    sentence: (facts, write) =>
      `The best cant, ${write.degrees(facts.cantDeg)}, would bring the planes nearer to upright by only ${write.degrees(facts.gainDeg)} on average.`,
    hint: (facts, write) =>
      `Work it flat: under ${write.degrees(facts.worthDeg)} a cant is not worth a sawcut.`,
  },
  "built-up-parts": {
    example: { parts: 0, most: 6 },
    sentence: (facts) => `A moulding cannot be built up of ${facts.parts} parts.`,
    hint: (facts) => `Allow a whole number of parts from 1 to ${facts.most}.`,
  },
  "built-up-timber": {
    example: { size: "width", valueMm: -20 },
    sentence: (facts, write) =>
      `The timber at hand has a ${write.text(facts.size)} of ${write.length(facts.valueMm)}; it must be more than nothing.`,
    hint: () => "Give the width and thickness that it planes to.",
  },
  "built-up-no-way": {
    example: { widthMm: 120, thicknessMm: 40, timberWidthMm: 60, timberThicknessMm: 22 },
    sentence: (facts, write) =>
      `The section, ${write.length(facts.widthMm)} by ${write.length(facts.thicknessMm)}, cannot be parted into sticks of ${write.length(facts.timberWidthMm)} by ${write.length(facts.timberThicknessMm)} at places that hide a joint.`,
    hint: () =>
      "Find larger timber, allow more parts, or draw a fillet, a step or a quirk where a joint may lie.",
  },
  "built-up-edges-unseen": {
    example: {},
    sentence: () => "Joints come out on the back or on the edges of the stick, which are taken to be unseen.",
    hint: () => "If an edge stays in sight, keep its joint out of the light or cover it with a moulding.",
  },
  "built-up-one-timber": {
    example: {},
    sentence: () => "All parts are taken to be of one timber, grain along them, at the same moisture.",
    hint: () => "Leave the sticks together for some weeks before they are glued.",
  },
  "caution-edge-tools": {
    example: {},
    sentence: () => "Edge tools: hands behind the edge, work held fast, never plane towards a hand.",
    hint: () => "Hold small sections on a board, not in fingers.",
  },
  "caution-small-stick": {
    example: {},
    sentence: () => "A stick this small springs, rolls and breaks under a plane.",
    hint: () =>
      "Mould the edge of a wide board and saw the moulding off, with a push stick and the guard in place.",
  },
});
