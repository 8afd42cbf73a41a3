/** A timber and what is known of it, every figure with its source. Percentages are of moisture content unless said. */

/** How far a figure can be trusted to stand where it is said to stand. */
export type Standing = "published" | "derived" | "from memory" | "common practice" | "own";

export interface Source {
  /** Book, table and page, in words that a reader can look up. */
  readonly where: string;
  readonly standing: Standing;
}

/** Shrinkage from green to ovendry, percent of the green size. */
export interface Shrinkage {
  readonly radialPercent: number;
  readonly tangentialPercent: number;
  readonly source: Source;
}

/** Change of size per size and per 1 % of moisture content, valid from 6 to 14 %. */
export interface MovementCoefficients {
  readonly radialPerPercent: number;
  readonly tangentialPerPercent: number;
  readonly source: Source;
}

/** Side hardness (Janka) at 12 % moisture content: an average, a single board may differ by a fifth. */
export interface Hardness {
  readonly poundsForce: number;
  readonly newtons: number;
  readonly source: Source;
}

export interface Timber {
  readonly name: string;
  /** What it is also called. */
  readonly otherNames: readonly string[];
  /** An average over the species of a genus, not one species. */
  readonly isGenus: boolean;
  readonly shrinkage: Shrinkage | null;
  readonly coefficients: MovementCoefficients | null;
  readonly hardness: Hardness | null;
  /** One sentence for moulding work, common practice without a source; empty if none. */
  readonly note: string;
}

/** Which way the growth rings lie in the stick: across its width (flat) or upright to it (quarter). */
export type Sawn = "flat" | "quarter";
