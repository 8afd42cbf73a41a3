/** The drawn sole of a plane of kind "shaped", from the vertices of its file. */
import { type Chain, chainFromVertices, type Vertex } from "../curve/index.ts";
import { cataloguedTrouble, fine, INCH_MM, refused, SAME_POINT_MM } from "../measure/index.ts";
import type { FileUnit } from "./file-schema.ts";
import { LARGEST_SIZE_MM } from "./plane-defaults.ts";
import type { ShelfOutcome } from "./shelf-trouble.ts";
import { snappedMm } from "./snapped.ts";

/** Why a drawn sole is refused, as the sentence ends. */
type Reason =
  | "turns back to the left"
  | "turns back on itself"
  | "is an arc of more than a half circle"
  | "lies where the point before lies"
  | "has no width";

/**
 * The sole through the file's vertices, in mm. It must run from left to right: a sole that turns back could not
 * be let down on the wood it leaves, and upright steps are allowed only one way at a time. Arcs are at most half
 * circles. The axis (x = 0) and the height of y = 0 are the maker's own choice.
 */
export function shapedSole(
  fileVertices: readonly (readonly number[])[],
  { at, unit }: { readonly at: string; readonly unit: FileUnit },
): ShelfOutcome<Chain> {
  const unitMm = unit === "in" ? INCH_MM : 1;
  const vertices = fileVertices.map(([x, y, bulge]): Vertex => {
    const placed: Vertex = [snappedMm(x! * unitMm), snappedMm(y! * unitMm)];
    return bulge === undefined || bulge === 0 ? placed : [placed[0], placed[1], bulge];
  });
  const tooLarge = vertices.findIndex(([x, y]) => Math.max(Math.abs(x), Math.abs(y)) > LARGEST_SIZE_MM);
  if (tooLarge >= 0) {
    const facts = { key: `sole point ${tooLarge + 1}`, mostMm: LARGEST_SIZE_MM };
    return refused(cataloguedTrouble("shelf-size-too-large", `${at}.sole[${tooLarge}]`, facts));
  }
  const bad = firstBadVertex(vertices);
  if (bad === undefined) return fine(chainFromVertices(vertices));
  const facts = { vertex: bad.index + 1, reason: bad.reason };
  return refused(cataloguedTrouble("shelf-bad-sole", `${at}.sole[${bad.index}]`, facts));
}

function firstBadVertex(
  vertices: readonly Vertex[],
): { readonly index: number; readonly reason: Reason } | undefined {
  let uprightWay = 0;
  for (let index = 0; index + 1 < vertices.length; index++) {
    const [fromX, fromY, bulge = 0] = vertices[index]!;
    const [toX, toY] = vertices[index + 1]!;
    const acrossMm = toX - fromX;
    const upMm = toY - fromY;
    if (Math.hypot(acrossMm, upMm) <= SAME_POINT_MM) {
      return { index: index + 1, reason: "lies where the point before lies" };
    }
    if (Math.abs(bulge) > 1) return { index, reason: "is an arc of more than a half circle" };
    if (runsLeft(acrossMm, upMm, bulge)) return { index, reason: "turns back to the left" };
    const way = acrossMm <= SAME_POINT_MM && bulge === 0 ? Math.sign(upMm) : 0;
    if (way !== 0 && way === -uprightWay) return { index, reason: "turns back on itself" };
    uprightWay = way;
  }
  const widthMm = vertices[vertices.length - 1]![0] - vertices[0]![0];
  return widthMm > SAME_POINT_MM ? undefined : { index: vertices.length - 1, reason: "has no width" };
}

/**
 * Whether a piece runs to the left anywhere. The direction of an arc turns steadily from one end to the other and
 * through at most a half turn, so looking at both ends (chord turned by half the sweep, 2 atan(bulge)) is enough.
 */
function runsLeft(acrossMm: number, upMm: number, bulge: number): boolean {
  const halfSweepRad = 2 * Math.atan(bulge);
  const cosine = Math.cos(halfSweepRad);
  const sine = Math.sin(halfSweepRad);
  const startMm = acrossMm * cosine + upMm * sine;
  const endMm = acrossMm * cosine - upMm * sine;
  return Math.min(startMm, endMm) < -SAME_POINT_MM;
}
