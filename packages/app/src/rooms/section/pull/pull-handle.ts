/**
 * What a pull does to the job. Always reckoned from the job as it stood when it was taken hold of, so that there and back
 * leaves it as it was. A part's own sizes follow; what comes after it moves along, and a fillet makes up the width.
 */
import { type Point, turnPoint } from "mouldwright/curve";
import type { Job } from "mouldwright/job";
import { type LaidPart, layParts, type PartSpec } from "mouldwright/section";
import { nameOfPart, partsOfJob, withPart } from "../chain/chain-edits.ts";
import type { PlacedPart } from "../chain/laid-chain.ts";
import { tidyMm } from "../chain/refit-part.ts";
import { bentTo, curveDraws, radiusThrough } from "./bend-part.ts";
import { curvePiece } from "./handles.ts";
import type { Pull, Pulled } from "./pull.ts";
import { bulgeTo, vertexTo } from "./pull-vertex.ts";
import { freeWays, reachingTo } from "./reach-end.ts";
import { type Draw, settledNumber, settledPoint } from "./settle.ts";
import type { ShelfRadius } from "./soles.ts";
import { sharedTo, turnDraws } from "./turn-share.ts";

export function pulledTo(pull: Pull, to: Point): Pulled {
  const { handle } = pull;
  if (pull.rule !== null && isBackHome(pull, to)) return { job: pull.job, says: "as it was" };
  switch (handle.kind) {
    case "start":
      return startTo(pull, to);
    case "end":
      return endTo(pull, to);
    case "curve":
      return curveTo(pull, to);
    case "turn":
      return turnTo(pull, to);
    case "vertex":
      return vertexTo(pull, to);
    case "bulge":
      return bulgeTo(pull, to);
  }
}

function isBackHome({ handle, rule }: Pull, to: Point): boolean {
  const awayMm = Math.hypot(to.x - handle.at.x, to.y - handle.at.y);
  return rule !== null && awayMm <= rule.withinMm / 2;
}

function startTo({ job, rule, length }: Pull, to: Point): Pulled {
  const { thicknessMm } = job.stick;
  const top: Draw<number> = { value: thicknessMm, says: "on the stick’s face" };
  const settled = rule === null ? { value: tidyMm(to.y), says: "" } : settledNumber(to.y, [top], rule);
  const heightMm = Math.max(0.1, Math.min(thicknessMm, tidyMm(settled.value)));
  const { startHeightMm: _, ...section } = job.section;
  const next = heightMm === thicknessMm ? section : { ...section, startHeightMm: heightMm };
  return { job: { ...job, section: next }, says: settled.says || `${length(heightMm)} up the gauge edge` };
}

function endTo(pull: Pull, to: Point): Pulled {
  const { job, placed, handle, rule, length } = pull;
  const place = placed[handle.part];
  const part = partsOfJob(job)[handle.part];
  if (place === undefined || part === undefined) return { job, says: "" };
  const isLast = handle.part === placed.length - 1;
  const wanted = isLast ? { x: place.to.x, y: to.y } : to;
  const settled =
    rule === null
      ? { value: wanted, says: "" }
      : settledPoint(
          wanted,
          (near) => radiusDraws(part, place, near, pull.radii),
          levelsBeside(pull),
          originOf(pull, part, place),
          rule,
        );
  const end = isLast ? { x: place.to.x, y: settled.value.y } : settled.value;
  const next = withEndAt(job, placed, handle.part, end);
  return { job: next, says: settled.says || sizesOf(part, place, end, length) };
}

/** From where its sizes are counted, so that they come out round: from its own start where they are its own. */
function originOf({ job, placed }: Pull, part: PartSpec, place: PlacedPart): Point {
  const ways = freeWays(part);
  const isRest = part.kind === "fillet" && part.widthMm === "rest";
  const parts = partsOfJob(job);
  const startBefore = (takes: (other: PartSpec) => PartSpec | null): Point | null => {
    const index = parts.findLastIndex((other, at) => at < place.index && takes(other) !== null);
    return placed[index]?.from ?? null;
  };
  const across = ways.across || isRest ? place.from : startBefore((other) => widened(other, 0));
  const rise = ways.rise ? place.from : startBefore((other) => raisedBy(other, 0));
  return { x: across?.x ?? 0, y: rise?.y ?? 0 };
}

/** Its own sizes; where one is not its own, how far it stands from the gauge edge or up from the back. */
function sizesOf(
  part: PartSpec,
  { from }: PlacedPart,
  end: Point,
  length: (lengthMm: number) => string,
): string {
  const ways = freeWays(part);
  const isRest = part.kind === "fillet" && part.widthMm === "rest";
  const across =
    ways.across || isRest ? `${length(end.x - from.x)} across` : `${length(end.x)} from the gauge edge`;
  const riseMm = end.y - from.y;
  const rise = ways.rise
    ? `${length(Math.abs(riseMm))} ${riseMm < 0 ? "down" : "up"}`
    : `${length(end.y)} up from the back`;
  return `${across}, ${rise}`;
}

/** The job with the end of one part moved. */
export function withEndAt(job: Job, placed: readonly PlacedPart[], index: number, end: Point): Job {
  const place = placed[index];
  const part = partsOfJob(job)[index];
  if (place === undefined || part === undefined) return job;
  const isTurned = place.turnedRad !== 0;
  const own = turnPoint({ x: end.x - place.from.x, y: end.y - place.from.y }, -place.turnedRad);
  const ways = freeWays(part);
  let next = withPart(job, index, reachingTo(part, own));
  const [acrossMm, riseMm] = [end.x - place.to.x, end.y - place.to.y];
  if (!isTurned && !ways.rise && riseMm !== 0) next = withRiseBefore(next, index, riseMm);
  const isRest = part.kind === "fillet" && part.widthMm === "rest";
  if (!isTurned && !ways.across && !isRest && acrossMm !== 0) next = withWidthBefore(next, index, acrossMm);
  return withWidthMadeUp(next, index, acrossMm);
}

/** A wall is shifted by the flat before it, a flat lowered by the wall before it. */
function withWidthBefore(job: Job, index: number, acrossMm: number): Job {
  return changedNearest(job, index - 1, -1, (part) => widened(part, acrossMm));
}

function withRiseBefore(job: Job, index: number, riseMm: number): Job {
  const raised = changedNearest(job, index - 1, -1, (part) => raisedBy(part, riseMm));
  if (raised !== job) return raised;
  const { thicknessMm } = job.stick;
  const heightMm = tidyMm((job.section.startHeightMm ?? thicknessMm) + riseMm);
  if (heightMm <= 0 || heightMm > thicknessMm) return job;
  return { ...job, section: { ...job.section, startHeightMm: heightMm } };
}

/** What the pulled part has gained across, a flat after it gives up, unless a fillet takes the rest there anyway. */
function withWidthMadeUp(job: Job, index: number, acrossMm: number): Job {
  const parts = partsOfJob(job);
  const isRestAfter = parts
    .slice(index + 1)
    .some((part) => part.kind === "fillet" && part.widthMm === "rest");
  if (acrossMm === 0 || isRestAfter) return job;
  return changedNearest(job, index + 1, 1, (part) => widened(part, -acrossMm));
}

function changedNearest(
  job: Job,
  from: number,
  step: 1 | -1,
  edit: (part: PartSpec) => PartSpec | null,
): Job {
  const parts = partsOfJob(job);
  for (let index = from; index >= 0 && index < parts.length; index += step) {
    const next = edit(parts[index] as PartSpec);
    if (next !== null) return withPart(job, index, next);
  }
  return job;
}

const LEAST_MM = 0.1;

function widened(part: PartSpec, byMm: number): PartSpec | null {
  const isTurned = part.kind !== "running arc" && (part.smooth === true || (part.leanDeg ?? 0) !== 0);
  if (isTurned) return null;
  if (part.kind === "fillet") {
    if (part.widthMm === "rest") return part;
    return part.widthMm + byMm >= LEAST_MM ? { ...part, widthMm: tidyMm(part.widthMm + byMm) } : null;
  }
  return part.kind === "bevel" && part.acrossMm + byMm >= LEAST_MM
    ? { ...part, acrossMm: tidyMm(part.acrossMm + byMm) }
    : null;
}

function raisedBy(part: PartSpec, byMm: number): PartSpec | null {
  if (part.kind !== "step" && part.kind !== "bevel") return null;
  if (part.smooth === true || (part.leanDeg ?? 0) !== 0) return null;
  const riseMm = tidyMm(part.riseMm + byMm);
  return Math.abs(riseMm) >= LEAST_MM && Math.sign(riseMm) === Math.sign(part.riseMm)
    ? { ...part, riseMm }
    : null;
}

function levelsBeside({ job, placed, handle }: Pull): readonly Draw<number>[] {
  const parts = partsOfJob(job);
  const levels = placed.flatMap((place): readonly Draw<number>[] =>
    Math.abs(place.index - handle.part) < 2 || place.index === handle.part
      ? []
      : [
          {
            value: place.to.y,
            says: `level with the end of the ${nameOfPart(parts[place.index] as PartSpec)}`,
          },
        ],
  );
  const first = placed[0];
  return first === undefined || handle.part === 0
    ? levels
    : [{ value: first.from.y, says: "level with the start" }, ...levels];
}

/** Ends near the one pulled at which the part's curves would come out in a radius on the shelf. */
function radiusDraws(
  part: PartSpec,
  place: PlacedPart,
  near: Point,
  radii: readonly ShelfRadius[],
): readonly Draw<Point>[] {
  if (!growsEvenly(part)) return [];
  const own = turnPoint({ x: near.x - place.from.x, y: near.y - place.from.y }, -place.turnedRad);
  const laid = layParts([{ ...plain(reachingTo(part, own)) }], { x: 0, y: 0 }, 0, "");
  if (!laid.ok) return [];
  const end = (laid.value[0] as LaidPart).pieces.at(-1)?.to ?? own;
  return arcsOf(laid.value[0] as LaidPart).flatMap(({ radiusMm, makes }) =>
    radii
      .filter((one) => one.makes === makes)
      .map((one): Draw<Point> => {
        const ratio = one.radiusMm / radiusMm;
        const at = turnPoint({ x: end.x * ratio, y: end.y * ratio }, place.turnedRad);
        return {
          value: { x: place.from.x + at.x, y: place.from.y + at.y },
          says: `${one.plane} on the shelf`,
        };
      }),
  );
}

/** Kinds whose radius grows evenly with their size. */
function growsEvenly(part: PartSpec): boolean {
  switch (part.kind) {
    case "bead":
    case "astragal":
    case "torus":
    case "low bead":
    case "cyma recta":
    case "cyma reversa":
    case "swept arc":
      return true;
    case "ovolo":
    case "cavetto":
      return part.radiusMm === undefined;
    case "scotia":
      return part.smallRadiusMm === undefined;
    case "reeds":
    case "flutes":
      return (part.gapMm ?? 0) === 0;
    default:
      return false;
  }
}

/** The part by itself, not turned. */
function plain(part: PartSpec): PartSpec {
  if (part.kind === "running arc") return part;
  const { smooth: _, leanDeg: __, ...rest } = part;
  return rest;
}

function arcsOf(
  laid: LaidPart,
): readonly { readonly radiusMm: number; readonly makes: "round" | "hollow" }[] {
  const seen = new Map<string, { readonly radiusMm: number; readonly makes: "round" | "hollow" }>();
  for (const piece of laid.pieces) {
    if (piece.kind !== "arc") continue;
    const radiusMm = radiusThrough(piece);
    const makes = piece.bulge < 0 ? "round" : "hollow";
    seen.set(`${makes} ${radiusMm.toFixed(4)}`, { radiusMm, makes });
  }
  return [...seen.values()];
}

function curveTo(pull: Pull, to: Point): Pulled {
  const { job, placed, handle, rule, length } = pull;
  const part = partsOfJob(job)[handle.part];
  const place = placed[handle.part];
  const drawn = part === undefined || place === undefined ? null : curvePiece(part, place.pieces);
  if (part === undefined || place === undefined || drawn === null) return { job, says: "" };
  const { value, says } = curveDraws({
    drawn,
    to,
    beside: { index: place.index, placed },
    radii: pull.radii,
    rule,
  });
  const next = withPart(job, handle.part, bentTo(part, place, drawn, value));
  return { job: next, says: says || `radius ${length(value)}` };
}

function turnTo(pull: Pull, to: Point): Pulled {
  const { job, placed, handle } = pull;
  const part = partsOfJob(job)[handle.part];
  const place = placed[handle.part];
  if (part === undefined || place === undefined) return { job, says: "" };
  const { value, says } = turnDraws({ part, place, to, radii: pull.radii, rule: pull.rule });
  const next = withPart(job, handle.part, sharedTo(part, place, value));
  return { job: next, says: says || `${Math.round(value * 100)} % before the turn` };
}
