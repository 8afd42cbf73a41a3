/** What sizes a part may have: checked before any geometry is made of them. */
import { atLeastMm, atMostMm, cataloguedTrouble, LEAST_PIECE_MM, type Trouble } from "../measure/index.ts";
import { bandLayout } from "./band-layout.ts";
import { leastQuarterRadiusMm } from "./forms/quarters.ts";
import type { BandSpec, PartKind, PartSpec } from "./part-spec.ts";

/** No wooden section that is moulded by hand is larger, mm (common practice, no source); wide cornices are built up. */
export const LARGEST_SECTION_MM = 300;

/** A radius may be larger than the section: a nearly flat curve, mm. */
const LARGEST_RADIUS_MM = 5000;

/** More reeds than fit on the largest section at a width that can still be planed. */
const MOST_IN_A_ROW = 100;
const MOST_BEZIERS = 200;

/** Flatter than this an arc is a flat for any plane, degrees (common practice, no source). */
const LEAST_SWEEP_DEG = 1;

/** Less than a twentieth of an S is no hollow (or round) any more. */
const LEAST_SHARE = 0.05;

/** Checks one part; the first thing wrong with it, or null. `where` is the part's path in the file. */
export function wrongSize(part: PartSpec, where: string): Trouble | null {
  const check = new PartCheck(part, where);
  check.lean();
  switch (part.kind) {
    case "fillet":
      if (part.widthMm !== "rest") check.size("width", part.widthMm);
      break;
    case "step":
      check.rise(part.riseMm);
      break;
    case "bevel":
      check.size("width across", part.acrossMm);
      check.rise(part.riseMm);
      break;
    case "chamfer":
      check.size("width across", part.acrossMm);
      if (part.riseMm !== undefined) check.rise(part.riseMm);
      break;
    case "quirk":
    case "vee quirk":
      check.size("width", part.widthMm);
      check.size("depth", part.depthMm);
      break;
    case "bead":
    case "astragal":
    case "torus":
      check.size("width", part.widthMm);
      break;
    case "low bead":
      check.size("width", part.widthMm);
      if (part.sweepDeg !== undefined) check.sweep(part.sweepDeg, 180);
      break;
    case "reeds":
    case "flutes":
      check.count("count", part.count, MOST_IN_A_ROW);
      check.size("width", part.widthMm);
      if (part.sweepDeg !== undefined) check.sweep(part.sweepDeg, 180);
      if (part.gapMm !== undefined && part.gapMm !== 0) check.size("gap", part.gapMm);
      break;
    case "band":
      if (part.count !== undefined) check.count("count", part.count, MOST_IN_A_ROW);
      check.size("width", part.widthMm);
      if (part.radiusMm !== undefined) check.radius(part.radiusMm, LEAST_PIECE_MM);
      if (part.sweepDeg !== undefined) check.sweep(part.sweepDeg, 180);
      if (part.filletMm !== undefined && part.filletMm !== 0) check.size("fillet", part.filletMm);
      if (part.leastEndMm !== undefined && part.leastEndMm !== 0) check.size("end", part.leastEndMm);
      check.band(part);
      break;
    case "ovolo":
    case "cavetto":
      check.size("width across", part.acrossMm);
      check.rise(part.riseMm);
      if (part.radiusMm !== undefined) check.radius(part.radiusMm, leastQuarterRadiusMm(part));
      break;
    case "scotia":
      check.size("width across", part.acrossMm);
      if (part.smallRadiusMm !== undefined) {
        check.size("small radius", part.smallRadiusMm, LEAST_PIECE_MM, part.acrossMm / 2);
      }
      break;
    case "cyma recta":
    case "cyma reversa":
      check.size("width across", part.acrossMm);
      check.rise(part.riseMm);
      if (part.hollowRatio !== undefined) check.share("hollow's share", part.hollowRatio);
      break;
    case "arc":
      check.end(part.acrossMm, part.riseMm);
      check.radius(part.radiusMm, Math.hypot(part.acrossMm, part.riseMm) / 2);
      break;
    case "swept arc":
      check.radius(part.radiusMm, LEAST_PIECE_MM);
      check.sweep(part.sweepDeg, 360);
      break;
    case "running arc":
      check.end(part.acrossMm, part.riseMm);
      break;
    case "free curve":
      check.count("number of curves", part.beziers.length, MOST_BEZIERS);
      for (const bezier of part.beziers) {
        for (const [across, rise] of [bezier.control1, bezier.control2, bezier.to]) {
          check.coordinate(across);
          check.coordinate(rise);
        }
      }
      break;
  }
  return check.found;
}

/** Collects the first thing wrong with a part. */
class PartCheck {
  found: Trouble | null = null;
  private readonly part: PartSpec;
  private readonly kind: PartKind;
  private readonly where: string;

  constructor(part: PartSpec, where: string) {
    this.part = part;
    this.kind = part.kind;
    this.where = where;
  }

  size(size: string, valueMm: number, leastMm = LEAST_PIECE_MM, mostMm = LARGEST_SECTION_MM): void {
    if (atLeastMm(valueMm, leastMm) && atMostMm(valueMm, mostMm)) return;
    this.found ??= cataloguedTrouble("part-size", this.where, {
      part: this.kind,
      size,
      valueMm,
      leastMm,
      mostMm,
    });
  }

  band(part: BandSpec): void {
    if (this.found !== null) return;
    const layout = bandLayout(part, this.where);
    if (!layout.ok) this.found = layout.trouble;
  }

  rise(riseMm: number): void {
    this.size("rise or fall", Math.abs(riseMm));
  }

  end(acrossMm: number, riseMm: number): void {
    this.size("distance from start to end", Math.hypot(acrossMm, riseMm));
  }

  coordinate(valueMm: number): void {
    this.size("distance of a point from its start", Math.abs(valueMm), 0);
  }

  radius(radiusMm: number, leastMm: number): void {
    if (atLeastMm(radiusMm, leastMm) && atMostMm(radiusMm, LARGEST_RADIUS_MM)) return;
    this.found ??= cataloguedTrouble("part-radius", this.where, {
      part: this.kind,
      radiusMm,
      leastMm,
      mostMm: LARGEST_RADIUS_MM,
    });
  }

  sweep(sweepDeg: number, mostDeg: number): void {
    if (sweepDeg >= LEAST_SWEEP_DEG && sweepDeg <= mostDeg) return;
    this.found ??= cataloguedTrouble("part-sweep", this.where, {
      part: this.kind,
      sweepDeg,
      leastDeg: LEAST_SWEEP_DEG,
      mostDeg,
    });
  }

  share(share: string, valueRatio: number): void {
    if (valueRatio >= LEAST_SHARE && valueRatio <= 1 - LEAST_SHARE) return;
    this.found ??= cataloguedTrouble("part-share", this.where, {
      part: this.kind,
      share,
      valuePercent: Math.round(valueRatio * 100),
      leastPercent: LEAST_SHARE * 100,
      mostPercent: (1 - LEAST_SHARE) * 100,
    });
  }

  count(what: string, count: number, most: number): void {
    if (Number.isSafeInteger(count) && count >= 1 && count <= most) return;
    this.found ??= cataloguedTrouble("part-count", this.where, { part: this.kind, what, count, most });
  }

  lean(): void {
    if (this.part.kind === "running arc") return;
    const leanDeg = this.part.leanDeg;
    if (leanDeg === undefined) return;
    if (this.part.smooth === true) {
      this.found ??= cataloguedTrouble("part-turned-twice", this.where, { part: this.kind, leanDeg });
    } else if (!(Math.abs(leanDeg) <= 180)) {
      this.found ??= cataloguedTrouble("part-lean", this.where, { part: this.kind, leanDeg });
    }
  }
}
