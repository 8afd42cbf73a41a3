/**
 * The sections that any planner of this trade has to manage, built from parts. Sizes are chosen here; the
 * constructions are those of checks/area-d.json.
 */
import { readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { type PlanRequest, planSection } from "../../packages/core/src/planning/index.ts";
import { buildSection, type PartSpec, type Section } from "../../packages/core/src/section/index.ts";
import { readShelf, type Shelf } from "../../packages/core/src/shelf/index.ts";
import type { PlanJson } from "./plan-json.ts";

const IN = 25.4;
const SHELVES = join(dirname(fileURLToPath(import.meta.url)), "..", "..", "examples", "shelves");

export function shelfNamed(name: "small" | "full"): Shelf {
  const read = readShelf(readFileSync(join(SHELVES, `${name}.json`), "utf8"));
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
}

export interface Case {
  readonly name: string;
  readonly shelf: "small" | "full";
  readonly stick: { readonly widthMm: number; readonly thicknessMm: number };
  readonly parts: readonly PartSpec[];
}

export function sectionOf({ name, stick, parts }: Omit<Case, "shelf">): Section {
  const built = buildSection({ name, stick, parts });
  if (!built.ok) throw new Error(`${name}: ${JSON.stringify(built.trouble)}`);
  return built.value;
}

/** The plan as its file holds it: written out and read back, so that nothing but the file is examined. */
export function planFileOf(request: PlanRequest): PlanJson {
  const plan = planSection(request);
  if (!plan.ok) throw new Error(JSON.stringify(plan.trouble));
  return JSON.parse(JSON.stringify(plan.value)) as PlanJson;
}

/** Depth of a 60° arc below its ends' level over its chord w, which is its radius too: w (1 - cos 30°). */
const sunkMm = (chordMm: number): number => chordMm * (1 - Math.cos(Math.PI / 6));

const HOLLOW_MM = (3 / 8) * IN;
const ROUND_MM = (5 / 8) * IN;
const BEAD_SUNK_MM = sunkMm(HOLLOW_MM);

/** The round's line stands half its own width beyond the bead's foot: there its circle leaves at the bead's 30°. */
const COVE_HALF_MM = (5 / 16) * IN;

/** The cove's circle stands r cos 30° over the foot; the face, higher than the foot by the bead's depth, meets it here. */
const COVE_ACROSS_MM =
  COVE_HALF_MM + Math.sqrt(ROUND_MM ** 2 - (ROUND_MM * Math.cos(Math.PI / 6) - BEAD_SUNK_MM) ** 2);

const REED_MM = (3 / 16) * IN;
const POST_MM = 40;

/** Joining line of the 60° cymas: two arcs of half its length as radius (Nicholson, Hatfield; checks area D). */
const CYMA_LINE_MM = IN;

export const LOW_BEAD_AND_COVE: Case = {
  name: "low bead running into a cove",
  shelf: "small",
  stick: { widthMm: 42, thicknessMm: 18 },
  parts: [
    { kind: "fillet", widthMm: 5 },
    { kind: "step", riseMm: -BEAD_SUNK_MM },
    { kind: "low bead", widthMm: HOLLOW_MM },
    {
      kind: "arc",
      acrossMm: COVE_ACROSS_MM,
      riseMm: BEAD_SUNK_MM,
      radiusMm: ROUND_MM,
      bend: "hollow",
      name: "cove",
    },
    { kind: "fillet", widthMm: "rest" },
  ],
};

export const FIVE_REEDS: Case = {
  name: "five reeds on a post",
  shelf: "full",
  stick: { widthMm: POST_MM, thicknessMm: 28 },
  parts: [
    { kind: "fillet", widthMm: (POST_MM - 5 * REED_MM) / 2 },
    { kind: "step", riseMm: -sunkMm(REED_MM) },
    { kind: "reeds", count: 5, widthMm: REED_MM },
    { kind: "step", riseMm: sunkMm(REED_MM) },
    { kind: "fillet", widthMm: "rest" },
  ],
};

export const QUARTER_OVOLO: Case = {
  name: "quarter ovolo",
  shelf: "small",
  stick: { widthMm: 32, thicknessMm: 26 },
  parts: [
    { kind: "fillet", widthMm: 6 },
    { kind: "step", riseMm: -2 },
    { kind: "ovolo", acrossMm: ROUND_MM, riseMm: -ROUND_MM },
    { kind: "fillet", widthMm: "rest" },
  ],
};

export const CAVETTO: Case = {
  name: "cavetto",
  shelf: "small",
  stick: { widthMm: 32, thicknessMm: 26 },
  parts: [
    { kind: "fillet", widthMm: 6 },
    { kind: "cavetto", acrossMm: ROUND_MM, riseMm: -ROUND_MM },
    { kind: "step", riseMm: -2 },
    { kind: "fillet", widthMm: "rest" },
  ],
};

/** On a joining line of 45°: two arcs of 60° whose radius is half the line, here 3/8 in. */
export const CYMA_RECTA_45: Case = {
  name: "cyma recta on 45 degrees",
  shelf: "small",
  stick: { widthMm: 28, thicknessMm: 24 },
  parts: [
    { kind: "fillet", widthMm: 6 },
    { kind: "step", riseMm: -1.5 },
    { kind: "cyma recta", acrossMm: (2 * HOLLOW_MM) / Math.SQRT2, riseMm: (-2 * HOLLOW_MM) / Math.SQRT2 },
    { kind: "fillet", widthMm: "rest" },
  ],
};

/** The checks' cymas: 3, 4, 5 (D-C02) at a joining line of one inch, and the quadrants (D-C10) of half an inch. */
export const CHECKED_CYMAS: readonly Case[] = (["cyma recta", "cyma reversa"] as const).flatMap((kind) => [
  {
    name: `${kind}, flat`,
    shelf: "full" as const,
    stick: { widthMm: 40, thicknessMm: 26 },
    parts: [
      { kind: "fillet" as const, widthMm: 8 },
      { kind: "step" as const, riseMm: -1.5 },
      { kind, acrossMm: 0.8 * CYMA_LINE_MM, riseMm: -0.6 * CYMA_LINE_MM },
      { kind: "fillet" as const, widthMm: "rest" as const },
    ],
  },
  {
    name: `${kind}, thick`,
    shelf: "full" as const,
    stick: { widthMm: 46, thicknessMm: 36 },
    parts: [
      { kind: "fillet" as const, widthMm: 8 },
      { kind: "step" as const, riseMm: -1.5 },
      { kind, acrossMm: CYMA_LINE_MM, riseMm: -CYMA_LINE_MM, construction: "thick" as const },
      { kind: "fillet" as const, widthMm: "rest" as const },
    ],
  },
]);
