/** The hints as this browser remembers them. Rooms say what was done; the strip shows what comes next. */
import { create } from "zustand";
import { useBench } from "../bench/job-on-bench.ts";
import { recallHere, rememberHere } from "../keeping/job-actions.ts";
import { useKeeping } from "../keeping/kept-jobs.ts";
import { FRESH_HINTS, type HintId, type HintState, hintStateOf, NO_HINTS, withDone } from "./hints.ts";

const REMEMBERED_AS = "hints";

export const useHints = create<HintState>()(() => NO_HINTS);

/** Shows the hints to whoever is here for the first time, and goes on where they were left. Called once. */
export function showHints(): () => void {
  void recallHere(REMEMBERED_AS).then((remembered) => {
    const state = hintStateOf(remembered);
    if (state !== null) useHints.setState(state, true);
    else if (useKeeping.getState().isFirstVisit) set(FRESH_HINTS);
  });
  const leaveKeeping = useKeeping.subscribe(({ isFirstVisit }, before) => {
    if (isFirstVisit && !before.isFirstVisit) set(FRESH_HINTS);
  });
  const leaveBench = useBench.subscribe((bench, before) => {
    const isChanged = bench.jobId === before.jobId && bench.job.section !== before.job.section;
    if (isChanged && bench.jobId !== "") hintDone("size");
  });
  return () => {
    leaveKeeping();
    leaveBench();
  };
}

/** The maker has done what a hint shows; nothing happens when none is shown. */
export function hintDone(id: HintId): void {
  const state = useHints.getState();
  const next = withDone(state, id);
  if (next !== state) set(next);
}

/** Put away for good. */
export function closeHints(): void {
  set({ ...useHints.getState(), isClosed: true });
}

function set(state: HintState): void {
  useHints.setState(state, true);
  void rememberHere(REMEMBERED_AS, state);
}
