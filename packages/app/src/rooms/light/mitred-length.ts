/**
 * A length of the moulding with its mitred corner as triangles, in the room: x to the right along the wall, y up, z out
 * of the wall. The core draws the section out; its ends are then moved onto the mitre's plane, which leaves every face
 * plane, and the piece round the corner is the mirror image in that plane.
 */
import type { Vertex } from "mouldwright/curve";
import type { SectionInLight } from "mouldwright/light";
import { cornerPlane } from "mouldwright/making";
import { drawnOut } from "mouldwright/sheets";
import type { Corner, TurnedSolid } from "./messages.ts";

/** A square corner, cut in half. */
const HALF_DEG = 45;
/** The length shown, in widths of the moulding, and at least so long, mm. */
const LENGTH_RATIO = 3;
const LEAST_LENGTH_MM = 120;

type Triple = readonly [number, number, number];

export function mitredLength(lit: SectionInLight, corner: Corner): TurnedSolid {
  const { widthMm, projectionMm, hanging } = lit;
  const lengthMm = Math.max(LEAST_LENGTH_MM, LENGTH_RATIO * Math.max(widthMm, projectionMm));
  const ring = lit.outline.map(
    (piece): Vertex =>
      piece.kind === "line" ? [piece.from.x, piece.from.y] : [piece.from.x, piece.from.y, piece.bulge],
  );
  const { triangles } = drawnOut("length", ring, lengthMm);
  const normal = corner === "none" ? null : planeOf(hanging.run, corner);
  const place = hanging.run === "level" ? level(normal, lengthMm) : upright(normal, widthMm, lengthMm);
  const along = moved(triangles, place);
  const pieces = normal === null ? [along] : [along, mirrored(along, normal)];
  return { run: hanging.run, corner, pieces, lengthMm, projectionMm, widthMm };
}

/** The mitre's plane through the corner, by its direction out of the piece along the wall. */
function planeOf(run: TurnedSolid["run"], corner: "outside" | "inside"): Triple {
  // An upright run is mitred to a level one over it, in the plane of the wall.
  if (run === "upright") return [Math.SQRT1_2, Math.SQRT1_2, 0];
  const { x, y, z } = cornerPlane("right", HALF_DEG, corner);
  return [x, z, -y];
}

/** From section and distance along it to the room: the far end lies on the mitre, or square over the corner. */
function level(normal: Triple | null, lengthMm: number): (corner: Triple) => Triple {
  return ([out, up, along]) => {
    if (along < lengthMm / 2) return [-lengthMm, up, out];
    return [normal === null ? 0 : -(normal[2] / normal[0]) * out, up, out];
  };
}

function upright(normal: Triple | null, widthMm: number, lengthMm: number): (corner: Triple) => Triple {
  return ([out, fromLast, along]) => {
    const right = widthMm - fromLast;
    if (along < lengthMm / 2) return [right, -lengthMm, out];
    return [right, normal === null ? 0 : -(normal[0] / normal[1]) * right, out];
  };
}

/** Both ways of placing change left and right, so each triangle is walked the other way to face out again. */
function moved(triangles: readonly number[], place: (corner: Triple) => Triple): Float32Array<ArrayBuffer> {
  const numbers = new Float32Array(triangles.length);
  for (let start = 0; start < triangles.length; start += 9) {
    for (let corner = 0; corner < 3; corner++) {
      const from = start + corner * 3;
      const at = place([triangles[from] ?? 0, triangles[from + 1] ?? 0, triangles[from + 2] ?? 0]);
      numbers.set(at, start + (2 - corner) * 3);
    }
  }
  return numbers;
}

/** The mirror image in a plane through the corner, facing out. */
function mirrored(numbers: Float32Array, [nx, ny, nz]: Triple): Float32Array<ArrayBuffer> {
  const image = new Float32Array(numbers.length);
  for (let start = 0; start < numbers.length; start += 9) {
    for (let corner = 0; corner < 3; corner++) {
      const from = start + corner * 3;
      const [x = 0, y = 0, z = 0] = numbers.subarray(from, from + 3);
      const offMm = 2 * (x * nx + y * ny + z * nz);
      image.set([x - offMm * nx, y - offMm * ny, z - offMm * nz], start + (2 - corner) * 3);
    }
  }
  return image;
}
