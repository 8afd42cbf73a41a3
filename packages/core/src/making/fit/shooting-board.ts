/** The angles of a shooting board that trims a sawn mitre. */
import type { SawSettings } from "./saw-cut.ts";

export interface ShootingBoard {
  /** Between the board's fence and the line the plane runs on; 90° shoots square, 45° a square frame's mitre. */
  readonly fenceDeg: number;
  /** How far the stick's bed is tipped up from level about a line along the plane's run, so that the plane can lie square. */
  readonly liftDeg: number;
  readonly convention: "the plane lies on its side and runs along the board's edge; the stick lies on its back, face up, on the tipped bed";
}

/**
 * What trims a cut sawn with these settings, degrees. Tipping the bed by the bevel about the cut's own line on the
 * table brings the cut upright; on the bed the fence then stands at 90° − mitre to that line.
 */
export function shootingBoard({ mitreDeg, bevelDeg }: SawSettings): ShootingBoard {
  return {
    fenceDeg: 90 - mitreDeg,
    liftDeg: bevelDeg,
    convention:
      "the plane lies on its side and runs along the board's edge; the stick lies on its back, face up, on the tipped bed",
  };
}
