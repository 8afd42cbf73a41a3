/** What is committed for each section of the gallery: plan, strip of cuts and figures, made from the section alone. */
import { readFileSync } from "node:fs";
import { type Plan, type PlanCut, writePlan } from "mouldwright/cutting";
import type { Outcome } from "mouldwright/measure";
import { planSection } from "mouldwright/planning";
import { buildSection } from "mouldwright/section";
import { drawStrip, writeSvg } from "mouldwright/sheets";
import { readShelf, type Shelf } from "mouldwright/shelf";
import type { GalleryEntry } from "../gallery/entry.ts";

/** One folder for each section, named by its id. */
export const GALLERY_PLANS = new URL("../gallery/plans/", import.meta.url);

const SHELVES = new URL("../examples/shelves/", import.meta.url);

/** What the table shows of a plan; everything but its time. */
export interface GalleryFigures {
  readonly cuts: number;
  readonly settings: number;
  readonly way: string;
  /** What the hollows and rounds have to take, mm²: the rest went with square planes before. */
  readonly leftToCurvedMm2: number;
  readonly proudMm: number;
  readonly underMm: number;
  readonly curvedCuts: number;
  /** Curved cuts that the wood itself holds. */
  readonly seatsHeld: number;
  /** Cuts that run against a batten clamped on. */
  readonly battens: number;
  /** The rule of each uncut place. */
  readonly uncut: readonly string[];
  readonly minutes: number;
}

export interface GalleryFiles {
  readonly plan: Plan;
  /** Name in the section's folder → what stands in it. */
  readonly files: ReadonlyMap<string, string>;
}

/** Everything that stands in `gallery/plans/<id>/`. The same section gives the same bytes. */
export function filesOfGallery(entry: GalleryEntry): GalleryFiles {
  const plan = planOfGallery(entry);
  return {
    plan,
    files: new Map([
      ["plan.json", writePlan(plan)],
      ["strip.svg", writeSvg(drawStrip(plan, { unit: "mm" }))],
      ["figures.json", `${JSON.stringify(figuresOf(plan), null, 2)}\n`],
    ]),
  };
}

/** Plans one section; throws where it is refused. */
export function planOfGallery({ id, shelf, section }: GalleryEntry): Plan {
  const built = taken(id, buildSection(section));
  return taken(id, planSection({ section: built, shelf: shelfNamed(shelf) }));
}

export function readFigures(id: string): GalleryFigures {
  return JSON.parse(readFileSync(new URL(`${id}/figures.json`, GALLERY_PLANS), "utf8")) as GalleryFigures;
}

function figuresOf(plan: Plan): GalleryFigures {
  const curved = plan.cuts.filter(({ plane }) => plane.kind === "hollow" || plane.kind === "round");
  return {
    cuts: plan.cuts.length,
    settings: plan.cuts.at(-1)?.setting ?? 0,
    way: plan.way,
    leftToCurvedMm2: rounded(
      sumOf(curved, ({ takes }) => takes),
      1,
    ),
    proudMm: rounded(plan.finish.proud, 3),
    underMm: rounded(plan.finish.under, 3),
    curvedCuts: curved.length,
    seatsHeld: curved.filter(({ seat }) => seat !== null).length,
    battens: plan.cuts.filter(({ runsAgainst }) => runsAgainst === "batten").length,
    uncut: plan.uncut.map(({ rule }) => rule),
    minutes: Math.round(sumOf(plan.cuts, ({ minutes }) => minutes)),
  };
}

function sumOf(cuts: readonly PlanCut[], value: (cut: PlanCut) => number): number {
  return cuts.reduce((sum, cut) => sum + value(cut), 0);
}

function rounded(value: number, decimals: number): number {
  return Number(value.toFixed(decimals));
}

const shelves = new Map<string, Shelf>();

function shelfNamed(name: GalleryEntry["shelf"]): Shelf {
  const known = shelves.get(name);
  if (known) return known;
  const shelf = taken(name, readShelf(readFileSync(new URL(`${name}.json`, SHELVES), "utf8")));
  shelves.set(name, shelf);
  return shelf;
}

function taken<T>(name: string, outcome: Outcome<T>): T {
  if (outcome.ok) return outcome.value;
  throw new Error(`${name} ${outcome.trouble.where}: ${JSON.stringify(outcome.trouble)}`);
}
