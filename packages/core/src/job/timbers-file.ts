/** The file of a maker's own timbers. */
import { checkHeader, closedObject, readJsonText, troublesOf } from "../cutting/index.ts";
import { fine, type Outcome, refused, type Trouble, z } from "../measure/index.ts";
import { ownTimber, type Timber } from "../timber/index.ts";
import { withoutGaps } from "./lengths-job.ts";

export const TIMBERS_FORMAT = "mouldwright/timbers";
export const TIMBERS_VERSION = 1;

const LIMITS = { mostCharacters: 1_000_000, mostEntries: 1000 };

const name = z.string().max(200);

const timberSchema = closedObject({
  name,
  shrinkage: closedObject({ radialPercent: z.number(), tangentialPercent: z.number() })
    .optional()
    .describe("from green to ovendry"),
  coefficients: closedObject({ radialPerPercent: z.number(), tangentialPerPercent: z.number() })
    .optional()
    .describe("change of size per size and per 1 % of moisture"),
  hardnessPoundsForce: z.number().optional(),
  source: name.optional(),
  note: z.string().max(1000).optional(),
});

export const timbersSchema = closedObject({
  format: z.literal(TIMBERS_FORMAT),
  version: z.literal(TIMBERS_VERSION),
  timbers: z.array(timberSchema).min(1).max(LIMITS.mostEntries),
});

/** A maker's own timbers; refused as `readJob` refuses, and where `ownTimber` refuses one of them. Never throws. */
export function readTimbers(fileText: string): Outcome<readonly Timber[]> {
  const json = readJsonText(fileText, LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, TIMBERS_FORMAT, TIMBERS_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const parsed = timbersSchema.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  const timbers: Timber[] = [];
  const warnings: Trouble[] = [];
  for (const [index, said] of parsed.data.timbers.entries()) {
    const where = `timbers[${index}]`;
    const timber = ownTimber({ ...withoutGaps(said), name: said.name });
    if (!timber.ok) return refused({ ...timber.trouble, where });
    warnings.push(...timber.warnings.map((warning) => ({ ...warning, where })));
    timbers.push(timber.value);
  }
  return fine(timbers, warnings);
}
