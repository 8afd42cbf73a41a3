import { readFileSync } from "node:fs";
import { type ComputedJob, computeJob, type Job, readJob, sectionOfJob } from "mouldwright/job";
import { readShelf, shelfFile } from "mouldwright/shelf";
import { beforeAll, describe, expect, it } from "vitest";
import { partsOfJob } from "../chain/chain-edits.ts";
import { asParts, verticesOfPieces } from "../chain/path-edits.ts";
import { withCure } from "./apply-cure.ts";
import { type Verdict, verdictsOf, wholeVerdict } from "./verdicts.ts";

/** A plan takes a second or two; a busy machine is given its time. */
const PLANNING_MS = 60_000;

const example = (name: string): string =>
  readFileSync(new URL(`../../../../../../examples/${name}.json`, import.meta.url), "utf8");

function jobOf(name: string): Job {
  const job = readJob(example(name));
  const shelf = readShelf(example("shelves/full"));
  if (!job.ok || !shelf.ok) throw new Error("the examples can be read");
  return { ...job.value, shelf: shelfFile(shelf.value) };
}

function computed(job: Job): ComputedJob {
  const outcome = computeJob(job);
  if (!outcome.ok) throw new Error("the example is planned");
  return outcome.value;
}

describe("the base that cannot be made", () => {
  const job = jobOf("impossible");
  let all: ComputedJob;
  let verdicts: readonly Verdict[];
  beforeAll(() => {
    all = computed(job);
    verdicts = verdictsOf(all, job);
  }, PLANNING_MS);

  it("has one verdict for each part, and says which two cannot be cut", () => {
    expect(wholeVerdict(all.plan)).toEqual({ canBeMade: false, says: "4 places stay uncut" });
    const uncut = verdicts.filter((verdict) => verdict.uncut.length > 0).map(({ index }) => index);
    expect(uncut.map((index) => partsOfJob(job)[index]?.name)).toEqual(["sunk fillet", "cove"]);
    expect(verdicts[1]?.uncut).toHaveLength(3);
    expect(verdicts[4]?.planes).toEqual(["32 mm rebate plane"]);
  });

  it("makes the sunk fillet as wide as the cure says, and nothing else is another", () => {
    const cure = verdicts[1]?.cures[0];
    if (cure === undefined) throw new Error("the flat has a cure");
    expect(cure.change).toMatchObject({ what: "width", toMm: 3 });
    const next = withCure(job, all, cure);
    if (next === null) throw new Error("the cure can be done");
    const parts = partsOfJob(next);
    expect(parts[1]).toEqual({ kind: "quirk", widthMm: 3, depthMm: 6, name: "sunk fillet" });
    expect(parts[2]).toEqual({ kind: "fillet", widthMm: 6, name: "lip" });
    expect([parts[0], parts[3], parts[4]]).toEqual([0, 3, 4].map((index) => partsOfJob(job)[index]));
    const again = computed(next);
    expect(again.plan.uncut.length).toBe(cure.placesAfter);
  });

  it("puts the plane of a cure on the job's shelf, once", () => {
    const cure = all.plan.cures?.find(({ kind }) => kind === "plane");
    if (cure === undefined) throw new Error("a plane would cure it");
    const next = withCure(job, all, cure);
    if (next?.shelf === undefined || "file" in next.shelf) throw new Error("the shelf is in the job");
    const had = job.shelf !== undefined && !("file" in job.shelf) ? job.shelf.planes.length : 0;
    expect(next.shelf.planes).toHaveLength(had + 1);
    expect(withCure(next, all, cure)?.shelf).toEqual(next.shelf);
  });
});

describe("a radius that is not on the shelf", () => {
  it("is drawn with the shelf's, between the same ends", () => {
    const job: Job = {
      ...jobOf("impossible"),
      stick: { widthMm: 30, thicknessMm: 20 },
      section: {
        parts: [
          { kind: "fillet", widthMm: 8 },
          { kind: "ovolo", acrossMm: 9, riseMm: -9, radiusMm: 10.7, name: "ovolo" },
          { kind: "fillet", widthMm: "rest" },
        ],
      },
    };
    const all = computed(job);
    const piece = all.plan.parts.find(({ name }) => name === "ovolo");
    if (piece === undefined) throw new Error("the ovolo is planned");
    const cure = {
      kind: "change",
      says: "Draw the curve with 9.5 mm radius between the same ends.",
      change: { what: "radius", from: piece.from, to: piece.to, toMm: 9.525 },
      places: [],
      placesBefore: 1,
      placesAfter: 0,
      cutsBefore: 1,
      cutsAfter: 1,
    } as const;
    expect(partsOfJob(withCure(job, all, cure) ?? job)[1]).toEqual({
      kind: "ovolo",
      acrossMm: 9,
      riseMm: -9,
      radiusMm: 9.525,
      name: "ovolo",
    });
  });
});

describe("a section held as a path", () => {
  it("is read as the parts that draw it again", () => {
    const job = jobOf("plinth");
    const section = sectionOfJob(job);
    if (!section.ok) throw new Error("the plinth is drawn");
    const asPath: Job = { ...job, section: { path: verticesOfPieces(section.value.outline.pieces) } };
    const drawn = sectionOfJob(asPath);
    if (!drawn.ok) throw new Error("the path is drawn");
    const back = job.section.back === undefined ? asParts(asPath, drawn.value) : null;
    if (back === null) throw new Error("the plinth's path is a chain");
    const again = sectionOfJob(back);
    if (!again.ok) throw new Error("the parts are drawn");
    const was = section.value.outline.pieces.filter(({ kind }) => kind === "arc");
    const is = again.value.outline.pieces.filter(({ kind }) => kind === "arc");
    expect(is).toHaveLength(was.length);
    is.forEach((piece, index) => {
      expect(piece.from.x).toBeCloseTo(was[index]?.from.x ?? 0, 3);
      expect(piece.from.y).toBeCloseTo(was[index]?.from.y ?? 0, 3);
      if (piece.kind === "arc" && was[index]?.kind === "arc") {
        expect(piece.bulge).toBeCloseTo(was[index].bulge, 3);
      }
    });
  });
});
