/** Makes a plane of an entry whose keys and lengths are in order: fills in what is left out and refuses what cannot be. */
import {
  cataloguedTrouble,
  exceedsMm,
  fine,
  type LengthUnit,
  refused,
  type Writer,
  writerFor,
} from "../measure/index.ts";
import type { FilePlane, FileUnit } from "./file-schema.ts";
import {
  defaultQuirkMm,
  FILLISTER_DEFAULTS,
  PLOUGH_DEFAULTS,
  POSSIBLE_DEG,
  SIDE_PLANE_WIDTH_MM,
  SNIPE_BILL_DEFAULTS,
  USUAL_ARC_DEG,
  USUAL_DEG,
  usualMm,
} from "./plane-defaults.ts";
import type { Sizes } from "./plane-name.ts";
import { shapedSole } from "./shaped-sole.ts";
import type { ShelfOutcome, ShelfTrouble } from "./shelf-trouble.ts";
import { snappedMm } from "./snapped.ts";
import { isWiderThanCircle, soleAngleDeg } from "./sole.ts";
import type { CurvedPlane, Plane, SidePlane } from "./types.ts";

export interface PlaneBuilt {
  readonly plane: Plane;
  readonly assumed: readonly string[];
}

export interface PlaneIdentity {
  readonly id: string;
  readonly name: string;
  readonly at: string;
  readonly unit: FileUnit;
  /** What assumptions are told in. */
  readonly tellIn: LengthUnit;
}

type FileOf<Kind extends FilePlane["kind"]> = Extract<FilePlane, { kind: Kind }>;

/** The plane of a checked entry, with what had to be assumed and what is unusual about it. */
export function buildPlane(file: FilePlane, sizes: Sizes, identity: PlaneIdentity): ShelfOutcome<PlaneBuilt> {
  const impossible = impossibleAngle(file, identity.at);
  if (impossible !== undefined) return refused(impossible);
  const assumptions = new Assumptions(sizes, identity.tellIn);
  const made = makePlane(file, sizes, identity, assumptions);
  if (!made.ok) return made;
  const oversized = partsTrouble(made.value, identity.at);
  if (oversized !== undefined) return refused(oversized);
  const plane = made.value;
  return fine({ plane, assumed: assumptions.sentences(identity.name) }, [
    ...unusualSizes(file, sizes, identity),
    ...unusualAngles(file, plane, identity),
  ]);
}

function makePlane(
  file: FilePlane,
  sizes: Sizes,
  identity: PlaneIdentity,
  assumptions: Assumptions,
): ShelfOutcome<Plane> {
  const { id, name } = identity;
  switch (file.kind) {
    case "hollow":
    case "round":
      return fine(curvedPlane(file, sizes, identity));
    case "rebate":
    case "smoother":
      return fine({ id, name, kind: file.kind, widthMm: sizes.get("width")!.mm });
    case "snipe bill":
      return fine({
        id,
        name,
        kind: file.kind,
        hand: file.hand,
        widthMm: assumptions.sizeMm("width", SNIPE_BILL_DEFAULTS.widthMm, "beak"),
        noseMm: assumptions.sizeMm("nose", SNIPE_BILL_DEFAULTS.noseMm, "nose"),
        slopeDeg: assumptions.angleDeg(file.slope, SNIPE_BILL_DEFAULTS.slopeDeg, "flank"),
        reachMm: assumptions.sizeMm("reach", SNIPE_BILL_DEFAULTS.reachMm, "reach"),
      });
    case "moving fillister": {
      const widthMm = sizes.get("width")!.mm;
      const fenceMm = assumptions.sizeMm("fence", widthMm, "fence's reach");
      const depthMm = assumptions.sizeMm("depth", FILLISTER_DEFAULTS.depthMm, "greatest depth");
      return fine({ id, name, kind: file.kind, widthMm, fenceMm, depthMm });
    }
    case "plough": {
      const widthsMm = file.widths.map((_, index) => sizes.get(`widths[${index}]`)!.mm);
      const fenceMm = assumptions.sizeMm("fence", PLOUGH_DEFAULTS.fenceMm, "fence's reach");
      const depthMm = assumptions.sizeMm("depth", PLOUGH_DEFAULTS.depthMm, "greatest depth");
      return fine({ id, name, kind: file.kind, widthsMm, fenceMm, depthMm });
    }
    case "side round":
    case "side snipe":
    case "side rebate":
      return fine(sidePlane(file, identity, assumptions));
    case "bead": {
      const widthMm = sizes.get("width")!.mm;
      const quirkMm = assumptions.sizeMm("quirk", defaultQuirkMm(widthMm), "quirk");
      const bead = { id, name, kind: file.kind, widthMm, quirkMm } as const;
      // The right is what an absent hand means; leaving it out keeps one plane from having two forms.
      return fine(file.hand === "left" ? { ...bead, hand: file.hand } : bead);
    }
    case "shaped": {
      const sole = shapedSole(file.sole, identity);
      return sole.ok ? fine({ id, name, kind: file.kind, sole: sole.value, cutsWall: file.cutsWall }) : sole;
    }
  }
}

function curvedPlane(
  file: FileOf<"hollow"> | FileOf<"round">,
  sizes: Sizes,
  identity: PlaneIdentity,
): CurvedPlane {
  const { id, name } = identity;
  const wall = sizes.get("wall");
  const shoulderWidth = sizes.get("shoulder.width");
  const shoulderHeight = sizes.get("shoulder.height");
  return {
    id,
    name,
    kind: file.kind,
    radiusMm: sizes.get("radius")!.mm,
    widthMm: sizes.get("width")!.mm,
    ...(file.pitch === undefined ? {} : { pitchDeg: file.pitch }),
    ...(file.skew === undefined ? {} : { skewDeg: file.skew }),
    ...(shoulderWidth === undefined || shoulderHeight === undefined
      ? {}
      : { shoulder: { widthMm: shoulderWidth.mm, heightMm: shoulderHeight.mm } }),
    ...(wall === undefined ? {} : { wallMm: wall.mm }),
  };
}

function sidePlane(
  file: FileOf<"side round"> | FileOf<"side snipe"> | FileOf<"side rebate">,
  identity: PlaneIdentity,
  assumptions: Assumptions,
): SidePlane {
  const { id, name } = identity;
  const widthMm = assumptions.sizeMm("width", SIDE_PLANE_WIDTH_MM[file.kind], "foot");
  const side = { id, name, kind: file.kind, hand: file.hand, widthMm } as const;
  if (file.kind !== "side round") return side;
  return { ...side, radiusMm: assumptions.sizeMm("radius", widthMm, "radius") };
}

/** Takes sizes where they are given and notes the others, which the maker is told in one sentence a plane. */
class Assumptions {
  readonly #taken: string[] = [];
  readonly #sizes: Sizes;
  readonly #write: Writer;

  constructor(sizes: Sizes, tellIn: LengthUnit) {
    this.#sizes = sizes;
    this.#write = writerFor(tellIn);
  }

  sizeMm(key: string, defaultMm: number, part: string): number {
    const given = this.#sizes.get(key);
    if (given !== undefined) return given.mm;
    const snappedDefaultMm = snappedMm(defaultMm);
    this.#taken.push(`${part} ${this.#write.length(snappedDefaultMm)}`);
    return snappedDefaultMm;
  }

  angleDeg(given: number | undefined, defaultDeg: number, part: string): number {
    if (given !== undefined) return given;
    this.#taken.push(`${part} ${this.#write.degrees(defaultDeg)} from level`);
    return defaultDeg;
  }

  sentences(name: string): readonly string[] {
    if (this.#taken.length === 0) return [];
    const verb = this.#taken.length === 1 ? "is" : "are";
    const taken = this.#write.list(this.#taken);
    return [`${name}: ${taken} ${verb} assumed; measure the plane and enter what differs.`];
  }
}

/** A part that is larger than what it is a part of, or a sole wider than its whole circle. */
function partsTrouble(plane: Plane, at: string): ShelfTrouble | undefined {
  switch (plane.kind) {
    case "hollow":
    case "round": {
      const { name, widthMm, radiusMm, shoulder } = plane;
      if (isWiderThanCircle(plane)) {
        const facts = { name, widthMm, radiusMm, mostMm: 2 * radiusMm };
        return cataloguedTrouble("shelf-wider-than-circle", `${at}.width`, facts);
      }
      if (shoulder === undefined || !exceedsMm(widthMm, shoulder.widthMm)) return undefined;
      return partTrouble(at, ["width", widthMm], ["shoulder.width", shoulder.widthMm]);
    }
    case "snipe bill":
      return exceedsMm(plane.widthMm, plane.noseMm)
        ? undefined
        : partTrouble(at, ["nose", plane.noseMm], ["width", plane.widthMm]);
    case "side round":
      return plane.radiusMm === undefined || !exceedsMm(plane.widthMm, plane.radiusMm)
        ? undefined
        : partTrouble(at, ["width", plane.widthMm], ["radius", plane.radiusMm]);
    default:
      return undefined;
  }
}

function partTrouble(at: string, part: [string, number], whole: [string, number]): ShelfTrouble {
  const [key, valueMm] = part;
  const [than, limitMm] = whole;
  return cataloguedTrouble("shelf-part-larger-than-whole", `${at}.${key}`, { key, valueMm, than, limitMm });
}

/** The angles that an entry gives itself, by key, degrees. */
function anglesOf(file: FilePlane): readonly (readonly [string, number])[] {
  const keyed = file as Readonly<Record<string, unknown>>;
  return Object.keys(POSSIBLE_DEG).flatMap((key) => {
    const valueDeg = keyed[key];
    return typeof valueDeg === "number" ? [[key, valueDeg] as const] : [];
  });
}

function impossibleAngle(file: FilePlane, at: string): ShelfTrouble | undefined {
  for (const [key, valueDeg] of anglesOf(file)) {
    const { least, most } = POSSIBLE_DEG[key]!;
    if (valueDeg >= least && valueDeg <= most) continue;
    const facts = { key, valueDeg, leastDeg: least, mostDeg: most };
    return cataloguedTrouble("shelf-angle-out-of-range", `${at}.${key}`, facts);
  }
  return undefined;
}

function unusualAngles(file: FilePlane, plane: Plane, { name, at }: PlaneIdentity): readonly ShelfTrouble[] {
  const angles = anglesOf(file).map(([key, valueDeg]) => ({ key, valueDeg, range: USUAL_DEG[key]! }));
  if (plane.kind === "hollow" || plane.kind === "round") {
    angles.push({ key: "arc of the sole", valueDeg: soleAngleDeg(plane), range: USUAL_ARC_DEG });
  }
  return angles
    .filter(({ valueDeg, range }) => valueDeg < range.least || valueDeg > range.most)
    .map(({ key, valueDeg, range }) => {
      const facts = { name, key, valueDeg, leastDeg: range.least, mostDeg: range.most };
      return cataloguedTrouble("shelf-angle-unusual", at, facts);
    });
}

function unusualSizes(file: FilePlane, sizes: Sizes, { name, at }: PlaneIdentity): readonly ShelfTrouble[] {
  return [...sizes].flatMap(([key, { mm }]) => {
    const range = usualMm(file.kind, key);
    if (range === undefined || (mm >= range.least && mm <= range.most)) return [];
    const facts = { name, key, valueMm: mm, leastMm: range.least, mostMm: range.most };
    return [cataloguedTrouble("shelf-size-unusual", `${at}.${key}`, facts)];
  });
}
