/** What a maker may say of the way he works: the divisions of his rule, how true his hand is, what his minutes go to. */
import { handOf, type Job, workingOf } from "mouldwright/job";

export type Hand = NonNullable<Job["hand"]>;
export type Working = NonNullable<Job["working"]>;

export const RULE_STEPS = [
  { value: "16", words: "1/16″", step: 16 },
  { value: "32", words: "1/32″", step: 32 },
  { value: "64", words: "1/64″", step: 64 },
] as const;

export interface HandField {
  readonly key: keyof Hand;
  readonly label: string;
  /** What a good hand keeps to, mm: what holds where nothing is said. */
  readonly commonMm: number;
}

const GOOD = handOf({});

export const HAND_FIELDS: readonly HandField[] = [
  { key: "gaugeMm", label: "Setting a gauge", commonMm: GOOD.gaugeMm },
  { key: "lineMm", label: "A knife line", commonMm: GOOD.lineMm },
  { key: "fenceMm", label: "A fence to a line", commonMm: GOOD.fenceMm },
  { key: "sidewaysMm", label: "A plane by hand along a line", commonMm: GOOD.sidewaysMm },
  { key: "depthMm", label: "Stopping a cut", commonMm: GOOD.depthMm },
  { key: "sawMm", label: "A saw along a line", commonMm: GOOD.sawMm },
  { key: "widthMm", label: "A sole’s width", commonMm: GOOD.widthMm },
];

export interface WorkingField {
  readonly key: Exclude<keyof Working, "lengthMm" | "sticks">;
  readonly label: string;
  readonly unit: "min" | "s" | "m" | "mm";
  readonly least: number;
  readonly most: number;
  readonly common: number;
}

const COMMON = workingOf({});

/** Length and number of the sticks are said in Stick and fit, where they are bought. */
export const WORKING_FIELDS: readonly WorkingField[] = [
  { key: "setMinutes", label: "To set a plane", unit: "min", least: 0, most: 240, common: COMMON.setMinutes },
  {
    key: "carryMinutes",
    label: "To carry it to the next line",
    unit: "min",
    least: 0,
    most: 240,
    common: COMMON.carryMinutes ?? 0,
  },
  {
    key: "secondsPerMetre",
    label: "A stroke, for each metre",
    unit: "s",
    least: 0.1,
    most: 600,
    common: COMMON.secondsPerMetre,
  },
  {
    key: "testPieceMm",
    label: "Test piece at each setting",
    unit: "mm",
    least: 0,
    most: 10_000,
    common: (COMMON.testPieceM ?? 0) * 1000,
  },
  {
    key: "sharpenMinutes",
    label: "To sharpen an iron",
    unit: "min",
    least: 0,
    most: 240,
    common: COMMON.sharpenMinutes ?? 0,
  },
  {
    key: "sharpForM",
    label: "It stays sharp for",
    unit: "m",
    least: 1,
    most: 100_000,
    common: COMMON.sharpForM ?? 0,
  },
  {
    key: "sawSetMinutes",
    label: "To set a saw",
    unit: "min",
    least: 0,
    most: 240,
    common: COMMON.sawSetMinutes ?? 0,
  },
  {
    key: "sawSecondsPerMetre",
    label: "Sawing, for each metre",
    unit: "s",
    least: 0.1,
    most: 600,
    common: COMMON.sawSecondsPerMetre ?? 0,
  },
];

/** The job with one figure of the hand said, or taken back; a hand of which nothing is said is left out. */
export function withHand(job: Job, key: keyof Hand, valueMm: number | undefined): Job {
  const { hand, ...rest } = job;
  const next = { ...hand, [key]: valueMm };
  if (valueMm === undefined) delete next[key];
  return Object.keys(next).length === 0 ? rest : { ...rest, hand: next };
}

export function withWorkingSaid(job: Job, key: keyof Working, value: number | undefined): Job {
  const { working, ...rest } = job;
  const next = { ...working, [key]: value };
  if (value === undefined) delete next[key];
  return Object.keys(next).length === 0 ? rest : { ...rest, working: next };
}

/** 32 is common, and then nothing is said. */
export function withInchStep(job: Job, step: 16 | 32 | 64): Job {
  const { inchStep: _, ...rest } = job;
  return step === 32 ? rest : { ...rest, inchStep: step };
}
