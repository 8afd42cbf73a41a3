import { circleOf, type Point } from "mouldwright/curve";
import { chainOfJob, type Job, sectionOfJob } from "mouldwright/job";
import { describe, expect, it } from "vitest";
import { partsOfJob, withParts } from "../chain/chain-edits.ts";
import { placedParts } from "../chain/laid-chain.ts";
import { asFreeCurve, readStroke, strokePlace } from "./hand-drawn.ts";

const JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Chart cabinet: plinth",
  section: {
    parts: [
      { kind: "fillet", widthMm: 8 },
      { kind: "bevel", acrossMm: 12, riseMm: -12 },
      { kind: "fillet", widthMm: "rest" },
    ],
  },
  stick: { widthMm: 40, thicknessMm: 24 },
};
const RADII = [
  { radiusMm: 12.7, makes: "hollow", plane: "½ in round" },
  { radiusMm: 9.525, makes: "hollow", plane: "⅜ in round" },
] as const;

/** A hollow quarter of 12 mm drawn by a hand that trembles by a tenth, from (8, 24) to (20, 12). */
function stroke(): readonly Point[] {
  return Array.from({ length: 60 }, (_, step) => {
    const angle = Math.PI + (step / 59) * (Math.PI / 2);
    const tremble = 0.1 * Math.sin(step * 2.4);
    return { x: 20 + (12 + tremble) * Math.cos(angle), y: 24 + (12 + tremble) * Math.sin(angle) };
  });
}

function placed() {
  const chain = chainOfJob(JOB);
  if (!chain.ok) throw new Error("the chain lies");
  return placedParts(chain.value);
}

describe("a stroke drawn by hand", () => {
  it("goes between the joins nearest its ends, from whichever side it is drawn", () => {
    const place = { first: 1, end: 2, from: { x: 8, y: 24 }, to: { x: 20, y: 12 } };
    expect(strokePlace(stroke(), placed())).toEqual(place);
    expect(strokePlace([...stroke()].reverse(), placed())).toEqual(place);
  });

  it("is read as one curve, on the shelf's radius where that is near enough", () => {
    const read = readStroke(stroke(), { placed: placed(), radii: RADII, withinMm: 0.4 });
    expect(read?.curveCount).toBe(1);
    expect(read?.planes).toEqual(["½ in round"]);
    const [part] = read?.parts ?? [];
    expect(part).toMatchObject({ kind: "arc", acrossMm: 12, riseMm: -12, bend: "hollow", radiusMm: 12.7 });
    const far = readStroke(stroke(), { placed: placed(), radii: [], withinMm: 0.4 });
    const [piece] = far?.pieces ?? [];
    if (piece?.kind !== "arc") throw new Error("it is a curve");
    expect(Math.abs(circleOf(piece).radiusMm - 12)).toBeLessThan(0.3);
  });

  it("put in, the chain still ends on the far edge", () => {
    const read = readStroke(stroke(), { placed: placed(), radii: RADII, withinMm: 0.4 });
    if (read === null) throw new Error("it is read");
    const { first, end } = read.place;
    const next = withParts(JOB, partsOfJob(JOB).toSpliced(first, end - first, ...read.parts));
    expect(sectionOfJob(next).ok).toBe(true);
  });

  it("is kept as a free curve that ends in the same joins", () => {
    const part = asFreeCurve(stroke(), { placed: placed(), radii: RADII, withinMm: 0.4 });
    if (part?.kind !== "free curve") throw new Error("it is a free curve");
    expect(part.beziers.at(-1)?.to).toEqual([12, -12]);
    const next = withParts(JOB, partsOfJob(JOB).toSpliced(1, 1, part));
    expect(sectionOfJob(next).ok).toBe(true);
  });

  it("a slip of the finger is none", () => {
    expect(strokePlace(stroke().slice(0, 2), placed())).toBeNull();
    expect(
      readStroke(
        Array.from({ length: 20 }, () => ({ x: 8, y: 24 })),
        { placed: placed(), radii: [], withinMm: 0.4 },
      ),
    ).toBeNull();
  });
});
