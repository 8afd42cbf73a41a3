/** What is read off a plane, in words: short sizes for a list, and every figure of its sole on demand. */
import { formatLength, formatThickness, type LengthUnit, sameMm } from "mouldwright/measure";
import {
  type Plane,
  soleAngleDeg,
  soleDepthMm,
  type WallAllowance,
  wallAllowanceMm,
} from "mouldwright/shelf";

/** A sixteenth of an inch is 1.5875 mm: what is finer no plane is made to. */
const MM_DECIMALS = 3;

/** A plane's own size, never rounded to a rule's step so far that two planes look alike. */
export function sizeWords(sizeMm: number, unit: LengthUnit): string {
  if (unit === "mm") return `${Number(sizeMm.toFixed(MM_DECIMALS))}\u00a0mm`;
  return formatLength(sizeMm, { unit, denominator: 64 });
}

/** For a list: the sizes by which a maker knows the plane. */
export function shortSizes(plane: Plane, unit: LengthUnit): string {
  const size = (sizeMm: number): string => sizeWords(sizeMm, unit);
  switch (plane.kind) {
    case "hollow":
    case "round":
      return sameMm(plane.radiusMm, plane.widthMm)
        ? size(plane.radiusMm)
        : `radius ${size(plane.radiusMm)}, ${size(plane.widthMm)} wide`;
    case "snipe bill":
      return `${plane.hand} hand, ${size(plane.widthMm)}`;
    case "plough":
      return plane.widthsMm.length === 1
        ? size(plane.widthsMm[0] ?? 0)
        : `${plane.widthsMm.length} irons, ${size(Math.min(...plane.widthsMm))} to ${size(Math.max(...plane.widthsMm))}`;
    case "side round":
    case "side snipe":
    case "side rebate":
      return `${plane.hand} hand, foot ${size(plane.widthMm)}`;
    case "bead":
      return `${size(plane.widthMm)}, quirk on the ${plane.hand ?? "right"}`;
    case "shaped":
      return "its own shape";
    default:
      return `${size(plane.widthMm)} wide`;
  }
}

export interface Reading {
  readonly name: string;
  readonly value: string;
}

/** Everything that is read off a sole: arc, depth, and the standing wood it clears on each side. */
export function readingsOf(plane: Plane, unit: LengthUnit): readonly Reading[] {
  const readings: Reading[] = [];
  if (plane.kind === "hollow" || plane.kind === "round") {
    readings.push(
      { name: "Arc of the sole", value: `${Math.round(soleAngleDeg(plane) * 4) / 4}° of the circle` },
      { name: "Depth of the sole", value: formatThickness(soleDepthMm(plane), { unit }) },
    );
  }
  const left = wallWords(wallAllowanceMm(plane, "left"), unit);
  const right = wallWords(wallAllowanceMm(plane, "right"), unit);
  if (left === right) return [...readings, { name: "Beside standing wood", value: left }];
  return [
    ...readings,
    { name: "With standing wood on its left", value: left },
    { name: "With standing wood on its right", value: right },
  ];
}

function wallWords(allowance: WallAllowance, unit: LengthUnit): string {
  if (allowance.kind === "unlimited") return "cuts the wall itself";
  if (allowance.allowanceMm === 0) return "never goes there";
  return `clears ${sizeWords(allowance.allowanceMm, unit)} of it`;
}
