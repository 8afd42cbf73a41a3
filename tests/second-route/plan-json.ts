/** The plan file as any program would read it: only what the format promises, nothing of the program's own types. */

export type Xy = readonly [number, number];
export type BulgedVertex = readonly [number, number] | readonly [number, number, number];
export type PoseXyt = readonly [number, number, number];

export interface PlaneJson {
  readonly id: string;
  readonly kind: string;
  readonly hand?: string;
  readonly radius?: number;
  readonly width?: number;
  readonly widths?: readonly number[];
  readonly nose?: number;
  readonly slope?: number;
  readonly reach?: number;
  readonly wall?: number;
  readonly fence?: number;
  readonly depth?: number;
  readonly shoulder?: { readonly width: number; readonly height: number };
  readonly cutsWall?: string;
}

export interface CutJson {
  readonly number: number;
  readonly purpose: string;
  readonly plane: PlaneJson;
  readonly cant: number;
  readonly sole?: readonly BulgedVertex[];
  readonly runs?: readonly (readonly PoseXyt[])[];
  readonly line?: readonly [Xy, Xy];
  readonly after: readonly (readonly BulgedVertex[])[];
  readonly takes: number;
  readonly wall: readonly [number, number];
  readonly seat: { readonly lift: number; readonly shift: number } | null;
  readonly runsAgainst: string | null;
  readonly fence?: number;
  readonly setting: number;
  readonly says: string;
}

export interface MarkJson {
  readonly id: string;
  readonly before: number;
  readonly kind: string;
  readonly at: Xy;
  readonly from: string;
  readonly distance: number;
  readonly fromGaugeEdge: number;
  readonly error: number;
}

export interface UncutJson {
  readonly from: Xy;
  readonly to: Xy;
  readonly left: number;
  readonly rule: string;
  readonly why: string;
  readonly try: string;
}

export interface PlanJson {
  readonly format: string;
  readonly version: number;
  readonly unit: string;
  readonly tolerance: number;
  /** On which side of the section the gauge edge lies; the format puts it on the left, at the least x. */
  readonly gaugeEdge?: "left" | "right";
  readonly shelf: { readonly planes: readonly PlaneJson[] };
  readonly stick: readonly BulgedVertex[];
  readonly section: readonly BulgedVertex[];
  readonly planned: readonly BulgedVertex[];
  readonly marks: readonly MarkJson[];
  readonly cuts: readonly CutJson[];
  readonly finish: { readonly proud: number; readonly under: number; readonly rms: number };
  readonly uncut: readonly UncutJson[];
}

const KEYS: readonly (keyof PlanJson)[] = [
  "format",
  "version",
  "unit",
  "tolerance",
  "shelf",
  "stick",
  "section",
  "planned",
  "marks",
  "cuts",
  "finish",
  "uncut",
];

const CUT_KEYS: readonly (keyof CutJson)[] = [
  "number",
  "purpose",
  "plane",
  "cant",
  "after",
  "takes",
  "wall",
  "seat",
  "runsAgainst",
  "setting",
];

/** Keys that the format says are always present and that this plan lacks, as paths. */
export function missingKeys(json: unknown): readonly string[] {
  if (typeof json !== "object" || json === null) return ["the plan is no object"];
  const missing: string[] = KEYS.filter((key) => !(key in json));
  if (missing.length > 0) return missing;
  (json as PlanJson).cuts.forEach((cut, i) => {
    for (const key of CUT_KEYS) if (!(key in cut)) missing.push(`cuts[${i}].${key}`);
    const isSawn = cut.plane?.kind === "saw";
    for (const key of isSawn ? (["line"] as const) : (["sole", "runs"] as const)) {
      if (cut[key] === undefined) missing.push(`cuts[${i}].${key}`);
    }
  });
  return missing;
}

/** True when every number anywhere in the file is finite (JSON writes NaN and infinity as null). */
export function nullNumbers(json: unknown, path = ""): readonly string[] {
  if (json === null) return /\.(seat|runsAgainst)$/.test(path) ? [] : [path];
  if (Array.isArray(json)) return json.flatMap((value, i) => nullNumbers(value, `${path}[${i}]`));
  if (typeof json === "object")
    return Object.entries(json).flatMap(([key, value]) => nullNumbers(value, `${path}.${key}`));
  return typeof json === "number" && !Number.isFinite(json) ? [path] : [];
}
