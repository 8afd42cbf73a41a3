export {
  acosRad,
  asinRad,
  type Deg,
  deg,
  normaliseDeg,
  normaliseRad,
  type Rad,
  rad,
  toDeg,
  toRad,
  turnDeg,
} from "./angles.ts";
export {
  atLeastMm,
  atMostMm,
  exceedsMm,
  requireBetween,
  requireCount,
  requireFinite,
  requireNotNegative,
  requirePositive,
  sameMm,
} from "./compare.ts";
export { readFigure } from "./figure.ts";
export {
  formatDeg,
  formatExactLength,
  formatFieldLength,
  formatLength,
  formatThickness,
  type LengthFormat,
  type LengthUnit,
  type WrittenLength,
  writeLength,
} from "./format.ts";
export { INCH_MM, type InchDenominator, type InchFraction, nearestFraction } from "./fraction.ts";
export { cleanText, harmlessText, isPrintable, printable, quoted } from "./harmless-text.ts";
export {
  type LengthReading,
  LONGEST_MM,
  parseLength,
  readLength,
  type TypedLength,
  type TypedUnit,
} from "./length.ts";
export { roundToEven } from "./rounding.ts";
export { catalogue, type Entry } from "./say/catalogue.ts";
export { type Writer, writerFor } from "./say/writer.ts";
export {
  ALL_CODES,
  cataloguedTrouble,
  exampleOf,
  type FactsOf,
  type SaidTrouble,
  sayTrouble,
  type TroubleCode,
} from "./say.ts";
export { z } from "./schemas.ts";
export * from "./tolerance.ts";
export {
  Bug,
  bug,
  type Facts,
  fine,
  type Outcome,
  refused,
  type Trouble,
  trouble,
} from "./trouble.ts";
export { countWork, workCounted } from "./work.ts";
