/** How long plans took, as a few lines for whoever started the long run. */

export interface Took {
  readonly ms: number;
  readonly what: string;
}

/** A plan that takes longer keeps its maker waiting for nothing, ms. */
const TOO_LONG_MS = 10_000;
const SLOWEST_TOLD = 5;

export function durationLines(tookOf: readonly Took[]): readonly string[] {
  const sorted = [...tookOf].sort((a, b) => a.ms - b.ms);
  const below = (share: number): string => {
    const at = Math.min(sorted.length - 1, Math.max(0, Math.ceil(share * sorted.length) - 1));
    return `${(sorted[at]?.ms ?? 0).toFixed(0)} ms`;
  };
  const tooLong = sorted.filter(({ ms }) => ms > TOO_LONG_MS).length;
  return [
    `${sorted.length} plans: half took no more than ${below(0.5)}, 95 in 100 ${below(0.95)}, 99 in 100 ${below(0.99)}; ${tooLong} took over ${TOO_LONG_MS / 1000} s`,
    ...sorted
      .slice(-SLOWEST_TOLD)
      .reverse()
      .map(({ ms, what }) => `  ${ms.toFixed(0)} ms: ${what}`),
  ];
}
