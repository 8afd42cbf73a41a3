/** Directions in the room: x along the wall to the right, y into the wall, z up. */
export interface Direction {
  readonly x: number;
  readonly y: number;
  readonly z: number;
}

export function dotOf(a: Direction, b: Direction): number {
  return a.x * b.x + a.y * b.y + a.z * b.z;
}

export function opposite({ x, y, z }: Direction): Direction {
  return { x: -x, y: -y, z: -z };
}
