/**
 * Minutes of cuts: settings once, strokes for the test piece and for every stick, and the sharpening they cost.
 * Common practice, no source; each figure may be changed by the maker.
 */
import type { PlanTime } from "../cutting/index.ts";

export interface Working {
  readonly setMinutes: number;
  /** To carry a plane on to its next line or seat at the lean it has: no fence, stop or iron is set anew. */
  readonly carryMinutes?: number;
  /** One stroke there and back. */
  readonly secondsPerMetre: number;
  readonly lengthM: number;
  /** Sticks run at each setting; one unless given. Strokes count for each, settings once. */
  readonly sticks?: number;
  /** The test piece that is run first at each setting, metres; none where 0. */
  readonly testPieceM?: number;
  readonly sharpenMinutes?: number;
  /** Metres of stroke that an iron stays sharp for; a part of them costs its share of a sharpening. */
  readonly sharpForM?: number;
  readonly sawSetMinutes?: number;
  readonly sawSecondsPerMetre?: number;
}

/**
 * A setting 3 minutes, a plane carried on to its next line 1 minute, a stroke of a metre 4 seconds, one stick of one
 * metre, a test piece of 300 mm, sharpening 10 minutes for every 200 metres of stroke; a saw 4 minutes to set, and a minute
 * for each metre of cut.
 */
export const COMMON_WORKING: Required<Working> = {
  setMinutes: 3,
  carryMinutes: 1,
  secondsPerMetre: 4,
  lengthM: 1,
  sticks: 1,
  testPieceM: 0.3,
  sharpenMinutes: 10,
  sharpForM: 200,
  sawSetMinutes: 4,
  sawSecondsPerMetre: 60,
};

/** What a cut asks of its plane: all set anew, carried on as it is to another line or seat, or left as it stands. */
export type Setting = "set" | "carried" | "kept";

/** The minutes of one cut by what they go to; a cut that keeps the setting of the one before sets nothing. */
export interface CutTime {
  readonly setting: Setting;
  readonly settingMinutes: number;
  readonly strokeMinutes: number;
  readonly testPieceMinutes: number;
  readonly sharpeningMinutes: number;
}

export function planeTime(passes: number, setting: Setting, working: Working): CutTime {
  const {
    setMinutes,
    carryMinutes,
    secondsPerMetre,
    lengthM,
    sticks,
    testPieceM,
    sharpenMinutes,
    sharpForM,
  } = {
    ...COMMON_WORKING,
    ...working,
  };
  const strokesM = passes * lengthM * sticks;
  const testM = passes * testPieceM;
  return {
    setting,
    settingMinutes: { set: setMinutes, carried: Math.min(carryMinutes, setMinutes), kept: 0 }[setting],
    strokeMinutes: (strokesM * secondsPerMetre) / SECONDS,
    testPieceMinutes: (testM * secondsPerMetre) / SECONDS,
    sharpeningMinutes: ((strokesM + testM) / sharpForM) * sharpenMinutes,
  };
}

export function sawTime(isNewSetting: boolean, working: Working): CutTime {
  const { sawSetMinutes, sawSecondsPerMetre, lengthM, sticks, testPieceM } = {
    ...COMMON_WORKING,
    ...working,
  };
  return {
    setting: isNewSetting ? "set" : "kept",
    settingMinutes: isNewSetting ? sawSetMinutes : 0,
    strokeMinutes: (sticks * lengthM * sawSecondsPerMetre) / SECONDS,
    testPieceMinutes: (testPieceM * sawSecondsPerMetre) / SECONDS,
    sharpeningMinutes: 0,
  };
}

const SECONDS = 60;

/** All the minutes of a cut, to a tenth. */
export function minutesOf(time: CutTime): number {
  const { settingMinutes, strokeMinutes, testPieceMinutes, sharpeningMinutes } = time;
  return toTenths(settingMinutes + strokeMinutes + testPieceMinutes + sharpeningMinutes);
}

/** The minutes of a plan, each kind to a tenth, with the figures they are reckoned with. */
export function planTime(times: readonly CutTime[], working: Working): PlanTime {
  const sum = (part: (time: CutTime) => number) => times.reduce((total, time) => total + part(time), 0);
  const settingMinutes = sum((time) => time.settingMinutes);
  const strokeMinutes = sum((time) => time.strokeMinutes);
  const testPieceMinutes = sum((time) => time.testPieceMinutes);
  const sharpeningMinutes = sum((time) => time.sharpeningMinutes);
  return {
    totalMinutes: toTenths(settingMinutes + strokeMinutes + testPieceMinutes + sharpeningMinutes),
    settingMinutes: toTenths(settingMinutes),
    strokeMinutes: toTenths(strokeMinutes),
    testPieceMinutes: toTenths(testPieceMinutes),
    sharpeningMinutes: toTenths(sharpeningMinutes),
    reckonedWith: { ...COMMON_WORKING, ...working },
  };
}

function toTenths(minutes: number): number {
  return Math.round(minutes * 10) / 10;
}
