/** How a plane is held in the hand once the stick is turned on the bench. */

/** Its tilt in the stick's frame plus how the stick is turned, degrees, over -180 up to 180. */
export function leanDeg(tiltDeg: number, cantDeg: number): number {
  let lean = (tiltDeg + cantDeg) % 360;
  if (lean > 180) lean -= 360;
  if (lean <= -180) lean += 360;
  return lean === 0 ? 0 : lean;
}
