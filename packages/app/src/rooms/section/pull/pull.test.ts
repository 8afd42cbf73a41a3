import fc from "fast-check";
import { chainOfJob, type Job, sectionOfJob } from "mouldwright/job";
import type { PartSpec } from "mouldwright/section";
import { describe, expect, it } from "vitest";
import { partsOfJob } from "../chain/chain-edits.ts";
import { type PlacedPart, placedParts } from "../chain/laid-chain.ts";
import { handlesOf } from "./handles.ts";
import { nudged } from "./nudge.ts";
import type { Pull } from "./pull.ts";
import { pulledTo, withEndAt } from "./pull-handle.ts";

const jobOf = (parts: PartSpec[]): Job => ({
  format: "mouldwright/job",
  version: 1,
  name: "Chart cabinet: cornice",
  section: { parts } as Job["section"],
  stick: { widthMm: 60, thicknessMm: 24 },
});
const CORNICE = jobOf([
  { kind: "fillet", widthMm: 7 },
  { kind: "step", riseMm: -2.5 },
  { kind: "cyma recta", acrossMm: 24, riseMm: -8 },
  { kind: "fillet", widthMm: 3 },
  { kind: "step", riseMm: -2 },
  { kind: "ovolo", acrossMm: 6, riseMm: -6 },
  { kind: "fillet", widthMm: "rest" },
]);
const RADII = [{ radiusMm: 6.35, makes: "round", plane: "¼ in hollow" }] as const;

function placedOf(job: Job): readonly PlacedPart[] {
  const chain = chainOfJob(job);
  if (!chain.ok) throw new Error("the chain lies");
  return placedParts(chain.value);
}

function pullOf(job: Job, id: string, rule: Pull["rule"] = null): Pull {
  const placed = placedOf(job);
  const handle = handlesOf(job, placed).find((one) => one.id === id);
  if (handle === undefined) throw new Error(`no handle ${id}`);
  return { job, placed, handle, radii: RADII, rule, length: (lengthMm) => `${lengthMm}` };
}

const RULE = { withinMm: 0.6, fineMm: 0.1, roundMm: 0.5 };

describe("pulling the end of a part", () => {
  it("brings the end where it is put, and all else keeps its size", () => {
    const placed = placedOf(CORNICE);
    const next = withEndAt(CORNICE, placed, 2, { x: 33, y: 12 });
    expect(placedOf(next)[2]?.to).toEqual({ x: 33, y: 12 });
    const [before, after] = [partsOfJob(CORNICE), partsOfJob(next)];
    after.forEach((part, index) => {
      if (index !== 2) expect(part).toBe(before[index]);
    });
    expect(sectionOfJob(next).ok).toBe(true);
  });

  it("shifts a wall by the flat before it, and lowers a flat by the wall before it", () => {
    const placed = placedOf(CORNICE);
    const shifted = withEndAt(CORNICE, placed, 1, { x: 8, y: 21 });
    expect(partsOfJob(shifted)[0]).toMatchObject({ widthMm: 8 });
    expect(partsOfJob(shifted)[1]).toMatchObject({ riseMm: -3 });
    const flat = placed[3];
    if (flat === undefined) throw new Error("the fillet lies");
    const lowered = withEndAt(CORNICE, placed, 3, { x: flat.to.x, y: flat.to.y - 1 });
    expect(partsOfJob(lowered)[1]).toMatchObject({ riseMm: -3.5 });
    expect(placedOf(lowered)[3]?.to.y).toBeCloseTo(flat.to.y - 1, 9);
  });

  it("without a fillet that takes the rest, a flat after it gives up the width", () => {
    const job = jobOf([
      { kind: "fillet", widthMm: 10 },
      { kind: "step", riseMm: -4 },
      { kind: "fillet", widthMm: 50 },
    ]);
    const next = withEndAt(job, placedOf(job), 0, { x: 14, y: 24 });
    expect(partsOfJob(next)).toMatchObject([{ widthMm: 14 }, {}, { widthMm: 46 }]);
    expect(sectionOfJob(next).ok).toBe(true);
  });

  it("settles on a radius of the shelf and says the plane", () => {
    const pull = pullOf(CORNICE, "end 5", RULE);
    const { job, says } = pulledTo(pull, { x: pull.handle.at.x + 0.5, y: pull.handle.at.y - 0.5 });
    expect(says).toBe("¼ in hollow on the shelf");
    expect(partsOfJob(job)[5]).toMatchObject({ acrossMm: 6.35, riseMm: -6.35 });
  });

  it("there and back leaves the very same job", () => {
    for (const { id, at } of handlesOf(CORNICE, placedOf(CORNICE))) {
      const pull = pullOf(CORNICE, id, RULE);
      expect(pulledTo(pull, { x: at.x + 3, y: at.y - 1 }).job, id).not.toBe(CORNICE);
      expect(pulledTo(pull, at).job, id).toBe(CORNICE);
      expect(nudged(pull, 0, 0).job, id).toBe(CORNICE);
    }
  });

  it("follows the finger for every kind that goes both ways", () => {
    const kinds: PartSpec[] = [
      { kind: "bevel", acrossMm: 10, riseMm: -4 },
      { kind: "ovolo", acrossMm: 9, riseMm: -6 },
      { kind: "cavetto", acrossMm: 9, riseMm: -6 },
      { kind: "cyma reversa", acrossMm: 12, riseMm: -9 },
      { kind: "arc", acrossMm: 9, riseMm: -4, radiusMm: 14, bend: "round" },
      { kind: "swept arc", radiusMm: 9, sweepDeg: 60, bend: "round" },
    ];
    fc.assert(
      fc.property(
        fc.constantFrom(...kinds),
        fc.double({ min: -4, max: 6, noNaN: true }),
        fc.double({ min: -5, max: 3, noNaN: true }),
        (part, dx, dy) => {
          const job = jobOf([{ kind: "fillet", widthMm: 12 }, part, { kind: "fillet", widthMm: "rest" }]);
          const placed = placedOf(job);
          const end = placed[1]?.to ?? { x: 0, y: 0 };
          const to = { x: end.x + dx, y: end.y + dy };
          if (Math.abs(to.y - 24) < 0.2) return;
          const there = placedOf(withEndAt(job, placed, 1, to))[1]?.to;
          expect(there?.x).toBeCloseTo(to.x, 2);
          expect(there?.y).toBeCloseTo(to.y, 2);
        },
      ),
      { seed: 43, numRuns: 300 },
    );
  });
});

describe("pulling a curve", () => {
  it("keeps the ends and takes the shelf's radius where it is near", () => {
    const job = jobOf([
      { kind: "fillet", widthMm: 10 },
      { kind: "ovolo", acrossMm: 6, riseMm: -6 },
      { kind: "fillet", widthMm: "rest" },
    ]);
    const pull = pullOf(job, "curve 1", RULE);
    const { handle } = pull;
    const { job: next, says } = pulledTo(pull, { x: handle.at.x - 0.4, y: handle.at.y - 0.4 });
    expect(says).toBe("¼ in hollow on the shelf");
    expect(partsOfJob(next)[1]).toMatchObject({ acrossMm: 6, riseMm: -6, radiusMm: 6.35 });
  });

  it("never asks for a radius that the ends are too far apart for", () => {
    const job = jobOf([
      { kind: "fillet", widthMm: 10 },
      { kind: "arc", acrossMm: 12, riseMm: -3, radiusMm: 20, bend: "round" },
      { kind: "fillet", widthMm: "rest" },
    ]);
    fc.assert(
      fc.property(
        fc.double({ min: -30, max: 30, noNaN: true }),
        fc.double({ min: -30, max: 30, noNaN: true }),
        (dx, dy) => {
          const pull = pullOf(job, "curve 1", RULE);
          const { job: next } = pulledTo(pull, { x: pull.handle.at.x + dx, y: pull.handle.at.y + dy });
          expect(chainOfJob(next).ok).toBe(true);
        },
      ),
      { seed: 44, numRuns: 300 },
    );
  });
});

describe("pulling the turn of an S", () => {
  it("gives the hollow the share that the finger says, and a half exactly", () => {
    const pull = pullOf(CORNICE, "turn 2", RULE);
    const { job } = pulledTo(pull, { x: 15, y: 19 });
    const part = partsOfJob(job)[2];
    if (part?.kind !== "cyma recta") throw new Error("it stays a cyma");
    expect(part.hollowRatio).toBeGreaterThan(0.2);
    expect(part.hollowRatio).toBeLessThan(0.45);
  });
});
