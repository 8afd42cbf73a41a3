import { readFileSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { areaMm2, ringFromVertices, type Vertex } from "../curve/index.ts";
import type { Plan, PlanCut } from "../cutting/index.ts";
import { brokenAcross, brokenStick } from "./broken-stick.ts";
import type { Group, Item } from "./drawing.ts";
import { flow, paragraph, table } from "./flow.ts";
import { OVERLAP_MM, registrationMarks } from "./full-size.ts";
import { PAPERS, stretchFor } from "./paper.ts";
import { printedSizeMm } from "./sheet-frame.ts";
import { sheetPages } from "./sheet-set.ts";
import { drawnOut } from "./solid.ts";
import { scaleFor } from "./stick-view.ts";
import { faceOf, mirroredVertex, negativeOf, reversedChain } from "./template-outline.ts";

const GOLDEN = new URL("../../../../tests/golden/", import.meta.url);
const BEAD = JSON.parse(readFileSync(new URL("low-bead-and-cove.json", GOLDEN), "utf8")) as Plan;

function groupsOf(items: readonly Item[], role: string): readonly Group[] {
  return items.flatMap((item): readonly Group[] => {
    if (item.kind !== "group") return [];
    return [...(item.role === role ? [item] : []), ...groupsOf(item.items, role)];
  });
}

describe("what a printer makes", () => {
  test("a printer that makes 100.4 mm of 100 has its sheets drawn in by as much", () => {
    const stretch = stretchFor({ acrossMm: 100.4, upMm: 99.8 });
    expect(stretch).toMatchObject({ ok: true, value: { acrossRatio: 100 / 100.4, upRatio: 100 / 99.8 } });
  });

  test.each([
    [89.9, 100],
    [100, 110.1],
    [Number.NaN, 100],
  ])("%s × %s mm is no correction but another setting", (acrossMm, upMm) => {
    expect(stretchFor({ acrossMm, upMm })).toMatchObject({
      ok: false,
      trouble: { code: "sheet-correction-wrong" },
    });
  });

  test("pages are laid out on the paper as it comes out, and are as large as the paper", () => {
    const stretch = { acrossRatio: 0.98, upRatio: 1.02 };
    const size = printedSizeMm({ paper: PAPERS.a4, made: { acrossMm: 100, upMm: 100 }, stretch });
    expect(size.widthMm * 0.98).toBeCloseTo(210, 9);
    expect(size.heightMm * 1.02).toBeCloseTo(297, 9);
    const pages = sheetPages(BEAD, { unit: "mm", paper: "tabloid", made: { acrossMm: 102, upMm: 98 } });
    if (!pages.ok) throw new Error(pages.trouble.code);
    for (const page of pages.value) {
      expect([page.widthMm, page.heightMm]).toEqual([PAPERS.tabloid.widthMm, PAPERS.tabloid.heightMm]);
    }
  });
});

describe("the set", () => {
  test("has every kind in order, numbered through; only those that are asked for", () => {
    const all = sheetPages(BEAD, { unit: "mm" });
    if (!all.ok) throw new Error(all.trouble.code);
    expect([...new Set(all.value.map((page) => page.sheet))]).toEqual([
      ...["bench", "ends", "story", "planes", "fit", "lesson"],
    ]);
    expect(all.value[1]?.description).toBe(`Page 2 of ${all.value.length}, A4`);
    const some = sheetPages(BEAD, { unit: "mm", kinds: ["story", "bench"] });
    if (!some.ok) throw new Error(some.trouble.code);
    expect([...new Set(some.value.map((page) => page.sheet))]).toEqual(["bench", "story"]);
  });

  test("full-size pages carry both check bars and a correction's words; no date unless given", () => {
    const pages = sheetPages(BEAD, { unit: "mm", made: { acrossMm: 100.4, upMm: 100 } });
    if (!pages.ok) throw new Error(pages.trouble.code);
    for (const page of pages.value) {
      expect(groupsOf(page.items, "check bar across")).toHaveLength(page.isFullSize ? 1 : 0);
      const words = JSON.stringify(page.items);
      expect(words.includes("100.4 mm across")).toBe(page.isFullSize);
      expect(words.includes('"text":"A4"')).toBe(true);
    }
    const dated = sheetPages(BEAD, { unit: "mm", kinds: ["story"], date: "12 March" });
    if (!dated.ok) throw new Error(dated.trouble.code);
    expect(JSON.stringify(dated.value[0]?.items)).toContain("A4, 12 March");
  });

  test("a board of three metres is too large to piece together", () => {
    const wide = (ring: readonly Vertex[]): readonly Vertex[] =>
      ring.map(([x, y, bulge]) => (x > 41 ? (bulge === undefined ? [3000, y] : [3000, y, bulge]) : [x, y]));
    const plan = { ...BEAD, stick: wide(BEAD.stick), section: wide(BEAD.section), cuts: [], marks: [] };
    expect(sheetPages(plan, { unit: "mm", kinds: ["ends"] })).toMatchObject({
      ok: false,
      trouble: { code: "sheet-too-large" },
    });
  });

  test("a plan without cuts, marks or joins makes its sheets all the same", () => {
    const bare = {
      ...BEAD,
      cuts: [],
      marks: [],
      parts: [],
      assumed: [],
      finish: { ...BEAD.finish, joins: [] },
    };
    const pages = sheetPages(bare, { unit: "in" });
    expect(pages.ok).toBe(true);
  });
});

describe("flowing blocks", () => {
  const body = { minX: 0, minY: 0, maxX: 100, maxY: 20 };
  const block = (heightMm: number, keepsNext = false) => ({ heightMm, keepsNext, draw: () => [] });

  test("a block that does not fit goes overleaf, a heading with what it heads", () => {
    const tops: number[] = [];
    const noted = (heightMm: number, keepsNext = false) => ({
      heightMm,
      keepsNext,
      draw: (_: number, top: number) => {
        tops.push(top);
        return [];
      },
    });
    flow([noted(12), noted(4, true), noted(6), noted(3)], body);
    expect(tops).toEqual([0, 0, 4, 10]);
  });

  test("the head of a table stands once more above rows that go on overleaf", () => {
    const rows = Array.from({ length: 5 }, (_, index) => [`row ${index}`]);
    const pages = flow(table([{ heading: "Line", share: 1 }], rows, 100), body);
    const heads = pages.map(
      (page) => page.filter((item) => item.kind === "text" && item.text === "Line").length,
    );
    expect(pages.length).toBeGreaterThan(2);
    expect(heads.every((count) => count === 1)).toBe(true);
  });

  test("a block higher than the page stands alone", () => {
    expect(flow([block(5), block(50), block(5)], body)).toHaveLength(3);
    const lines = paragraph("one two three four five six", 10, { sizeMm: 4 });
    expect(flow([lines], body)).toHaveLength(1);
    expect(flow([], body)).toHaveLength(0);
  });
});

describe("pieced sheets", () => {
  test("three across have two crosses on either seam, in the middle of the overlap", () => {
    const marks = registrationMarks({ columns: 3, rows: 1, windowMm: [100, 60] });
    const xs = marks.map((mark) => {
      const upright = mark.kind === "group" ? mark.items[1] : undefined;
      return upright?.kind === "stroke" ? upright.path.start[0] : Number.NaN;
    });
    const seam = 100 - OVERLAP_MM + OVERLAP_MM / 2;
    expect(xs).toEqual([seam, seam, seam + 100 - OVERLAP_MM, seam + 100 - OVERLAP_MM]);
  });
});

describe("outlines for templates", () => {
  const bulge = Math.tan(Math.PI / 8);
  /** A quarter hollow between two flats: 30 wide, 10 high on the left, 5 on the right. */
  const section: readonly Vertex[] = [
    [0, 0],
    [30, 0],
    [30, 5],
    [15, 5, -bulge],
    [10, 10],
    [0, 10],
  ];
  const plan = { ...BEAD, section };

  test("the face runs over the top from left to right, its arcs turned with it", () => {
    expect(faceOf(section)).toEqual([
      [0, 10],
      [10, 10, bulge],
      [15, 5],
      [30, 5],
    ]);
  });

  test("reversed twice a chain is as it was; mirrored twice too", () => {
    const face = faceOf(section);
    expect(reversedChain(reversedChain(face))).toEqual(face);
    const twice = face.map((vertex) => mirroredVertex(mirroredVertex(vertex, 0, 30), 0, 30));
    expect(twice).toEqual(face);
  });

  test("negative and section fill the box over the back, up to the negative's top", () => {
    const negative = negativeOf(plan);
    const top = Math.max(...negative.map(([, y]) => y));
    const sum = areaMm2(ringFromVertices(negative)) + areaMm2(ringFromVertices(section));
    expect(sum).toBeCloseTo(30 * top, 6);
  });
});

describe("solids", () => {
  test("a box of 2 × 3 × 4 has 12 faces and holds 24", () => {
    const { triangles } = drawnOut(
      "box",
      [
        [0, 0],
        [2, 0],
        [2, 3],
        [0, 3],
      ],
      4,
    );
    expect(triangles).toHaveLength(12 * 9);
    let volume = 0;
    for (let i = 0; i < triangles.length; i += 9) {
      const [ax = 0, ay = 0, az = 0, bx = 0, by = 0, bz = 0, cx = 0, cy = 0, cz = 0] = triangles.slice(
        i,
        i + 9,
      );
      volume += (ax * (by * cz - bz * cy) - ay * (bx * cz - bz * cx) + az * (bx * cy - by * cx)) / 6;
    }
    expect(volume).toBeCloseTo(24, 9);
  });
});

describe("a stick broken off", () => {
  const room = { widthMm: 106, flatMm: 40, turnedMm: 60 };
  /** 40 × 60 mm with a step of 4 × 2 mm at its upper corner. */
  const thick: Plan = {
    ...BEAD,
    stick: [
      [0, 0],
      [40, 0],
      [40, 60],
      [0, 60],
    ],
    section: [
      [0, 0],
      [40, 0],
      [40, 58],
      [36, 58],
      [36, 60],
      [0, 60],
    ],
    cuts: [],
    marks: [],
  };

  test("is drawn larger, its idle middle left out, its face as it was", () => {
    const broken = brokenStick(thick, room);
    expect(broken.breakAtMm).not.toBeNull();
    expect(scaleFor(broken.plan, 0, room)).toBeGreaterThan(scaleFor(thick, 0, room));
    const heights = broken.plan.section.map(([, y]) => y);
    expect(Math.max(...heights) - Math.max(...heights.filter((y) => y < Math.max(...heights)))).toBeCloseTo(
      2,
      9,
    );
  });

  test("stays whole where it fits, and where a line is measured from its back", () => {
    expect(brokenStick(thick, { widthMm: 40, flatMm: 90, turnedMm: 90 }).breakAtMm).toBeNull();
    const mark = {
      id: "m",
      before: 1,
      kind: "depth",
      at: [38, 58],
      from: "back",
      distance: 58,
      fromGaugeEdge: 38,
      error: 0.2,
    } as const;
    expect(brokenStick({ ...thick, marks: [mark] }, room).breakAtMm).toBeNull();
  });

  test("a wide board is broken off across: once where its edge is worked, twice where its middle is", () => {
    const board = (left: number, right: number): Plan => ({
      ...thick,
      stick: [
        [0, 0],
        [250, 0],
        [250, 20],
        [0, 20],
      ],
      section: [
        [0, 0],
        [250, 0],
        [250, 20],
        [right, 20],
        [right, 18],
        [left, 18],
        [left, 20],
        [0, 20],
      ],
    });
    const small = { widthMm: 46, flatMm: 40, turnedMm: 48 };
    const across = (plan: Plan) => brokenAcross(brokenStick(plan, small), small);
    const middle = across(board(118, 131));
    // 12 mm are kept on either side of each break: 12 + 12 + 13 + 12 + 12 = 61 mm of the 250.
    expect(middle.breaksAcrossMm).toHaveLength(2);
    expect(Math.max(...middle.plan.stick.map(([x]) => x))).toBeCloseTo(61, 9);
    const groove = middle.plan.section.filter(([, y]) => y === 18).map(([x]) => x);
    expect(Math.max(...groove) - Math.min(...groove)).toBeCloseTo(13, 9);
    expect(across(board(225, 240)).breaksAcrossMm).toHaveLength(1);
    // Where the whole middle is lowered, the section and the stick do not run alike through it.
    expect(across(board(20, 230)).breaksAcrossMm).toBeUndefined();
    const narrow = brokenStick(BEAD, small);
    expect(brokenAcross(narrow, small)).toBe(narrow);
  });

  test("stays whole where a wide sole hangs down beside it", () => {
    const cut = {
      ...BEAD.cuts[0],
      after: [thick.section],
      sole: [
        [-30, 0],
        [30, 0],
      ],
      runs: [[[36, 58, -45]]],
    };
    const plan = { ...thick, cuts: [cut as unknown as PlanCut] };
    // The sole's far corner lies 30 sin 45° = 21.2 mm lower, at 36.8 mm: below it there is too little to leave out.
    expect(brokenStick(plan, room).breakAtMm ?? 0).toBeLessThan(36.8);
    const deeper = {
      ...cut,
      sole: [
        [-30, 0],
        [70, 0],
      ],
    } as unknown as PlanCut;
    expect(brokenStick({ ...plan, cuts: [deeper] }, room).breakAtMm).toBeNull();
  });
});
