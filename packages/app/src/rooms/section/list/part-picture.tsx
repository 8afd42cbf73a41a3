/** A small picture of a kind of part: a bit of the face with the part in it, as the core draws it. */
import { extentsOf, type Piece } from "mouldwright/curve";
import { layParts, type PartKind, type PartSpec } from "mouldwright/section";
import { memo } from "react";
import { pathOfPieces } from "../board/shape-path.ts";
import { freshPart } from "../chain/fresh-part.ts";

const SIDE_MM = 4;

export const PartPicture = memo(function PartPicture({ kind }: { readonly kind: PartKind }) {
  const before: PartSpec =
    kind === "running arc"
      ? { kind: "bevel", acrossMm: SIDE_MM, riseMm: 2 }
      : { kind: "fillet", widthMm: SIDE_MM };
  const chain: readonly PartSpec[] = [before, freshPart(kind, 14), { kind: "fillet", widthMm: SIDE_MM }];
  const laid = layParts(chain, { x: 0, y: 0 }, 0, "");
  if (!laid.ok) return null;
  const pieces = laid.value.flatMap((part) => part.pieces);
  const own = laid.value[1]?.pieces ?? [];
  return (
    <svg className="part-picture" viewBox={boxOf(pieces)} aria-hidden="true">
      <g transform="scale(1 -1)">
        <path className="wood" d={woodBelow(pieces)} />
        <path className="line" d={pathOfPieces(pieces, false)} />
        <path className="line own" d={pathOfPieces(own, false)} />
      </g>
    </svg>
  );
});

const MARGIN_MM = 1.5;
const BODY_MM = 4;

function boxOf(pieces: readonly Piece[]): string {
  const { minX, maxX, minY, maxY } = extentsOf({ pieces });
  const width = maxX - minX + 2 * MARGIN_MM;
  const height = maxY - minY + BODY_MM + MARGIN_MM;
  return `${minX - MARGIN_MM} ${-maxY - MARGIN_MM} ${width} ${height}`;
}

function woodBelow(pieces: readonly Piece[]): string {
  const { minY } = extentsOf({ pieces });
  const [first, last] = [pieces[0], pieces.at(-1)];
  if (first === undefined || last === undefined) return "";
  const floor = minY - BODY_MM;
  return `${pathOfPieces(pieces, false)}L${last.to.x} ${floor}L${first.from.x} ${floor}Z`;
}
