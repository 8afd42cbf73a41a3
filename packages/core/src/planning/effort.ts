/**
 * How much work a plan may cost, and what is left out once so much of it is done: whatever is drawn, planning ends.
 *
 * Work is counted (`countWork`), never timed, so that the same request gives the same plan on every machine.
 */
import { workCounted } from "../measure/index.ts";

/** What is still looked for: everything, the likeliest only, or no more than a plan cannot do without. */
export type Pace = "thorough" | "brisk" | "hasty";

/**
 * Work up to which a plan is searched at each pace, in the units of `countWork`. The gallery's
 * cornice of ten parts takes two thirds of the first, the chart cabinet's a quarter.
 */
const THOROUGH_UP_TO = 25_000_000;
const BRISK_UP_TO = 29_000_000;
/** No face is worked through a second time beyond this: the first took too much of it. */
const FACES_UP_TO = 12_000_000;
/** No cure is begun beyond this. */
const CURES_UP_TO = 24_000_000;

/** Said of a plan that was not searched thoroughly to its end. */
export const NOT_ALL_COMPARED =
  "So much is drawn here that not every order of the cuts and not every way of holding the stick was compared: there may be a plan of fewer settings.";

/** The work that one plan has taken, counted while it is at work and not while others are. */
export class Effort {
  private done = 0;
  private from: number | null = null;

  /** Begins to count. */
  resume(): void {
    this.from ??= workCounted();
  }

  /** What is counted from here on is not this plan's. */
  pause(): void {
    this.done = this.spent;
    this.from = null;
  }

  get spent(): number {
    return this.done + (this.from === null ? 0 : workCounted() - this.from);
  }

  get pace(): Pace {
    const { spent } = this;
    return spent < THOROUGH_UP_TO ? "thorough" : spent < BRISK_UP_TO ? "brisk" : "hasty";
  }

  get isThorough(): boolean {
    return this.pace === "thorough";
  }

  get isHasty(): boolean {
    return this.pace === "hasty";
  }

  get mayWorkFaceAgain(): boolean {
    return this.spent < FACES_UP_TO;
  }

  get maySeekCures(): boolean {
    return this.spent < CURES_UP_TO;
  }
}
