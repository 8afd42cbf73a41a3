import { useBench } from "../../bench/job-on-bench.ts";
import { useKeeping } from "../../keeping/kept-jobs.ts";
import { JobCard, LockedCard } from "./job-card.tsx";

/** Every job that is not thrown away, the one changed last first. */
export function JobList({ onNew }: { readonly onNew: () => void }) {
  const jobs = useKeeping(({ jobs }) => jobs);
  const isOpening = useKeeping(({ store }) => store === "opening");
  const onBench = useBench(({ jobId }) => jobId);
  const shown = jobs.filter(({ deletedAtMs }) => deletedAtMs === undefined);
  if (isOpening) return <p className="waiting">Looking for your jobs…</p>;
  if (shown.length === 0) {
    return (
      <section className="panel">
        <p>Here your jobs would lie, each with its picture and sizes.</p>
        <button type="button" className="button button-main" onClick={onNew}>
          Begin with a new one
        </button>
      </section>
    );
  }
  return (
    <ul className="job-list" aria-label="Your jobs">
      {shown.map((kept) =>
        kept.kind === "job" ? (
          <JobCard key={kept.jobId} kept={kept} isOnBench={kept.jobId === onBench} />
        ) : (
          <LockedCard key={kept.jobId} kept={kept} />
        ),
      )}
    </ul>
  );
}
