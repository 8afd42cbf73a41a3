/** Lengths and angles as the maker reads them, in the job's unit. */
import type { Job } from "mouldwright/job";
import { formatDeg, formatExactLength, formatLength, type LengthFormat } from "mouldwright/measure";
import { useMemo } from "react";
import { useBench } from "../bench/job-on-bench.ts";

export interface LengthWords {
  readonly unit: "mm" | "in";
  /** To the step of the maker's rule: `1⅜″`, `9.5 mm`. */
  readonly length: (lengthMm: number) => string;
  /** To three decimals of a millimetre: on demand. */
  readonly exact: (lengthMm: number) => string;
  /** To the step of the rule, without light and full. */
  readonly bare: (lengthMm: number) => string;
  readonly degrees: (angleDeg: number, stepDeg?: 1 | 0.5 | 0.25 | 0.1) => string;
}

export function lengthWordsOf(job: Pick<Job, "unit" | "inchStep">): LengthWords {
  const unit = job.unit ?? "mm";
  const format: LengthFormat = { unit, ...(job.inchStep === undefined ? {} : { denominator: job.inchStep }) };
  return {
    unit,
    length: (lengthMm) => formatLength(lengthMm, format),
    exact: (lengthMm) => formatExactLength(lengthMm, { unit }),
    bare: (lengthMm) => formatLength(lengthMm, { ...format, sides: "none" }),
    degrees: (angleDeg, stepDeg = 1) => formatDeg(angleDeg, { stepDeg }),
  };
}

/** Several lengths that belong together, the unit said once: `74 × 26 × 1150 mm`, `2⅞″ × 1″ × 45¼″`. */
export function sizesInWords(lengthsMm: readonly number[], { unit, length }: LengthWords): string {
  const words = lengthsMm.map(length);
  const bare = (text: string): string => text.replace(/[\s\u00a0]mm$/, "");
  return words
    .map((text, index) => (unit === "mm" && index < words.length - 1 ? bare(text) : text))
    .join(" × ");
}

export function useLengthWords(): LengthWords {
  // These two alone: a field is not to be drawn anew with every step of a pull.
  const unit = useBench((bench) => (bench.draft ?? bench.job).unit);
  const inchStep = useBench((bench) => (bench.draft ?? bench.job).inchStep);
  return useMemo(() => lengthWordsOf({ unit, inchStep }), [unit, inchStep]);
}

/** A stick's two sizes as they are said: `68 × 22 mm`, `1⅝″ × 1⅛″`. */
export function stickWords(words: LengthWords, { widthMm, thicknessMm }: Job["stick"]): string {
  return sizesInWords([widthMm, thicknessMm], words);
}
