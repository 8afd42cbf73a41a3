/** A band drawn from its layout: end fillet, parts with the fillets between them, end fillet, all on one level. */
import { type Piece, type Point, point } from "../../curve/index.ts";
import { toRad } from "../../measure/index.ts";
import type { BandLayout } from "../band-layout.ts";
import { arcBySweep, type Bend, lineTo, START } from "./strokes.ts";

export function band(layout: BandLayout, widthMm: number, bend: Bend): readonly Piece[] {
  const pieces: Piece[] = [];
  let at: Point = START;
  const flatTo = (xMm: number): void => {
    const flat = lineTo(at, xMm, 0);
    pieces.push(flat);
    at = flat.to;
  };
  layout.startsMm.forEach((startMm, i) => {
    if (i === 0 ? layout.endMm > 0 : layout.filletMm > 0) flatTo(startMm);
    const isLast = i === layout.count - 1;
    // Where nothing stands between, a part ends where the next one starts; the last ends as far in as the first.
    const next = layout.filletMm > 0 ? startMm + layout.partMm : layout.startsMm[i + 1];
    const to = point(isLast ? widthMm - layout.endMm : (next ?? startMm + layout.partMm), 0);
    pieces.push(arcBySweep(at, to, toRad(layout.sweepDeg), bend));
    at = to;
  });
  if (layout.endMm > 0) flatTo(widthMm);
  return pieces;
}
