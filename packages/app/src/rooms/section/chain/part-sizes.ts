/**
 * What a maker may set on each kind of part, in the order it is asked for: the words of each size, its bounds, and how
 * it stands in the part. The bounds are those of the job file; what no part can have together is the core's to say.
 */
import type { PartKind, PartSpec } from "mouldwright/section";

/** The largest size of a section that is moulded by hand, mm. */
const LARGEST_MM = 300;
const LEAST_MM = 0.01;
const LARGEST_RADIUS_MM = 1000;

export type PartSize =
  | {
      readonly kind: "length";
      readonly key: string;
      readonly words: string;
      readonly leastMm: number;
      readonly mostMm: number;
      readonly isSigned?: boolean;
      /** What stands for "not given": the field may be emptied to this. */
      readonly absent?: string;
    }
  | {
      readonly kind: "angle";
      readonly key: string;
      readonly words: string;
      readonly leastDeg: number;
      readonly mostDeg: number;
      readonly absentDeg?: number;
    }
  | {
      readonly kind: "count";
      readonly key: string;
      readonly words: string;
      readonly most: number;
      readonly absent?: string;
    }
  | { readonly kind: "share"; readonly key: string; readonly words: string; readonly absentRatio: number }
  | {
      readonly kind: "choice";
      readonly key: string;
      readonly words: string;
      readonly absent: string;
      readonly options: readonly { readonly value: string; readonly words: string }[];
    };

const length = (key: string, words: string, absent?: string): PartSize => ({
  kind: "length",
  key,
  words,
  leastMm: LEAST_MM,
  mostMm: LARGEST_MM,
  ...(absent === undefined ? {} : { absent }),
});
const orNone = (key: string, words: string): PartSize => ({
  kind: "length",
  key,
  words,
  leastMm: 0,
  mostMm: LARGEST_MM,
  absent: "none",
});
const radius = (key: string, words: string, absent?: string): PartSize => ({
  kind: "length",
  key,
  words,
  leastMm: LEAST_MM,
  mostMm: LARGEST_RADIUS_MM,
  ...(absent === undefined ? {} : { absent }),
});
const rise: PartSize = {
  kind: "length",
  key: "riseMm",
  words: "Rise (− falls)",
  leastMm: -LARGEST_MM,
  mostMm: LARGEST_MM,
  isSigned: true,
};
const across = length("acrossMm", "Across");
const width = length("widthMm", "Width");
const sweep = (mostDeg: number, absentDeg?: number): PartSize => ({
  kind: "angle",
  key: "sweepDeg",
  words: "Part of the circle",
  leastDeg: 1,
  mostDeg,
  ...(absentDeg === undefined ? {} : { absentDeg }),
});
const bend: PartSize = {
  kind: "choice",
  key: "bend",
  words: "Shape",
  absent: "round",
  options: [
    { value: "round", words: "round" },
    { value: "hollow", words: "hollow" },
  ],
};
const row: readonly PartSize[] = [
  { kind: "count", key: "count", words: "How many", most: 100 },
  length("widthMm", "Width of each"),
  sweep(180, 60),
  orNone("gapMm", "Flat between"),
];
const quarter: readonly PartSize[] = [
  across,
  rise,
  radius("radiusMm", "Radius", "as constructed"),
  {
    kind: "choice",
    key: "construction",
    words: "Drawn",
    absent: "tangent",
    options: [
      { value: "tangent", words: "along the longer side" },
      { value: "longer side", words: "with it as radius" },
    ],
  },
];
const cyma: readonly PartSize[] = [
  across,
  rise,
  {
    kind: "choice",
    key: "construction",
    words: "Drawn",
    absent: "flat",
    options: [
      { value: "flat", words: "flat" },
      { value: "thick", words: "thick" },
    ],
  },
  { kind: "share", key: "hollowRatio", words: "Hollow’s share", absentRatio: 0.5 },
];

/** The sizes of a kind, beside its name, how it is turned and where it stands. */
export const SIZES_OF: Readonly<Record<PartKind, readonly PartSize[]>> = {
  fillet: [width],
  step: [rise],
  bevel: [across, rise],
  chamfer: [across, { ...rise, absent: "45° down" }],
  quirk: [
    width,
    length("depthMm", "Depth"),
    {
      kind: "choice",
      key: "walls",
      words: "Walls",
      absent: "both",
      options: [
        { value: "both", words: "both" },
        { value: "first", words: "first" },
        { value: "last", words: "last" },
      ],
    },
  ],
  "vee quirk": [
    width,
    length("depthMm", "Depth"),
    {
      kind: "choice",
      key: "upright",
      words: "Upright side",
      absent: "neither",
      options: [
        { value: "first", words: "first" },
        { value: "neither", words: "neither" },
        { value: "last", words: "last" },
      ],
    },
  ],
  bead: [width],
  astragal: [width],
  torus: [width],
  "low bead": [width, sweep(180, 60)],
  reeds: row,
  flutes: row,
  band: [
    {
      kind: "choice",
      key: "of",
      words: "Of",
      absent: "reeds",
      options: [
        { value: "reeds", words: "reeds" },
        { value: "flutes", words: "flutes" },
      ],
    },
    length("widthMm", "Width of the band"),
    { kind: "count", key: "count", words: "How many", most: 100, absent: "as many as fit" },
    radius("radiusMm", "Radius", "from the shelf"),
    orNone("filletMm", "Flat between"),
    orNone("leastEndMm", "Least flat at the ends"),
  ],
  ovolo: quarter,
  cavetto: quarter,
  scotia: [
    across,
    {
      kind: "choice",
      key: "small",
      words: "Small curve",
      absent: "first",
      options: [
        { value: "first", words: "first" },
        { value: "last", words: "last" },
      ],
    },
    radius("smallRadiusMm", "Small radius", "a third"),
  ],
  "cyma recta": cyma,
  "cyma reversa": cyma,
  arc: [across, rise, radius("radiusMm", "Radius"), bend],
  "swept arc": [radius("radiusMm", "Radius"), sweep(360), bend],
  "running arc": [across, rise],
  "free curve": [],
};

/** What a part has of a size; undefined where the file does not say. */
export function sizeOf(part: PartSpec, key: string): unknown {
  return Object.entries(part).find(([own]) => own === key)?.[1];
}

/** The part with another size; without it where `value` is undefined. */
export function withSize(part: PartSpec, key: string, value: number | string | undefined): PartSpec {
  const rest = Object.fromEntries(Object.entries(part).filter(([own]) => own !== key));
  // The table above names only keys and values that the kind has; the reader of job files holds it to that in the tests.
  return (value === undefined ? rest : { ...part, [key]: value }) as PartSpec;
}
