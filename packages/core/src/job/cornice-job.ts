/** The file of a run of moulding round a room or a case: walls, corners, ends, and the sticks to cut it from. */
import { checkHeader, closedObject, readJsonText, troublesOf } from "../cutting/index.ts";
import {
  type Corner,
  type CorniceQuestion,
  cornerFromAngle,
  cornerFromTriangle,
  type LengthsQuestion,
  type RunCorner,
  type Spring,
  springFrom,
} from "../making/index.ts";
import {
  cataloguedTrouble,
  fine,
  type LengthUnit,
  type Outcome,
  refused,
  type Trouble,
  z,
} from "../measure/index.ts";
import { lengthsAllowancesSchema, stickAtHandSchema, withoutGaps } from "./lengths-job.ts";

export const CORNICE_FORMAT = "mouldwright/cornice";
export const CORNICE_VERSION = 1;

const LIMITS = {
  mostCharacters: 1_000_000,
  mostEntries: 1000,
  mostNameCharacters: 200,
  mostNoteCharacters: 20_000,
};

const mm = z.number().describe("mm");
const degrees = z.number().describe("degrees");
const runEnd = z.enum(["square", "against a wall", "return"]);

const cornerSchema = closedObject({
  cornerDeg: degrees.optional().describe("between the two walls; at an outside corner through the solid"),
  triangleMm: closedObject({ alongFirstMm: mm, alongSecondMm: mm, acrossMm: mm })
    .optional()
    .describe("instead of the angle: along one wall, along the other, across"),
  kind: z.enum(["inside", "outside"]).optional(),
  joint: z.enum(["mitre", "scribe left", "scribe right"]).optional(),
});

export const corniceJobSchema = closedObject({
  format: z.literal(CORNICE_FORMAT),
  version: z.literal(CORNICE_VERSION),
  name: z.string().max(LIMITS.mostNameCharacters),
  unit: z.enum(["mm", "in"]).optional(),
  notes: z.string().max(LIMITS.mostNoteCharacters).optional(),
  springFromWallDeg: degrees.optional(),
  springFromCeilingDeg: degrees.optional(),
  projectionMm: mm.optional(),
  heightMm: mm.optional(),
  wallsMm: z.array(mm).max(LIMITS.mostEntries).describe("in order from left to right as one faces them"),
  corners: z.array(cornerSchema).max(LIMITS.mostEntries),
  start: runEnd.optional(),
  end: runEnd.optional(),
  sticks: z.array(stickAtHandSchema).min(1).max(LIMITS.mostEntries).optional(),
  allowances: lengthsAllowancesSchema.optional(),
});

/** What the section itself says where the file does not. */
export interface SectionSizes {
  readonly springFromWallDeg: number;
  readonly projectionMm: number;
  readonly heightMm: number;
  readonly scribing: "possible" | "impossible";
}

export interface CorniceJob {
  readonly name: string;
  readonly unit: LengthUnit;
  /** Spring and sizes as the file says them; null where it leaves them to the section. */
  readonly spring: Spring | null;
  readonly projectionMm: number | null;
  readonly heightMm: number | null;
  readonly wallsMm: readonly number[];
  readonly corners: readonly RunCorner[];
  readonly start: CorniceQuestion["start"];
  readonly end: CorniceQuestion["end"];
  readonly sticks: LengthsQuestion["sticks"] | null;
  readonly allowances: NonNullable<LengthsQuestion["allowances"]> | null;
}

/** A cornice file; refused as `readJob` refuses, and where a corner or the spring cannot be. Never throws. */
export function readCorniceJob(fileText: string): Outcome<CorniceJob> {
  const json = readJsonText(fileText, LIMITS);
  if (!json.ok) return json;
  const otherFile = checkHeader(json.value, CORNICE_FORMAT, CORNICE_VERSION);
  if (otherFile !== null) return refused(otherFile);
  const parsed = corniceJobSchema.safeParse(json.value);
  if (!parsed.success) return refused(...troublesOf(parsed.error.issues, json.value));
  const { data } = parsed;
  const spring = springOf(data);
  if (!spring.ok) return spring;
  const corners: RunCorner[] = [];
  const warnings: Trouble[] = [];
  for (const [index, said] of data.corners.entries()) {
    const corner = cornerOf(said);
    const where = `corners[${index}]`;
    if (!corner.ok) return refused({ ...corner.trouble, where });
    warnings.push(...corner.warnings.map((warning) => ({ ...warning, where })));
    corners.push({ corner: corner.value, joint: said.joint });
  }
  return fine(
    {
      name: data.name,
      unit: data.unit ?? "mm",
      spring: spring.value,
      projectionMm: data.projectionMm ?? null,
      heightMm: data.heightMm ?? null,
      wallsMm: data.wallsMm,
      corners,
      start: data.start,
      end: data.end,
      sticks: data.sticks === undefined ? null : (data.sticks.map(withoutGaps) as LengthsQuestion["sticks"]),
      allowances: data.allowances === undefined ? null : withoutGaps(data.allowances),
    },
    warnings,
  );
}

function springOf(data: z.infer<typeof corniceJobSchema>): Outcome<Spring | null> {
  const { springFromWallDeg, springFromCeilingDeg } = data;
  if (springFromWallDeg !== undefined && springFromCeilingDeg !== undefined) {
    const facts = { key: "springFromCeilingDeg", nearest: "", known: ["springFromWallDeg"] };
    return refused(cataloguedTrouble("file-key-unknown", "springFromCeilingDeg", facts));
  }
  if (springFromWallDeg !== undefined) return springFrom("wall", springFromWallDeg);
  if (springFromCeilingDeg !== undefined) return springFrom("ceiling", springFromCeilingDeg);
  return fine(null);
}

function cornerOf({ cornerDeg, triangleMm, kind }: z.infer<typeof cornerSchema>): Outcome<Corner> {
  if (triangleMm !== undefined) return cornerFromTriangle(triangleMm, kind ?? "inside");
  if (cornerDeg === undefined) {
    return refused(cataloguedTrouble("file-key-missing", "cornerDeg", { key: "cornerDeg" }));
  }
  return cornerFromAngle(cornerDeg, kind);
}

/** The question of a file: what it leaves out comes from the section; without one `file-key-missing` names it. */
export function corniceQuestionOf(job: CorniceJob, section: SectionSizes | null): Outcome<CorniceQuestion> {
  const projectionMm = job.projectionMm ?? section?.projectionMm;
  const heightMm = job.heightMm ?? section?.heightMm;
  const spring =
    job.spring === null && section !== null
      ? springFrom("wall", section.springFromWallDeg)
      : fine(job.spring);
  if (!spring.ok) return spring;
  if (spring.value === null) return keyMissing("springFromWallDeg");
  if (projectionMm === undefined) return keyMissing("projectionMm");
  if (heightMm === undefined) return keyMissing("heightMm");
  return fine({
    spring: spring.value,
    projectionMm,
    heightMm,
    wallsMm: job.wallsMm,
    corners: job.corners,
    start: job.start,
    end: job.end,
    scribing: section?.scribing,
  });
}

function keyMissing(key: string): ReturnType<typeof refused> {
  return refused(cataloguedTrouble("file-key-missing", key, { key }));
}
