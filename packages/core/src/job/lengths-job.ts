/** The file that says which pieces are wanted and which sticks are at hand. Millimetres, as in every file of ours. */
import { checkHeader, closedObject, readJsonText, troublesOf } from "../cutting/index.ts";
import type { LengthsQuestion } from "../making/index.ts";
import { fine, type LengthUnit, type Outcome, refused, z } from "../measure/index.ts";

export const LENGTHS_FORMAT = "mouldwright/lengths";
export const LENGTHS_VERSION = 1;

const LIMITS = {
  mostCharacters: 1_000_000,
  mostEntries: 1000,
  mostNameCharacters: 200,
  mostNoteCharacters: 20_000,
};

const name = z.string().max(LIMITS.mostNameCharacters);
// Whether a length can be is the question's to say, with its own words: here it only has to be a number.
const mm = z.number().describe("mm");
const count = z.int().min(1).max(LIMITS.mostEntries);

const pieceSchema = closedObject({ lengthMm: mm, name: name.optional(), count: count.optional() });

const runSchema = closedObject({
  name,
  ends: z
    .enum(["closed", "open", "loose"])
    .optional()
    .describe("closed: the last piece meets the first; open: it does not; loose: none meets another"),
  pieces: z.array(pieceSchema).min(1).max(LIMITS.mostEntries),
});

export const stickAtHandSchema = closedObject({
  lengthMm: mm,
  name: name.optional(),
  count: count.optional(),
  badPlaces: z
    .array(closedObject({ fromMm: mm, toMm: mm, why: name.optional() }))
    .max(LIMITS.mostEntries)
    .optional(),
});

export const lengthsAllowancesSchema = closedObject({
  kerfMm: mm.optional(),
  trimMm: mm.optional(),
  planingMm: mm.optional(),
});

export const lengthsJobSchema = closedObject({
  format: z.literal(LENGTHS_FORMAT),
  version: z.literal(LENGTHS_VERSION),
  name,
  unit: z.enum(["mm", "in"]).optional().describe("what the maker reads in; mm if absent"),
  notes: z.string().max(LIMITS.mostNoteCharacters).optional(),
  runs: z.array(runSchema).min(1).max(LIMITS.mostEntries),
  sticks: z.array(stickAtHandSchema).min(1).max(LIMITS.mostEntries),
  allowances: lengthsAllowancesSchema.optional(),
});

export interface LengthsJob {
  readonly name: string;
  readonly unit: LengthUnit;
  readonly question: LengthsQuestion;
}

/** The pieces and sticks of a lengths file; refused as `readJob` refuses. Never throws. */
export function readLengthsJob(fileText: string): Outcome<LengthsJob> {
  const json = readJsonText(fileText, LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, LENGTHS_FORMAT, LENGTHS_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const parsed = lengthsJobSchema.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  const { runs, sticks, allowances } = parsed.data;
  return fine({
    name: parsed.data.name,
    unit: parsed.data.unit ?? "mm",
    question: {
      runs: runs.map((run) => ({
        name: run.name,
        ends: run.ends ?? "loose",
        pieces: run.pieces.flatMap((piece) => copies(piece)),
      })),
      sticks: sticks.map(withoutGaps) as LengthsQuestion["sticks"],
      ...(allowances === undefined ? {} : { allowances: withoutGaps(allowances) as object }),
    },
  });
}

function copies({ lengthMm, name: own, count: times = 1 }: z.infer<typeof pieceSchema>) {
  return Array.from({ length: times }, (_, copy) => ({
    lengthMm,
    ...(own === undefined ? {} : { name: times > 1 ? `${own} (${copy + 1})` : own }),
  }));
}

/** Without the keys that hold nothing: "absent" and "there, but undefined" are two things to the types. */
export function withoutGaps(value: object): object {
  return Object.fromEntries(Object.entries(value).filter(([, one]) => one !== undefined));
}
