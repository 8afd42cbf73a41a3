/**
 * Thin fins of waste that a flat plane leaves standing between itself and an older opening: the next plane breaks them
 * off, and they take wood of the moulding along.
 */
import type { Point, Region } from "../curve/index.ts";
import {
  isFlatKind,
  isInWood,
  type Pose,
  type Span,
  spansAlong,
  standingBeside,
  turnedBack,
  turnOf,
} from "../cutting/index.ts";
import { BESIDE_MM } from "../measure/index.ts";
import { along, type Bench } from "./bench.ts";
import { endsInPlace, type PlaneDraft } from "./draft-cut.ts";

export interface Fin {
  /** The side of the plane that it stands on. */
  readonly side: "left" | "right";
  readonly thickMm: number;
  /** A place in the opening on its other side. */
  readonly beyond: Point;
}

/** Waste that stands thinner than this is a fin, mm, from this height on, mm and times as high as it is thick (common practice, no source). */
const THIN_MM = 3;
/** Thinner than this it is a film that comes away with the shaving: gauging leaves as much between two cuts that touch, mm. A hair that is thicker stands, low as it may be. */
const FILM_MM = 0.2;
const HIGH_MM = 0.95;
const HIGH_RATIO = 2.9;

/** Heights at which a new wall is looked through, mm apart: a fin is met by two of them at least. */
const LEVEL_MM = 0.4;
/** The same where one was met. */
const FINE_LEVEL_MM = 0.2;
/** How far beyond a fin its opening is named, mm. */
const BEYOND_MM = 0.05;

/** The fin that a flat plane's cut leaves, null where it leaves none; what the section itself has so thin is no waste. */
export function finOfCut(bench: Bench, before: Region, after: Region, draft: PlaneDraft): Fin | null {
  if (!isFlatKind(draft.tool.plane.kind)) return null;
  for (const run of draft.runs) {
    const pose = run[run.length - 1] as Pose;
    const ends = endsInPlace(draft, pose);
    for (const side of ["left", "right"] as const) {
      const sign = side === "left" ? -1 : 1;
      const outside = standingBeside(after, ends[side], pose, sign);
      const inside = standingBeside(before, ends[side], pose, sign === 1 ? -1 : 1);
      for (const wall of sharedSpans(outside, inside)) {
        const fin = finBeside(bench, after, ends[side], pose, sign, wall);
        if (fin) return { side, ...fin };
      }
    }
  }
  return null;
}

function finBeside(
  bench: Bench,
  after: Region,
  end: Point,
  pose: Pose,
  sign: -1 | 1,
  [from, to]: Span,
): Omit<Fin, "side"> | null {
  if (to - from < HIGH_MM) return null;
  const turn = turnOf(pose[2]);
  const up = turnedBack(turn, { x: 0, y: 1 });
  const out = turnedBack(turn, { x: sign, y: 0 });
  const foot = along(end, out, BESIDE_MM);
  const thickAt = (heightMm: number): number | null => {
    const at = along(foot, up, heightMm);
    const [span] = spansAlong(after, at, out);
    if (!span) return null;
    // Looked at from a hair inside it.
    const thickMm = BESIDE_MM + span[1];
    if (thickMm >= THIN_MM) return null;
    return isInWood(bench.plannedRegion, along(at, out, span[1] / 2)) ? null : thickMm;
  };
  if (!isThinTwice(from, to, thickAt)) return null;
  let [highMm, thickMm] = [0, 0];
  for (let height = from + FINE_LEVEL_MM / 2; height < to; height += FINE_LEVEL_MM) {
    const thick = thickAt(height);
    highMm = thick === null ? 0 : highMm + FINE_LEVEL_MM;
    thickMm = thick === null ? 0 : Math.max(thickMm, thick);
    if (thickMm >= FILM_MM && highMm >= HIGH_MM && highMm >= thickMm * HIGH_RATIO) {
      const beyond = along(along(foot, up, height), out, (thick ?? 0) + BEYOND_MM);
      return { thickMm, beyond };
    }
  }
  return null;
}

function isThinTwice(from: number, to: number, thickAt: (heightMm: number) => number | null): boolean {
  let wasThin = false;
  for (let height = from + LEVEL_MM / 2; height < to; height += LEVEL_MM) {
    const isThin = thickAt(height) !== null;
    if (isThin && wasThin) return true;
    wasThin = isThin;
  }
  return false;
}

function sharedSpans(one: readonly Span[], other: readonly Span[]): Span[] {
  return one.flatMap(([a, b]) =>
    other.flatMap(([c, d]): Span[] =>
      Math.min(b, d) > Math.max(a, c) ? [[Math.max(a, c), Math.min(b, d)]] : [],
    ),
  );
}
