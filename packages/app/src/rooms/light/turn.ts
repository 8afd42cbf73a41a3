/** How the moulding is turned before the eye. */
export interface Turn {
  /** Round the upright: above nought the eye stands to the right. */
  readonly yawDeg: number;
  /** Above nought the eye looks down. */
  readonly pitchDeg: number;
  /** How much nearer than first shown. */
  readonly zoomRatio: number;
}

const MOST_YAW_DEG = 85;
const MOST_PITCH_DEG = 80;
const ZOOM = { least: 0.5, most: 6, step: 1.2 } as const;
/** A drag across so many px turns by a quarter. */
const QUARTER_PX = 300;
const KEY_DEG = 6;

export function turnedBy(turn: Turn, rightPx: number, downPx: number): Turn {
  return within({
    ...turn,
    yawDeg: turn.yawDeg - (rightPx / QUARTER_PX) * 90,
    pitchDeg: turn.pitchDeg + (downPx / QUARTER_PX) * 90,
  });
}

export function nearer(turn: Turn, ratio: number): Turn {
  return within({ ...turn, zoomRatio: turn.zoomRatio * ratio });
}

export const TURN_STEPS = {
  ArrowLeft: { right: 1, down: 0, zoom: 1 },
  ArrowRight: { right: -1, down: 0, zoom: 1 },
  ArrowUp: { right: 0, down: 1, zoom: 1 },
  ArrowDown: { right: 0, down: -1, zoom: 1 },
  "+": { right: 0, down: 0, zoom: ZOOM.step },
  "-": { right: 0, down: 0, zoom: 1 / ZOOM.step },
} as const;

export type TurnKey = keyof typeof TURN_STEPS;

export function isTurnKey(key: string): key is TurnKey {
  return Object.hasOwn(TURN_STEPS, key);
}

/** One step of a key: the eye walks round the moulding that way. */
export function turnedByKey(turn: Turn, key: TurnKey): Turn {
  const { right, down, zoom } = TURN_STEPS[key];
  return within({
    yawDeg: turn.yawDeg - right * KEY_DEG,
    pitchDeg: turn.pitchDeg + down * KEY_DEG,
    zoomRatio: turn.zoomRatio * zoom,
  });
}

function within({ yawDeg, pitchDeg, zoomRatio }: Turn): Turn {
  return {
    yawDeg: Math.min(MOST_YAW_DEG, Math.max(-MOST_YAW_DEG, yawDeg)),
    pitchDeg: Math.min(MOST_PITCH_DEG, Math.max(-MOST_PITCH_DEG, pitchDeg)),
    zoomRatio: Math.min(ZOOM.most, Math.max(ZOOM.least, zoomRatio)),
  };
}
