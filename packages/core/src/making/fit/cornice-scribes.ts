/** Which ends of a run are scribed, and the outline of each: ends alike in corner and hand share one. */
import { fine, type Outcome, SAME_POINT_DEG, type Trouble } from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import type { Corner } from "./corner.ts";
import type { Cornice, CornicePiece } from "./cornice-types.ts";
import type { Placing } from "./placed-section.ts";
import { type Scribe, scribe } from "./scribe.ts";

/** Ends that are scribed alike: the same corner, the same hand. */
export interface ScribedEnds {
  readonly scribe: Scribe;
  /** The scribed end of the pieces, as seen from the room: a left end has the corner on its left. */
  readonly end: "left" | "right";
  /** Numbers of the pieces. */
  readonly pieces: readonly number[];
}

/** The scribes of a run, in the order of its pieces. Troubles: those of `scribe`, its warnings said once. */
export function corniceScribes(
  { pieces }: Cornice,
  section: Section,
  placing: Placing,
): Outcome<readonly ScribedEnds[]> {
  const found: ScribedEnds[] = [];
  const warnings: Trouble[] = [];
  for (const { piece, end, corner } of scribedEnds(pieces)) {
    const alike = found.findIndex(
      (one) => one.end === end && Math.abs(one.scribe.corner.cornerDeg - corner.cornerDeg) <= SAME_POINT_DEG,
    );
    const known = found[alike];
    if (known !== undefined) {
      found[alike] = { ...known, pieces: [...known.pieces, piece] };
      continue;
    }
    const outline = scribe({ section, placing, corner });
    if (!outline.ok) return outline;
    if (found.length === 0) warnings.push(...outline.warnings);
    found.push({ scribe: outline.value, end, pieces: [piece] });
  }
  return fine(found, warnings);
}

interface ScribedEnd {
  readonly piece: number;
  readonly end: "left" | "right";
  readonly corner: Corner;
}

function scribedEnds(pieces: readonly CornicePiece[]): readonly ScribedEnd[] {
  return pieces.flatMap((piece) =>
    (["left", "right"] as const).flatMap((end): ScribedEnd[] => {
      const { joint, corner } = piece[end];
      return joint === "scribed" && corner !== null ? [{ piece: piece.number, end, corner }] : [];
    }),
  );
}
