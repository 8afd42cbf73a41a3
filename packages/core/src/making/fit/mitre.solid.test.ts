/** The mitres proven in three dimensions: two lengths sawn by their settings, hung, and looked at face to face. */
import { describe, expect, test } from "vitest";
import {
  type Corner,
  cornerFromAngle,
  cornice,
  hopper,
  type Mitre,
  mitre,
  rake,
  type Spring,
  springFrom,
  unlikeMitre,
} from "./index.ts";
import { answer, randomSection, ringOf, seededRandom } from "./testing/generators.ts";
import {
  add,
  apart,
  dot,
  endOfKeptPiece,
  type FlatPoint,
  hung,
  onSecondWall,
  raked,
  type SawSetting,
  sawnAt,
  type Vec,
} from "./testing/solid.ts";

const FACE_TO_FACE_MM = 0.01;

/** Ends of all the stick's lines, on the wall. */
function endFace(setting: SawSetting, section: readonly FlatPoint[], springDeg: number): Vec[] {
  return section.map((one) => hung(one, sawnAt(setting, one), springDeg));
}

/** The end moved so that the section's point that touches the corner's foot of the wall lies where it should. */
function pushedTo(end: readonly Vec[], along: number): Vec[] {
  return end.map((one) => add(one, [along, 0, 0]));
}

function furthest(a: readonly Vec[], b: readonly Vec[]): number {
  return Math.max(...a.map((one, index) => apart(one, b[index]!)));
}

/** How far the points leave the plane through the corner that halves it. */
function offPlane(points: readonly Vec[], corner: Corner): number {
  const half = (corner.cornerDeg / 2 / 180) * Math.PI;
  const normal: Vec = [Math.sin(half), corner.kind === "inside" ? -Math.cos(half) : Math.cos(half), 0];
  return Math.max(...points.map((one) => Math.abs(dot(one, normal))));
}

/** Where the line of the section's (0, 0) is sawn: the flat back's wall edge, which lies on the wall. */
const ORIGIN: FlatPoint = { acrossMm: 0, upMm: 0 };

function bothEnds(made: Mitre, section: readonly FlatPoint[], way: "laidFlat" | "swapped") {
  const spring = made.spring.fromWallDeg;
  const [left, right] =
    way === "laidFlat"
      ? [made.laidFlat.leftPiece, made.laidFlat.rightPiece]
      : [made.laidFlat.rightPiece, made.laidFlat.leftPiece];
  const first = pushedTo(endFace(left, section, spring), -sawnAt(left, ORIGIN));
  const second = pushedTo(endFace(right, section, spring), -sawnAt(right, ORIGIN)).map(
    onSecondWall(made.corner.cornerDeg, made.corner.kind),
  );
  return { first, second };
}

describe("200 random springs, corners and sections", () => {
  const random = seededRandom(20261124);
  const cases = Array.from({ length: 200 }, (_, index) => ({
    index,
    spring: answer(springFrom("wall", index % 20 === 0 ? (index % 40 === 0 ? 0 : 90) : random(0, 90))),
    corner: answer(cornerFromAngle(random(30, 175), random(0, 1) < 0.5 ? "inside" : "outside")),
    section: randomSection(random),
    bladeLeans: random(0, 1) < 0.5 ? ("left" as const) : ("right" as const),
  }));

  test.each(cases)("$index: face to face in one plane", ({ spring, corner, section, bladeLeans }) => {
    const made = answer(mitre({ spring, corner, bladeLeans }));
    const { first, second } = bothEnds(made, section, "laidFlat");
    expect(furthest(first, second)).toBeLessThan(FACE_TO_FACE_MM);
    expect(offPlane(first, corner)).toBeLessThan(FACE_TO_FACE_MM);
    expect(endOfKeptPiece(made.laidFlat.leftPiece)).toBe("right");
    expect(endOfKeptPiece(made.laidFlat.rightPiece)).toBe("left");
  });
});

describe("the proof can fail", () => {
  const corner = answer(cornerFromAngle(90, "inside"));
  const section = randomSection(seededRandom(7));
  const madeAt = (spring: Spring) => answer(mitre({ spring, corner }));

  test("with the spring taken from the ceiling", () => {
    const right = madeAt(answer(springFrom("wall", 38)));
    const wrong = { ...madeAt(answer(springFrom("wall", 52))), spring: right.spring };
    const { first, second } = bothEnds(wrong, section, "laidFlat");
    expect(furthest(first, second)).toBeGreaterThan(1);
  });

  test("with the wrong bevel that goes round", () => {
    const right = madeAt(answer(springFrom("wall", 45)));
    const bent = (cut: SawSetting) => ({ ...cut, bevelDeg: 26.5651 });
    const { leftPiece, rightPiece } = right.laidFlat;
    const spring = 45;
    const first = pushedTo(endFace(bent(leftPiece), section, spring), -sawnAt(bent(leftPiece), ORIGIN));
    const second = pushedTo(
      endFace(bent(rightPiece), section, spring),
      -sawnAt(bent(rightPiece), ORIGIN),
    ).map(onSecondWall(90, "inside"));
    expect(furthest(first, second)).toBeGreaterThan(0.5);
  });

  test("with the two pieces taken for each other", () => {
    const { first, second } = bothEnds(madeAt(answer(springFrom("wall", 38))), section, "swapped");
    expect(furthest(first, second)).toBeGreaterThan(1);
  });
});

describe("held at the spring", () => {
  test.each([
    ["inside", 90],
    ["inside", 135],
    ["outside", 75],
  ] as const)("%s corner of %d: the same ends as laid flat", (kind, cornerDeg) => {
    const corner = answer(cornerFromAngle(cornerDeg, kind));
    const made = answer(mitre({ spring: answer(springFrom("wall", 38)), corner }));
    const section = randomSection(seededRandom(11));
    for (const [flat, held] of [
      [made.laidFlat.leftPiece, made.heldAtSpring.leftPiece],
      [made.laidFlat.rightPiece, made.heldAtSpring.rightPiece],
    ] as const) {
      for (const one of section) {
        const onWall = hung(one, 0, 38);
        // Turned upside down with the wall to the fence: x and z change their signs.
        const onTable: Vec = [0, onWall[1], -onWall[2]];
        const swing = (held.mitreDeg * Math.PI) / 180;
        const side = held.turnHandleTo === "right" ? 1 : -1;
        const alongTable = -onTable[1] * Math.tan(swing) * side;
        const alongWall = -alongTable;
        expect(alongWall).toBeCloseTo(sawnAt(flat, one) - sawnAt(flat, ORIGIN), 6);
      }
      expect(held.keep === "left" ? "left" : "right").toBe(
        endOfKeptPiece(flat) === "left" ? "left" : "right",
      );
    }
  });
});

test("a hopper's sides meet all round", () => {
  const section = randomSection(seededRandom(3));
  for (const sides of [3, 4, 5, 6, 8, 12]) {
    for (const fromLevelDeg of [15, 40, 70, 85]) {
      const corner = answer(cornerFromAngle(180 - 360 / sides, "outside"));
      const spring = answer(springFrom("wall", 90 - fromLevelDeg));
      const box = answer(hopper({ sides, slope: { fromLevelDeg } }));
      const made = answer(mitre({ spring, corner }));
      const settings = { mitreDeg: box.mitreDeg, bevelDeg: box.bevelDeg };
      const sawn: Mitre = {
        ...made,
        laidFlat: {
          ...made.laidFlat,
          leftPiece: { ...made.laidFlat.leftPiece, ...settings },
          rightPiece: { ...made.laidFlat.rightPiece, ...settings },
        },
      };
      const { first, second } = bothEnds(sawn, section, "laidFlat");
      expect(furthest(first, second)).toBeLessThan(FACE_TO_FACE_MM);
    }
  }
});

describe("rake: level moulding, raking length and upper return, sawn by their settings", () => {
  const random = seededRandom(42);
  const cases = Array.from({ length: 200 }, (_, index) => ({
    index,
    slopeDeg: index === 0 ? 0 : random(1, 50),
    springDeg: index % 10 === 0 ? 0 : random(0, 60),
    lower: answer(cornerFromAngle(index % 3 === 0 ? 90 : random(60, 150), "outside")),
    upper: answer(cornerFromAngle(index % 3 === 0 ? 90 : random(60, 150), "outside")),
    vertices: randomSection(random),
    wallEdge: index % 2 === 0 ? ("gauge edge" as const) : ("far edge" as const),
  }));

  test.each(cases)("$index", ({ slopeDeg, springDeg, lower, upper, vertices, wallEdge }) => {
    // In the stick's frame x runs from the gauge edge: the mirror image where the wall is at the far edge.
    const xOf = (acrossMm: number) => (wallEdge === "gauge edge" ? acrossMm : 100 - acrossMm);
    const outline = ringOf(vertices.map(({ acrossMm, upMm }) => [xOf(acrossMm), upMm] as const));
    const section = { name: "random", stick: outline, outline, freeSpans: [], named: [] };
    const placing = { springFromWallDeg: springDeg, wallEdge };
    const made = answer(rake({ section, given: "level", placing, slopeDeg, lower, upper }));
    const flatOf = (member: "level" | "rake" | "upperReturn"): FlatPoint[] => {
      const { outline: ring } = made[member].section;
      const widthMm = Math.max(...ring.pieces.map(({ from }) => from.x));
      return ring.pieces.map(({ from }) => ({
        acrossMm: wallEdge === "gauge edge" ? from.x : widthMm - from.x,
        upMm: from.y,
      }));
    };
    const faces = (
      setting: SawSetting,
      member: "level" | "rake" | "upperReturn",
      slope: (v: Vec) => Vec,
    ): Vec[] => {
      const spring = made[member].springFromWallDeg;
      return flatOf(member).map((one) => slope(hung(one, sawnAt(setting, one), spring)));
    };
    const flat = (v: Vec) => v;
    const sloping = raked(slopeDeg);
    const meets = (left: Vec[], right: Vec[], corner: Corner) => {
      expect(spread(left, corner)).toBeLessThan(FACE_TO_FACE_MM);
      const first = againstWall(left, "right", corner);
      const second = againstWall(right, "left", corner).map(onSecondWall(corner.cornerDeg, corner.kind));
      // Both touch their own walls and end at the corner's plane; only the height of hanging is still free.
      const lift = first[0]![2] - second[0]![2];
      expect(furthest(first, pushedUp(second, lift))).toBeLessThan(FACE_TO_FACE_MM);
    };
    meets(faces(made.cuts.levelAtFoot, "level", flat), faces(made.cuts.rakeAtFoot, "rake", sloping), lower);
    meets(
      faces(made.cuts.rakeAtHead, "rake", sloping),
      faces(made.cuts.upperReturnAtHead, "upperReturn", flat),
      upper,
    );
    expect(endOfKeptPiece(made.cuts.levelAtFoot)).toBe("right");
    expect(endOfKeptPiece(made.cuts.rakeAtFoot)).toBe("left");
    expect(endOfKeptPiece(made.cuts.rakeAtHead)).toBe("right");
    expect(endOfKeptPiece(made.cuts.upperReturnAtHead)).toBe("left");
  });

  test("two rakes meet plumb in the middle", () => {
    const outline = ringOf([
      [0, 0],
      [40, 0],
      [40, 12],
      [10, 25],
      [0, 20],
    ]);
    const section = { name: "apex", stick: outline, outline, freeSpans: [], named: [] };
    const placing = { springFromWallDeg: 0, wallEdge: "gauge edge" } as const;
    const made = answer(rake({ section, given: "rake", placing, slopeDeg: 25 }));
    const ends = made.rake.section.outline.pieces.map(({ from }) => {
      const one = { acrossMm: from.x, upMm: from.y };
      return raked(25)(hung(one, sawnAt(made.cuts.rakeAtApex, one), made.rake.springFromWallDeg));
    });
    const xs = ends.map(([x]) => x);
    expect(Math.max(...xs) - Math.min(...xs)).toBeLessThan(FACE_TO_FACE_MM);
  });
});

/** How far points leave one upright plane that halves the corner, wherever it stands. */
function spread(points: readonly Vec[], corner: Corner): number {
  const half = (corner.cornerDeg / 2 / 180) * Math.PI;
  const normal: Vec = [Math.sin(half), corner.kind === "inside" ? -Math.cos(half) : Math.cos(half), 0];
  const distances = points.map((one) => dot(one, normal));
  return Math.max(...distances) - Math.min(...distances);
}

/** An end face in its wall's own frame, moved until its stick touches the wall and the end the plane through the corner. */
function againstWall(points: readonly Vec[], end: "left" | "right", corner: Corner): Vec[] {
  const touching = Math.max(...points.map(([, y]) => y));
  const half = (corner.cornerDeg / 2 / 180) * Math.PI;
  const ratio = corner.kind === "inside" ? 1 / Math.tan(half) : -1 / Math.tan(half);
  const [x, y] = points[0]!;
  // In the plane at this end: x = y cot for the stick's right end, the other way for its left.
  const inPlane = (y - touching) * ratio * (end === "right" ? 1 : -1);
  return points.map((one) => add(one, [inPlane - x, -touching, 0]));
}

function pushedUp(points: readonly Vec[], lift: number): Vec[] {
  return points.map((one) => add(one, [0, 0, lift]));
}

describe("unlike mouldings in proportion meet too", () => {
  const random = seededRandom(99);
  const cases = Array.from({ length: 60 }, (_, index) => ({
    index,
    corner: answer(cornerFromAngle(random(30, 175), index % 2 === 0 ? "inside" : "outside")),
    springs: [random(0, 90), random(0, 90)] as const,
    ratio: random(0.4, 2.5),
    face: Array.from({ length: 5 }, (_, step) => ({ x: random(0, 60), y: step * 12 })),
  }));

  test.each(cases)("$index", ({ corner, springs, ratio, face }) => {
    const of = (springDeg: number, scale: number) => {
      const scaled = face.map(({ x, y }) => ({ x: x * scale, y }));
      return {
        projectionMm: Math.max(...scaled.map(({ x }) => x)),
        heightMm: 48,
        spring: answer(springFrom("wall", springDeg)),
        face: scaled,
      };
    };
    const [first, second] = [of(springs[0], 1), of(springs[1], ratio)];
    const made = answer(unlikeMitre({ corner, first, second }));
    expect(made.line).toBe("straight");
    const ends = (setting: SawSetting, points: readonly { x: number; y: number }[], springDeg: number) => {
      const spring = (springDeg / 180) * Math.PI;
      const flat = points.map(({ x, y }) => ({
        acrossMm: x * Math.sin(spring) + y * Math.cos(spring),
        upMm: x * Math.cos(spring) - y * Math.sin(spring),
      }));
      return pushedTo(endFace(setting, flat, springDeg), -sawnAt(setting, ORIGIN));
    };
    const one = ends(made.first, first.face, springs[0]);
    const other = ends(made.second, second.face, springs[1]).map(onSecondWall(corner.cornerDeg, corner.kind));
    expect(furthest(one, other)).toBeLessThan(FACE_TO_FACE_MM);
    // The points given for marking are those places: along the first wall away from the corner, and out of it.
    for (const place of made.points) {
      const nearest = Math.min(
        ...one.map(([x, y, z]) =>
          Math.hypot(-x - place.alongFirstMm, -y - place.fromFirstWallMm, z - place.heightMm),
        ),
      );
      expect(nearest).toBeLessThan(FACE_TO_FACE_MM);
    }
  });
});

test("a butted end lies on the other wall, whatever the corner", () => {
  const section = randomSection(seededRandom(5));
  for (const cornerDeg of [45, 75, 90, 120, 160]) {
    const corner = answer(cornerFromAngle(cornerDeg, "inside"));
    const spring = answer(springFrom("wall", 38));
    const run = answer(
      cornice({ spring, projectionMm: 50, heightMm: 60, wallsMm: [3000, 3000], corners: [{ corner }] }),
    );
    const { right } = run.pieces[0]!;
    expect(right.joint).toBe("butt");
    const ends = pushedTo(endFace(right.laidFlat, section, 38), -sawnAt(right.laidFlat, ORIGIN));
    const angle = (cornerDeg / 180) * Math.PI;
    const normal: Vec = [Math.sin(angle), -Math.cos(angle), 0];
    for (const end of ends) expect(Math.abs(dot(end, normal))).toBeLessThan(FACE_TO_FACE_MM);
  }
});
