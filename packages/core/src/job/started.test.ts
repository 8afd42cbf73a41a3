import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { areaMm2 } from "../curve/index.ts";
import type { Plan } from "../cutting/index.ts";
import { readShelf } from "../shelf/index.ts";
import { computeJob } from "./compute-job.ts";
import type { Job } from "./job-schema.ts";
import { readJob, writeJob } from "./read-job.ts";
import type { Stage } from "./standing-schema.ts";
import { cutsMade, startedOf } from "./started.ts";

const EXAMPLES = new URL("../../../../examples/", import.meta.url);
const text = (file: string): string => readFileSync(new URL(file, EXAMPLES), "utf8");

function held<T>(
  outcome:
    | { readonly ok: true; readonly value: T }
    | { readonly ok: false; readonly trouble: { code: string } },
): T {
  if (!outcome.ok) throw new Error(outcome.trouble.code);
  return outcome.value;
}

const SHELF = held(readShelf(text("shelves/full.json")));
const JOB = held(readJob(text("low-bead-and-cove.json")));
const PLAN = JSON.parse(text("low-bead-and-cove/plan.json")) as Plan;

function begun(...standing: readonly Stage[]): Job {
  return { ...JOB, standing: [...standing] };
}

function faultOf(standing: unknown): { readonly code: string; readonly where: string } | null {
  const read = readJob(JSON.stringify({ ...JOB, standing }));
  return read.ok ? null : { code: read.trouble.code, where: read.trouble.where };
}

describe("a stick that is begun", () => {
  test("one that is not begun has nothing standing", () => {
    expect(startedOf(JOB, SHELF)).toMatchObject({ ok: true, value: null });
  });

  test("stands as its plan says after so many cuts, where nothing was measured", () => {
    const started = held(startedOf(begun({ plan: PLAN, after: 2 }), SHELF));
    const wood = started?.wood.reduce((sum, ring) => sum + areaMm2(ring), 0) ?? 0;
    const stick = JOB.stick.widthMm * JOB.stick.thicknessMm;
    const taken = cutsMade({ plan: PLAN, after: 2 }).reduce((sum, { takes }) => sum + takes, 0);
    // Flattened arcs: a hundredth of a square millimetre.
    expect(wood).toBeCloseTo(stick - taken, 1);
    expect(started?.shelf).toEqual(SHELF);
  });

  test("planes keep what was measured at an earlier stage, and a later measure is the one that holds", () => {
    const hollow = SHELF.planes.find(({ kind }) => kind === "hollow");
    const id = hollow?.id ?? "";
    const written = hollow?.kind === "hollow" ? hollow.widthMm : 0;
    const measured = (widthMm: number): Stage => ({ plan: PLAN, after: 1, planes: [{ id, widthMm }] });
    const widthAfter = (job: Job): unknown => {
      const plane = held(startedOf(job, SHELF))?.shelf.planes.find((one) => one.id === id);
      return plane?.kind === "hollow" ? plane.widthMm : null;
    };
    const plain: Stage = { plan: PLAN, after: 1 };
    expect(widthAfter(begun(measured(written - 0.2), plain))).toBe(written - 0.2);
    expect(widthAfter(begun(measured(written - 0.2), measured(written - 0.1)))).toBe(written - 0.1);
  });

  test("a size that no such plane can have is refused", () => {
    const hollow = SHELF.planes.find(({ kind }) => kind === "hollow");
    const stage: Stage = { plan: PLAN, after: 1, planes: [{ id: hollow?.id ?? "", widthMm: 500 }] };
    expect(startedOf(begun(stage), SHELF).ok).toBe(false);
  });

  test("the rest of the plan is what the whole plan had left", () => {
    const rest = held(computeJob(begun({ plan: PLAN, after: 2 }), { shelf: SHELF, quick: true })).plan;
    expect(rest.cuts.length).toBeLessThan(PLAN.cuts.length);
    expect(rest.uncut).toEqual([]);
  });

  test("it comes back from the job's file as it was", () => {
    const job = begun({ plan: PLAN, after: 2, cuts: [{ number: 1, acrossMm: 0.2, deeperMm: -0.1 }] });
    expect(held(readJob(writeJob(job)))).toEqual(job);
  });

  test("what cannot be is refused with its place", () => {
    const cuts = PLAN.cuts.length;
    expect(faultOf([{ plan: PLAN, after: cuts + 1 }])).toEqual({
      code: "file-value-wrong",
      where: "standing[0].after",
    });
    expect(faultOf([{ plan: PLAN, after: 1, cuts: [{ number: 2, acrossMm: 0.1 }] }])).toEqual({
      code: "measured-cut-unknown",
      where: "standing[0].cuts[0].number",
    });
    expect(faultOf([{ plan: { ...PLAN, cuts: "none" }, after: 1 }])?.where).toBe("standing[0].plan.cuts");
    expect(faultOf([{ plan: PLAN, after: 1, cuts: [{ number: 1, acrossMm: 40 }] }])?.where).toContain(
      "standing[0].cuts",
    );
    expect(faultOf([])?.where).toBe("standing");
    expect(faultOf([{ plan: {}, after: 1 }])?.where).toContain("standing[0].plan");
  });
});
