/** Sentences about the shelf of planes. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const shelfTroubles = catalogue({
  "shelf-not-json": {
    example: { line: 3, column: 14 },
    sentence: (facts) =>
      facts.line > 0
        ? `The shelf file cannot be read from line ${facts.line}, column ${facts.column} on.`
        : "The shelf file cannot be read.",
    hint: () => "Look there for a missing comma, bracket or quotation mark; the file must be JSON.",
  },
  "shelf-too-large": {
    example: { sizeMegabytes: 12.3, mostMegabytes: 5 },
    sentence: (facts) =>
      `The shelf file is ${facts.sizeMegabytes} MB; ${facts.mostMegabytes} MB are taken at most.`,
    hint: () => "Check that it is the right file: a shelf of a hundred planes takes less than 0.1 MB.",
  },
  "shelf-too-many-planes": {
    example: { planes: 812, most: 500 },
    sentence: (facts) => `The shelf holds ${facts.planes} planes; ${facts.most} are taken at most.`,
    hint: () => "Leave out the planes that have nothing to do with the work at hand.",
  },
  "shelf-wrong-format": {
    example: { found: "a list" },
    sentence: (facts, write) => `This is no shelf of planes: it holds ${write.text(facts.found)}.`,
    hint: () =>
      'A shelf file begins with { "format": "mouldwright/shelf", "version": 1, "unit": "mm", "planes": [ … ] }.',
  },
  "shelf-version-newer": {
    example: { found: "2", known: 1 },
    sentence: (facts, write) =>
      `This shelf is of version ${write.text(facts.found)}, newer than version ${facts.known}, the newest known here.`,
    hint: () => "Open it with a newer edition of this program. The file has been left as it is.",
  },
  "shelf-version-unknown": {
    example: { found: "first", known: 1 },
    sentence: (facts, write) => `“${write.text(facts.found)}” is no version of a shelf file.`,
    hint: (facts) => `Write "version": ${facts.known}.`,
  },
  "shelf-unit-unknown": {
    example: { found: "cubits" },
    sentence: (facts, write) => `The shelf's unit is “${write.text(facts.found)}”.`,
    hint: () => 'Write "unit": "mm" or "unit": "in".',
  },
  "shelf-empty": {
    example: {},
    sentence: () => "There is no plane on the shelf.",
    hint: () => "Enter at least one plane with its kind and its sizes.",
  },
  "shelf-unknown-key": {
    example: { key: "raduis", of: "hollow", nearest: "radius", known: ["radius", "width"] },
    sentence: (facts, write) => `“${write.text(facts.key)}” is not known for a ${write.text(facts.of)}.`,
    hint: (facts, write) =>
      facts.nearest === ""
        ? `Take it out. Known here: ${write.list(facts.known)}.`
        : `Write “${write.text(facts.nearest)}” if that is meant, or take it out.`,
  },
  "shelf-forbidden-key": {
    example: { key: "__proto__" },
    sentence: (facts, write) => `A shelf file may not hold “${write.text(facts.key)}”.`,
    hint: () => "Take it out, and ask where the file comes from: no shelf needs it.",
  },
  "shelf-missing-key": {
    example: { key: "width", of: "rebate plane" },
    sentence: (facts, write) => `“${write.text(facts.key)}” is missing for a ${write.text(facts.of)}.`,
    hint: (facts, write) => `Measure it on the plane and add “${write.text(facts.key)}”.`,
  },
  "shelf-wrong-value": {
    example: { key: "hand", wanted: "left or right", found: "both" },
    sentence: (facts, write) => `“${write.text(facts.key)}” is ${write.text(facts.found)}.`,
    hint: (facts, write) => `Give ${write.text(facts.wanted)} there.`,
  },
  "shelf-unknown-kind": {
    example: { found: "hollo", nearest: "hollow", known: ["hollow", "round"] },
    sentence: (facts, write) => `“${write.text(facts.found)}” is no kind of plane known here.`,
    hint: (facts, write) =>
      facts.nearest === ""
        ? `Give one of these kinds: ${facts.known.map(write.text).join(", ")}. Any other sole can be given as “shaped”.`
        : `Write “${write.text(facts.nearest)}” if that is meant. Any other sole can be given as “shaped”.`,
  },
  "shelf-size-not-positive": {
    example: { key: "radius", valueMm: -9.5 },
    sentence: (facts, write) =>
      `“${write.text(facts.key)}” is ${write.length(facts.valueMm)}; it must be more than nothing.`,
    hint: () => "Measure the plane and give the size you find.",
  },
  "shelf-size-too-large": {
    example: { key: "width", mostMm: 1000 },
    sentence: (facts, write) =>
      `“${write.text(facts.key)}” is more than ${write.length(facts.mostMm)}: no plane is as large as that.`,
    hint: () => "Check the digits and the unit, mm or in.",
  },
  "shelf-angle-out-of-range": {
    example: { key: "pitch", valueDeg: 120, leastDeg: 20, mostDeg: 90 },
    sentence: (facts, write) =>
      `“${write.text(facts.key)}” is ${write.degrees(facts.valueDeg)}, which no plane of this kind can have.`,
    hint: (facts, write) =>
      `Give an angle from ${write.degrees(facts.leastDeg)} to ${write.degrees(facts.mostDeg)}.`,
  },
  "shelf-wider-than-circle": {
    example: { name: "⅜ in hollow", widthMm: 30, radiusMm: 9.525, mostMm: 19.05 },
    sentence: (facts, write) =>
      `${write.text(facts.name)}: a sole ${write.length(facts.widthMm)} wide cannot be part of a circle of radius ${write.length(facts.radiusMm)}.`,
    hint: (facts, write) =>
      `Measure both again: at that radius the sole is at most ${write.length(facts.mostMm)} wide. Commonly the width equals the radius; check that the radius was not taken for the whole circle's breadth.`,
  },
  "shelf-part-larger-than-whole": {
    example: { key: "nose", valueMm: 8, than: "width", limitMm: 6 },
    sentence: (facts, write) =>
      `“${write.text(facts.key)}” is ${write.length(facts.valueMm)}, which does not go with a “${write.text(facts.than)}” of ${write.length(facts.limitMm)}.`,
    hint: (facts, write) =>
      `Measure “${write.text(facts.key)}” and “${write.text(facts.than)}” again and correct the one that is wrong.`,
  },
  "shelf-duplicate-id": {
    example: { id: "hollow-6", firstAt: "planes[2]" },
    sentence: (facts, write) =>
      `The id “${write.text(facts.id)}” is given twice; it stands first at ${write.text(facts.firstAt)}.`,
    hint: () => "Give one of the two planes another id, or leave its id out and one is made.",
  },
  "shelf-bad-id": {
    example: { found: "left\uFFFDhollow" },
    sentence: (facts, write) => `“${write.text(facts.found)}” cannot be a plane's id.`,
    hint: () =>
      "Use 1 to 60 letters, figures, dots and dashes, such as hollow-6, or leave the id out and one is made.",
  },
  "shelf-bad-sole": {
    example: { vertex: 3, reason: "doubles back" },
    sentence: (facts, write) =>
      `The drawn sole cannot be used at its point ${facts.vertex}: it ${write.text(facts.reason)}.`,
    hint: () =>
      "Give its points from left to right as seen looking along the stroke, each [x, y] or [x, y, bulge], without turning back.",
  },
  "sole-depth-unbelievable": {
    example: { widthMm: 10, depthMm: 8 },
    sentence: (facts, write) =>
      `A sole ${write.length(facts.widthMm)} wide and ${write.length(facts.depthMm)} deep is not part of a circle that a plane can have.`,
    hint: () =>
      "Measure again: the depth is that of the middle of the sole against a straight edge laid across its two corners, at most half the width.",
  },
  "shelf-size-unusual": {
    example: { name: "⅜ in hollow", key: "radius", valueMm: 240, leastMm: 1, mostMm: 200 },
    sentence: (facts, write) =>
      `${write.text(facts.name)}: “${write.text(facts.key)}” is ${write.length(facts.valueMm)}, which is unusual.`,
    hint: (facts, write) =>
      `Check the digits and the unit; ${write.length(facts.leastMm)} to ${write.length(facts.mostMm)} is usual.`,
  },
  "shelf-angle-unusual": {
    example: { name: "⅜ in hollow", key: "pitch", valueDeg: 30, leastDeg: 35, mostDeg: 65 },
    sentence: (facts, write) =>
      `${write.text(facts.name)}: “${write.text(facts.key)}” is ${write.degrees(facts.valueDeg)}, which is unusual.`,
    hint: (facts, write) =>
      `Check it; ${write.degrees(facts.leastDeg)} to ${write.degrees(facts.mostDeg)} is usual.`,
  },
  "shelf-name-cleaned": {
    example: { name: "my best hollow" },
    sentence: (facts, write) =>
      `Characters that cannot be seen were left out of the name “${write.text(facts.name)}”.`,
    hint: () => "Type the name anew in the shelf file.",
  },
});
