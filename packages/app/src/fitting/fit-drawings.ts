/** What the maker has chosen to fit, drawn for the fit sheet: rod, run of cornice and frame; scribed ends at full size. */
import type { Job } from "mouldwright/job";
import { shareOut } from "mouldwright/making";
import { fine, type Outcome, type Trouble } from "mouldwright/measure";
import {
  type Drawing,
  drawCornice,
  drawFrame,
  drawRod,
  drawScribes,
  type FitDrawings,
} from "mouldwright/sheets";
import { hungRun, scribesOf, sharingOf } from "./cornice-answer.ts";
import { choicesOf, type FitChoices } from "./fit-choices.ts";
import { frameOf, frameRun, seasonsOf } from "./frame-answer.ts";

export interface SheetFit {
  readonly drawings: FitDrawings;
  /** Why something that was chosen is not on the sheet; the rest of it is. */
  readonly troubles: readonly Trouble[];
}

/** Whether the maker has said anything of a run of cornice, and of a frame: only that goes on paper. */
export function saysOf({ fit }: Pick<Job, "fit">): { readonly run: boolean; readonly frame: boolean } {
  return {
    run: fit?.run !== undefined || fit?.stick?.pieces === "cornice",
    frame: fit?.frame !== undefined || fit?.stick?.pieces === "frame",
  };
}

export function fitDrawingsOf(job: Job): SheetFit {
  const choices = choicesOf(job);
  const says = saysOf(job);
  const drawn = [
    ...(says.run ? [runDrawings(job, choices)] : []),
    ...(says.frame ? [frameDrawings(job, choices)] : []),
  ];
  return {
    drawings: {
      pictures: drawn.flatMap((one) => (one.ok ? one.value.pictures : [])),
      fullSize: drawn.flatMap((one) => (one.ok ? one.value.fullSize : [])),
    },
    troubles: drawn.flatMap((one) => (one.ok ? one.warnings : [one.trouble, ...(one.more ?? [])])),
  };
}

function runDrawings(job: Job, choices: FitChoices): Outcome<FitDrawings> {
  const unit = job.unit ?? "mm";
  const hung = hungRun(job, choices);
  if (!hung.ok) return hung;
  const scribes = scribesOf(hung.value);
  if (!scribes.ok) return scribes;
  const asked = { name: job.name, projectionMm: hung.value.projectionMm, scribes: scribes.value.ends };
  const rod = rodOf(job, scribes.value.run, choices);
  return fine(
    {
      pictures: [drawCornice(hung.value.answer, asked, { unit }), ...rod.drawings],
      fullSize: scribes.value.ends.length === 0 ? [] : [drawScribes(scribes.value.ends, job.name, { unit })],
    },
    rod.troubles,
  );
}

function frameDrawings(job: Job, choices: FitChoices): Outcome<FitDrawings> {
  const unit = job.unit ?? "mm";
  const answer = frameOf(choices);
  if (!answer.ok) return answer;
  const seasons = seasonsOf(choices, answer.value);
  if (!seasons.ok) return seasons;
  const { rebateMm, allowanceMm } = choices.frame;
  const rod = rodOf(job, frameRun(answer.value), choices);
  const picture = drawFrame(answer.value, { rebateMm, allowanceMm }, seasons.value, { unit });
  return fine({ pictures: [picture, ...rod.drawings], fullSize: [] }, rod.troubles);
}

/** The pieces marked along the sticks; where they find no room on them, that is said instead. */
function rodOf(
  job: Job,
  run: Parameters<typeof sharingOf>[0],
  choices: FitChoices,
): { readonly drawings: readonly Drawing[]; readonly troubles: readonly Trouble[] } {
  const shared = shareOut(sharingOf(run, choices));
  return shared.ok
    ? { drawings: [drawRod(shared.value, job.name, { unit: job.unit ?? "mm" })], troubles: [] }
    : { drawings: [], troubles: [shared.trouble, ...(shared.more ?? [])] };
}
