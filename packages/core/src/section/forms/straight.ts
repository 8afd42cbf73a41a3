/** Forms made of flats: fillet, step, bevel, chamfer, quirks. */
import type { Piece } from "../../curve/index.ts";
import type { BevelSpec, ChamferSpec, QuirkSpec, StepSpec, VeeQuirkSpec } from "../part-spec.ts";
import { lineTo, START } from "./strokes.ts";

export function fillet(widthMm: number): readonly Piece[] {
  return [lineTo(START, widthMm, 0)];
}

export function step(spec: StepSpec): readonly Piece[] {
  return [lineTo(START, 0, spec.riseMm)];
}

export function bevel(spec: BevelSpec): readonly Piece[] {
  return [lineTo(START, spec.acrossMm, spec.riseMm)];
}

export function chamfer(spec: ChamferSpec): readonly Piece[] {
  return [lineTo(START, spec.acrossMm, spec.riseMm ?? -spec.acrossMm)];
}

export function quirk(spec: QuirkSpec): readonly Piece[] {
  const walls = spec.walls ?? "both";
  const pieces: Piece[] = [];
  const bottomMm = walls === "last" ? 0 : -spec.depthMm;
  if (walls !== "last") pieces.push(lineTo(START, 0, bottomMm));
  const floor = lineTo(pieces.at(-1)?.to ?? START, spec.widthMm, bottomMm);
  pieces.push(floor);
  if (walls !== "first") pieces.push(lineTo(floor.to, spec.widthMm, bottomMm + spec.depthMm));
  return pieces;
}

export function veeQuirk(spec: VeeQuirkSpec): readonly Piece[] {
  const pointAcrossMm = { first: 0, last: spec.widthMm, neither: spec.widthMm / 2 }[
    spec.upright ?? "neither"
  ];
  const down = lineTo(START, pointAcrossMm, -spec.depthMm);
  return [down, lineTo(down.to, spec.widthMm, 0)];
}
