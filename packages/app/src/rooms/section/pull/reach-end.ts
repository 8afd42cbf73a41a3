/** A part changed so that it ends elsewhere, as near as its kind can come; the rest of its sizes stay. */
import type { Point } from "mouldwright/curve";
import type { PartSpec } from "mouldwright/section";
import { tidyDeg, tidyMm } from "../chain/refit-part.ts";

/** No part is pulled smaller than this, mm: it could not be taken hold of again. */
const LEAST_MM = 0.1;

/** Which ways a part's end can go by its own sizes, seen in its own lie. */
export function freeWays(part: PartSpec): { readonly across: boolean; readonly rise: boolean } {
  switch (part.kind) {
    case "fillet":
      return { across: part.widthMm !== "rest", rise: false };
    case "step":
      return { across: false, rise: true };
    case "quirk":
      return { across: true, rise: (part.walls ?? "both") !== "both" };
    case "vee quirk":
    case "bead":
    case "astragal":
    case "torus":
    case "low bead":
    case "reeds":
    case "flutes":
    case "band":
    case "scotia":
      return { across: true, rise: false };
    default:
      return { across: true, rise: true };
  }
}

/** `end`: from the part's start, in its own lie (before it is turned), mm. */
export function reachingTo(part: PartSpec, end: Point): PartSpec {
  const acrossMm = tidyMm(Math.max(LEAST_MM, end.x));
  const riseMm = tidyMm(signedAtLeast(end.y));
  switch (part.kind) {
    case "fillet":
      return part.widthMm === "rest" ? part : { ...part, widthMm: acrossMm };
    case "step":
      return { ...part, riseMm };
    case "bevel":
      return { ...part, acrossMm, riseMm };
    case "chamfer":
      // Pulled along its own 45° it stays one.
      return part.riseMm === undefined && Math.abs(acrossMm + riseMm) <= LEAST_MM / 2
        ? { ...part, acrossMm }
        : { ...part, acrossMm, riseMm };
    case "quirk":
      return { ...part, widthMm: acrossMm, ...quirkDepth(part, end.y) };
    case "vee quirk":
    case "bead":
    case "astragal":
    case "torus":
    case "low bead":
    case "band":
      return { ...part, widthMm: acrossMm };
    case "reeds":
    case "flutes": {
      const gapsMm = (part.count - 1) * (part.gapMm ?? 0);
      return { ...part, widthMm: tidyMm(Math.max(LEAST_MM, (end.x - gapsMm) / part.count)) };
    }
    case "scotia": {
      const small = part.smallRadiusMm;
      return small === undefined
        ? { ...part, acrossMm }
        : { ...part, acrossMm, smallRadiusMm: Math.min(small, acrossMm / 2) };
    }
    case "ovolo":
    case "cavetto":
      return part.radiusMm === undefined
        ? { ...part, acrossMm, riseMm }
        : { ...part, acrossMm, riseMm, radiusMm: wideEnough(part.radiusMm, acrossMm, riseMm) };
    case "cyma recta":
    case "cyma reversa":
    case "running arc":
      return { ...part, acrossMm, riseMm };
    case "arc":
      return {
        ...part,
        acrossMm: tidyMm(end.x),
        riseMm: tidyMm(end.y),
        radiusMm: wideEnough(part.radiusMm, end.x, end.y),
      };
    case "swept arc":
      return sweptTo(part, end);
    case "free curve":
      return freeTo(part, end);
  }
}

function signedAtLeast(riseMm: number): number {
  return Math.abs(riseMm) >= LEAST_MM ? riseMm : riseMm < 0 ? -LEAST_MM : LEAST_MM;
}

function quirkDepth(
  part: Extract<PartSpec, { kind: "quirk" }>,
  riseMm: number,
): { readonly depthMm?: number } {
  if (part.walls === "first") return { depthMm: tidyMm(Math.max(LEAST_MM, -riseMm)) };
  return part.walls === "last" ? { depthMm: tidyMm(Math.max(LEAST_MM, riseMm)) } : {};
}

function wideEnough(radiusMm: number, acrossMm: number, riseMm: number): number {
  return Math.max(radiusMm, Math.ceil(Math.hypot(acrossMm, riseMm) * 5000) / 10_000);
}

/** Its radius follows how far away the end is, its lean where it lies; how far round it goes stays. */
function sweptTo(part: Extract<PartSpec, { kind: "swept arc" }>, end: Point): PartSpec {
  const halfRad = (part.sweepDeg * Math.PI) / 360;
  const chordMm = Math.hypot(end.x, end.y);
  const perRadius = 2 * Math.sin(halfRad);
  if (perRadius < 0.05 || chordMm < LEAST_MM) return part;
  const radiusMm = tidyMm(chordMm / perRadius);
  if (part.smooth === true) return { ...part, radiusMm };
  const ownDeg = part.bend === "round" ? -part.sweepDeg / 2 : part.sweepDeg / 2;
  const chordDeg = (Math.atan2(end.y, end.x) * 180) / Math.PI;
  const turnDeg = tidyDeg((part.leanDeg ?? 0) + chordDeg - ownDeg);
  const leanDeg = turnDeg > 180 ? turnDeg - 360 : turnDeg < -180 ? turnDeg + 360 : turnDeg;
  if (leanDeg !== 0) return { ...part, radiusMm, leanDeg };
  const { leanDeg: _, ...level } = part;
  return { ...level, radiusMm };
}

/** Every point of a free curve goes along in proportion. */
function freeTo(part: Extract<PartSpec, { kind: "free curve" }>, end: Point): PartSpec {
  const last = part.beziers.at(-1)?.to ?? [1, 1];
  const ratio = (wanted: number, had: number): number =>
    Math.abs(had) < LEAST_MM || Math.abs(wanted) < LEAST_MM ? 1 : wanted / had;
  const [wide, high] = [ratio(Math.max(LEAST_MM, end.x), last[0]), ratio(end.y, last[1])];
  const moved = ([x, y]: readonly [number, number]): readonly [number, number] => [
    tidyMm(x * wide),
    tidyMm(y * high),
  ];
  const beziers = part.beziers.map(({ control1, control2, to }) => ({
    control1: moved(control1),
    control2: moved(control2),
    to: moved(to),
  }));
  return { ...part, beziers };
}
