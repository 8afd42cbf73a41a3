/** Waste off the far arris: sawn where that saves minutes, planed where it does not. */
import { expect, test } from "vitest";
import { COMMON_WORKING } from "./minutes.ts";
import { sawnWaste } from "./sawn-waste.ts";
import { benchOf, drawnSection, planOf, sectionOf } from "./testing/benches.ts";
import { hollow, rebate, round, SNIPE_BILLS, shelfOf, smoother } from "./testing/shelves.ts";

/** Stairs that fall from the gauge edge to the far edge of a square stick, each as high as it is wide. */
function stairs(sizeMm: number, steps: number) {
  const stepMm = sizeMm / (steps + 1);
  const corners = Array.from({ length: steps }, (_, i) => {
    const x = (steps - i) * stepMm;
    const y = (i + 1) * stepMm;
    return [
      [x + stepMm, y],
      [x, y],
    ] as const;
  });
  return drawnSection(sizeMm, sizeMm, [
    [0, 0],
    [sizeMm, 0],
    ...corners.flat(),
    [stepMm, sizeMm],
    [0, sizeMm],
  ]);
}

const shelf = shelfOf(rebate(12), rebate(20), rebate(32));
const planes = (plan: ReturnType<typeof planOf>) => plan.cuts.map(({ plane }) => plane.kind);

test("less than 250 mm² is not sawn, nor what lies shallow; much and deep is, without asking", () => {
  // Half of the square over its slope less the clearance: about 120, 300 and 1,000 mm².
  expect(ripOf(20)).toBeNull();
  expect(ripOf(40)?.isSure).toBe(false);
  expect(ripOf(60)?.isSure).toBe(true);

  function ripOf(sizeMm: number) {
    const bench = benchOf(stairs(sizeMm, 2), shelf);
    return sawnWaste(bench, bench.startRegion);
  }
});

test("the corner over a steep ogee is sawn off a stick of a metre, and planed off one of 200 mm", () => {
  const section = sectionOf({
    name: "Cyma reversa",
    stick: { widthMm: 36, thicknessMm: 28 },
    parts: [
      { kind: "fillet", widthMm: 7 },
      { kind: "step", riseMm: -2 },
      { kind: "cyma reversa", acrossMm: 22.45064, riseMm: -22.45064 },
      { kind: "fillet", widthMm: "rest" },
    ],
  });
  const steps = shelfOf(
    hollow(15.875),
    round(15.875),
    ...SNIPE_BILLS,
    rebate(6),
    rebate(12),
    rebate(32),
    smoother(50),
  );
  const planOfLength = (lengthM: number) =>
    planOf(section, steps, { quick: true, working: { ...COMMON_WORKING, lengthM } });
  // A rip of 24 mm through a corner of 300 mm² takes 5 minutes; steps down to its foot take some 140 strokes more.
  expect(planes(planOfLength(1))[0]).toBe("saw");
  expect(planes(planOfLength(0.2))).not.toContain("saw");
});

test("steps that go in as deep with the rip as without it are not sawn", () => {
  // Each of three steps of 9 mm has its full depth beside its wall, where the rip keeps clear of the corner above it.
  expect(planes(planOf(stairs(36, 3), shelf))).toEqual(["rebate", "rebate", "rebate"]);
});
