/** Sentences about mitres, frames, cornices, scribes and slopes. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

const DECIDES = "local codes and licensed practice decide.";

/** A count or percentage as it stands; a missing one as `?`. */
function figure(value: number): string {
  return Number.isFinite(value) ? String(value) : "?";
}

/** An angle to the quarter degree that a saw's scale can be set to; a missing one as `?`. */
function angle(valueDeg: number): string {
  return Number.isFinite(valueDeg) ? `${Number(valueDeg.toFixed(2))}°` : "?";
}

export const fitTroubles = catalogue({
  "fit-size": {
    example: { size: "projection", valueMm: -25, mostMm: 2000 },
    sentence: (facts, write) =>
      `The ${write.text(facts.size)} is ${write.length(facts.valueMm)}; it cannot be negative or nothing, and at most ${write.length(facts.mostMm)}.`,
    hint: (facts, write) => `Give the ${write.text(facts.size)} again, with its unit.`,
  },
  "spring-angle": {
    example: { springDeg: 400, side: "wall" },
    sentence: (facts, write) =>
      `A spring of ${angle(facts.springDeg)} from the ${write.text(facts.side)} is not possible; it lies between 0° and 90°.`,
    hint: () =>
      "Common ones are 38°, 45° and 52° from the wall; if unsure, give how far the moulding comes out along the ceiling and down the wall.",
  },
  "spring-no-legs": {
    example: {},
    sentence: () => "The moulding neither comes out along the ceiling nor down the wall.",
    hint: () => "Measure both from the corner of wall and ceiling to the edges of the flat back.",
  },
  "corner-angle": {
    example: { cornerDeg: 400, leastDeg: 30, mostDeg: 175 },
    sentence: (facts) =>
      `A corner of ${angle(facts.cornerDeg)} cannot be mitred; it must be ${angle(facts.leastDeg)} to ${angle(facts.mostDeg)} between the walls.`,
    hint: () =>
      "Measure between the two walls in plan; 90° is square, and an outside corner is measured through the solid.",
  },
  "corner-taken-outside": {
    example: { cornerDeg: 270, takenDeg: 90 },
    sentence: (facts) =>
      `${angle(facts.cornerDeg)} was taken to be measured round the outside: an outside corner of ${angle(facts.takenDeg)}.`,
    hint: (facts) => `Give ${angle(facts.takenDeg)} and say that it is an outside corner.`,
  },
  "corner-no-triangle": {
    example: { acrossMm: 1500, leastMm: 200, mostMm: 1400 },
    sentence: (facts, write) =>
      `The three lengths make no triangle: across the corner is ${write.length(facts.acrossMm)}, which must lie between ${write.length(facts.leastMm)} and ${write.length(facts.mostMm)}.`,
    hint: () => "Measure again from the corner to a mark on each wall, and straight from mark to mark.",
  },
  "polygon-sides": {
    example: { sides: 2, fewest: 3, most: 72 },
    sentence: (facts) => `${figure(facts.sides)} sides cannot be mitred into a frame.`,
    hint: (facts) => `Take a whole number of sides from ${facts.fewest} to ${facts.most}.`,
  },
  "hopper-slope": {
    example: { slopeDeg: 120 },
    sentence: (facts) =>
      `Sides that slope ${angle(facts.slopeDeg)} from level are not possible; it lies between 0° and 90°.`,
    hint: () => "Measure from level: 90° stands plumb.",
  },
  "unlike-face": {
    example: { moulding: "first" },
    sentence: (facts, write) =>
      `The face of the ${write.text(facts.moulding)} moulding goes down again, stands behind the wall or has fewer than two points.`,
    hint: () =>
      "Give its points from the foot up, projection from the wall and height; or only how far it comes out and how high it is.",
  },
  "unlike-no-line": {
    example: {},
    sentence: () => "The two faces stay in one line: there is no mitre to draw.",
    hint: () => "Give the projection of both mouldings, and their faces.",
  },
  "unlike-along-wall": {
    example: {},
    sentence: () =>
      "One face stands plumb, or draws in where the other comes out: no mitre runs out between the walls.",
    hint: () => "Butt the plainer length into the corner and scribe the other to it.",
  },
  "unlike-bridged": {
    example: { moulding: "first", heightMm: 21.5 },
    sentence: (facts, write) =>
      `The face of the ${write.text(facts.moulding)} moulding curls in under itself at ${write.length(facts.heightMm)} from its foot: there the mitre is taken straight across.`,
    hint: () => "Pare that place by eye when both lengths are up; nobody can look behind it.",
  },
  "unlike-heights": {
    example: { taller: "first", overMm: 6 },
    sentence: (facts, write) =>
      `The ${write.text(facts.taller)} moulding is ${write.length(facts.overMm)} higher; that part meets nothing at the corner.`,
    hint: () => "Return it, stop it against a block, or change the moulding's height.",
  },
  "unlike-curved": {
    example: { mostOffMm: 1.2 },
    sentence: (facts, write) =>
      `The two faces are not in proportion, so the mitre is not straight: it bends by ${write.length(facts.mostOffMm)}.`,
    hint: () => "Saw outside the straight line, and pare both ends to the marked points.",
  },
  "unlike-straight-face": {
    example: {},
    sentence: () => "Faces that were not given are taken to be in proportion to each other.",
    hint: () => "Give the points of both faces to see whether the mitre bends.",
  },
  "frame-widths": {
    example: { given: 3, sides: 4 },
    sentence: (facts) => `${facts.given} widths are given for ${facts.sides} sides.`,
    hint: () => "Give one width for all sides, or one for each.",
  },
  "frame-corner-place": {
    example: { corner: 2 },
    sentence: (facts) => `Corner ${facts.corner} has no place of its own.`,
    hint: () => "Give every corner once, in order round the frame.",
  },
  "frame-corner-angle": {
    example: { corner: 2, cornerDeg: 178, leastDeg: 30, mostDeg: 175 },
    sentence: (facts) =>
      `Corner ${facts.corner} has an angle of ${angle(facts.cornerDeg)}; ${angle(facts.leastDeg)} to ${angle(facts.mostDeg)} can be mitred.`,
    hint: () => "Move the corner, or leave it out if the sides run straight on.",
  },
  "frame-crosses-itself": {
    example: {},
    sentence: () => "Two sides of the frame cross.",
    hint: () => "Give the corners in order round the frame.",
  },
  "frame-nothing-left": {
    example: { rail: 2, widthMm: 60 },
    sentence: (facts, write) =>
      `A moulding ${write.length(facts.widthMm)} wide leaves nothing to be seen along side ${facts.rail}.`,
    hint: () => "Take a narrower moulding or a larger frame.",
  },
  "frame-rebate-too-wide": {
    example: { rebateMm: 35, widthMm: 30 },
    sentence: (facts, write) =>
      `A rebate ${write.length(facts.rebateMm)} wide leaves no wood of a moulding ${write.length(facts.widthMm)} wide.`,
    hint: () => "Make the rebate narrower: 6 to 10 mm holds glass.",
  },
  "frame-glass-falls-through": {
    example: { rebateMm: 3, allowanceMm: 8 },
    sentence: (facts, write) =>
      `With an allowance of ${write.length(facts.allowanceMm)} in all, glass can slip off a rebate ${write.length(facts.rebateMm)} wide.`,
    hint: () => "Make the allowance smaller (2 to 3 mm is usual) or the rebate wider.",
  },
  "cornice-walls": {
    example: { count: 0, most: 100 },
    sentence: (facts) => `${facts.count} walls are given.`,
    hint: (facts) => `Give the lengths of 1 to ${facts.most} walls, in order from left to right.`,
  },
  "cornice-corners": {
    example: { walls: 3, corners: 5 },
    sentence: (facts) => `${facts.corners} corners are given for ${facts.walls} walls.`,
    hint: () => "Give one between each two walls, and one more if the run closes.",
  },
  "cornice-closed-end": {
    example: {},
    sentence: () => "A run that closes has no ends.",
    hint: () => "Leave out how it starts and ends, or leave out the last corner.",
  },
  "cornice-wall-too-short": {
    example: { wall: 2, lengthMm: 60, neededMm: 80 },
    sentence: (facts, write) =>
      `Wall ${facts.wall} is ${write.length(facts.lengthMm)} long, but its two corners take ${write.length(facts.neededMm)} of the moulding's front.`,
    hint: () => "Take a moulding that comes out less, or carry it past this wall.",
  },
  "cornice-does-not-close": {
    example: { gapMm: 14 },
    sentence: (facts, write) =>
      `The walls and corners as measured miss their own start by ${write.length(facts.gapMm)}.`,
    hint: () => "Measure the corners again, by three lengths, before cutting the last piece.",
  },
  "cornice-mitred-inside": {
    example: {},
    sentence: () => "The inside corners are mitred, because this section cannot be scribed.",
    hint: () => "Fit them with a test piece: an inside mitre opens when it is nailed back.",
  },
  "cornice-lengths-at-wall": {
    example: {},
    sentence: () => "Lengths are taken along the walls, straight and plumb.",
    hint: () => "Hold a straight-edge to the wall: where it is hollow, measure at the moulding's height.",
  },
  "cornice-cut-first": {
    example: { end: "left", joint: "scribed" },
    sentence: (facts, write) =>
      `Cut the ${write.text(facts.end)} end first (${write.text(facts.joint)}): it is the harder one.`,
    hint: () => "Try it in place while the piece is still long, then cut the other end to length.",
  },
  "cornice-either-first": {
    example: { joint: "mitre" },
    sentence: (facts, write) => `Both ends are alike (${write.text(facts.joint)}): either can be cut first.`,
    hint: () => "Leave the second end a little long and shoot it to fit.",
  },
  "cornice-return-first": {
    example: { end: "right" },
    sentence: (facts, write) =>
      `Cut the return's ${write.text(facts.end)} end, the mitre, on a long piece, then saw the return off it.`,
    hint: () => "Saw the small piece off last, held by a stop and never by fingers.",
  },
  "scribe-outside": {
    example: {},
    sentence: () => "An outside corner cannot be scribed.",
    hint: () => "Mitre it.",
  },
  "scribe-no-face": {
    example: {},
    sentence: () => "The section has no face that could be scribed.",
    hint: () => "See whether it lies with its back down in its stick.",
  },
  "scribe-hidden": {
    example: { heightMm: 22 },
    sentence: (facts, write) =>
      `The face curls in under itself at ${write.length(facts.heightMm)} from its foot: a scribe cannot reach behind that.`,
    hint: () => "Mitre this corner, or mitre that one part and scribe the rest.",
  },
  "scribe-like-sections": {
    example: {},
    sentence: () => "Both lengths are taken to have the same section, held at the same height.",
    hint: () => "Draw the line from the real first piece where it differs.",
  },
  "slope-angle": {
    example: { slopeDeg: 90, mostDeg: 75 },
    sentence: (facts) =>
      `A slope of ${angle(facts.slopeDeg)} cannot be worked; it must be more than nothing, or level, and at most ${angle(facts.mostDeg)}.`,
    hint: () => "Measure from level: a common pediment has 12° to 30°.",
  },
  "rake-square-corners": {
    example: {},
    sentence: () => "The corners are taken to be square outside ones where nothing else was said.",
    hint: () => "Give the corner at the foot and at the head of the slope if they differ.",
  },
  "rake-arcs-drawn-out": {
    example: { count: 2, slopeDeg: 22.5 },
    sentence: (facts) =>
      `${facts.count === 1 ? "One round shape" : `${facts.count} round shapes`} of the section come out as parts of ovals on a slope of ${angle(facts.slopeDeg)}.`,
    hint: () =>
      "Plan the new section: it says which planes come near enough, and which shape is off the shelf.",
  },
  "jack-side-cut": {
    example: { cutDeg: 95 },
    sentence: (facts) => `A side cut of ${angle(facts.cutDeg)} is not possible; it lies between 0° and 90°.`,
    hint: () => "Measure it as the swing from a square cut across the board.",
  },
  "jack-beyond-corner": {
    example: { cutDeg: 20, planDeg: 67, cornerDeg: 60 },
    sentence: (facts) =>
      `With a side cut of ${angle(facts.cutDeg)} the hip would stand ${angle(facts.planDeg)} from the eaves, outside a corner of ${angle(facts.cornerDeg)}.`,
    hint: () => "Measure the side cut on a board of the main side, and the corner between the two eaves.",
  },
  "side-moisture-order": {
    example: { fittedPercent: 8, driestPercent: 10, wettestPercent: 7 },
    sentence: (facts) =>
      `The wood is fitted at ${figure(facts.fittedPercent)} %, which must lie between its driest (${figure(facts.driestPercent)} %) and its wettest (${figure(facts.wettestPercent)} %).`,
    hint: () => "See whether two of the figures have changed places.",
  },
  "side-screw-place": {
    example: { placeMm: 520, depthMm: 450 },
    sentence: (facts, write) =>
      `A screw is to stand ${write.length(facts.placeMm)} from the front of a side that is ${write.length(facts.depthMm)} deep.`,
    hint: () => "Give the places of the screws from the front mitre.",
  },
  "side-moulding-keeps-length": {
    example: {},
    sentence: () => "The moulding itself is taken to keep its length.",
    hint: () => "Along the grain wood moves about a tenth of a percent at most.",
  },
  "caution-saw": {
    example: {},
    sentence: () =>
      "At the saw: guard in place, work held against fence and table, nothing unsupported past a bevel.",
    hint: () => `Try the setting on offcuts first; follow the machine's manual: ${DECIDES}`,
  },
  "caution-beyond-saw": {
    example: { mitreDeg: 13.25, bevelDeg: 47.75, mostMitreDeg: 50, mostBevelDeg: 45 },
    sentence: (facts) =>
      `The cuts ask for mitres up to ${angle(facts.mitreDeg)} and bevels up to ${angle(facts.bevelDeg)}; many saws end at ${angle(facts.mostMitreDeg)} and ${angle(facts.mostBevelDeg)}.`,
    hint: () =>
      "See how far your saw goes; beyond it hold the stick at its spring, or in a jig made for the cut, or saw by hand to lines and trim.",
  },
  "caution-short-piece": {
    example: { shortestMm: 45, leastMm: 300 },
    sentence: (facts, write) =>
      `The shortest piece is ${write.length(facts.shortestMm)}: too short to hold by hand at a saw, where hands keep ${write.length(facts.leastMm)} from the blade.`,
    hint: () => `Cut it from a longer stick, last, or clamp it in a jig; ${DECIDES}`,
  },
  "caution-overhead": {
    example: {},
    sentence: () => "A cornice that falls can kill: fix it to structure, not to plaster or glue alone.",
    hint: () => `Find the structure first; ${DECIDES}`,
  },
  "caution-old-paint": {
    example: {},
    sentence: () => "Old paint on walls and mouldings may hold lead.",
    hint: () => `Test before sanding, scraping or burning; ${DECIDES}`,
  },
  "caution-dust": {
    example: {},
    sentence: () => "Fine dust harms the lungs, and some timbers make people allergic.",
    hint: () => `Extract at the saw and wear a mask; ${DECIDES}`,
  },
});
