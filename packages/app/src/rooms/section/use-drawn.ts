/**
 * The section of the job on show, and what stands against it. While it is pulled only its outline is made, which takes a
 * moment; a job that makes no section keeps the last good drawing, so that nothing is lost from sight.
 */
import { chainOfJob, drawnSectionOfJob, type Job, shelfOfJob } from "mouldwright/job";
import type { Outcome, Trouble } from "mouldwright/measure";
import { inspectSection, type Section } from "mouldwright/section";
import type { Shelf } from "mouldwright/shelf";
import { useMemo, useState } from "react";
import { useBench, useShownJob } from "../../bench/job-on-bench.ts";
import { partsOfJob, withParts } from "./chain/chain-edits.ts";
import { type PlacedPart, placedParts } from "./chain/laid-chain.ts";
import { piecesOfPath } from "./chain/path-edits.ts";

export interface Drawn {
  readonly job: Job;
  readonly shelf: Shelf | null;
  /** What is shown: the section of the job, or the last good one. */
  readonly section: Section | null;
  /** The job that the shown section is of. */
  readonly of: Job;
  /** Whether the shown section is an earlier one. */
  readonly isEarlier: boolean;
  /** The parts as they would stand, also where no section can be made of them; a path's pieces one by one. */
  readonly placed: readonly PlacedPart[];
  readonly troubles: readonly Trouble[];
  readonly warnings: readonly Trouble[];
}

interface Good {
  readonly jobId: string;
  readonly section: Section;
  readonly of: Job;
}

export function useDrawn(): Drawn {
  const job = useShownJob();
  const jobId = useBench((bench) => bench.jobId);
  const isPulled = useBench((bench) => bench.draft !== null);
  const shelf = useShelf(job);
  const drawn = useMemo(() => outlineOf(job, shelf), [job, shelf]);
  const inspected = useMemo(() => (isPulled ? null : inspectionOf(drawn)), [drawn, isPulled]);
  const placed = useMemo(() => placedOf(job, shelf), [job, shelf]);
  const [good, setGood] = useState<Good | null>(null);
  const troubles = drawn.ok ? (inspected?.refusals ?? NONE) : [drawn.trouble, ...(drawn.more ?? [])];
  const isGood = drawn.ok && troubles.length === 0;
  if (isGood && !isPulled && good?.of !== job) setGood({ jobId, section: drawn.value, of: job });
  const kept = good !== null && good.jobId === jobId ? good : null;
  const shown = isGood ? { section: drawn.value, of: job } : kept;
  return {
    job,
    shelf,
    section: shown?.section ?? (drawn.ok ? drawn.value : null),
    of: shown?.of ?? job,
    isEarlier: !isGood && kept !== null,
    placed,
    troubles,
    warnings: inspected?.warnings ?? NONE,
  };
}

const NONE: readonly Trouble[] = [];

function useShelf({ shelf }: Job): Shelf | null {
  return useMemo(() => {
    const read = shelfOfJob({ ...BARE_JOB, shelf });
    return read.ok ? read.value : null;
  }, [shelf]);
}

const BARE_JOB: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "",
  section: {},
  stick: { widthMm: 1, thicknessMm: 1 },
};

function outlineOf(job: Job, shelf: Shelf | null): Outcome<Section> {
  return drawnSectionOfJob(job, shelf === null ? {} : { shelf });
}

function inspectionOf(drawn: Outcome<Section>): ReturnType<typeof inspectSection> | null {
  return drawn.ok ? inspectSection(drawn.value) : null;
}

function placedOf(job: Job, shelf: Shelf | null): readonly PlacedPart[] {
  if (job.section.parts === undefined) {
    return piecesOfPath(job).map((piece, index) => ({
      index,
      pieces: [piece],
      from: piece.from,
      to: piece.to,
      turnedRad: 0,
    }));
  }
  const inputs = shelf === null ? {} : { shelf };
  const chain = chainOfJob(job, inputs);
  if (chain.ok) return placedParts(chain.value);
  // Where nothing is left for the fillet that takes the rest, the others still have their places.
  const without = chainOfJob(withRestNarrow(job), inputs);
  return without.ok ? placedParts(without.value) : [];
}

const NARROW_MM = 0.5;

function withRestNarrow(job: Job): Job {
  const parts = partsOfJob(job).map((part) =>
    part.kind === "fillet" && part.widthMm === "rest" ? { ...part, widthMm: NARROW_MM } : part,
  );
  return withParts(job, parts);
}
