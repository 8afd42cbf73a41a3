/**
 * The circle that lies nearest to measured points.
 *
 * Three fits solve equations and never go astray: Kåsa's, which makes a short arc's radius too small, and Pratt's and
 * Taubin's, which do not. The geometric fit makes the sum of the squared distances least; it starts at Taubin's circle
 * and takes damped Gauss–Newton steps (Levenberg, Marquardt). Source of all four: N. Chernov, Circular and Linear
 * Regression, CRC Press 2010, chapters 4 and 5; numbers in checks/area-k.json.
 */
import {
  CONVERGED_RATIO,
  cataloguedTrouble,
  FARTHEST_MM,
  fine,
  type Outcome,
  refused,
  SAME_POINT_MM,
  type TroubleCode,
} from "../measure/index.ts";
import { distanceMm, point } from "./point.ts";
import type { Circle, Point } from "./types.ts";

export type CircleFitting = "kasa" | "pratt" | "taubin" | "geometric";

export interface CircleFit extends Circle {
  /** Root of the mean of the points' squared distances from the circle, mm. */
  readonly rmsMm: number;
}

/** Fewer points than this lie on many circles. */
const LEAST_POINTS = 3;

/**
 * The circle nearest to the points, mm. Refused: fewer than three points, a coordinate that is no number (or farther
 * off than a kilometre), and points on one line, to within a millionth of a millimetre or so nearly that the nearest
 * circle is a line.
 */
export function fitCircle(
  points: readonly Point[],
  fitting: CircleFitting = "geometric",
): Outcome<CircleFit, TroubleCode> {
  const broken = points.findIndex(({ x, y }) => !(Math.abs(x) <= FARTHEST_MM && Math.abs(y) <= FARTHEST_MM));
  if (broken >= 0) return refused(cataloguedTrouble("point-not-a-place", "points", { place: broken + 1 }));
  if (points.length < LEAST_POINTS) {
    const facts = { count: points.length, least: LEAST_POINTS };
    return refused(cataloguedTrouble("points-too-few", "points", facts));
  }
  const cloud = cloudOf(points);
  const circle = isInLine(cloud) ? null : circleOfCloud(cloud, fitting);
  if (circle === null) {
    return refused(cataloguedTrouble("points-in-line", "points", { count: points.length }));
  }
  const centre = point(cloud.middle.x + circle.x * cloud.scaleMm, cloud.middle.y + circle.y * cloud.scaleMm);
  const radiusMm = circle.radius * cloud.scaleMm;
  const squares = points.reduce((sum, p) => sum + (distanceMm(p, centre) - radiusMm) ** 2, 0);
  return fine({ centre, radiusMm, rmsMm: Math.sqrt(squares / points.length) });
}

/** Points about their middle, in units of their mean distance from it, with the means of their products. */
interface Cloud {
  readonly middle: Point;
  readonly scaleMm: number;
  readonly places: readonly Point[];
  readonly xx: number;
  readonly yy: number;
  readonly xy: number;
  /** z is x² + y². */
  readonly xz: number;
  readonly yz: number;
  readonly zz: number;
}

/** A circle in a cloud's own frame. */
interface Round {
  readonly x: number;
  readonly y: number;
  readonly radius: number;
}

function cloudOf(points: readonly Point[]): Cloud {
  const mean = (of: (p: Point) => number, among: readonly Point[]) =>
    among.reduce((sum, p) => sum + of(p), 0) / among.length;
  const middle = { x: mean((p) => p.x, points), y: mean((p) => p.y, points) };
  const spread = Math.sqrt(mean((p) => (p.x - middle.x) ** 2 + (p.y - middle.y) ** 2, points));
  const scaleMm = spread > 0 ? spread : 1;
  const places = points.map((p) => ({ x: (p.x - middle.x) / scaleMm, y: (p.y - middle.y) / scaleMm }));
  const z = (p: Point) => p.x * p.x + p.y * p.y;
  return {
    middle,
    scaleMm,
    places,
    xx: mean((p) => p.x * p.x, places),
    yy: mean((p) => p.y * p.y, places),
    xy: mean((p) => p.x * p.y, places),
    xz: mean((p) => p.x * z(p), places),
    yz: mean((p) => p.y * z(p), places),
    zz: mean((p) => z(p) * z(p), places),
  };
}

/** Whether no point lies off the line through the middle along which they spread. */
function isInLine({ places, xx, yy, xy, scaleMm }: Cloud): boolean {
  const angle = Math.atan2(2 * xy, xx - yy) / 2;
  const [cos, sin] = [Math.cos(angle), Math.sin(angle)];
  const off = places.reduce((most, p) => Math.max(most, Math.abs(p.y * cos - p.x * sin)), 0);
  return off * scaleMm <= SAME_POINT_MM;
}

function circleOfCloud(cloud: Cloud, fitting: CircleFitting): Round | null {
  const farthest = FARTHEST_MM / cloud.scaleMm;
  const solved =
    fitting === "geometric"
      ? nearestFrom(cloud, solvedFit(cloud, "taubin"), farthest)
      : solvedFit(cloud, fitting);
  return solved !== null && solved.radius <= farthest ? solved : null;
}

/**
 * Kåsa's, Pratt's or Taubin's circle: all three have the centre of x(Mxx − η) + yMxy = Mxz / 2 and its like, with η 0
 * for Kåsa's and else the least root, not below 0, of the fit's own polynomial.
 */
function solvedFit(cloud: Cloud, fitting: Exclude<CircleFitting, "geometric">): Round {
  const { xx, yy, xy, xz, yz } = cloud;
  const eta = fitting === "kasa" ? 0 : leastRoot(polynomialOf(cloud, fitting));
  const spread = xx + yy;
  const determinant = eta * eta - eta * spread + xx * yy - xy * xy;
  const x = (xz * (yy - eta) - yz * xy) / determinant / 2;
  const y = (yz * (xx - eta) - xz * xy) / determinant / 2;
  return { x, y, radius: Math.sqrt(x * x + y * y + spread + (fitting === "pratt" ? 2 * eta : 0)) };
}

/** Coefficients from the constant one up (Chernov 2010, sections 5.6 and 5.9). */
function polynomialOf({ xx, yy, xy, xz, yz, zz }: Cloud, fitting: "pratt" | "taubin"): readonly number[] {
  const spread = xx + yy;
  const product = xx * yy - xy * xy;
  const spreadOfZ = zz - spread * spread;
  const a0 = xz * (xz * yy - yz * xy) + yz * (yz * xx - xz * xy) - spreadOfZ * product;
  const a1 = spreadOfZ * spread + 4 * product * spread - xz * xz - yz * yz;
  return fitting === "taubin"
    ? [a0, a1, -3 * spread * spread - zz, 4 * spread]
    : [a0, a1, 4 * product - 3 * spread * spread - zz, 0, 4];
}

/** Newton's method from 0, from where these polynomials fall to the wanted root without turning. */
const MOST_ROUNDS = 100;

function leastRoot(coefficients: readonly number[]): number {
  let x = 0;
  let off = Number.POSITIVE_INFINITY;
  for (let round = 0; round < MOST_ROUNDS; round++) {
    let value = 0;
    let slope = 0;
    for (const coefficient of [...coefficients].reverse()) {
      slope = slope * x + value;
      value = value * x + coefficient;
    }
    const next = x - value / slope;
    // Rounding lets the value grow again only once the root is reached as nearly as numbers can.
    if (!Number.isFinite(next) || Math.abs(value) >= off) return x;
    off = Math.abs(value);
    if (Math.abs(next - x) <= CONVERGED_RATIO * Math.abs(next)) return next;
    x = next;
  }
  return x;
}

/** How strongly steps are damped at first, and by what the damping changes after a good and after a bad one. */
const FIRST_DAMPING = 0.01;
const EASED = 0.1;
const STIFFENED = 10;

/**
 * The circle of least squared distances. For a given centre the best radius is the mean distance, so only the centre
 * is looked for: the distances less their mean are the errors, the directions to the points less theirs their slopes.
 * Null where the centre goes off without end: a line is nearer to the points than any circle.
 */
function nearestFrom({ places }: Cloud, start: Round, farthest: number): Round | null {
  let at = start;
  let error = errorAbout(places, at);
  let damping = FIRST_DAMPING;
  for (let round = 0; round < MOST_ROUNDS * 10; round++) {
    if (!(error.radius <= farthest)) return null;
    const { gx, gy, hxx, hyy, hxy } = error;
    const [dxx, dyy] = [hxx * (1 + damping), hyy * (1 + damping)];
    const determinant = dxx * dyy - hxy * hxy;
    const stepX = (gx * dyy - gy * hxy) / determinant;
    const stepY = (gy * dxx - gx * hxy) / determinant;
    const step = Math.hypot(stepX, stepY);
    if (!Number.isFinite(step) || step <= CONVERGED_RATIO * error.radius) break;
    const next = { x: at.x + stepX, y: at.y + stepY, radius: 0 };
    const nextError = errorAbout(places, next);
    if (nextError.squares <= error.squares) {
      at = next;
      error = nextError;
      damping *= EASED;
    } else {
      damping *= STIFFENED;
    }
  }
  return { x: at.x, y: at.y, radius: error.radius };
}

/** Mean distance, the squares that are left, and the normal equations of a step of the centre. */
interface ErrorAbout {
  readonly radius: number;
  readonly squares: number;
  readonly gx: number;
  readonly gy: number;
  readonly hxx: number;
  readonly hyy: number;
  readonly hxy: number;
}

function errorAbout(places: readonly Point[], { x, y }: Round): ErrorAbout {
  const distances = places.map((p) => Math.hypot(p.x - x, p.y - y));
  const radius = distances.reduce((sum, d) => sum + d, 0) / places.length;
  const away = places.map((p, i) => {
    const d = distances[i] as number;
    return d > 0 ? { x: (p.x - x) / d, y: (p.y - y) / d } : { x: 0, y: 0 };
  });
  const meanX = away.reduce((sum, u) => sum + u.x, 0) / places.length;
  const meanY = away.reduce((sum, u) => sum + u.y, 0) / places.length;
  const sums = { squares: 0, gx: 0, gy: 0, hxx: 0, hyy: 0, hxy: 0 };
  distances.forEach((d, i) => {
    const off = d - radius;
    const ux = (away[i] as Point).x - meanX;
    const uy = (away[i] as Point).y - meanY;
    sums.squares += off * off;
    sums.gx += ux * off;
    sums.gy += uy * off;
    sums.hxx += ux * ux;
    sums.hyy += uy * uy;
    sums.hxy += ux * uy;
  });
  return { radius, ...sums };
}
