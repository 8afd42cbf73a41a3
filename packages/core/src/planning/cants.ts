/** Face up, back up, and either edge up: few ways to lie matter. In the order they are preferred. */
export const FLAT_CANTS_DEG: readonly number[] = [0, 180, 90, -90];
