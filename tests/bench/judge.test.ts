import { describe, expect, test } from "vitest";
import { doubtful, hasDoubled, isPassed, type Ratio, verdicts } from "../../bench/judge.ts";

const ratio = (name: string, yardsticks: number): Ratio => ({ name, yardsticks });
const stored = [ratio("plan ogee", 2), ratio("plan cornice", 10)];

describe("the gate on speed", () => {
  test("twice the stored ratio is not yet doubled, anything more is", () => {
    expect(hasDoubled(2, 4)).toBe(false);
    expect(hasDoubled(2, 4.01)).toBe(true);
    expect(hasDoubled(2, 0.1)).toBe(false);
  });

  test("what was not measured must not pass for quick", () => {
    expect(hasDoubled(2, Number.NaN)).toBe(true);
    expect(hasDoubled(2, Number.POSITIVE_INFINITY)).toBe(true);
  });

  test("only what seems doubled is measured again", () => {
    expect(doubtful(stored, [ratio("plan ogee", 3.9), ratio("plan cornice", 20.5)])).toEqual([
      "plan cornice",
    ]);
    expect(doubtful(stored, [ratio("plan ogee", 2), ratio("re-cut", 99)])).toEqual([]);
  });

  test("a figure that doubled twice fails the gate, by its lower time", () => {
    const judged = verdicts(
      stored,
      [ratio("plan ogee", 5), ratio("plan cornice", 11)],
      [ratio("plan ogee", 4.5)],
    );
    expect(judged).toEqual([
      { name: "plan ogee", kind: "doubled", before: 2, now: 4.5 },
      { name: "plan cornice", kind: "held", before: 10, now: 11 },
    ]);
    expect(isPassed(judged)).toBe(false);
  });

  test("a figure that doubled once and then did not passes", () => {
    const judged = verdicts(
      stored,
      [ratio("plan ogee", 5), ratio("plan cornice", 9)],
      [ratio("plan ogee", 2.2)],
    );
    expect(judged[0]).toEqual({ name: "plan ogee", kind: "recovered", before: 2, now: 2.2 });
    expect(isPassed(judged)).toBe(true);
  });

  test("a doubled figure that was not measured again, or came out worse, stays doubled", () => {
    for (const again of [[], [ratio("plan ogee", 7)]])
      expect(verdicts(stored, [ratio("plan ogee", 5)], again)[0]).toEqual({
        name: "plan ogee",
        kind: "doubled",
        before: 2,
        now: 5,
      });
  });

  test("a new figure, and one measured no longer, are told and fail nothing", () => {
    const judged = verdicts(stored, [ratio("plan ogee", 2), ratio("trace", 8)], []);
    expect(judged.map(({ name, kind }) => [name, kind])).toEqual([
      ["plan ogee", "held"],
      ["trace", "new"],
      ["plan cornice", "gone"],
    ]);
    expect(isPassed(judged)).toBe(true);
  });

  test("a stored ratio of nought cannot be held against", () => {
    expect(verdicts([ratio("plan ogee", 0)], [ratio("plan ogee", 1)], [])[0]?.kind).toBe("new");
  });
});
