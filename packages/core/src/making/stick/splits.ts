/** The search for the split with least wood. */
import { areaMm2 } from "../../curve/index.ts";
import { exceedsMm, SAME_SCORE } from "../../measure/index.ts";
import { inspectSection, type Section } from "../../section/index.ts";
import type { BuiltUpLimits } from "./defaults.ts";
import { HIDING_PLACES, type Joint, type JointPlace, jointPlaces, partings } from "./joints.ts";
import { type PartOutline, type PartSize, partSection, ringOf, sizeOf, traced } from "./part-outline.ts";
import type { StickAllowances } from "./types.ts";

export interface Split {
  readonly parts: readonly PartOutline[];
  readonly joints: readonly Joint[];
  readonly woodMm2: number;
}

export interface SplitQuestion {
  readonly timber: PartSize;
  readonly allowances: StickAllowances;
  readonly limits: BuiltUpLimits;
  readonly mostParts: number;
}

/** Partings made before the search counts as unfinished. */
const MOST_PARTINGS = 20_000;

/** How many splits are handed up: the best and the runner-up, with some to spare for those that are the same twice. */
const KEPT = 4;

/** The two least splits that differ, best first. */
export function leastWoodSplits(
  section: Section,
  question: SplitQuestion,
): { readonly splits: readonly Split[]; readonly isComplete: boolean } {
  const search = new SplitSearch(section, question);
  const splits = search.least(traced(section), question.mostParts).slice(0, 2);
  return { splits, isComplete: search.partingsMade < MOST_PARTINGS };
}

/** How a part is had from the timber: lying, standing on its edge, or not at all. */
export function standingOf({ widthMm, thicknessMm }: PartSize, timber: PartSize): "back" | "edge" | null {
  const fits = (across: number, up: number) =>
    !exceedsMm(across, timber.widthMm) && !exceedsMm(up, timber.thicknessMm);
  if (fits(widthMm, thicknessMm)) return "back";
  return fits(thicknessMm, widthMm) ? "edge" : null;
}

class SplitSearch {
  partingsMade = 0;
  private readonly known = new Map<string, readonly Split[]>();
  private readonly places: readonly JointPlace[];
  private readonly section: Section;
  private readonly question: SplitQuestion;

  constructor(section: Section, question: SplitQuestion) {
    this.section = section;
    this.question = question;
    this.places = jointPlaces(section);
  }

  /** Least splits of an outline into so many parts or fewer, best first; none if there is no way. */
  least(outline: PartOutline, mostParts: number): readonly Split[] {
    const size = sizeOf(outline);
    if (Math.min(size.widthMm, size.thicknessMm) < this.question.limits.leastPartMm) return [];
    if (standingOf(size, this.question.timber) !== null) return this.whole(outline, size);
    if (mostParts < 2) return [];
    const key = `${mostParts}:${keyOf(outline)}`;
    const before = this.known.get(key);
    if (before !== undefined) return before;
    const found: Split[] = [];
    for (const { joint, parts } of partings(outline, this.places, this.question.limits)) {
      if (this.partingsMade >= MOST_PARTINGS) break;
      this.partingsMade++;
      const [first, second] = parts;
      for (const a of this.least(first, mostParts - 1)) {
        for (const b of this.least(second, mostParts - a.parts.length)) {
          found.push({
            parts: [...a.parts, ...b.parts],
            joints: [joint, ...a.joints, ...b.joints],
            woodMm2: a.woodMm2 + b.woodMm2,
          });
        }
      }
    }
    const kept = differing(found.sort(byWood));
    this.known.set(key, kept);
    return kept;
  }

  private whole(outline: PartOutline, size: PartSize): readonly Split[] {
    const section = partSection(this.section, outline, this.section.name);
    // A part that is square all round needs no moulding: the only thing said against it that is no hindrance.
    if (inspectSection(section).refusals.some(({ code }) => code !== "section-not-worked")) return [];
    const { sawnWidthMm, sawnThicknessMm } = this.question.allowances;
    const woodMm2 = (size.widthMm + sawnWidthMm) * (size.thicknessMm + sawnThicknessMm);
    return [{ parts: [outline], joints: [], woodMm2 }];
  }
}

function byWood(a: Split, b: Split): number {
  if (Math.abs(a.woodMm2 - b.woodMm2) > SAME_SCORE) return a.woodMm2 - b.woodMm2;
  return a.parts.length - b.parts.length || hiddenness(a) - hiddenness(b);
}

/** The lower, the better hidden. */
function hiddenness({ joints }: Split): number {
  return joints.reduce((sum, { hiddenBy }) => sum + HIDING_PLACES.indexOf(hiddenBy), 0);
}

/** The same parts come about by different orders of parting: each once, the first `KEPT`. */
function differing(sorted: readonly Split[]): readonly Split[] {
  const seen = new Set<string>();
  const kept: Split[] = [];
  for (const split of sorted) {
    const key = split.parts.map(keyOf).sort().join("|");
    if (seen.has(key)) continue;
    seen.add(key);
    kept.push(split);
    if (kept.length === KEPT) break;
  }
  return kept;
}

/** An outline by its area and its corners in order, from the lowest one on the left. */
function keyOf(outline: PartOutline): string {
  const points = outline.map(({ piece }) => `${piece.from.x.toFixed(6)},${piece.from.y.toFixed(6)}`).sort();
  return `${areaMm2(ringOf(outline)).toFixed(6)};${points.join(" ")}`;
}
