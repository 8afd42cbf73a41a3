/** What a plan is asked for: section, shelf, and everything about the work that the maker may say. */
import type { Ring } from "../curve/index.ts";
import type { CuttingLimits, Plan } from "../cutting/index.ts";
import type { InchDenominator } from "../measure/index.ts";
import type { Section } from "../section/index.ts";
import type { Shelf } from "../shelf/index.ts";
import type { HandAccuracy } from "./accuracy.ts";
import type { Shavings } from "./bench.ts";
import type { KeepSquare } from "./edges-to-keep.ts";
import type { Working } from "./minutes.ts";
import type { Preference } from "./order-weights.ts";
import type { Way } from "./way.ts";
import type { BenchUnit } from "./words.ts";

/** The side of the drawing that the planned section may lie on where it cannot lie on it: wood left, or wood taken. */
export type MissSide = "either" | "proud" | "under";

/** Two cuts of a plan to change places: their numbers, how many cuts the plan has, and the ids of the planes of both. */
export interface CutSwap {
  readonly first: number;
  readonly second: number;
  readonly cuts: number;
  readonly planes: readonly [string, string];
}

export interface PlanRequest {
  readonly section: Section;
  readonly shelf: Shelf;
  /** How far the finished face may stand from the drawing, mm; 0.2 unless given. */
  readonly toleranceMm?: number;
  /** Unit of the bench sentences; the file's numbers are always mm. */
  readonly unit?: BenchUnit;
  readonly name?: string;
  /** Side of the drawing on which the stick's gauge edge lies; left unless given. */
  readonly gaugeEdge?: "left" | "right";
  readonly limits?: CuttingLimits;
  /** Greatest lean of a plane in the hand, degrees; the limit of the cutting model unless given. */
  readonly greatestLeanDeg?: number;
  readonly shavings?: Shavings;
  readonly working?: Working;
  /** How true the maker works; a good hand unless given. */
  readonly hand?: HandAccuracy;
  /** Finest division of the maker's inch rule, for the sentences; thirty-seconds unless given. */
  readonly inchStep?: InchDenominator;
  /** Ids of planes that are on the shelf but not to be used. */
  readonly without?: readonly string[];
  readonly prefer?: Preference;
  readonly missSide?: MissSide;
  /**
   * Edges that must stay square and untouched as long as can be, for gauge and fence or because they meet something: cuts
   * that touch one come last, and the plan says when it goes. None unless given.
   */
  readonly keepSquare?: KeepSquare;
  /** Ways of working to compare; flat alone unless the section has spring bevels to saw, then all. */
  readonly ways?: readonly Way[];
  /**
   * Set while a drawing is being dragged: the first order found is proven cut by cut as ever, but it is not held against
   * other orders, and no cure is looked for.
   */
  readonly quick?: boolean;
  /**
   * With `quick`: the plan before, as the planner gave it, of a drawing that has since moved a little. Its order is laid on
   * the drawing as it now is, and taken where all of it holds; the plan then depends on the one before.
   */
  readonly like?: Plan;
  /** Whether to look, for a plan of many settings, for the one plane that would save most cuts: some plans more. */
  readonly advise?: boolean;
  /** Cuts that the maker wants the other way round, one swap after the other; one that does not hold is left out and told. */
  readonly swaps?: readonly CutSwap[];
  /** The stick as it stands, where some of it is cut already: its section in the stick's frame. */
  readonly from?: readonly Ring[];
}

export interface PlanProgress {
  readonly done: number;
  readonly of: number;
  readonly says: string;
}
