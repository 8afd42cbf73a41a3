/** What goes to the worker that writes sheets and other files, and what comes back: plain data. */
import type { Plan } from "mouldwright/cutting";
import type { Job } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import type { SheetKind, SheetOptions } from "mouldwright/sheets";
import type { OtherFileKind } from "./other-files.ts";

export interface SheetsWish {
  readonly kind: "sheets";
  readonly wish: number;
  readonly plan: Plan;
  readonly options: SheetOptions;
  /** The job whose fitting is drawn on the fit sheet. */
  readonly job: Job;
}

export interface OtherFileWish {
  readonly kind: "other file";
  readonly wish: number;
  readonly plan: Plan;
  readonly file: OtherFileKind;
  /** Of the solids that are drawn out to a length, mm. */
  readonly lengthMm: number;
}

export type ToWriter = SheetsWish | OtherFileWish;

/** What a page is, for whoever shows it. */
export interface PageTold {
  /** From 1 on. */
  readonly number: number;
  readonly sheet: SheetKind;
  /** "End templates", without the job's name. */
  readonly title: string;
  readonly isFullSize: boolean;
  readonly widthMm: number;
  readonly heightMm: number;
}

export interface Written {
  readonly kind: "written";
  readonly wish: number;
  readonly bytes: Uint8Array<ArrayBuffer>;
  /** None for other files. */
  readonly pages: readonly PageTold[];
  /** What of the fitting is not on the sheets, and why. */
  readonly warnings: readonly Trouble[];
}

export interface NotWritten {
  readonly kind: "refused";
  readonly wish: number;
  readonly troubles: readonly Trouble[];
}

export type FromWriter = Written | NotWritten;
