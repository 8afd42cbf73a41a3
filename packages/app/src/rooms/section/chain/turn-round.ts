/** A section the other way round: what stood at the gauge edge stands at the far edge. */
import { circleOf, verticesOf } from "mouldwright/curve";
import { type Job, sectionOfJob } from "mouldwright/job";
import { toDeg } from "mouldwright/measure";
import { type BackSpec, mirrorSection, type PartSpec } from "mouldwright/section";
import { partsOfJob, withParts } from "./chain-edits.ts";
import type { PlacedPart } from "./laid-chain.ts";
import { tidyDeg, tidyMm } from "./refit-part.ts";

/** The very same job where its section cannot be made: there is nothing to turn round. */
export function turnedRound(job: Job, placed: readonly PlacedPart[]): Job {
  if (job.section.parts === undefined) return pathTurned(job);
  const parts = partsOfJob(job);
  const last = placed.at(-1);
  if (last === undefined || placed.length !== parts.length) return job;
  const turned = parts.map((part, index) => partTurned(part, placed[index] as PlacedPart)).reverse();
  const { startHeightMm: _, back, ...section } = job.section;
  const heightMm = tidyMm(last.to.y);
  return withParts(
    {
      ...job,
      section: {
        ...section,
        ...(heightMm === job.stick.thicknessMm ? {} : { startHeightMm: heightMm }),
        ...(back === undefined ? {} : { back: back.map(backTurned) }),
      },
    },
    turned,
  );
}

function backTurned(back: BackSpec): BackSpec {
  return { ...back, edge: back.edge === "gauge" ? "far" : "gauge" };
}

function pathTurned(job: Job): Job {
  const section = sectionOfJob(job);
  if (!section.ok) return job;
  const path = verticesOf({ pieces: mirrorSection(section.value).outline.pieces }).map((vertex) => [
    ...vertex,
  ]);
  return { ...job, section: { ...job.section, path } };
}

/** Walked the other way and mirrored: every direction changes its sign, and first and last change places. */
function partTurned(part: PartSpec, place: PlacedPart): PartSpec {
  if (part.kind === "running arc") return runningTurned(part, place);
  const turned = sizesTurned(part);
  const { smooth: _, leanDeg: __, ...level } = turned;
  const ownDeg = part.kind === "swept arc" ? (part.bend === "round" ? -part.sweepDeg : part.sweepDeg) : 0;
  const leanDeg = tidyDeg(normal(-(toDeg(place.turnedRad) + ownDeg)));
  return leanDeg === 0 ? level : { ...level, leanDeg };
}

function sizesTurned(part: Exclude<PartSpec, { kind: "running arc" }>): typeof part {
  switch (part.kind) {
    case "step":
    case "bevel":
    case "ovolo":
    case "cavetto":
    case "cyma recta":
    case "cyma reversa":
    case "arc":
      return { ...part, riseMm: -part.riseMm };
    case "chamfer":
      return { ...part, riseMm: -(part.riseMm ?? -part.acrossMm) };
    case "quirk":
      return part.walls === undefined || part.walls === "both"
        ? part
        : { ...part, walls: part.walls === "first" ? "last" : "first" };
    case "vee quirk":
      return part.upright === undefined || part.upright === "neither"
        ? part
        : { ...part, upright: part.upright === "first" ? "last" : "first" };
    case "scotia":
      return { ...part, small: part.small === "last" ? "first" : "last" };
    case "free curve":
      return freeTurned(part);
    default:
      return part;
  }
}

/** Once turned round it would have to run on from what comes after: it is held by its radius instead. */
function runningTurned(part: Extract<PartSpec, { kind: "running arc" }>, place: PlacedPart): PartSpec {
  const named = part.name === undefined ? {} : { name: part.name };
  const [piece] = place.pieces;
  const sizes = { acrossMm: part.acrossMm, riseMm: -part.riseMm };
  if (piece?.kind !== "arc") return { kind: "bevel", ...named, ...sizes };
  const { radiusMm } = circleOf(piece);
  return { kind: "arc", ...named, ...sizes, radiusMm, bend: piece.bulge < 0 ? "round" : "hollow" };
}

function freeTurned(part: Extract<PartSpec, { kind: "free curve" }>): typeof part {
  const end = part.beziers.at(-1)?.to ?? [0, 0];
  const moved = ([x, y]: readonly [number, number]): readonly [number, number] => [end[0] - x, y - end[1]];
  const starts = part.beziers.map((_, index) => part.beziers[index - 1]?.to ?? ([0, 0] as const));
  const beziers = part.beziers
    .map(({ control1, control2 }, index) => ({
      control1: moved(control2),
      control2: moved(control1),
      to: moved(starts[index] ?? [0, 0]),
    }))
    .reverse();
  return { ...part, beziers };
}

function normal(angleDeg: number): number {
  const turned = ((((angleDeg + 180) % 360) + 360) % 360) - 180;
  return turned + 0;
}
