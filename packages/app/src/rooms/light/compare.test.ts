import type { Job } from "mouldwright/job";
import { expect, test } from "vitest";
import { compared, hasQuirks, sharesOf, withDeeperQuirks } from "./compare.ts";
import { isSameSection } from "./held-version.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Beaded edge",
  section: {
    parts: [
      { kind: "fillet", widthMm: 5 },
      { kind: "quirk", widthMm: 2, depthMm: 3 },
      { kind: "bead", widthMm: 8 },
      { kind: "vee quirk", widthMm: 2, depthMm: 1.5 },
      { kind: "fillet", widthMm: "rest" },
    ],
  },
  stick: { widthMm: 30, thicknessMm: 20 },
};

test("shares add up to what shows", () => {
  const shares = sharesOf({ shares: { light: 10, shade: 6, shadow: 4 }, widthMm: 20 });
  expect(shares.map(({ state, ratio }) => [state, ratio])).toEqual([
    ["light", 0.5],
    ["shade", 0.3],
    ["shadow", 0.2],
  ]);
});

test("more and less are the first's against the other's; a millionth of a millimetre is neither", () => {
  const first = { shares: { light: 10, shade: 6, shadow: 4 }, widthMm: 20 };
  const other = { shares: { light: 8, shade: 6 + 1e-9, shadow: 6 }, widthMm: 20 };
  expect(compared(first, other).map(({ moreMm }) => moreMm)).toEqual([2, 0, -2]);
  expect(compared(first, null).map((row) => [row.other, row.moreMm])).toEqual([
    [null, 0],
    [null, 0],
    [null, 0],
  ]);
});

test("every quirk is deepened, nothing else, and the job itself stays", () => {
  const deeper = withDeeperQuirks(JOB, 1);
  expect(deeper.section.parts?.map((part) => ("depthMm" in part ? part.depthMm : null))).toEqual([
    null,
    4,
    null,
    2.5,
    null,
  ]);
  expect(deeper.section.parts?.[2]).toBe(JOB.section.parts?.[2]);
  expect(JOB.section.parts?.[1]).toMatchObject({ depthMm: 3 });
  expect(hasQuirks(JOB)).toBe(true);
  expect(hasQuirks({ section: { parts: [{ kind: "fillet", widthMm: "rest" }] } })).toBe(false);
});

test("a drawing without parts has no quirks to deepen", () => {
  const drawn: Job = {
    ...JOB,
    section: {
      path: [
        [0, 0],
        [30, 0],
        [30, 20],
        [0, 20],
      ],
    },
  };
  expect(hasQuirks(drawn)).toBe(false);
  expect(withDeeperQuirks(drawn)).toBe(drawn);
});

test("another lamp is the same section, a deeper quirk is another", () => {
  expect(isSameSection(JOB, { ...JOB, light: {} })).toBe(true);
  expect(isSameSection(JOB, withDeeperQuirks(JOB))).toBe(false);
});
