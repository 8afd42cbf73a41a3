/** The measured figures of README.md, from the stored result of the bench. */
import type { BenchResult, Figure } from "../bench/results.ts";
import { exampleNames } from "./example-files.ts";

const MEASURED = /(<!-- measured -->\n)[\s\S]*?(<!-- end of measured -->)/;

/** The same text with the figures of this result between its two marks. */
export function withMeasured(markdown: string, result: BenchResult): string {
  if (!MEASURED.test(markdown)) throw new Error("README.md has no place for what was measured");
  return markdown.replace(MEASURED, (_, start: string, end: string) => `${start}${measured(result)}\n${end}`);
}

function measured({ at, machine, node, yardstickMs, figures }: BenchResult): string {
  const named = new Map(figures.map((figure) => [figure.name, figure]));
  const ms = (name: string): string => millisecondsOf(named.get(name));
  const cores = machine.split(",")[0];
  const day = at.slice(0, 10);
  const replanned = figures.filter(({ name }) => name.startsWith("re-plan "));
  const grown = figures.filter(({ name }) => name.startsWith("grow "));
  return [
    `${day}, a shared machine of the class "${cores}", Node ${node.replace(/^v/, "")}; the yardstick took ${yardstickMs.toFixed(0)} ms. Medians, in milliseconds.`,
    "",
    "| example | plan | in yardsticks | re-cut | second route, times the re-cut |",
    "|---|---:|---:|---:|---:|",
    ...exampleNames().map(
      (name) =>
        `| ${name} | ${ms(`plan ${name}`)} | ${named.get(`plan ${name}`)?.yardsticks.toFixed(1) ?? ""} | ${ms(`re-cut ${name}`)} | ${timesOf(named, name)} |`,
    ),
    "",
    "| one vertex moved by 0.1 mm, planned again as while dragging (`quick`) | times | median | 95 in 100 below |",
    "|---|---:|---:|---:|",
    ...replanned.map(
      ({ name, runs, medianMs, p95Ms }) =>
        `| ${name.replace("re-plan ", "")} | ${runs} | ${medianMs.toFixed(0)} | ${p95Ms.toFixed(0)} |`,
    ),
    "",
    "| beads and coves in a row | plan | most memory, MB |",
    "|---|---:|---:|",
    ...grown.map(
      (figure) =>
        `| ${figure.name.replace("grow ", "")} | ${millisecondsOf(figure)} | ${figure.peakMb?.toFixed(0) ?? ""} |`,
    ),
  ].join("\n");
}

function millisecondsOf(figure: Figure | undefined): string {
  return figure === undefined ? "" : figure.medianMs.toFixed(0);
}

function timesOf(named: ReadonlyMap<string, Figure>, name: string): string {
  const second = named.get(`second route ${name}`);
  const recut = named.get(`re-cut ${name}`);
  return second === undefined || recut === undefined ? "" : (second.medianMs / recut.medianMs).toFixed(0);
}
