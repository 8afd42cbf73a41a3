/** Sections of 2, 4, 8, … parts for the question how planning grows: coves and beads by turns, level fillets between. */
import { bug } from "../packages/core/src/measure/index.ts";
import { buildSection, type PartSpec, type Section } from "../packages/core/src/section/index.ts";

export const PART_COUNTS: readonly number[] = [2, 4, 8, 16, 32];

/** Width of one part and its fillet: a quarter-inch plane is as wide as its radius, and 32 parts stay under 300 mm. */
const PART_MM = 6.35;
const FILLET_MM = 2.5;
/** How far a low bead of that width stands over its ends: radius less its cosine of 30°. */
const BEAD_RISE_MM = PART_MM * (1 - Math.cos(Math.PI / 6));
const MARGIN_MM = 6;
const THICKNESS_MM = 20;

/** A stick with `count` curved parts in a row; every second one is a quirked low bead, the others coves. */
export function sectionOfParts(count: number): Section {
  const parts: PartSpec[] = [{ kind: "fillet", widthMm: MARGIN_MM }];
  for (let i = 0; i < count; i++) {
    parts.push(...(i % 2 === 0 ? BEAD : COVE), { kind: "fillet", widthMm: FILLET_MM });
  }
  parts.push({ kind: "fillet", widthMm: "rest" });
  const widthMm = 2 * MARGIN_MM + count * (PART_MM + FILLET_MM);
  const built = buildSection({
    name: `${count} parts in a row`,
    stick: { widthMm, thicknessMm: THICKNESS_MM },
    parts,
  });
  return built.ok ? built.value : bug("the bench's own section is refused", { code: built.trouble.code });
}

const BEAD: readonly PartSpec[] = [
  { kind: "step", riseMm: -BEAD_RISE_MM },
  { kind: "low bead", widthMm: PART_MM },
  { kind: "step", riseMm: BEAD_RISE_MM },
];
const COVE: readonly PartSpec[] = [
  { kind: "arc", acrossMm: PART_MM, riseMm: 0, radiusMm: PART_MM, bend: "hollow" },
];
