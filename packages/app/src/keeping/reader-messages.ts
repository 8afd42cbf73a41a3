/** What goes to the reader's worker and what comes back. */
import type { LengthUnit, Trouble } from "mouldwright/measure";
import type { Section } from "mouldwright/section";

export interface ToReader {
  readonly fileName: string;
  readonly text: string;
  /** What a list of points is in, unless it says so itself. */
  readonly unit: LengthUnit;
  /** How much a number of the drawing is, mm, where the maker has said so. */
  readonly numberMm?: number | undefined;
}

export type FromReader =
  | { readonly kind: "section"; readonly section: Section; readonly warnings: readonly Trouble[] }
  | { readonly kind: "refused"; readonly troubles: readonly Trouble[] };
