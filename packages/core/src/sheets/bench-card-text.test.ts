import { readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Plan } from "../cutting/index.ts";
import { benchCardLines } from "./bench-card-text.ts";
import { errorWriter } from "./card-words.ts";
import { gaugeEdgeOf } from "./gauge-edge.ts";

const GOLDEN = new URL("../../../../tests/golden/", import.meta.url);
const BEAD = JSON.parse(readFileSync(new URL("low-bead-and-cove.json", GOLDEN), "utf8")) as Plan;
const PLINTH = JSON.parse(readFileSync(new URL("every-way-of-holding.json", GOLDEN), "utf8")) as Plan;

function cardOf(plan: Plan, unit: "mm" | "in" = "mm"): string {
  return benchCardLines(plan, { unit, columns: 78 }).join("\n");
}

/** Wrapping undone, so that a sentence can be looked for. */
function flat(card: string): string {
  return card.replace(/\s+/g, " ");
}

describe("bench card", () => {
  test("planes to fetch once each, in the order they are wanted", () => {
    expect(flat(cardOf(BEAD))).toContain(
      "Planes left snipe bill; right snipe bill; 3/8 in hollow; 5/8 in round",
    );
  });

  test("marks say distance, from where, and before which cut", () => {
    const card = flat(cardOf(BEAD));
    expect(card).toContain("before cut 1 line 5 mm from the gauge edge; good to");
    expect(card).toContain(
      "before cut 4 line 7.9 mm from the foot of cut 3; that is 22.5 mm from the gauge edge",
    );
  });

  test("marks say how true they are, the other way beside, and a line in a corner that it is there", () => {
    const mark = { ...BEAD.marks[0]!, from: "foot of cut 2", distance: 3, fromGaugeEdge: 12, error: 0.229 };
    const told = (more: object): string =>
      flat(cardOf({ ...BEAD, marks: [{ ...mark, errorFromEdge: 0.332, errorFromFoot: 0.229, ...more }] }));
    expect(told({ serves: "join" })).toContain(
      "line 3 mm from the foot of cut 2; that is 12 mm from the gauge edge; the join good to 0.2 mm (from the edge 0.3 mm)",
    );
    expect(told({ serves: "band", from: "gauge edge", distance: 12, error: 0.332 })).toContain(
      "line 12 mm from the gauge edge; the join good to 0.3 mm (from the foot 0.2 mm), taken so for the band's width",
    );
    expect(told({ serves: "join", distance: 0 })).toContain("line at the foot of cut 2; that is 12 mm");
  });

  test("a band says its width, from what its lines are taken, and how true each way is", () => {
    const band = {
      name: "reeds",
      from: [8, 17],
      to: [39.75, 17],
      width: 31.75,
      cuts: [3, 6],
      linesFrom: "gauge edge",
      error: 0.332,
      errorFromEdge: 0.332,
      errorFromFoot: 0.711,
    } as const;
    expect(flat(cardOf({ ...BEAD, bands: [band] }))).toContain(
      "- Reeds, 31.8 mm wide: lines from the gauge edge, the width good to 0.3 mm (each from the foot of the one before 0.7 mm).",
    );
    const chained = { ...band, linesFrom: "foot", error: 0.2, errorFromFoot: 0.2 } as const;
    expect(flat(cardOf({ ...BEAD, bands: [chained] }))).toContain(
      "(from the gauge edge 0.3 mm). Measure the test piece and share the difference out before starting.",
    );
  });

  test("minutes are told by what they go to, for all the sticks", () => {
    const time = {
      totalMinutes: 81.4,
      settingMinutes: 24,
      strokeMinutes: 40,
      testPieceMinutes: 2.4,
      sharpeningMinutes: 15,
      reckonedWith: { sticks: 4 },
    };
    expect(flat(cardOf({ ...BEAD, time }))).toContain(
      "about 81 minutes for 4 sticks, 6 cuts, 6 settings (settings 24, strokes 40, test piece 2, sharpening 15)",
    );
  });

  test("joins say how true they can be expected", () => {
    const finish = {
      ...BEAD.finish,
      joins: [{ at: [10, 18], kind: "quirk", angle: 90, gap: 0, error: 0.23 } as const],
    };
    expect(flat(cardOf({ ...BEAD, finish }))).toContain(
      "quirk at 10 mm ± 0.2 mm (all from the gauge edge). ±",
    );
  });

  test("every cut with its title, plane, lean, sentence and sign", () => {
    const card = flat(cardOf(BEAD));
    for (const cut of BEAD.cuts) {
      expect(card).toContain(cut.says);
      expect(card).toContain(cut.doneWhen);
    }
    expect(card).toContain(
      "6 Round rocked from lean to lean - 5/8 in round, begun upright, laid over to 8° left",
    );
  });

  test("what stays uncut is said with rule, reason and cure; minutes are added up", () => {
    const card = flat(cardOf(PLINTH));
    expect(card).toContain("0.3 mm of wood is left (out of reach). No plane on the shelf reaches");
    expect(card).toContain("Try: a 4 mm chisel drawn along them.");
    // 3 + 5 + 4 + 6 + 6 + 6 + 4 + 5.
    expect(card).toContain("about 39 minutes, 8 cuts, 8 settings");
  });

  test("the saw is warned of only where there is one; small sticks get a board", () => {
    expect(cardOf(PLINTH)).toContain("Saw: guard and push stick");
    expect(cardOf(BEAD)).not.toContain("Saw:");
    expect(cardOf(BEAD)).toContain("sticking board");
    const large = {
      ...BEAD,
      stick: [
        [0, 0],
        [90, 0],
        [90, 40],
        [0, 40],
      ] as const,
    };
    expect(cardOf(large)).not.toContain("sticking board");
    expect(flat(cardOf(BEAD))).toContain("local codes and licensed practice decide");
  });

  test("inches are proper fractions", () => {
    // 42 mm is 1.6535 in: 1 21/32; 18 mm is 0.7087 in: 23/32 light by 0.26 mm, under a third of 1/32.
    expect(flat(cardOf(BEAD, "in"))).toContain("Stick 1²¹⁄₃₂″ wide, ²³⁄₃₂″ thick");
    // To a sixty-fourth 18 mm is 45.35: 45/64 full.
    const fine = benchCardLines(BEAD, { unit: "in", inchStep: 64, columns: 78 }).join("\n");
    expect(flat(fine)).toContain("Stick 1²¹⁄₃₂″ wide, ⁴⁵⁄₆₄″ full thick");
  });

  test("a place that stays uncut is told as a rule finds it, the nearer figure first", () => {
    const place = { ...PLINTH.uncut[0]!, from: [21, 30], to: [19, 17.7], left: 6.1 } as const;
    const at = (from: readonly [number, number], to: readonly [number, number]): string =>
      flat(cardOf({ ...PLINTH, uncut: [{ ...place, from, to }] }));
    expect(at([21, 30], [19, 17.7])).toContain(
      "From 19 mm to 21 mm from the gauge edge, from 17.7 mm to 30 mm above the back: 6.1 mm of wood is left",
    );
    expect(at([12, 27], [12, 24])).toContain(
      "Upright at 12 mm from the gauge edge, from 24 mm to 27 mm above",
    );
    expect(at([12, 24], [10, 24])).toContain("Level, from 10 mm to 12 mm from the gauge edge, 24 mm above");
    expect(at([12, 24], [12, 24])).toContain(
      "At one place, 12 mm from the gauge edge and 24 mm above the back",
    );
  });

  test("ways that were compared stand with their figures, the one taken named; planes left out are named", () => {
    const ways = [
      { way: "flat", cuts: 9, settings: 8, minutes: 44.4, why: "Nothing to make first." },
      { way: "canted", cuts: 9, settings: 1, minutes: 1, uncut: 2, why: "A jaw has to be made" },
    ];
    const card = flat(
      benchCardLines(
        { ...BEAD, way: "flat", ways },
        { unit: "mm", columns: 78, leftOut: ["old round"] },
      ).join("\n"),
    );
    expect(card).toContain("Way flat, of 2 compared below");
    expect(card).toContain("- Flat (taken): 9 cuts, 8 settings, about 44 minutes. Nothing to make first.");
    expect(card).toContain(
      "- Canted: 9 cuts, 1 setting, about 1 minute, 2 places left uncut. A jaw has to be made.",
    );
    expect(card).toContain("Left out old round; not used, as asked");
    expect(flat(cardOf(BEAD))).not.toContain("Left out");
  });

  test("of a way its seats, its lines and where the stick goes are told, as far as the file knows them", () => {
    const bare = { way: "flat", cuts: 9, settings: 8, minutes: 44, why: "Plain." };
    const stick = [
      [0, 0],
      [40, 0],
      [40, 20],
      [0, 20],
    ] as const;
    const told = (more: object): string =>
      flat(cardOf({ ...BEAD, stick, way: "flat", ways: [{ ...bare, ...more }, bare] }));
    const whole = { curved: 1, seats: 1, lines: 12, linesAtFirst: 7, planed: 264, sawn: 100 };
    expect(told(whole)).toContain(
      "Plain. 1 of 1 curved cut finds a seat; 7 of 12 lines can be scribed before the first cut; 33 % of the stick goes to shavings, 13 % to the saw. - Flat",
    );
    expect(told({ ...whole, curved: 0, seats: 0 })).toContain("Plain. 7 of 12 lines can be scribed");
    expect(told({})).not.toContain("shavings");
  });

  test("on a plan gauged from the right, places are told from the right", () => {
    // The stick is 42 mm wide: what stands 10 mm from its left edge stands 32 mm from its right one.
    const marks = BEAD.marks.map((mark) => ({ ...mark, fromGaugeEdge: 42 - mark.at[0] }));
    const finish = {
      ...BEAD.finish,
      joins: [{ at: [10, 18], kind: "arris", angle: 90, gap: 0, error: 0 } as const],
    };
    expect(gaugeEdgeOf({ ...BEAD, marks })).toBe("right");
    expect(flat(cardOf({ ...BEAD, marks, finish }))).toContain("arris at 32 mm (all from the gauge edge)");
    expect(gaugeEdgeOf(BEAD)).toBe("left");
    expect(gaugeEdgeOf({ ...BEAD, marks: [] })).toBe("left");
    // A file that says it is taken at its word.
    expect(gaugeEdgeOf({ ...BEAD, gaugeEdge: "right" })).toBe("right");
  });

  test("a plan without cuts says so", () => {
    expect(flat(cardOf({ ...BEAD, cuts: [], marks: [] }))).toContain(
      "No cut: the stick is the section already",
    );
  });

  test("no line is longer than the columns, and no control character comes through", () => {
    const anyText = fc.string({ unit: "binary", maxLength: 120 });
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 140 }), anyText, anyText, anyText, (columns, name, says, why) => {
        const plan: Plan = {
          ...PLINTH,
          name,
          warnings: [why],
          cuts: PLINTH.cuts.map((cut) => ({ ...cut, says, plane: { ...cut.plane, name } })),
          uncut: PLINTH.uncut.map((place) => ({ ...place, why, try: says })),
        };
        for (const line of benchCardLines(plan, { unit: "mm", columns })) {
          expect([...line].length).toBeLessThanOrEqual(Math.max(24, columns));
          expect(line).not.toMatch(/[\p{Cc}\p{Cf}\p{Cs}\u2028\u2029]/u);
        }
      }),
      { seed: 20261124, numRuns: 200 },
    );
  });
});

test("an error is told to a tenth of a millimetre, never as less than one, in inches as a feeler gauge has it", () => {
  expect([0.141, 0.18, 0.02].map(errorWriter("mm"))).toEqual(["0.1\u00a0mm", "0.2\u00a0mm", "0.1\u00a0mm"]);
  expect(errorWriter("in", 32)(0.141)).toBe("6\u00a0thou");
});
