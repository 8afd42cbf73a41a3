import fc from "fast-check";
import loadHighs from "highs";
import { describe, expect, test } from "vitest";
import { type LengthsQuestion, type SharedOut, shareOut } from "./index.ts";

const SEED = 20261124;

/** Jobs in whole millimetres, so that the oracle's own slack cannot decide whether a piece fits. */
const job = fc.record({
  lengths: fc.array(fc.integer({ min: 80, max: 900 }), { minLength: 1, maxLength: 12 }),
  sticks: fc.array(
    fc.record({
      lengthMm: fc.integer({ min: 900, max: 2000 }),
      bad: fc.option(
        fc.record({ at: fc.integer({ min: 0, max: 90 }), wide: fc.integer({ min: 0, max: 60 }) }),
      ),
    }),
    { minLength: 3, maxLength: 7 },
  ),
  kerfMm: fc.integer({ min: 0, max: 5 }),
  trimMm: fc.integer({ min: 0, max: 5 }),
  planingMm: fc.integer({ min: 0, max: 50 }),
  ends: fc.constantFrom("closed" as const, "open" as const, "loose" as const),
});

type Job = typeof job extends fc.Arbitrary<infer J> ? J : never;

function questionOf({ lengths, sticks, kerfMm, trimMm, planingMm, ends }: Job): LengthsQuestion {
  return {
    runs: [{ name: "Frame", ends, pieces: lengths.map((lengthMm) => ({ lengthMm })) }],
    sticks: sticks.map(({ lengthMm, bad }) => {
      if (bad === null) return { lengthMm };
      const fromMm = Math.floor((lengthMm * bad.at) / 100);
      return { lengthMm, badPlaces: [{ fromMm, toMm: Math.min(lengthMm, fromMm + bad.wide) }] };
    }),
    allowances: { kerfMm, trimMm, planingMm },
  };
}

/** Sound stretches by the plainest reading of the rule: for the oracle only. */
function stretchesOf(question: LengthsQuestion, index: number): number[] {
  const { kerfMm = 0, planingMm = 0 } = question.allowances ?? {};
  const { lengthMm, badPlaces = [] } = question.sticks[index]!;
  const end = lengthMm - planingMm;
  const bad = badPlaces[0];
  if (bad === undefined) return [end - planingMm];
  const badTo = Math.max(bad.toMm, bad.fromMm + kerfMm);
  return [Math.min(bad.fromMm, end) - planingMm, end - Math.max(badTo, planingMm)].filter((mm) => mm > 0);
}

/** The same question as an integer programme: y = stick used, x = piece in stretch. */
function programme(question: LengthsQuestion): string {
  const { kerfMm = 0, trimMm = 0 } = question.allowances ?? {};
  const sizes = question.runs[0]!.pieces.map(({ lengthMm }) => lengthMm + 2 * trimMm + kerfMm);
  const stretches = question.sticks.flatMap((_, stick) =>
    stretchesOf(question, stick).map((mm) => ({ stick, room: mm + kerfMm })),
  );
  const xs = sizes.map((_, p) => stretches.map((_, s) => `x${p}_${s}`));
  const placed = xs.map((row, p) => ` place${p}: ${row.join(" + ")} = 1`);
  const held = stretches.map(
    ({ stick, room }, s) =>
      ` hold${s}: ${sizes.map((size, p) => `${size} x${p}_${s}`).join(" + ")} - ${room} y${stick} <= 0`,
  );
  const ys = question.sticks.map((_, stick) => `y${stick}`);
  return [
    "Minimize",
    ` sticks: ${ys.join(" + ")}`,
    "Subject To",
    ...placed,
    ...held,
    "Binary",
    ` ${[...ys, ...xs.flat()].join(" ")}`,
    "End",
  ].join("\n");
}

/** Everything that a rod must keep to, looked at from the answer alone. */
function expectSound(question: LengthsQuestion, answer: SharedOut): void {
  const { kerfMm, trimMm, planingMm } = answer.allowances;
  const wanted = question.runs.flatMap((run) => run.pieces.map((piece) => piece.lengthMm));
  const marked = answer.sticks.flatMap((stick) => stick.pieces);
  expect(marked.map((piece) => piece.number).sort((a, b) => a - b)).toEqual(
    wanted.map((_, index) => index + 1),
  );
  for (const piece of marked) {
    expect(piece.toMm - piece.fromMm).toBeCloseTo(wanted[piece.number - 1]!, 6);
    expect(piece.fromMm - piece.roughFromMm).toBeCloseTo(trimMm, 6);
    expect(piece.roughToMm - piece.toMm).toBeCloseTo(trimMm, 6);
  }
  for (const stick of answer.sticks) {
    expect(stick.pieces.length).toBeGreaterThan(0);
    for (const [index, piece] of stick.pieces.entries()) {
      expect(piece.roughFromMm).toBeGreaterThanOrEqual(planingMm - 1e-6);
      expect(piece.roughToMm).toBeLessThanOrEqual(stick.lengthMm - planingMm + 1e-6);
      const next = stick.pieces[index + 1];
      if (next) expect(next.roughFromMm - piece.roughToMm).toBeGreaterThanOrEqual(kerfMm - 1e-6);
      for (const bad of stick.badPlaces) {
        const isClear = piece.roughToMm <= bad.fromMm + 1e-6 || piece.roughFromMm >= bad.toMm - 1e-6;
        expect(isClear).toBe(true);
      }
      for (const kerf of stick.kerfs) {
        const isClear = piece.roughToMm <= kerf.fromMm + 1e-6 || piece.roughFromMm >= kerf.toMm - 1e-6;
        expect(isClear).toBe(true);
      }
    }
  }
}

describe("against an integer programme solved by HiGHS", () => {
  test("100 random jobs: the same number of sticks, or both find that they are too few", async () => {
    const highs = await loadHighs();
    const seen = { done: 0, refused: 0, spared: 0 };
    for (const one of fc.sample(job, { seed: SEED, numRuns: 100 })) {
      const question = questionOf(one);
      const answer = shareOut(question);
      const solved = highs.solve(programme(question));
      if (!answer.ok) {
        expect(solved.Status, JSON.stringify(question)).toBe("Infeasible");
        seen.refused++;
        continue;
      }
      expect(solved.Status).toBe("Optimal");
      expect(answer.value.sticksUsed, JSON.stringify(question)).toEqual({
        count: Math.round(solved.ObjectiveValue),
        atLeast: Math.round(solved.ObjectiveValue),
        standing: "proven",
      });
      expectSound(question, answer.value);
      seen.done++;
      if (answer.value.spare.length > 0) seen.spared++;
    }
    // The jobs must be of both kinds, and leave sticks to choose from.
    expect(seen.done).toBeGreaterThan(50);
    expect(seen.refused).toBeGreaterThan(5);
    expect(seen.spared).toBeGreaterThan(30);
  });
});

test("never a piece lost, none overlapping, kerfs counted", () => {
  fc.assert(
    fc.property(job, (one) => {
      const question = questionOf(one);
      const answer = shareOut(question);
      if (answer.ok) expectSound(question, answer.value);
    }),
    { seed: SEED, numRuns: 200 },
  );
});

/** Tries every sharing of a few pieces over the stretches of every set of sticks: the least number of meetings apart. */
function mostTogetherByTrying(question: LengthsQuestion, sticksUsed: number): number {
  const { kerfMm = 0, trimMm = 0 } = question.allowances ?? {};
  const run = question.runs[0]!;
  const sizes = run.pieces.map(({ lengthMm }) => lengthMm + 2 * trimMm + kerfMm);
  const stretches = question.sticks.flatMap((_, stick) =>
    stretchesOf(question, stick).map((mm) => ({ stick, room: mm + kerfMm })),
  );
  const n = sizes.length;
  let most = -1;
  for (let code = 0; code < stretches.length ** n; code++) {
    const chosen = sizes.map((_, piece) => Math.floor(code / stretches.length ** piece) % stretches.length);
    if (new Set(chosen.map((s) => stretches[s]!.stick)).size > sticksUsed) continue;
    const isHeld = stretches.every(
      ({ room }, s) => sizes.reduce((total, size, p) => (chosen[p] === s ? total + size : total), 0) <= room,
    );
    if (!isHeld) continue;
    let together = 0;
    for (let p = 0; p + 1 < n; p++) if (chosen[p] === chosen[p + 1]) together++;
    const isOneStretch = new Set(chosen).size === 1;
    if (run.ends === "closed" && n > 1 && chosen[0] === chosen[n - 1] && !isOneStretch) together++;
    most = Math.max(most, together);
  }
  return most;
}

test("as many neighbours together as trying every sharing finds", () => {
  const small = fc.record({
    lengths: fc.array(fc.integer({ min: 200, max: 700 }), { minLength: 2, maxLength: 6 }),
    sticks: fc.array(
      fc.record({
        lengthMm: fc.integer({ min: 800, max: 1600 }),
        bad: fc.option(
          fc.record({ at: fc.integer({ min: 0, max: 90 }), wide: fc.integer({ min: 0, max: 60 }) }),
        ),
      }),
      { minLength: 1, maxLength: 3 },
    ),
    kerfMm: fc.integer({ min: 0, max: 5 }),
    trimMm: fc.integer({ min: 0, max: 5 }),
    planingMm: fc.constant(0),
    ends: fc.constantFrom("closed" as const, "open" as const),
  });
  let looked = 0;
  for (const one of fc.sample(small, { seed: SEED, numRuns: 60 })) {
    const question = questionOf(one);
    const answer = shareOut(question);
    if (!answer.ok) continue;
    const { together, standing, meetings } = answer.value.neighbours;
    expect(standing).toBe("proven");
    expect(together, JSON.stringify(question)).toBe(
      mostTogetherByTrying(question, answer.value.sticksUsed.count),
    );
    const followed = answer.value.sticks
      .flatMap((stick) => stick.pieces)
      .filter((piece) => piece.follows === "its neighbour").length;
    expect(followed).toBe(together);
    expect(meetings).toBeGreaterThanOrEqual(together);
    looked++;
  }
  expect(looked).toBeGreaterThan(20);
});

test("the same question gives the same rods, and more sticks never need more", () => {
  fc.assert(
    fc.property(job, (one) => {
      const question = questionOf(one);
      const answer = shareOut(question);
      expect(shareOut(question)).toEqual(answer);
      if (!answer.ok) return;
      const more = shareOut({ ...question, sticks: [...question.sticks, { lengthMm: 2000 }] });
      if (!more.ok) throw new Error("a stick more must not hurt");
      expect(more.value.sticksUsed.count).toBeLessThanOrEqual(answer.value.sticksUsed.count);
    }),
    { seed: SEED, numRuns: 60 },
  );
});
