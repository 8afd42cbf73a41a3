/** Sentences about lengths as people type them. */
import { catalogue } from "./catalogue.ts";

export const lengthTroubles = catalogue({
  "length-missing": {
    example: {},
    sentence: () => "No length is given here.",
    hint: () => "Type a length such as 1 3/8 in or 35 mm.",
  },
  "length-too-many-characters": {
    example: { characters: 240, most: 100 },
    sentence: (facts) => `${facts.characters} characters are too many for one length.`,
    hint: (facts) =>
      `Type the length alone, in ${facts.most} characters or fewer, such as 1 3/8 in or 35 mm.`,
  },
  "length-control-characters": {
    example: { typed: "19 mm" },
    sentence: (facts, write) => `“${write.text(facts.typed)}” holds characters that cannot be seen.`,
    hint: () => "Delete it and type the length anew instead of pasting it.",
  },
  "length-unreadable": {
    example: { typed: "about a thumb" },
    sentence: (facts, write) => `“${write.text(facts.typed)}” cannot be read as a length.`,
    hint: () => "Write it like 1 3/8 in, 1⅜″, 2' 3 1/2\", 9.5 mm or 1.5 cm.",
  },
  "length-unknown-unit": {
    example: { typed: "3 furlongs", unit: "furlongs" },
    sentence: (facts, write) =>
      `“${write.text(facts.unit)}” in “${write.text(facts.typed)}” is no unit of length known here.`,
    hint: () => "Use mm, cm, m, in or ft.",
  },
  "length-negative": {
    example: { typed: "-3 mm" },
    sentence: (facts, write) => `“${write.text(facts.typed)}” is less than nothing.`,
    hint: () =>
      "Type the length without the minus sign; measure from the other side if that is what was meant.",
  },
  "length-not-a-number": {
    example: {},
    sentence: () => "The number given here is none that a length can be.",
    hint: () => "Give a plain number such as 9.5, or text such as 1 3/8 in.",
  },
  "length-too-great": {
    example: { typed: "99999999 mm", mostMm: 1_000_000 },
    sentence: (facts, write) =>
      `“${write.text(facts.typed)}” is longer than any length taken here (${write.length(facts.mostMm)}).`,
    hint: () => "Check the digits and the unit.",
  },
  "length-zero-denominator": {
    example: { typed: "3/0 in" },
    sentence: (facts, write) => `“${write.text(facts.typed)}” divides by nought.`,
    hint: () => "Write what the inch is divided into below the line, such as 3/8 in.",
  },
  "length-improper": {
    example: { typed: "1 11/8 in" },
    sentence: (facts, write) =>
      `“${write.text(facts.typed)}” has a fraction of one or more beside a whole number.`,
    hint: () =>
      "Write a fraction of less than one there, such as 1 3/8 in, or the fraction alone, such as 11/8 in.",
  },
  "length-ambiguous-comma": {
    example: { typed: "1,250 mm", first: "1.25 mm", second: "1250 mm" },
    sentence: (facts, write) =>
      `“${write.text(facts.typed)}” can be read as ${write.text(facts.first)} or as ${write.text(facts.second)}.`,
    hint: (facts, write) =>
      `Type ${write.text(facts.first)} or ${write.text(facts.second)}, whichever is meant.`,
  },
  "length-light-or-full": {
    example: { typed: "5/8 light" },
    sentence: (facts, write) =>
      `“${write.text(facts.typed)}” says on which side of the mark the length lies, but not how far off.`,
    hint: () => "Measure it and type the figure, in 64ths or in decimals, such as 39/64 in or 15.5 mm.",
  },
  "length-fraction-of-millimetre": {
    example: { typed: "3/4", lengthMm: 0.75 },
    sentence: (facts, write) =>
      `“${write.text(facts.typed)}” has no unit, and lengths here are in millimetres: read as ${write.text(facts.typed)} mm.`,
    hint: (facts, write) => `If inches are meant, type ${write.text(facts.typed)} in.`,
  },
});
