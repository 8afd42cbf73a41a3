import { chainOfJob, type Job, jobSchema } from "mouldwright/job";
import { layParts, type PartKind } from "mouldwright/section";
import { describe, expect, it } from "vitest";
import {
  partsOfJob,
  withBack,
  withoutPart,
  withPartDoubled,
  withPartMoved,
  withPartsPutIn,
} from "./chain-edits.ts";
import { freshPart, KIND_WORDS, KINDS_IN_MENU } from "./fresh-part.ts";
import { placedParts } from "./laid-chain.ts";
import { SIZES_OF, sizeOf, withSize } from "./part-sizes.ts";
import { plainParts, refitted } from "./refit-part.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Chart cabinet: plinth",
  section: {
    parts: [
      { kind: "fillet", widthMm: 6 },
      { kind: "step", riseMm: -2 },
      { kind: "ovolo", acrossMm: 8, riseMm: -8 },
      { kind: "fillet", widthMm: "rest" },
    ],
  },
  stick: { widthMm: 40, thicknessMm: 20 },
};
const kindsOf = (job: Job): readonly string[] => partsOfJob(job).map(({ kind }) => kind);

describe("the chain changed as a whole", () => {
  it("puts in, takes out, moves and doubles without touching the others", () => {
    const put = withPartsPutIn(JOB, 1, [{ kind: "quirk", widthMm: 2, depthMm: 3 }]);
    expect(kindsOf(put)).toEqual(["fillet", "quirk", "step", "ovolo", "fillet"]);
    expect(kindsOf(withoutPart(put, 1))).toEqual(kindsOf(JOB));
    expect(kindsOf(withPartMoved(JOB, 0, 2))).toEqual(["step", "ovolo", "fillet", "fillet"]);
    expect(kindsOf(withPartMoved(withPartMoved(JOB, 0, 2), 2, 0))).toEqual(kindsOf(JOB));
    expect(partsOfJob(withPartDoubled(JOB, 2, 8))[3]).toEqual(partsOfJob(JOB)[2]);
  });

  it("doubles a fillet that takes the rest with a width of its own, since only one may", () => {
    expect(partsOfJob(withPartDoubled(JOB, 3, 26))[4]).toEqual({ kind: "fillet", widthMm: 13 });
  });

  it("gives the very same job where nothing changes", () => {
    expect(withPartMoved(JOB, 1, 1)).toBe(JOB);
    expect(withoutPart(JOB, 9)).toBe(JOB);
    expect(withPartsPutIn(JOB, 1, [])).toBe(JOB);
  });

  it("keeps one thing at each corner of the back, and no empty list", () => {
    const rebated = withBack(JOB, "far", { kind: "rebate", edge: "far", widthMm: 6, depthMm: 8 });
    const bevelled = withBack(rebated, "far", { kind: "bevel", edge: "far", riseMm: 5, fromBackDeg: 45 });
    expect(bevelled.section.back).toEqual([{ kind: "bevel", edge: "far", riseMm: 5, fromBackDeg: 45 }]);
    expect(withBack(bevelled, "far", null).section).not.toHaveProperty("back");
  });
});

describe("the kinds of parts", () => {
  const kinds = Object.keys(KIND_WORDS) as PartKind[];

  it("all stand in the menu but the free curve, which is drawn by hand", () => {
    const inMenu = KINDS_IN_MENU.flatMap((group) => group.kinds);
    expect([...inMenu, "free curve"].sort()).toEqual([...kinds].sort());
  });

  it.each(kinds)("a fresh %s is one that the core lays and the job file takes", (kind) => {
    const part = freshPart(kind, 12);
    const laid = layParts([{ kind: "bevel", acrossMm: 3, riseMm: 1 }, part], { x: 0, y: 20 }, 40, "");
    expect(laid.ok).toBe(true);
    const job = withPartsPutIn(JOB, 3, [part]);
    expect(jobSchema.safeParse(job).success).toBe(true);
  });

  it.each(kinds)("the sizes asked for of a %s are sizes that it has", (kind) => {
    for (const size of SIZES_OF[kind]) {
      const value = size.kind === "choice" ? size.options[1]?.value : size.kind === "share" ? 0.4 : 3;
      const part = withSize(freshPart(kind, 12), size.key, value);
      expect(sizeOf(part, size.key)).toBe(value);
      expect(jobSchema.safeParse(withPartsPutIn(JOB, 3, [part])).success).toBe(true);
    }
  });
});

describe("parts made anew from their pieces", () => {
  it("keep what has not changed, and draw the same as flats and curves", () => {
    const chain = chainOfJob(JOB);
    if (!chain.ok) throw new Error("the chain lies");
    const placed = placedParts(chain.value);
    const parts = partsOfJob(JOB);
    for (const { index, pieces } of placed) {
      const part = parts[index];
      if (part === undefined) throw new Error("each place has its part");
      expect(refitted(part, pieces, pieces)).toEqual([part]);
    }
    const plain = plainParts(placed.flatMap(({ pieces }) => pieces));
    expect(plain.map(({ kind }) => kind)).toEqual(["fillet", "step", "arc", "fillet"]);
    const again = layParts(plain, { x: 0, y: 20 }, 40, "");
    if (!again.ok) throw new Error("the plain chain lies");
    expect(again.value.at(-1)?.pieces.at(-1)?.to.x).toBeCloseTo(40, 6);
    expect(again.value.at(-1)?.pieces.at(-1)?.to.y).toBeCloseTo(10, 6);
  });
});
