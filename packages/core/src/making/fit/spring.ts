/** The spring angle, in both conventions. Inside this folder it is always from the wall. */
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toDeg,
} from "../../measure/index.ts";
import { firstTrouble, LARGEST_ACROSS_MM, sizeTrouble } from "./checks.ts";

export interface Spring {
  /** Between the flat back and the wall: 0 stands flat against the wall. */
  readonly fromWallDeg: number;
  /** Between the flat back and the ceiling. */
  readonly fromCeilingDeg: number;
  readonly statedAs: "from the wall" | "from the ceiling" | "two legs";
}

const SQUARE_DEG = 90;

/** A spring stated from the wall or from the ceiling, 0 to 90°. */
export function springFrom(side: "wall" | "ceiling", springDeg: number): Outcome<Spring, TroubleCode> {
  if (!(springDeg >= 0 && springDeg <= SQUARE_DEG)) {
    return refused(cataloguedTrouble("spring-angle", "spring", { springDeg, side }));
  }
  const other = SQUARE_DEG - springDeg;
  return fine(
    side === "wall"
      ? { fromWallDeg: springDeg, fromCeilingDeg: other, statedAs: "from the wall" }
      : { fromWallDeg: other, fromCeilingDeg: springDeg, statedAs: "from the ceiling" },
  );
}

/**
 * The spring from the two legs that settle any doubt: how far the back comes out along the ceiling and how far it
 * reaches down the wall, mm. tan(spring from the wall) = projection / drop: with the wall's leg longer it is under 45°.
 */
export function springFromLegs(projectionMm: number, dropMm: number): Outcome<Spring, TroubleCode> {
  const limits = { mostMm: LARGEST_ACROSS_MM, zero: "allowed" } as const;
  const trouble = firstTrouble([
    sizeTrouble("projection along the ceiling", "projection", projectionMm, limits),
    sizeTrouble("drop down the wall", "drop", dropMm, limits),
  ]);
  if (trouble !== null) return refused(trouble);
  if (projectionMm === 0 && dropMm === 0)
    return refused(cataloguedTrouble("spring-no-legs", "projection", {}));
  const fromWallDeg = toDeg(Math.atan2(projectionMm, dropMm));
  return fine({ fromWallDeg, fromCeilingDeg: SQUARE_DEG - fromWallDeg, statedAs: "two legs" });
}
