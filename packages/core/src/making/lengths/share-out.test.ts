import { describe, expect, test } from "vitest";
import { sayTrouble } from "../../measure/index.ts";
import { type LengthsQuestion, type SharedOut, shareOut } from "./index.ts";

const BARE = { kerfMm: 0, trimMm: 0, planingMm: 0 };

function shared(question: LengthsQuestion): SharedOut {
  const answer = shareOut(question);
  if (!answer.ok) throw new Error(answer.trouble.code);
  return answer.value;
}

function refusal(question: LengthsQuestion) {
  const answer = shareOut(question);
  if (answer.ok) throw new Error("not refused");
  return { ...answer.trouble, said: sayTrouble(answer.trouble, { unit: "mm", form: "plain" }) };
}

const lengths = (...all: number[]) => all.map((lengthMm) => ({ lengthMm }));
const names = (answer: SharedOut) => answer.sticks.map((stick) => stick.pieces.map((piece) => piece.number));

describe("the barometer case's frame from one stick", () => {
  // Two stiles of 900 and two rails of 300, 3 to trim at each end, kerf 3, 50 at each end:
  // 2400 + 4 × 6 + 3 × 3 = 2433, and 100 for planing: 2533.
  const frame = { name: "Frame", ends: "closed", pieces: lengths(300, 900, 300, 900) } as const;
  const allowances = { kerfMm: 3, trimMm: 3, planingMm: 50 };

  test("a stick of just the right length holds all four, in order, with one meeting left open", () => {
    const answer = shared({ runs: [frame], sticks: [{ lengthMm: 2533 }], allowances });
    expect(names(answer)).toEqual([[1, 2, 3, 4]]);
    expect(answer.neighbours).toEqual({ meetings: 4, together: 3, atMost: 3, standing: "proven" });
    const stick = answer.sticks[0]!;
    expect(stick.pieces.map(({ fromMm, toMm }) => [fromMm, toMm])).toEqual([
      [53, 353],
      [362, 1262],
      [1271, 1571],
      [1580, 2480],
    ]);
    expect(stick.kerfs.map(({ fromMm, toMm }) => [fromMm, toMm])).toEqual([
      [47, 50],
      [356, 359],
      [1265, 1268],
      [1574, 1577],
      [2483, 2486],
    ]);
    expect(stick.offcuts).toEqual([]);
    expect(answer.wastedMm).toBe(133);
  });

  test("a stick shorter by the least mark does not", () => {
    const { code, facts, said } = refusal({ runs: [frame], sticks: [{ lengthMm: 2532.9 }], allowances });
    expect(code).toBe("lengths-too-few-sticks");
    // One rail stays over: 300 + 6, and 100 for planing.
    expect(facts).toMatchObject({ shown: true, pieces: ["Frame 3"], buyMm: 406 });
    expect(said.hint).toContain("406 mm");
  });

  test("cautions: a rail of 250 is too short to hold at the saw by hand", () => {
    const small = { ...frame, pieces: lengths(250, 900, 250, 900) };
    const answer = shared({ runs: [small], sticks: [{ lengthMm: 2533 }], allowances });
    expect(answer.cautions.map((one) => one.code)).toEqual(["caution-saw", "caution-short-piece"]);
  });
});

describe("fewest sticks", () => {
  test("three sticks where a plain filling by size takes four", () => {
    // 44 + 8 + 8, 24 + 24 + 6 + 6 and 22 + 21 + 17 fill three sticks of 60. The largest first, each where it fits
    // tightest, gives 44 + 8 + 6, 24 + 24 + 8, 22 + 21 + 17 and leaves a 6 over.
    const pieces = lengths(44, 24, 24, 22, 21, 17, 8, 8, 6, 6);
    const answer = shared({
      runs: [{ name: "A", ends: "loose", pieces }],
      sticks: [{ lengthMm: 60, count: 5 }],
      allowances: BARE,
    });
    expect(answer.sticksUsed).toEqual({ count: 3, atLeast: 3, standing: "proven" });
    expect(answer.spare).toEqual(["Stick 1 (4)", "Stick 1 (5)"]);
  });

  test("kerfs count: three of 300 need 902, not 900", () => {
    const runs = [{ name: "A", ends: "loose", pieces: lengths(300, 300, 300) }] as const;
    const allowances = { ...BARE, kerfMm: 1 };
    const count = (lengthMm: number) =>
      shared({ runs, sticks: [{ lengthMm, count: 2 }], allowances }).sticksUsed.count;
    expect(count(902)).toBe(1);
    expect(count(901.9)).toBe(2);
  });

  test("of sticks that do, the shortest is used", () => {
    const answer = shared({
      runs: [{ name: "A", ends: "open", pieces: lengths(400, 400) }],
      sticks: [{ lengthMm: 3000 }, { lengthMm: 900 }, { lengthMm: 700 }],
      allowances: BARE,
    });
    expect(answer.sticks.map((stick) => stick.name)).toEqual(["Stick 2"]);
    expect(answer.usedMm).toBe(900);
  });
});

describe("bad places", () => {
  test("pieces are marked on both sides of a knot and the kerfs run in it", () => {
    const answer = shared({
      runs: [{ name: "A", ends: "open", pieces: lengths(400, 500) }],
      sticks: [{ lengthMm: 1000, badPlaces: [{ fromMm: 430, toMm: 480, why: "knot" }] }],
      allowances: { kerfMm: 3, trimMm: 0, planingMm: 0 },
    });
    const stick = answer.sticks[0]!;
    expect(stick.pieces.map(({ fromMm, toMm }) => [fromMm, toMm])).toEqual([
      [0, 400],
      [480, 980],
    ]);
    expect(stick.kerfs).toEqual([
      { fromMm: 400, toMm: 403 },
      { fromMm: 477, toMm: 480 },
      { fromMm: 980, toMm: 983 },
    ]);
    expect(stick.offcuts).toEqual([
      { fromMm: 403, toMm: 430 },
      { fromMm: 983, toMm: 1000 },
    ]);
    expect(answer.neighbours).toMatchObject({ meetings: 1, together: 0, atMost: 0, standing: "proven" });
  });

  test("a shake narrower than the saw takes a whole kerf", () => {
    const fits = (lengthMm: number) =>
      shareOut({
        runs: [{ name: "A", ends: "loose", pieces: lengths(400, 500) }],
        sticks: [{ lengthMm, badPlaces: [{ fromMm: 400, toMm: 401 }] }],
        allowances: { kerfMm: 3, trimMm: 0, planingMm: 0 },
      }).ok;
    expect(fits(903)).toBe(true);
    expect(fits(902)).toBe(false);
  });
});

describe("neighbours", () => {
  test("two sticks for a square: two pairs of neighbours", () => {
    const answer = shared({
      runs: [{ name: "Frame", ends: "closed", pieces: lengths(400, 400, 400, 400) }],
      sticks: [{ lengthMm: 800, count: 2 }],
      allowances: BARE,
    });
    expect(answer.neighbours).toEqual({ meetings: 4, together: 2, atMost: 2, standing: "proven" });
    expect(names(answer)).toEqual([
      [1, 2],
      [3, 4],
    ]);
  });

  test("the last of a closed run is marked before the first where they lie together", () => {
    // 700 + 300 fill one stick: only 4 (300) goes with 1 (700), and 3 (300) with 2 (700).
    const answer = shared({
      runs: [{ name: "Frame", ends: "closed", pieces: lengths(700, 700, 300, 300) }],
      sticks: [{ lengthMm: 1000, count: 2 }],
      allowances: BARE,
    });
    expect(names(answer).sort()).toEqual([
      [2, 3],
      [4, 1],
    ]);
    expect(answer.neighbours.together).toBe(2);
    expect(answer.sticks.flatMap((stick) => stick.pieces.map((piece) => piece.follows))).toEqual([
      "none",
      "its neighbour",
      "none",
      "its neighbour",
    ]);
  });

  test("an open run has no meeting between its ends, loose pieces none at all", () => {
    const meetings = (ends: "open" | "loose") =>
      shared({
        runs: [{ name: "A", ends, pieces: lengths(10, 10, 10) }],
        sticks: [{ lengthMm: 100 }],
        allowances: BARE,
      }).neighbours;
    expect(meetings("open")).toMatchObject({ meetings: 2, together: 2 });
    expect(meetings("loose")).toMatchObject({ meetings: 0, together: 0 });
  });
});

describe("refused, with what would help", () => {
  const run = { name: "Cornice", ends: "open", pieces: lengths(2400) } as const;

  test("a piece longer than every stick", () => {
    const { code, facts, said } = refusal({ runs: [run], sticks: [{ lengthMm: 2400 }, { lengthMm: 1200 }] });
    expect(code).toBe("lengths-piece-too-long");
    // 2400 + 2 × 3, against 2400 − 2 × 50; to buy 2406 + 100.
    expect(facts).toEqual({ name: "Cornice 1", neededMm: 2406, longestMm: 2300, buyMm: 2506 });
    expect(said.hint).toContain("2506 mm");
  });

  test("a bad place in the middle makes a long stick two short ones", () => {
    const sticks = [{ lengthMm: 4000, badPlaces: [{ fromMm: 2000, toMm: 2010 }] }];
    expect(refusal({ runs: [run], sticks }).facts).toMatchObject({ longestMm: 1950 });
  });

  test.each([
    ["lengths-pieces", { runs: [], sticks: [{ lengthMm: 1 }] }],
    ["lengths-pieces", { runs: [{ ...run, pieces: lengths(...Array(201).fill(1)) }], sticks: [] }],
    ["lengths-piece-size", { runs: [{ ...run, pieces: lengths(-5) }], sticks: [{ lengthMm: 1 }] }],
    ["lengths-piece-size", { runs: [{ ...run, pieces: lengths(Number.NaN) }], sticks: [{ lengthMm: 1 }] }],
    ["lengths-sticks", { runs: [run], sticks: [] }],
    ["lengths-sticks", { runs: [run], sticks: [{ lengthMm: 10, count: 1.5 }] }],
    ["lengths-sticks", { runs: [run], sticks: [{ lengthMm: 10, count: 101 }] }],
    ["lengths-stick-size", { runs: [run], sticks: [{ lengthMm: Number.POSITIVE_INFINITY }] }],
    ["lengths-bad-place", { runs: [run], sticks: [{ lengthMm: 10, badPlaces: [{ fromMm: 9, toMm: 8 }] }] }],
    ["lengths-bad-place", { runs: [run], sticks: [{ lengthMm: 10, badPlaces: [{ fromMm: 9, toMm: 12 }] }] }],
    ["lengths-allowance", { runs: [run], sticks: [{ lengthMm: 10 }], allowances: { kerfMm: -1 } }],
    ["lengths-piece-too-long", { runs: [run], sticks: [{ lengthMm: 60 }] }],
  ] satisfies [string, LengthsQuestion][])("%s", (code, question) => {
    const { said, code: given } = refusal(question);
    expect(given).toBe(code);
    expect(said.hint).not.toBe("");
  });
});

test("out of steps: a way that fits is still given, with its bound", () => {
  const answer = shareOut({
    runs: [{ name: "A", ends: "loose", pieces: lengths(44, 24, 24, 22, 21, 17, 8, 8, 6, 6) }],
    sticks: [{ lengthMm: 60, count: 5 }],
    allowances: BARE,
    search: { packingSteps: 2, neighbourSteps: 10 },
  });
  if (!answer.ok) throw new Error(answer.trouble.code);
  const { count, atLeast, standing } = answer.value.sticksUsed;
  expect({ count, atLeast, standing }).toEqual({ count: 4, atLeast: 3, standing: "best found" });
});
