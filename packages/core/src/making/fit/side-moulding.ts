/** A moulding along a solid side: the side moves across its grain, the moulding does not. */
import { point } from "../../curve/index.ts";
import { cataloguedTrouble, fine, type Outcome, refused, type TroubleCode } from "../../measure/index.ts";
import { movement, type Sawn, type Timber } from "../../timber/index.ts";
import { LONGEST_MM, sizeTrouble } from "./checks.ts";
import type { FitDrawing, FitTrouble } from "./types.ts";

export interface SideMouldingQuestion {
  readonly timber: Timber;
  readonly sawn: Sawn;
  /** Across the side's grain, from its front edge to its back, mm. */
  readonly depthMm: number;
  /** Moisture content when it is fitted, and at its driest and wettest after, percent. */
  readonly fittedPercent: number;
  readonly driestPercent: number;
  readonly wettestPercent: number;
  /** Where the screws or buttons stand, mm from the front mitre. */
  readonly screwsMm: readonly number[];
  /** Shank of the screws, mm; a common one if left out. */
  readonly screwMm?: number | undefined;
}

export interface SlidingScrew {
  readonly fromFrontMm: number;
  /** How far the side's wood moves under it, driest and wettest, mm; to the back is positive. */
  readonly driestMm: number;
  readonly wettestMm: number;
  /** Slot in the moulding's direction: the shank and all of the travel, mm. */
  readonly slotMm: number;
}

export interface SideMoulding {
  readonly timber: string;
  readonly depthMm: number;
  /** Change of the side's depth from the day of fitting, mm; shrinking is negative. */
  readonly driestMm: number;
  readonly wettestMm: number;
  readonly travelMm: number;
  readonly fixedAt: "the front, at the mitre: glued and screwed";
  readonly screws: readonly SlidingScrew[];
  /** Cut the moulding shorter at the back by this, or it stands proud of the back when the side is driest, mm. */
  readonly shortAtBackMm: number;
  readonly convention: { readonly places: "from the front mitre; movement to the back is positive" };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/** A common screw for fixing a moulding from behind, mm across its shank (common practice, no source). */
const COMMON_SCREW_MM = 4;

/**
 * How much a solid side moves under a moulding that is fixed at the front and slides behind, and how long the slots
 * must be. The moulding's own movement along its grain is left out (a tenth of a percent at most). Refused: moistures
 * out of order, screws beyond the side, sizes that are none.
 */
export function sideMoulding(question: SideMouldingQuestion): Outcome<SideMoulding, TroubleCode> {
  const { timber, sawn, depthMm, fittedPercent, driestPercent, wettestPercent, screwsMm } = question;
  const { screwMm = COMMON_SCREW_MM } = question;
  const depth = sizeTrouble("depth of the side", "depth", depthMm, { mostMm: LONGEST_MM, zero: "refused" });
  const screw = sizeTrouble("screw's shank", "screw", screwMm, { mostMm: depthMm, zero: "refused" });
  if (depth !== null || screw !== null) return refused((depth ?? screw) as FitTrouble);
  if (driestPercent > fittedPercent || wettestPercent < fittedPercent) {
    const facts = { fittedPercent, driestPercent, wettestPercent };
    return refused(cataloguedTrouble("side-moisture-order", "moisture", facts));
  }
  const off = screwsMm.find((place) => !(place >= 0 && place <= depthMm));
  if (off !== undefined) {
    return refused(cataloguedTrouble("side-screw-place", "screws", { placeMm: off, depthMm }));
  }
  const base = { timber, widthMm: depthMm, fromPercent: fittedPercent, sawn };
  const dry = movement({ ...base, toPercent: driestPercent });
  if (!dry.ok) return dry;
  const wet = movement({ ...base, toPercent: wettestPercent });
  if (!wet.ok) return wet;
  const dryStrain = dry.value.width.strainRatio;
  const wetStrain = wet.value.width.strainRatio;
  const warnings = dry.warnings.length > 0 ? dry.warnings : wet.warnings;
  return fine<SideMoulding, TroubleCode>(
    {
      timber: timber.name,
      depthMm,
      driestMm: dry.value.width.changeMm,
      wettestMm: wet.value.width.changeMm,
      travelMm: wet.value.width.changeMm - dry.value.width.changeMm,
      fixedAt: "the front, at the mitre: glued and screwed",
      screws: screwsMm.map((fromFrontMm) => ({
        fromFrontMm,
        driestMm: withoutMinusZero(fromFrontMm * dryStrain),
        wettestMm: withoutMinusZero(fromFrontMm * wetStrain),
        slotMm: screwMm + fromFrontMm * (wetStrain - dryStrain),
      })),
      shortAtBackMm: Math.abs(dry.value.width.changeMm),
      convention: { places: "from the front mitre; movement to the back is positive" },
      assumed: [...dry.value.assumed, cataloguedTrouble("side-moulding-keeps-length", "", {})],
      cautions: [],
      drawing: sideDrawing(depthMm, screwsMm),
    },
    warnings,
  );
}

/** The side from outside, its front on the left, and where the moulding is fast and where it slides. */
function sideDrawing(depthMm: number, screwsMm: readonly number[]): FitDrawing {
  const heightMm = depthMm / 2;
  const strip = heightMm / 5;
  return {
    views: [
      {
        title: "the side, its front edge on the left",
        shapes: [
          {
            kind: "stick",
            name: "side",
            run: "closed",
            points: [point(0, 0), point(depthMm, 0), point(depthMm, heightMm), point(0, heightMm)],
          },
          {
            kind: "stick",
            name: "moulding",
            run: "open",
            points: [point(0, heightMm - strip), point(depthMm, heightMm - strip)],
          },
        ],
        angles: [],
        places: [
          { name: "fixed", at: point(0, heightMm - strip / 2) },
          ...screwsMm.map((place) => ({ name: "slides", at: point(place, heightMm - strip / 2) })),
        ],
      },
    ],
  };
}

function withoutMinusZero(value: number): number {
  return value === 0 ? 0 : value;
}
