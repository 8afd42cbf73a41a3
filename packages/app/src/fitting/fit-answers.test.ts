import { readFileSync } from "node:fs";
import { type Job, readJob } from "mouldwright/job";
import { flatItems } from "mouldwright/sheets";
import { describe, expect, test } from "vitest";
import { type LongPoint, longPointOf } from "./corner-answer.ts";
import { answerFit, type FitPage, type FitValue } from "./fit-answers.ts";
import { withFit, withStock, withTimber, withWorking } from "./fit-choices.ts";

function jobOf(name: string): Job {
  const url = new URL(`../../../../examples/${name}.json`, import.meta.url);
  const read = readJob(readFileSync(url, "utf8"));
  if (!read.ok) throw new Error(read.trouble.code);
  return read.value;
}

const CORNICE = jobOf("cornice");
const FRAME = jobOf("barometer-frame");
const WIDTH_MM = 94;

function answerTo<Page extends FitPage>(page: Page, job: Job): Extract<FitValue, { readonly kind: Page }> {
  const answer = answerFit({ page, job, widthMm: WIDTH_MM });
  if (!answer.ok) throw new Error(answer.troubles[0]?.code);
  if (answer.value.kind !== page) throw new Error("another page's answer");
  return answer.value as Extract<FitValue, { readonly kind: Page }>;
}

describe("at the wood yard", () => {
  test("so many lengths: size with everything allowed for", () => {
    const { stick, buys, timber } = answerTo("stick", withWorking(CORNICE, { lengthMm: 1349, sticks: 2 }));
    // By hand: 68 + 6, 22 + 4, 1349 + 2 · 50 + 2 · 25.
    expect([stick.stock.buy.widthMm, stick.stock.buy.thicknessMm]).toEqual([74, 26]);
    expect(buys).toEqual([{ lengthMm: 1499, count: 2 }]);
    expect(timber).toBeNull();
  });

  test("the cornice's pieces come out of the sticks at hand", () => {
    const run = withFit(CORNICE, "run", {
      wallsMm: [380, 1240, 380],
      corners: [
        { cornerDeg: 90, kind: "outside" },
        { cornerDeg: 90, kind: "outside" },
      ],
    });
    const two = withStock(withFit(run, "stick", { pieces: "cornice" }), [{ lengthMm: 1700, count: 3 }]);
    const { buys, shared } = answerTo("stick", two);
    expect(buys).toEqual([{ lengthMm: 1700, count: 2 }]);
    expect(shared?.sticks.flatMap(({ pieces }) => pieces.map(({ name }) => name)).sort()).toEqual([
      "Piece 1",
      "Piece 2",
      "Piece 3",
    ]);
  });

  test("a timber moves less by the day it is fitted than by the driest, and brings its own dust caution", () => {
    const { timber, cautions } = answerTo("stick", withTimber(CORNICE, "Mahogany, Honduras"));
    const plain = answerTo("stick", CORNICE);
    expect(timber?.drying.width.changeMm).toBeLessThan(0);
    expect(timber?.wetting.width.changeMm).toBeGreaterThan(0);
    expect(cautions.length).toBeGreaterThan(plain.cautions.length);
  });

  test("an unknown timber and sticks that are too short are refused in words", () => {
    const unknown = answerFit({ page: "stick", job: withTimber(CORNICE, "glass"), widthMm: WIDTH_MM });
    expect(unknown.ok ? "" : unknown.troubles[0]?.code).toMatch(/^timber-/);
    const short = withStock(withFit(CORNICE, "stick", { pieces: "cornice" }), [{ lengthMm: 600, count: 1 }]);
    expect(answerFit({ page: "stick", job: short, widthMm: WIDTH_MM }).ok).toBe(false);
  });
});

describe("at the saw", () => {
  test("the section's own spring is taken: 38°, square outside corner", () => {
    const { mitre, springIs } = answerTo("corner", CORNICE);
    expect(springIs).toBe("bevel at that edge");
    // Printed saw tables (checks/area-b): spring 38° at a square corner, mitre 31.62°, bevel 33.86°.
    expect(mitre.laidFlat.mitreDeg).toBeCloseTo(31.62, 2);
    expect(mitre.laidFlat.bevelDeg).toBeCloseTo(33.86, 2);
  });

  test("what the maker says goes before the section", () => {
    const said = withFit(CORNICE, "corner", { springFromWallDeg: 45, cornerDeg: 60, kind: "inside" });
    const { mitre, springIs } = answerTo("corner", said);
    expect([mitre.spring.fromWallDeg, mitre.corner.cornerDeg, mitre.corner.kind, springIs]).toEqual([
      45,
      60,
      "inside",
      "as said",
    ]);
  });

  test("three lengths go before the angle", () => {
    const triangleMm = { alongFirstMm: 300, alongSecondMm: 400, acrossMm: 500 };
    expect(answerTo("corner", withFit(CORNICE, "corner", { triangleMm })).mitre.corner.cornerDeg).toBeCloseTo(
      90,
    );
  });

  test.each(["inside", "outside"] as const)("%s: the long point is told as the picture shows it", (kind) => {
    for (const bladeLeans of ["left", "right"] as const) {
      const answer = answerTo("corner", withFit(CORNICE, "corner", { kind, bladeLeans }));
      for (const piece of [answer.left, answer.right]) {
        expect(piece.long.edge).toBe(longEdgeInPicture(piece));
        // An outside corner is longest at the ceiling, where the moulding stands out furthest; an inside one at the wall.
        expect(piece.long.edge).toBe(kind === "outside" ? "ceiling edge" : "wall edge");
      }
    }
  });

  test("a square cut has no long point", () => {
    const { left } = answerTo("corner", withFit(CORNICE, "corner", { springFromWallDeg: 0 }));
    expect(left.long).toEqual<LongPoint>({ edge: null, pastShortMm: 0 });
    expect(longPointOf({ ...left.flat, mitreDeg: 45, turnHandleTo: "left" }, 60).pastShortMm).toBeCloseTo(60);
  });
});

/** The words "long point" stand above the stick where it is at the fence. */
function longEdgeInPicture({ picture, flat }: ReturnType<typeof answerTo<"corner">>["left"]) {
  const heightOf = (word: string): number => {
    const found = flatItems(picture.items).find((item) => item.kind === "text" && item.text === word);
    return found?.kind === "text" ? found.at[1] : Number.NaN;
  };
  const isAtFence = heightOf("long point") < heightOf("short point");
  if (isAtFence) return flat.edgeAtFence;
  return flat.edgeAtFence === "wall edge" ? "ceiling edge" : "wall edge";
}

describe("a frame", () => {
  test("from its glass, with the section's own rail and rebate", () => {
    const glass = withFit(FRAME, "frame", { stated: "glass", acrossMm: 200, upMm: 300, allowanceMm: 2 });
    // By hand: glass + play − 2 rebates + 2 rails: 200 + 2 − 16 + 80.
    const lengths = answerTo("frame", glass).frame.rails.map(({ longMm }) => Math.round(longMm));
    expect(lengths.sort()).toEqual([266, 266, 366, 366]);
  });

  test("its mitres open in winter once a timber is named", () => {
    expect(answerTo("frame", FRAME).seasons).toBeNull();
    expect(answerTo("frame", withTimber(FRAME, "Cherry, black")).seasons?.opensAt).toBe("inside corner");
  });
});

describe("a run of cornice", () => {
  test("is told even where the sticks do not hold it", () => {
    const answer = answerTo("cornice", withStock(CORNICE, [{ lengthMm: 600, count: 1 }]));
    expect(answer.cornice.pieces).toHaveLength(3);
    expect(answer.sharingTroubles.length).toBeGreaterThan(0);
    expect(answer.rod).toBeNull();
  });

  test("scribed corners and returns are drawn", () => {
    const run = withFit(jobOf("plinth"), "run", {
      wallsMm: [800, 600],
      corners: [{ cornerDeg: 90, kind: "inside" }],
      start: "return",
      end: "against a wall",
    });
    const { cornice } = answerTo("cornice", withFit(run, "corner", { wallEdge: "gauge edge" }));
    expect(cornice.pieces.map(({ kind }) => kind)).toEqual(["return", "wall", "wall"]);
  });
});

describe("slopes", () => {
  test("a hip of two like sides on a square plan", () => {
    const { sloping } = answerTo("slopes", withFit(CORNICE, "slopes", { shown: "hip", mainDeg: 45 }));
    // By hand: tan hip = tan 45° / √2, so 35.26°.
    expect(sloping.shown === "hip" && sloping.hip.hipDeg).toBeCloseTo(35.264, 3);
  });

  test("a plumb box of four sides is mitred at no swing and 45° of lean", () => {
    const { sloping } = answerTo("slopes", withFit(CORNICE, "slopes", { shown: "box", boxDeg: 90 }));
    expect(sloping.shown === "box" && [sloping.box.mitreDeg, sloping.box.bevelDeg].map(Math.round)).toEqual([
      0, 45,
    ]);
  });

  test("the job's section runs up a gable; on no slope it stays as high as it is", () => {
    const { sloping } = answerTo("slopes", withFit(CORNICE, "slopes", { shown: "rake", rakeDeg: 0 }));
    if (sloping.shown !== "rake") throw new Error("another slope");
    expect(sloping.rake.rake.heightMm).toBeCloseTo(sloping.rake.level.heightMm);
    const steep = answerTo("slopes", withFit(CORNICE, "slopes", { rakeDeg: 30 })).sloping;
    expect(steep.shown === "rake" && steep.rake.upperReturn.heightMm).toBeGreaterThan(
      sloping.rake.level.heightMm,
    );
  });
});

test("a section that cannot be is refused, never thrown", () => {
  const broken: Job = { ...CORNICE, section: { parts: [{ kind: "fillet", widthMm: 500 }] } };
  for (const page of ["stick", "corner", "cornice"] as const) {
    expect(answerFit({ page, job: broken, widthMm: WIDTH_MM }).ok).toBe(false);
  }
});

describe("two unlike mouldings", () => {
  const besides = (projectionMm: number) => answerTo("unlike", withFit(CORNICE, "unlike", { projectionMm }));

  test("at every height the mitre stands as far from the other wall as the other's slope is out there", () => {
    const { own, other, mitre } = besides(30);
    expect(mitre.points.length).toBeGreaterThan(2);
    for (const { heightMm, fromFirstWallMm, fromSecondWallMm } of mitre.points) {
      expect(fromSecondWallMm).toBeCloseTo((30 * heightMm) / other.heightMm, 6);
      expect(fromFirstWallMm).toBeLessThanOrEqual(own.projectionMm + 1e-6);
    }
    expect(mitre.fromFirstWallDeg + mitre.fromSecondWallDeg).toBeCloseTo(90, 9);
  });

  test("the less the other comes out, the nearer its own wall the mitre runs", () => {
    const { own } = besides(30);
    const angles = [own.projectionMm / 2, own.projectionMm, own.projectionMm * 2].map(
      (projectionMm) => besides(projectionMm).mitre.fromFirstWallDeg,
    );
    expect([...angles].sort((one, other) => other - one)).toEqual(angles);
  });

  test("what is not said of the other is as this one has it, and both are drawn", () => {
    const { own, other, picture } = besides(30);
    expect([other.heightMm, other.springFromWallDeg]).toEqual([own.heightMm, own.springFromWallDeg]);
    expect(flatItems(picture.items).length).toBeGreaterThan(10);
  });
});

describe("along a solid side", () => {
  test("without a timber nothing is reckoned, and nothing refused", () => {
    expect(answerTo("side", { ...CORNICE, fit: {} })).toMatchObject({ side: null, picture: null });
  });

  test("slots give the shank and all of the travel at their place", () => {
    const named = withFit(withTimber(CORNICE, "Mahogany, Honduras"), "side", {
      depthMm: 400,
      screwsMm: [200],
      screwMm: 5,
    });
    const { side } = answerTo("side", named);
    expect(side?.travelMm).toBeGreaterThan(0);
    // Half the depth from the front moves half as far.
    expect(side?.screws[0]?.slotMm).toBeCloseTo(5 + (side?.travelMm ?? 0) / 2, 6);
  });

  test("a screw beyond the side is refused in words", () => {
    const off = withFit(withTimber(CORNICE, "Mahogany, Honduras"), "side", { depthMm: 100, screwsMm: [200] });
    const answer = answerFit({ page: "side", job: off, widthMm: WIDTH_MM });
    expect(answer.ok ? "" : answer.troubles[0]?.code).toBe("side-screw-place");
  });
});
