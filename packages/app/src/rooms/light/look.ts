/** How the moulding is looked at: where the lamp stands and how it hangs, as the job keeps it. */
import type { Job } from "mouldwright/job";
import { DRAWING_LAMP, type Hanging, type Lamp } from "mouldwright/light";
import { springToldBy } from "mouldwright/making";
import type { Section } from "mouldwright/section";

export interface LampPreset {
  readonly name: string;
  readonly heightDeg: number;
  readonly directionDeg: number;
}

/** The drawing board's convention first; the others as rooms have them, common practice. */
export const LAMP_PRESETS: readonly LampPreset[] = [
  { name: "Drawing 45°", heightDeg: DRAWING_LAMP.heightDeg, directionDeg: DRAWING_LAMP.directionDeg },
  { name: "Ceiling", heightDeg: 70, directionDeg: 0 },
  { name: "Window", heightDeg: 20, directionDeg: 60 },
  { name: "Candle", heightDeg: -30, directionDeg: 10 },
];

/** A lamp may be set as far as this here: beyond, it only grazes the wall, degrees. */
export const LAMP_RANGE_DEG = 85;

export function lampOf(job: Pick<Job, "light">): Lamp {
  return job.light?.lamp ?? DRAWING_LAMP;
}

/** Null where the job says nothing: the section's own bevels then say how it leans. */
export function hangingOf(job: Pick<Job, "light">): Hanging | null {
  return job.light?.hanging ?? null;
}

export function isPreset(lamp: Lamp, { heightDeg, directionDeg }: LampPreset): boolean {
  return lamp.heightDeg === heightDeg && lamp.directionDeg === directionDeg;
}

/** The drawing board's lamp is what a job has that says nothing. */
export function withLamp(job: Job, lamp: Lamp): Job {
  const { lamp: _, ...others } = job.light ?? {};
  const isUsual =
    isPreset(lamp, { name: "", ...DRAWING_LAMP }) && lamp.ambientRatio === DRAWING_LAMP.ambientRatio;
  return { ...job, light: isUsual ? others : { ...others, lamp } };
}

export function withHanging(job: Job, hanging: Hanging | null): Job {
  const { hanging: _, ...others } = job.light ?? {};
  return { ...job, light: hanging === null ? others : { ...others, hanging } };
}

/** How the section hangs: as the job says, else level with the gauge edge up and leaning as its bevels tell. */
export function hangingFor(section: Section, hanging: Hanging | null): Hanging {
  return (
    hanging ?? { run: "level", firstEdge: "gauge edge", springFromWallDeg: springOf(section, "gauge edge") }
  );
}

/** What the section's bevels say of its lean when this edge is up: the other one is at the wall. */
export function springOf(section: Section, firstEdge: Hanging["firstEdge"]): number {
  const wallEdge = firstEdge === "gauge edge" ? "far edge" : "gauge edge";
  return springToldBy(section, wallEdge).springFromWallDeg;
}
