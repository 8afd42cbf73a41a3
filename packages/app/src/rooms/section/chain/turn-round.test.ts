import { areaMm2, nearestOnRing, pointAt } from "mouldwright/curve";
import { chainOfJob, type Job, sectionOfJob } from "mouldwright/job";
import { mirrorSection, type PartKind, type PartSpec } from "mouldwright/section";
import { describe, expect, it } from "vitest";
import { partsOfJob } from "./chain-edits.ts";
import { freshPart, KIND_WORDS } from "./fresh-part.ts";
import { placedParts } from "./laid-chain.ts";
import { turnedRound } from "./turn-round.ts";

const jobOf = (parts: readonly PartSpec[], section: Partial<Job["section"]> = {}): Job => ({
  format: "mouldwright/job",
  version: 1,
  name: "Chart cabinet: frame",
  section: { ...section, parts: [...parts] as NonNullable<Job["section"]["parts"]> },
  stick: { widthMm: 60, thicknessMm: 40 },
});

function turn(job: Job): Job {
  const chain = chainOfJob(job);
  if (!chain.ok) throw new Error("the chain lies");
  return turnedRound(job, placedParts(chain.value));
}

function expectMirrored(job: Job): void {
  const [was, is] = [sectionOfJob(job), sectionOfJob(turn(job))];
  if (!was.ok || !is.ok) throw new Error(`drawn: ${was.ok}, turned round: ${is.ok}`);
  const mirrored = mirrorSection(was.value).outline;
  expect(areaMm2(is.value.outline)).toBeCloseTo(areaMm2(mirrored), 2);
  for (const piece of is.value.outline.pieces) {
    expect(nearestOnRing(mirrored, pointAt(piece, 0.5)).distanceMm).toBeLessThan(0.001);
  }
}

const FILLET: PartSpec = { kind: "fillet", widthMm: 9 };
const REST: PartSpec = { kind: "fillet", widthMm: "rest" };
const kinds = Object.keys(KIND_WORDS) as PartKind[];

describe("a section turned round", () => {
  it.each(kinds)("a %s is the mirror of what it was", (kind) => {
    const before: PartSpec = { kind: "bevel", acrossMm: 9, riseMm: -12 };
    expectMirrored(jobOf([before, freshPart(kind, 12), REST]));
  });

  it("a part that leans and one that runs on smoothly are the mirror too", () => {
    expectMirrored(
      jobOf([
        { kind: "fillet", widthMm: 9 },
        { kind: "bevel", acrossMm: 8, riseMm: -6 },
        { kind: "swept arc", radiusMm: 9, sweepDeg: 50, bend: "hollow", smooth: true },
        { kind: "fillet", widthMm: 5, leanDeg: -20 },
        REST,
      ]),
    );
  });

  it("takes the back's corners along and starts where it ended", () => {
    const job = jobOf([FILLET, { kind: "step", riseMm: -6 }, REST], {
      back: [{ kind: "rebate", edge: "far", widthMm: 8, depthMm: 6 }],
    });
    expectMirrored(job);
    expect(turn(job).section).toMatchObject({ startHeightMm: 34, back: [{ edge: "gauge" }] });
  });

  it("twice is as it was", () => {
    const job = jobOf([FILLET, { kind: "quirk", widthMm: 2, depthMm: 3, walls: "first" }, REST], {
      startHeightMm: 30,
    });
    expect(turn(turn(job))).toEqual(job);
    expect(partsOfJob(turn(job))[1]).toMatchObject({ walls: "last" });
  });
});
