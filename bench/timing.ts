/** Timing of work that is repeated: medians, shares, and a fixed piece of work to hold every figure against. */

export interface Timed {
  readonly medianMs: number;
  /** 95 of 100 runs took no longer, ms. */
  readonly p95Ms: number;
  readonly runs: number;
  /** The median divided by that of the yardstick, run beside it. */
  readonly yardsticks: number;
}

export interface Repeating {
  readonly warmUps: number;
  readonly runs: number;
  /** No further run is begun once this is spent, ms; one run is always made. */
  readonly budgetMs: number;
}

/**
 * Repeats `work`, the run's number given to it, and tells how long the runs after the warm-up took. The yardstick is
 * run once before each, so that a busy machine slows both alike.
 */
export function timed(work: (run: number) => unknown, { warmUps, runs, budgetMs }: Repeating): Timed {
  const startMs = performance.now();
  for (let i = 0; i < warmUps && performance.now() - startMs < budgetMs / 2; i++) work(i);
  yardstick();
  const tookMs: number[] = [];
  const yardstickMs: number[] = [];
  while (tookMs.length < runs && (tookMs.length === 0 || performance.now() - startMs < budgetMs)) {
    yardstickMs.push(durationMs(yardstick));
    tookMs.push(durationMs(() => work(tookMs.length)));
  }
  tookMs.sort((a, b) => a - b);
  yardstickMs.sort((a, b) => a - b);
  const medianMs = shareOf(tookMs, 0.5);
  return {
    medianMs,
    p95Ms: shareOf(tookMs, 0.95),
    runs: tookMs.length,
    yardsticks: medianMs / shareOf(yardstickMs, 0.5),
  };
}

/**
 * The least processor time of some work in yardsticks: the quickest of several runs over the quickest yardstick run
 * between them. Of all figures this one is disturbed least by what else the machine does: what others run is not
 * counted, and noise only ever adds.
 */
export function leastBeside(
  work: () => unknown,
  { runs, budgetMs }: { readonly runs: number; readonly budgetMs: number },
): number {
  work();
  yardstick();
  const startMs = performance.now();
  let leastMs = Number.POSITIVE_INFINITY;
  let yardstickMs = Number.POSITIVE_INFINITY;
  for (let run = 0; run < runs && (run < 2 || performance.now() - startMs < budgetMs); run++) {
    yardstickMs = Math.min(yardstickMs, processorMs(yardstick));
    leastMs = Math.min(leastMs, processorMs(work));
    yardstickMs = Math.min(yardstickMs, processorMs(yardstick));
  }
  return leastMs / yardstickMs;
}

/** Time that the processor spent on this process alone. */
function processorMs(work: () => unknown): number {
  const from = process.cpuUsage();
  work();
  const { user, system } = process.cpuUsage(from);
  return (user + system) / 1000;
}

function durationMs(work: () => unknown): number {
  const fromMs = performance.now();
  work();
  return performance.now() - fromMs;
}

/** The value below which this share of the sorted values lies; of few values the next higher one. */
function shareOf(sorted: readonly number[], share: number): number {
  return sorted[Math.min(sorted.length - 1, Math.ceil(share * sorted.length) - 1)] ?? Number.NaN;
}

const YARDSTICK_STEPS = 400_000;

/**
 * A fixed piece of work that shares no code with the project, of the kind the planner does: floating point with
 * roots and sines, small objects made and dropped, a sort. Figures divided by its time can be compared between
 * machines far better than milliseconds. Never change it: stored ratios would lose their meaning.
 */
export function yardstick(): number {
  let x = 0.5;
  const kept: { readonly x: number; readonly y: number }[] = [];
  for (let i = 0; i < YARDSTICK_STEPS; i++) {
    x = (x * 1.37 + Math.sin(i) * 0.5 + 2) % 1;
    const made = { x, y: Math.sqrt(x + 1) };
    if (i % 16 === 0) kept.push(made);
  }
  kept.sort((a, b) => a.y - b.y || a.x - b.x);
  return kept[kept.length >> 1]?.x ?? 0;
}

/** The yardstick's own time on this machine, ms. */
export function yardstickTimeMs(): number {
  return timed(yardstick, { warmUps: 3, runs: 9, budgetMs: 2000 }).medianMs;
}
