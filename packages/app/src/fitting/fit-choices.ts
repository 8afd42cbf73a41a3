/** What the maker has chosen about stick and fitting, with what holds where nothing was said; and changes of it. */
import type { Job } from "mouldwright/job";
import {
  COMMON_LENGTHS_ALLOWANCES,
  COMMON_STICK_ALLOWANCES,
  type CornerJoint,
  type CornerKind,
  type CornerTriangle,
  type LengthsAllowances,
  type RunEnd,
  type StatedSize,
  type StickAllowances,
  type StickAtHand,
  type WallEdge,
  type WayOfWorking,
} from "mouldwright/making";
import type { Sawn } from "mouldwright/timber";

export type Fit = NonNullable<Job["fit"]>;
export type Pieces = "lengths" | "frame" | "cornice";

export interface RunCornerChoice {
  readonly cornerDeg: number;
  readonly kind: CornerKind;
  readonly joint: CornerJoint | undefined;
}

export interface FitChoices {
  readonly lengthMm: number;
  readonly sticks: number;
  readonly way: WayOfWorking;
  readonly cantDeg: number | undefined;
  readonly pieces: Pieces;
  readonly allowances: Omit<StickAllowances, "bevelPlaningMm">;
  readonly atHand: { readonly widthMm: number; readonly thicknessMm: number } | null;
  /** Empty where none was named. */
  readonly timber: string;
  readonly sawn: Sawn;
  readonly fittedPercent: number;
  readonly driestPercent: number;
  readonly wettestPercent: number;
  /** null: the section's own. */
  readonly springFromWallDeg: number | null;
  readonly wallEdge: WallEdge;
  readonly cornerDeg: number;
  readonly triangleMm: CornerTriangle | null;
  readonly kind: CornerKind;
  readonly bladeLeans: "left" | "right";
  readonly frame: {
    readonly stated: StatedSize;
    readonly acrossMm: number;
    readonly upMm: number;
    /** null: a rectangle. */
    readonly sides: number | null;
    readonly sideMm: number;
    readonly widthMm: number;
    readonly rebateMm: number;
    readonly allowanceMm: number;
  };
  readonly run: {
    readonly wallsMm: readonly number[];
    readonly corners: readonly RunCornerChoice[];
    readonly start: RunEnd;
    readonly end: RunEnd;
  };
  readonly slopes: {
    readonly shown: "rake" | "hip" | "box";
    readonly rakeDeg: number;
    readonly mainDeg: number;
    /** null: the same as the main side. */
    readonly adjacentDeg: number | null;
    readonly planDeg: number;
    readonly boxSides: number;
    readonly boxDeg: number;
    readonly boxWidthMm: number;
    readonly boxFootMm: number;
  };
  /** Another moulding that the section's meets at the corner. */
  readonly unlike: {
    readonly projectionMm: number;
    /** null: as high as the section's own. */
    readonly heightMm: number | null;
    /** null: the section's own. */
    readonly springFromWallDeg: number | null;
  };
  /** A solid side that the moulding runs along. */
  readonly side: {
    readonly depthMm: number;
    readonly screwsMm: readonly number[];
    readonly screwMm: number;
  };
  /** Sticks that frame and cornice are cut from. */
  readonly stock: readonly StickAtHand[];
  /** The maker has said which; else as many as are needed of a common length. */
  readonly isStockSaid: boolean;
  readonly sawing: LengthsAllowances;
}

/** A common length to buy, mm, and as many of it as any job here asks for. Common practice, no source. */
export const COMMON_STOCK: StickAtHand = { lengthMm: 2400, count: 40 };

/** Moisture of a heated house over the year, percent: fitted in between. Common practice, no source. */
const COMMON_MOISTURE = { fitted: 9, driest: 6, wettest: 12 } as const;

const COMMON_LENGTH_MM = 1000;

/** A hand's breadth and more from each other, mm. Common practice, no source. */
const COMMON_SCREWS_MM: readonly number[] = [120, 240, 360];

export function choicesOf(job: Job): FitChoices {
  const { stick = {}, timber, corner = {}, frame = {}, run, slopes = {}, sticks, allowances } = job.fit ?? {};
  const { unlike = {}, side = {} } = job.fit ?? {};
  const isStockSaid = sticks !== undefined && sticks.length > 0;
  return {
    lengthMm: job.working?.lengthMm ?? COMMON_LENGTH_MM,
    sticks: job.working?.sticks ?? 1,
    way: stick.way ?? "flat",
    cantDeg: stick.cantDeg,
    pieces: stick.pieces ?? "lengths",
    allowances: {
      sawnWidthMm: stick.allowances?.sawnWidthMm ?? COMMON_STICK_ALLOWANCES.sawnWidthMm,
      sawnThicknessMm: stick.allowances?.sawnThicknessMm ?? COMMON_STICK_ALLOWANCES.sawnThicknessMm,
      planingMm: stick.allowances?.planingMm ?? COMMON_STICK_ALLOWANCES.planingMm,
      endChecksMm: stick.allowances?.endChecksMm ?? COMMON_STICK_ALLOWANCES.endChecksMm,
    },
    atHand: stick.atHand ?? null,
    timber: timber?.name ?? "",
    sawn: timber?.sawn ?? "flat",
    fittedPercent: timber?.fittedPercent ?? COMMON_MOISTURE.fitted,
    driestPercent: timber?.driestPercent ?? COMMON_MOISTURE.driest,
    wettestPercent: timber?.wettestPercent ?? COMMON_MOISTURE.wettest,
    springFromWallDeg: corner.springFromWallDeg ?? null,
    wallEdge: corner.wallEdge ?? "far edge",
    cornerDeg: corner.cornerDeg ?? 90,
    triangleMm: corner.triangleMm ?? null,
    kind: corner.kind ?? "outside",
    bladeLeans: corner.bladeLeans ?? "left",
    frame: {
      stated: frame.stated ?? "sight",
      acrossMm: frame.acrossMm ?? 300,
      upMm: frame.upMm ?? 400,
      sides: frame.sides ?? null,
      sideMm: frame.sideMm ?? 200,
      widthMm: frame.widthMm ?? job.stick.widthMm,
      rebateMm: frame.rebateMm ?? ownRebateMm(job),
      allowanceMm: frame.allowanceMm ?? 2,
    },
    run: {
      wallsMm: run?.wallsMm ?? [400, 1200, 400],
      corners: (run?.corners ?? DRAWN_CORNERS).map(({ cornerDeg, kind, joint }) => ({
        cornerDeg,
        kind,
        joint,
      })),
      start: run?.start ?? "square",
      end: run?.end ?? "square",
    },
    slopes: {
      shown: slopes.shown ?? "rake",
      rakeDeg: slopes.rakeDeg ?? 22.5,
      mainDeg: slopes.mainDeg ?? 35,
      adjacentDeg: slopes.adjacentDeg ?? null,
      planDeg: slopes.planDeg ?? 90,
      boxSides: slopes.boxSides ?? 4,
      boxDeg: slopes.boxDeg ?? 60,
      boxWidthMm: slopes.boxWidthMm ?? 40,
      boxFootMm: slopes.boxFootMm ?? 240,
    },
    unlike: {
      projectionMm: unlike.projectionMm ?? 30,
      heightMm: unlike.heightMm ?? null,
      springFromWallDeg: unlike.springFromWallDeg ?? null,
    },
    side: {
      depthMm: side.depthMm ?? 380,
      screwsMm: side.screwsMm ?? COMMON_SCREWS_MM,
      screwMm: side.screwMm ?? 4,
    },
    stock: isStockSaid ? sticks.map(stickAtHand) : [COMMON_STOCK],
    isStockSaid,
    sawing: {
      kerfMm: allowances?.kerfMm ?? COMMON_LENGTHS_ALLOWANCES.kerfMm,
      trimMm: allowances?.trimMm ?? COMMON_LENGTHS_ALLOWANCES.trimMm,
      planingMm: allowances?.planingMm ?? COMMON_LENGTHS_ALLOWANCES.planingMm,
    },
  };
}

/** The front and two sides of a case, to begin with. */
const DRAWN_CORNERS: readonly RunCornerChoice[] = [
  { cornerDeg: 90, kind: "outside", joint: undefined },
  { cornerDeg: 90, kind: "outside", joint: undefined },
];

/** Width of the rebate that the section has at its back; nothing where it has none. */
function ownRebateMm(job: Job): number {
  const rebate = job.section.back?.find((back) => back.kind === "rebate");
  return rebate?.kind === "rebate" ? rebate.widthMm : 0;
}

type SaidStick = NonNullable<Fit["sticks"]>[number];

/** Without keys that hold nothing: "absent" and "there, but undefined" are two things to the types. */
function stickAtHand({ lengthMm, name, count, badPlaces }: SaidStick): StickAtHand {
  return {
    lengthMm,
    ...(name === undefined ? {} : { name }),
    ...(count === undefined ? {} : { count }),
    ...(badPlaces === undefined
      ? {}
      : {
          badPlaces: badPlaces.map(({ fromMm, toMm, why }) => ({
            fromMm,
            toMm,
            ...(why === undefined ? {} : { why }),
          })),
        }),
  };
}

/** One block of the choices changed in part; a key that is set to undefined falls back to what is common. */
export function withFit<Key extends keyof Fit>(
  job: Job,
  key: Key,
  part: Partial<NonNullable<Fit[Key]>>,
): Job {
  const block = { ...job.fit?.[key], ...part };
  return { ...job, fit: { ...job.fit, [key]: withoutGaps(block) } };
}

function withoutGaps(block: object): object {
  return Object.fromEntries(Object.entries(block).filter(([, value]) => value !== undefined));
}

/** Another timber, or none. */
export function withTimber(job: Job, name: string): Job {
  if (name !== "") return withFit(job, "timber", { name });
  const { timber: _, ...fit } = job.fit ?? {};
  return { ...job, fit };
}

/** The sticks that frame and cornice are cut from; none: of the common length again. */
export function withStock(job: Job, sticks: readonly StickAtHand[]): Job {
  const { sticks: _, ...fit } = job.fit ?? {};
  if (sticks.length === 0) return { ...job, fit };
  return { ...job, fit: { ...fit, sticks: sticks.map((stick) => structuredCloneOf(stick)) } };
}

function structuredCloneOf(stick: StickAtHand): SaidStick {
  const { badPlaces, ...rest } = stick;
  return badPlaces === undefined ? rest : { ...rest, badPlaces: badPlaces.map((place) => ({ ...place })) };
}

/** Length and number of sticks are the job's own, since the minutes are reckoned with them too. */
export function withWorking(job: Job, part: { readonly lengthMm?: number; readonly sticks?: number }): Job {
  return { ...job, working: { ...job.working, ...part } };
}

/** A wall more at the right end of the run, with a square outside corner before it. */
export function withWallAdded(job: Job): Job {
  const { wallsMm, corners } = choicesOf(job).run;
  return withFit(job, "run", {
    wallsMm: [...wallsMm, wallsMm[wallsMm.length - 1] ?? 1000],
    corners: [...corners.map(said), { cornerDeg: 90, kind: "outside" }],
  });
}

/** A wall less: the corner before it goes with it (the one after it where it is the first). */
export function withWallRemoved(job: Job, index: number): Job {
  const { wallsMm, corners } = choicesOf(job).run;
  if (wallsMm.length < 2) return job;
  const cornerIndex = Math.max(0, index - 1);
  return withFit(job, "run", {
    wallsMm: wallsMm.filter((_, at) => at !== index),
    corners: corners.filter((_, at) => at !== cornerIndex).map(said),
  });
}

export function withWall(job: Job, index: number, lengthMm: number): Job {
  const { wallsMm, corners } = choicesOf(job).run;
  return withFit(job, "run", {
    wallsMm: wallsMm.map((own, at) => (at === index ? lengthMm : own)),
    corners: corners.map(said),
  });
}

export function withCorner(job: Job, index: number, part: Partial<RunCornerChoice>): Job {
  const { wallsMm, corners } = choicesOf(job).run;
  return withFit(job, "run", {
    wallsMm: [...wallsMm],
    corners: corners.map((own, at) => said(at === index ? { ...own, ...part } : own)),
  });
}

export function withRunEnd(job: Job, side: "start" | "end", end: RunEnd): Job {
  const { wallsMm, corners } = choicesOf(job).run;
  return withFit(job, "run", { wallsMm: [...wallsMm], corners: corners.map(said), [side]: end });
}

function said({ cornerDeg, kind, joint }: RunCornerChoice): NonNullable<Fit["run"]>["corners"][number] {
  return joint === undefined ? { cornerDeg, kind } : { cornerDeg, kind, joint };
}
