/** Grain for a face of wood, worked out, not photographed: how light each dot is, as streaks that run along the stick. */

const STREAKS = 26;
/** The lightest and darkest streaks differ by so much of full light. */
const DEPTH_RATIO = 0.11;
const REACH_WIDTHS = 2.5;

/** Brightness 0 to 1 of each dot, row by row; rows run along the stick. The same for every call, and joins at all edges. */
export function grainDots(alongCount: number, acrossCount: number): Float32Array {
  const dots = new Float32Array(alongCount * acrossCount).fill(1);
  const random = seeded(20261127);
  for (let streak = 0; streak < STREAKS; streak++) {
    const middle = random() * acrossCount;
    const width = (0.006 + random() * 0.035) * acrossCount;
    const depth = (DEPTH_RATIO / 3) * (0.4 + random());
    const wave = {
      swing: random() * width * 1.5,
      turns: 1 + Math.floor(random() * 2),
      start: random() * 2 * Math.PI,
    };
    for (let along = 0; along < alongCount; along++) {
      const at = middle + wave.swing * Math.sin(wave.start + (2 * Math.PI * wave.turns * along) / alongCount);
      // Beyond a few widths nothing of a streak is seen.
      const reach = Math.ceil(REACH_WIDTHS * width);
      for (let off = -reach; off <= reach; off++) {
        const across = Math.round(at) + off;
        const aside = (across - at) / width;
        const row = ((across % acrossCount) + acrossCount) % acrossCount;
        const index = row * alongCount + along;
        dots[index] = (dots[index] ?? 1) - depth * Math.exp(-aside * aside);
      }
    }
  }
  return dots;
}

/** Numbers 0 to 1 that look random and are the same each time: a linear congruence, Numerical Recipes' constants. */
function seeded(seed: number): () => number {
  let state = seed >>> 0;
  return () => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return state / 2 ** 32;
  };
}
