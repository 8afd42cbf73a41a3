/** In which order the parts of a built-up section come together, and on how wide a face. */
import { areaMm2 } from "../../curve/index.ts";
import { DRAWING_NOISE_MM } from "../../measure/index.ts";
import { type PartOutline, ringOf } from "./part-outline.ts";

export interface GluingStep {
  /** Number of the part, from 1, that is added. */
  readonly part: number;
  /** Parts already there that it touches; none for the first. */
  readonly onto: readonly number[];
  /** Width of the faces that meet, together. */
  readonly faceMm: number;
  readonly hold: "first" | "glue and clamp" | "glue and pin";
}

/**
 * The first part is the one with most of the back, for the others are clamped to it from the front; then always the
 * one with the widest face on what is there. A narrow face is pinned as well: clamps slide on it.
 */
export function gluingOrder(parts: readonly PartOutline[], leastGluedMm: number): GluingStep[] {
  const backMm = Math.min(...parts.flatMap((part) => part.map(({ piece }) => piece.from.y)));
  const onBack = parts.map((part) => lengthOnBack(part, backMm));
  const first = best(
    parts.map((_, index) => index),
    (index) => [onBack[index] ?? 0, areaMm2(ringOf(parts[index] as PartOutline))],
  );
  const steps: GluingStep[] = [{ part: first + 1, onto: [], faceMm: 0, hold: "first" }];
  const there = [first];
  while (there.length < parts.length) {
    const left = parts.map((_, index) => index).filter((index) => !there.includes(index));
    const faceOf = (index: number) =>
      there.map((other) => ({
        other,
        mm: sharedFaceMm(parts[index] as PartOutline, parts[other] as PartOutline),
      }));
    const next = best(left, (index) => [faceOf(index).reduce((sum, { mm }) => sum + mm, 0)]);
    const faces = faceOf(next).filter(({ mm }) => mm > DRAWING_NOISE_MM);
    const faceMm = faces.reduce((sum, { mm }) => sum + mm, 0);
    steps.push({
      part: next + 1,
      onto: faces.map(({ other }) => other + 1).sort((a, b) => a - b),
      faceMm,
      hold: faceMm >= leastGluedMm ? "glue and clamp" : "glue and pin",
    });
    there.push(next);
  }
  return steps;
}

/** The index with the greatest scores, compared in order; the earlier of equals. */
function best(indices: readonly number[], scores: (index: number) => readonly number[]): number {
  return indices.reduce((a, b) => {
    const [sa, sb] = [scores(a), scores(b)];
    const differs = sa.findIndex((score, k) => Math.abs(score - (sb[k] ?? 0)) > DRAWING_NOISE_MM);
    return differs >= 0 && (sb[differs] ?? 0) > (sa[differs] ?? 0) ? b : a;
  });
}

function lengthOnBack(part: PartOutline, backMm: number): number {
  return part
    .filter(({ piece }) => piece.kind === "line" && piece.from.y === backMm && piece.to.y === backMm)
    .reduce((sum, { piece }) => sum + Math.abs(piece.to.x - piece.from.x), 0);
}

/** Joint faces are level or upright: the stretch that two of them have in common. */
export function sharedFaceMm(a: PartOutline, b: PartOutline): number {
  let shared = 0;
  for (const { piece: p, origin } of a) {
    if (origin !== "joint") continue;
    for (const { piece: q, origin: other } of b) {
      if (other !== "joint") continue;
      if (isOn(p.from.x, p.to.x, q.from.x, q.to.x)) {
        shared += overlap(p.from.y, p.to.y, q.from.y, q.to.y);
      } else if (isOn(p.from.y, p.to.y, q.from.y, q.to.y)) {
        shared += overlap(p.from.x, p.to.x, q.from.x, q.to.x);
      }
    }
  }
  return shared;
}

function isOn(...places: readonly number[]): boolean {
  return Math.max(...places) - Math.min(...places) <= DRAWING_NOISE_MM;
}

function overlap(a: number, b: number, c: number, d: number): number {
  return Math.max(0, Math.min(Math.max(a, b), Math.max(c, d)) - Math.max(Math.min(a, b), Math.min(c, d)));
}
