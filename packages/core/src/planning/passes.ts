/** Strokes: how many passes a plane makes at a cut. Common practice, no source; shavings may be changed by the maker. */
import { lengthMm, pointAt, type Region } from "../curve/index.ts";
import { isFlatKind, placedSole, spansAlong, turnedBack, turnOf } from "../cutting/index.ts";
import type { Bench } from "./bench.ts";
import type { PlaneDraft } from "./draft-cut.ts";

export interface Passes {
  readonly passes: number;
  readonly shavingMm: number;
  /** Greatest depth taken along the plane's axis, mm. */
  readonly depthMm: number;
}

/** Places looked at along a curved sole, and at least along a flat one. */
const PLACES = 9;
/** Apart on a flat sole, so that a strip of waste at one end of it is not passed over, mm. */
const PLACES_APART_MM = 0.4;
/** A last shaving thinner than this share of one is not taken: the one before is set a little heavier. */
const SHARE_OF_SHAVING = 1 / 20;

export function passesOf(bench: Bench, before: Region, draft: PlaneDraft, takesMm2: number): Passes {
  const curved = draft.tool.plane.kind === "hollow" || draft.tool.plane.kind === "round";
  // Square tools take waste with a heavy iron; curved ones and beaks are set finer, and follow their seat.
  const heavy = isFlatKind(draft.tool.plane.kind);
  const shavingMm = heavy ? bench.shavings.heavyMm : bench.shavings.ordinaryMm;
  const depthMm = depthTakenMm(before, draft);
  const byDepth = Math.ceil(depthMm / shavingMm - SHARE_OF_SHAVING) * (curved ? 1 : draft.runs.length);
  const byArea = Math.ceil(takesMm2 / (shavingMm * draft.tool.sole.widthMm) - SHARE_OF_SHAVING);
  const fine = draft.purpose === "shape" ? 1 : 0;
  return { passes: Math.max(1, byDepth, byArea) + fine, shavingMm, depthMm };
}

function depthTakenMm(before: Region, draft: PlaneDraft): number {
  let depthMm = 0;
  for (const run of draft.runs) {
    const stride = Math.max(1, Math.floor(run.length / 8));
    for (let i = 0; i < run.length; i += stride) {
      const pose = run[i];
      const up = turnedBack(turnOf(pose[2]), { x: 0, y: 1 });
      for (const piece of placedSole(draft.tool.sole.chain, pose).pieces) {
        const places =
          piece.kind === "line" ? Math.max(PLACES, Math.ceil(lengthMm(piece) / PLACES_APART_MM)) : PLACES;
        for (let k = 0; k < places; k++) {
          const spans = spansAlong(before, pointAt(piece, (k + 0.5) / places), up);
          depthMm = Math.max(
            depthMm,
            spans.reduce((sum, [from, to]) => sum + to - from, 0),
          );
        }
      }
    }
  }
  return depthMm;
}
