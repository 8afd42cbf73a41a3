/** Sentences about the wanted section and its stick. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const sectionTroubles = catalogue({
  "stick-size": {
    example: { side: "width", valueMm: 640, mostMm: 300 },
    sentence: (facts, write) =>
      `The stick's ${write.text(facts.side)} is given as ${write.length(facts.valueMm)}; it must be more than nothing and at most ${write.length(facts.mostMm)}.`,
    hint: (facts, write) =>
      `Give the stick's ${write.text(facts.side)} again; build a wider moulding up from several sticks.`,
  },
  "section-start": {
    example: { startHeightMm: 24, thicknessMm: 18 },
    sentence: (facts, write) =>
      `The section starts ${write.length(facts.startHeightMm)} up the gauge edge, but the stick is only ${write.length(facts.thicknessMm)} thick.`,
    hint: (facts, write) =>
      `Start it between the back and ${write.length(facts.thicknessMm)}, or take a thicker stick.`,
  },
  "parts-none": {
    example: {},
    sentence: () => "The section has no parts yet.",
    hint: () => "Add a first part, such as a fillet along the gauge edge.",
  },
  "parts-fall-short": {
    example: { endsMm: 38.5, widthMm: 42, leftMm: 3.5 },
    sentence: (facts, write) =>
      `The parts end ${write.length(facts.endsMm)} from the gauge edge; the stick is ${write.length(facts.widthMm)} wide, so ${write.length(facts.leftMm)} is left over.`,
    hint: (facts, write) =>
      `Add a fillet ${write.length(facts.leftMm)} wide, let one fillet take the rest, or make the stick ${write.length(facts.endsMm)} wide.`,
  },
  "parts-too-wide": {
    example: { endsMm: 45, widthMm: 42, overMm: 3 },
    sentence: (facts, write) =>
      `The parts end ${write.length(facts.endsMm)} from the gauge edge, ${write.length(facts.overMm)} beyond the far edge of a stick ${write.length(facts.widthMm)} wide.`,
    hint: (facts, write) =>
      `Make the parts ${write.length(facts.overMm)} narrower together, or take a stick ${write.length(facts.endsMm)} wide.`,
  },
  "parts-two-rests": {
    example: { count: 2 },
    sentence: (facts) => `${facts.count} fillets are to take the rest of the width; only one can.`,
    hint: () => "Give all but one of them a width.",
  },
  "parts-no-rest": {
    example: { leftMm: -2 },
    sentence: (facts, write) =>
      facts.leftMm < 0
        ? `One fillet is to take the rest of the width, but the other parts are ${write.length(-facts.leftMm)} too wide already.`
        : `One fillet is to take the rest of the width, but the other parts leave ${write.length(facts.leftMm)}, or that fillet stands too steep to fill it.`,
    hint: () => "Make other parts narrower, take a wider stick, or give the fillet a width of its own.",
  },
  "part-size": {
    example: { part: "ovolo", size: "width across", valueMm: 0, leastMm: 0.01, mostMm: 300 },
    sentence: (facts, write) =>
      `The ${write.text(facts.size)} of the ${write.text(facts.part)} is ${write.length(facts.valueMm)}; it must lie between ${write.length(facts.leastMm)} and ${write.length(facts.mostMm)}.`,
    hint: (facts, write) => `Give the ${write.text(facts.part)} another ${write.text(facts.size)}.`,
  },
  "part-radius": {
    example: { part: "arc", radiusMm: 5, leastMm: 6.4, mostMm: 5000 },
    sentence: (facts, write) =>
      `A radius of ${write.length(facts.radiusMm)} does not fit the ${write.text(facts.part)}; between its two ends it must be ${write.length(facts.leastMm)} to ${write.length(facts.mostMm)}.`,
    hint: (facts, write) =>
      `Take a radius of ${write.length(facts.leastMm)} or more, or bring the ends of the ${write.text(facts.part)} nearer together.`,
  },
  "part-sweep": {
    example: { part: "low bead", sweepDeg: 220, leastDeg: 1, mostDeg: 180 },
    sentence: (facts, write) =>
      `The ${write.text(facts.part)} takes ${write.degrees(facts.sweepDeg)} of the circle; it must be ${write.degrees(facts.leastDeg)} to ${write.degrees(facts.mostDeg)}.`,
    hint: () => "One plane held upright makes about 60°, a half-round is 180°.",
  },
  "part-share": {
    example: {
      part: "cyma recta",
      share: "hollow's share",
      valuePercent: 2,
      leastPercent: 5,
      mostPercent: 95,
    },
    sentence: (facts, write) =>
      `The ${write.text(facts.share)} of the ${write.text(facts.part)} is ${facts.valuePercent} %; it must be ${facts.leastPercent} to ${facts.mostPercent} %.`,
    hint: () => "Take 50 % for a hollow and a round alike.",
  },
  "part-count": {
    example: { part: "reeds", what: "count", count: 0, most: 100 },
    sentence: (facts, write) =>
      `The ${write.text(facts.what)} of the ${write.text(facts.part)} is ${facts.count}; it must be a whole number from 1 to ${facts.most}.`,
    hint: (facts, write) => `Give another ${write.text(facts.what)}.`,
  },
  "band-without-size": {
    example: { of: "reeds" },
    sentence: (facts, write) =>
      `The band of ${write.text(facts.of)} says neither how many there are nor their radius.`,
    hint: () => "Give a count, a radius, or both.",
  },
  "band-too-narrow": {
    example: { of: "reeds", count: 7, most: 100, widthMm: 40, needMm: 44.45 },
    sentence: (facts, write) =>
      facts.count > facts.most
        ? `The band of ${write.text(facts.of)} would hold more than ${facts.most} of them.`
        : `The band is ${write.length(facts.widthMm)} wide; its ${write.text(facts.of)}, with the flats between them and at the ends, need ${write.length(facts.needMm)} or more.`,
    hint: () => "Make the band wider, or take fewer of them, a smaller radius, or narrower flats.",
  },
  "band-no-sole": {
    example: { of: "reeds", count: 7, mostMm: 5.5 },
    sentence: (facts, write) =>
      `A band of ${facts.count} ${write.text(facts.of)} has room for ${write.length(facts.mostMm)} each; no plane on the shelf is so narrow.`,
    hint: (facts, write) =>
      `Take fewer ${write.text(facts.of)}, make the band wider, or give a radius to see what another plane would make.`,
  },
  "part-lean": {
    example: { part: "bead", leanDeg: 270 },
    sentence: (facts, write) =>
      `The ${write.text(facts.part)} is turned by ${write.degrees(facts.leanDeg)}; it can be turned by 180° at most, to either side.`,
    hint: () => "Give the lean as the smaller turn: −90° instead of 270°.",
  },
  "part-turned-twice": {
    example: { part: "bead", leanDeg: 15 },
    sentence: (facts, write) =>
      `The ${write.text(facts.part)} is to run on smoothly and to lean ${write.degrees(facts.leanDeg)}; it cannot do both.`,
    hint: () => "Take away the lean, or let it meet the part before at an arris.",
  },
  "part-runs-on-from-nothing": {
    example: { part: "running arc" },
    sentence: (facts, write) =>
      `The ${write.text(facts.part)} is to run on from the part before, but it is the first one.`,
    hint: () => "Put a part before it, or begin with a part that needs none before it.",
  },
  "part-behind": {
    example: { part: "running arc" },
    sentence: (facts, write) =>
      `The ${write.text(facts.part)} would have to turn by more than a half circle to end where it should.`,
    hint: () => "Move its end further along, or put another part between.",
  },
  "part-empty": {
    example: { part: "free curve" },
    sentence: (facts, write) => `The ${write.text(facts.part)} ends where it starts.`,
    hint: () => "Move its end, or take the part away.",
  },
  "back-size": {
    example: { kind: "rebate", edge: "far", leastMm: 0.01 },
    sentence: (facts, write) =>
      `The ${write.text(facts.kind)} at the back's ${write.text(facts.edge)} edge has no size that can be cut.`,
    hint: (facts, write) =>
      `Give both its sizes, at least ${write.length(facts.leastMm)} each; a bevel's angle from the back lies between 0° and 90°.`,
  },
  "back-twice": {
    example: { edge: "gauge" },
    sentence: (facts, write) =>
      `Two things are to be taken off the back at the ${write.text(facts.edge)} edge.`,
    hint: () => "Keep one of them.",
  },
  "back-too-high": {
    example: { kind: "rebate", edge: "far", riseMm: 14, edgeHeightMm: 12 },
    sentence: (facts, write) =>
      `The ${write.text(facts.kind)} rises ${write.length(facts.riseMm)} up the ${write.text(facts.edge)} edge, of which only ${write.length(facts.edgeHeightMm)} is left standing.`,
    hint: (facts, write) =>
      `Make it at most ${write.length(facts.edgeHeightMm)} high, or leave more of the edge standing.`,
  },
  "back-all-gone": {
    example: { widthMm: 42, overMm: 2 },
    sentence: (facts, write) =>
      `What is taken off the two sides of the back leaves nothing of a stick ${write.length(facts.widthMm)} wide to lie on.`,
    hint: () => "Make one of the two narrower, or take a wider stick.",
  },
  "section-open": {
    example: { acrossMm: 12, upMm: 18, gapMm: 0.4 },
    sentence: (facts, write) =>
      `The outline is not closed: it has a gap of ${write.length(facts.gapMm)} at ${write.length(facts.acrossMm)} from the gauge edge and ${write.length(facts.upMm)} up from the back.`,
    hint: () => "Join the two ends in the drawing.",
  },
  "section-encloses-nothing": {
    example: {},
    sentence: () => "The outline goes round no wood: it is turned inside out or lies flat.",
    hint: () => "Look at the sizes of the parts: one of them leads back or below the stick.",
  },
  "section-crosses-itself": {
    example: { acrossMm: 12, upMm: 15, count: 1 },
    sentence: (facts, write) =>
      `The outline crosses or touches itself at ${write.length(facts.acrossMm)} from the gauge edge and ${write.length(facts.upMm)} up from the back${facts.count > 1 ? ` (one of ${facts.count} such places)` : ""}.`,
    hint: () => "Move the two parts that meet there further apart.",
  },
  "section-outside-stick": {
    example: { side: "face", byMm: 1.5, acrossMm: 20, upMm: 19.5 },
    sentence: (facts, write) =>
      `The section stands ${write.length(facts.byMm)} out of the stick beyond its ${write.text(facts.side)}, at ${write.length(facts.acrossMm)} from the gauge edge.`,
    hint: (facts, write) =>
      `Take a stick ${write.length(facts.byMm)} larger on that side, or make the part there smaller.`,
  },
  "section-undercut": {
    example: { acrossMm: 20, upMm: 9, stretchMm: 4, count: 1 },
    sentence: (facts, write) =>
      `No plane gets at the place ${write.length(facts.acrossMm)} from the gauge edge and ${write.length(facts.upMm)} up from the back: over ${write.length(facts.stretchMm)} the wood above it is in the way${facts.count > 1 ? ` (one of ${facts.count} such places)` : ""}.`,
    hint: () => "Open the section there, make it of two sticks, or leave the place to a carving tool.",
  },
  "section-not-worked": {
    example: {},
    sentence: () => "The section is the stick itself: there is nothing to cut.",
    hint: () => "Draw the section within the stick, or take a larger stick.",
  },
  "section-too-small": {
    example: { widthMm: 1.5, heightMm: 0.75, leastMm: 2 },
    sentence: (facts, write) =>
      `The section is ${write.length(facts.widthMm)} by ${write.length(facts.heightMm)}: nothing smaller than ${write.length(facts.leastMm)} is moulded by hand.`,
    hint: () => "If the drawing is in inches, say so: its numbers were read as millimetres.",
  },
  "section-too-large": {
    example: { widthMm: 1065, heightMm: 400, mostMm: 300 },
    sentence: (facts, write) =>
      `The section is ${write.length(facts.widthMm)} by ${write.length(facts.heightMm)}; one stick can be ${write.length(facts.mostMm)} at most.`,
    hint: () => "Look at the drawing's unit and scale, or build the moulding up from several sticks.",
  },
  "section-maybe-inches": {
    example: { widthMm: 3.5, heightMm: 1.25, inchesWidthMm: 88.9, inchesHeightMm: 31.75 },
    sentence: (facts, write) =>
      `The section is only ${write.length(facts.widthMm)} by ${write.length(facts.heightMm)}; in inches the same numbers would make ${write.length(facts.inchesWidthMm)} by ${write.length(facts.inchesHeightMm)}.`,
    hint: () => "If the drawing is in inches, say so; otherwise go on.",
  },
  "section-thin": {
    example: { thinMm: 1.2, leastMm: 2 },
    sentence: (facts, write) => `The section is only ${write.length(facts.thinMm)} thin.`,
    hint: () => "Work it on the edge of a wider board and saw it off after.",
  },
  "section-short-pieces": {
    example: { acrossMm: 12, upMm: 15, shortMm: 0.004, count: 2, leastMm: 0.01 },
    sentence: (facts, write) =>
      `${facts.count === 1 ? "One piece of the outline is" : `${facts.count} pieces of the outline are`} shorter than ${write.length(facts.leastMm)}, the first at ${write.length(facts.acrossMm)} from the gauge edge: a slip of the drawing rather than a shape.`,
    hint: () => "Take such pieces out of the drawing, and join their neighbours.",
  },
});
