/** Scribed (coped) inside corners: one length butts into the corner, the other is cut to its face. */
import { type Point, point } from "../../curve/index.ts";
import {
  cataloguedTrouble,
  fine,
  type Outcome,
  refused,
  type TroubleCode,
  toRad,
} from "../../measure/index.ts";
import type { Section } from "../../section/index.ts";
import { sawCaution } from "./cautions.ts";
import type { Corner } from "./corner.ts";
import { faceProfile } from "./face-profile.ts";
import { flatSettings } from "./mitre.ts";
import type { Placing } from "./placed-section.ts";
import type { SawSettings } from "./saw-cut.ts";
import { springFrom } from "./spring.ts";
import { type FitDrawing, type FitTrouble, SAW_CONVENTION, type SawConvention } from "./types.ts";

export interface ScribeQuestion {
  readonly section: Section;
  readonly placing: Placing;
  readonly corner: Corner;
}

export interface Scribe {
  readonly corner: Corner;
  /**
   * The line to cut to, on the face, as seen square to the scribed length's wall: x from the corner of the walls along
   * that wall, y the height. Full size. For a square corner it is the section itself.
   */
  readonly faceLine: readonly Point[];
  /** The same cut where it comes out on the wall: x from the corner, y the height. */
  readonly wallLine: readonly Point[];
  /** The face's line laid flat with the stick on its back: x along the stick, y across its back from the wall's edge. */
  readonly laidFlatLine: readonly Point[];
  /** Saw this mitre first; its arris on the face is the line to follow. */
  readonly mitreFirst: SawSettings;
  /** How far the coping saw leans from square to the wall: it runs along the other length. Over a square corner it undercuts nothing. */
  readonly sawLeanDeg: number;
  readonly isPossible: boolean;
  readonly convention: SawConvention & {
    readonly lines: "from the corner of the walls, heights from the foot; the scribed length runs away to +x";
  };
  readonly assumed: readonly FitTrouble[];
  readonly cautions: readonly FitTrouble[];
  readonly drawing: FitDrawing;
}

/**
 * The outline of a scribe at full size.
 *
 * The first length stands with its face at projection p(h) from its wall. The scribed one's wood that stands q from its
 * own wall meets it at x = p / sin C + q / tan C along that wall. On the face q = p, so x = p / tan(C/2), where a mitre
 * would have its arris; at the wall q = 0. For a square corner both are p: the section itself, seen from behind for one
 * hand. Refused: outside corners, sections without a face. A face that curls under is said (`isPossible`).
 */
export function scribe(question: ScribeQuestion): Outcome<Scribe, TroubleCode> {
  const { section, placing, corner } = question;
  if (corner.kind === "outside") return refused(cataloguedTrouble("scribe-outside", "corner", {}));
  const spring = springFrom("wall", placing.springFromWallDeg);
  if (!spring.ok) return spring;
  const face = faceProfile(section, placing);
  if (face === null) return refused(cataloguedTrouble("scribe-no-face", "section", {}));
  const cornerRad = toRad(corner.cornerDeg);
  const springRad = toRad(placing.springFromWallDeg);
  const ofFace = 1 / Math.tan(cornerRad / 2);
  const ofWall = 1 / Math.sin(cornerRad);
  const faceLine = face.points.map(({ x, y }) => point(x * ofFace, y));
  const wallLine = face.points.map(({ x, y }) => point(x * ofWall, y));
  const laidFlatLine = face.points.map(({ x, y }) =>
    point(x * ofFace, x * Math.sin(springRad) + y * Math.cos(springRad)),
  );
  const hidden = face.hiddenAtMm[0];
  return fine<Scribe, TroubleCode>(
    {
      corner,
      faceLine,
      wallLine,
      laidFlatLine,
      mitreFirst: flatSettings(placing.springFromWallDeg, corner.cornerDeg / 2),
      sawLeanDeg: corner.cornerDeg - 90,
      isPossible: hidden === undefined,
      convention: {
        ...SAW_CONVENTION,
        lines: "from the corner of the walls, heights from the foot; the scribed length runs away to +x",
      },
      assumed: [cataloguedTrouble("scribe-like-sections", "", {})],
      cautions: [sawCaution()],
      drawing: {
        views: [
          {
            title: "the scribed end, seen square to its wall, full size",
            shapes: [
              {
                kind: "wall",
                name: "other wall",
                run: "open",
                points: [point(0, 0), point(0, face.heightMm)],
              },
              { kind: "cut", name: "line on the face", run: "open", points: faceLine },
              { kind: "hidden", name: "line at the wall", run: "open", points: wallLine },
            ],
            angles: [],
            places: [{ name: "corner", at: point(0, 0) }],
          },
        ],
      },
    },
    hidden === undefined ? [] : [cataloguedTrouble("scribe-hidden", "section", { heightMm: hidden })],
  );
}
