/** The tally of the long run: one line of JSON per run, so that it can be made in slices and taken up again. */
import type { Ran } from "./one-run.ts";
import { LONGEST_PLAN_MS } from "./one-run.ts";

/** The runs of a tally's text, the last line of each run counting. A line cut short, as by a lost process, is passed over. */
export function runsIn(text: string): ReadonlyMap<number, Ran> {
  const runs = new Map<number, Ran>();
  for (const line of text.split("\n")) {
    const ran = runIn(line);
    if (ran !== null) runs.set(ran.run, ran);
  }
  return runs;
}

function runIn(line: string): Ran | null {
  try {
    const read: unknown = JSON.parse(line);
    return isRan(read) ? read : null;
  } catch {
    return null;
  }
}

function isRan(read: unknown): read is Ran {
  return typeof read === "object" && read !== null && "run" in read && "failures" in read && "planMs" in read;
}

const SLOWEST_TOLD = 5;

/** How many runs there are, how many failed of what, how long the plans took: lines for whoever reads. */
export function tallyLines(runs: Iterable<Ran>): readonly string[] {
  const all = [...runs];
  if (all.length === 0) return ["no runs"];
  const failed = all.filter(({ failures }) => failures.length > 0);
  const planned = all.filter(({ cuts }) => cuts !== null);
  const whole = planned.filter(({ uncut }) => uncut === 0);
  const byTime = [...all].sort((a, b) => a.planMs - b.planMs || a.run - b.run);
  const below = (share: number) => byTime[Math.max(0, Math.ceil(share * byTime.length) - 1)]?.planMs ?? 0;
  return [
    `${all.length} runs, ${planned.length} plans, ${whole.length} of them with nothing left uncut; ${failed.length} failed`,
    ...counted(failed.map(({ failures }) => failures)).map((line) => `  failed: ${line}`),
    ...counted(all.map(({ known }) => known)).map((line) => `  known: ${line}`),
    `processor time of a plan: half took no more than ${below(0.5)} ms, 95 in 100 ${below(0.95)} ms, 99 in 100 ${below(0.99)} ms; ${all.filter(({ planMs }) => planMs > LONGEST_PLAN_MS).length} over ${LONGEST_PLAN_MS / 1000} s`,
    ...byTime
      .slice(-SLOWEST_TOLD)
      .reverse()
      .map(
        ({ run, planMs, pieces, planes, cuts }) =>
          `  run ${run}: ${planMs} ms, ${pieces} lines and arcs, ${planes} planes, ${cuts ?? "no"} cuts`,
      ),
  ];
}

/** The kinds of the given lines (what stands before the colon) with the number of runs that have each, most first. */
function counted(linesOf: readonly (readonly string[])[]): readonly string[] {
  const counts = new Map<string, number>();
  for (const lines of linesOf) {
    for (const kind of new Set(lines.map((line) => line.split(":")[0] ?? line))) {
      counts.set(kind, (counts.get(kind) ?? 0) + 1);
    }
  }
  return [...counts]
    .sort(([a, m], [b, n]) => n - m || (a < b ? -1 : 1))
    .map(([kind, count]) => `${kind} (${count} ${count === 1 ? "run" : "runs"})`);
}
