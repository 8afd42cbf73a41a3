/** The worked parts of a section by name, each with the cuts that made it. */
import { pointAt } from "../curve/index.ts";
import type { PlanPart } from "../cutting/index.ts";
import type { Section } from "../section/index.ts";
import type { Bench } from "./bench.ts";
import { tidy } from "./draft-cut.ts";
import { standingOver } from "./standing.ts";
import type { TriedCut } from "./try-cut.ts";
import type { WorkedPiece } from "./worked-piece.ts";

const PLACES = 24;
const STANDS_OFF_MM = 0.03;

export function partsOf(bench: Bench, section: Section, cuts: readonly TriedCut[]): PlanPart[] {
  return bench.worked.map((piece, i) => {
    const kind = kindOf(piece);
    const a = pointAt(piece.piece, 0);
    const b = pointAt(piece.piece, 1);
    return {
      id: `p${i + 1}`,
      kind,
      name: nameFrom(section, piece) ?? kind,
      from: [tidy(a.x), tidy(a.y)],
      to: [tidy(b.x), tidy(b.y)],
      madeBy: madeBy(piece, cuts),
    };
  });
}

/** A cut made a piece if wood stood on some of it before the cut and none stands there after. */
function madeBy(piece: WorkedPiece, cuts: readonly TriedCut[]): number[] {
  const makers = new Set<number>();
  let before = cuts[0] ? standingOver(cuts[0].before, piece, PLACES, STANDS_OFF_MM) : [];
  cuts.forEach((cut, i) => {
    const after = standingOver(cut.after, piece, PLACES, STANDS_OFF_MM);
    if (after.some((place, k) => place.heightMm === 0 && (before[k]?.heightMm ?? 0) > 0)) makers.add(i + 1);
    before = after;
  });
  return [...makers];
}

function kindOf(piece: WorkedPiece): string {
  const curve = piece.curve;
  if (curve) {
    const sweep = curve.highTiltDeg - curve.lowTiltDeg;
    if (curve.convex) return sweep > 120 ? "bead" : "ovolo";
    return "cove";
  }
  const tilt = Math.abs(piece.startTiltDeg);
  if (tilt < 1 || tilt > 179) return "fillet";
  if (Math.abs(tilt - 90) < 1) return "wall";
  return "bevel";
}

/** The maker's own name, where the drawing was built from parts and the arc or flat lies among one's pieces. */
function nameFrom(section: Section, piece: WorkedPiece): string | null {
  const middle = pointAt(piece.piece, 0.5);
  const total = section.outline.pieces.length;
  for (const span of section.named) {
    for (let i = 0; i < span.count; i++) {
      const drawn = section.outline.pieces[(span.first + i) % total];
      const at = pointAt(drawn, 0.5);
      if (Math.hypot(at.x - middle.x, at.y - middle.y) < 0.5) return span.name;
    }
  }
  return null;
}
