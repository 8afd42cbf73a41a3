import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { type Plan, readPlan, recutPlan } from "../../packages/core/src/cutting/index.ts";
import { type Bench, newBench, type Ran, runHere } from "./run.ts";

/** A cyma of two quarters of an eighth each between two fillets; every size is the job's own. */
const CYMA = {
  format: "mouldwright/job",
  version: 1,
  name: "Chart cabinet: cyma",
  stick: { widthMm: 28, thicknessMm: 23 },
  section: {
    parts: [
      { kind: "fillet", widthMm: 6 },
      { kind: "step", riseMm: -1.5 },
      { kind: "cyma recta", acrossMm: 13.470384, riseMm: -13.470384 },
      { kind: "fillet", widthMm: "rest" },
    ],
  },
};

const SHELF = {
  format: "mouldwright/shelf",
  version: 1,
  unit: "mm",
  planes: [
    { id: "hollow-3-8", name: "small hollow", kind: "hollow", radius: "3/8 in", width: "3/8 in" },
    { id: "round-3-8", name: "small round", kind: "round", radius: "3/8 in", width: "3/8 in" },
    { id: "snipe-left", kind: "snipe bill", hand: "left" },
    { id: "snipe-right", kind: "snipe bill", hand: "right" },
    { id: "rebate-6", kind: "rebate", width: 6 },
    { id: "rebate-12", kind: "rebate", width: 12 },
    { id: "rebate-32", kind: "rebate", width: 32 },
  ],
};

/** The same cyma hung at 38° from the wall, so that two bevels are sawn off its back and every way is open. */
const CORNICE = {
  ...CYMA,
  name: "Chart cabinet: small cornice",
  stick: { widthMm: 60, thicknessMm: 23 },
  section: {
    ...CYMA.section,
    back: [
      { kind: "bevel", edge: "gauge", riseMm: 8, fromBackDeg: 52 },
      { kind: "bevel", edge: "far", riseMm: 5, fromBackDeg: 38 },
    ],
  },
};

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("planes.json", JSON.stringify(SHELF));
  await bench.put("cyma.json", JSON.stringify(CYMA));
  await bench.put("cornice.json", JSON.stringify(CORNICE));
});
afterAll(() => bench.clear());

const run = (file: string, ...more: readonly string[]): Promise<Ran> =>
  runHere(["plan", bench.path(file), "--shelf", bench.path("planes.json"), ...more]);

const planned = new Map<string, Promise<Plan>>();

/** The plan that the words give, each made once; one that does not hold fails the test. */
function planOf(file: string, ...more: readonly string[]): Promise<Plan> {
  const key = [file, ...more].join(" ");
  const known = planned.get(key);
  if (known !== undefined) return known;
  const made = run(file, ...more, "--json").then((ran) => heldPlan(ran));
  planned.set(key, made);
  return made;
}

function heldPlan(ran: Ran): Plan {
  const plan = readPlan(ran.out);
  if (!plan.ok) throw new Error(`${ran.code}: ${ran.err}`);
  expect(recutPlan(plan.value).findings).toEqual([]);
  return plan.value;
}

const oneLine = (text: string): string => text.replace(/\s+/g, " ");

describe("what a plan is asked for", () => {
  test("a plane left out, by id or by name, cuts nothing, and the card says so", async () => {
    const usual = await planOf("cyma.json");
    const used = new Set(usual.cuts.map(({ plane }) => plane.id));
    expect(used.has("round-3-8")).toBe(true);
    const without = await planOf("cyma.json", "--without", "round-3-8, SMALL HOLLOW");
    const left = without.cuts.map(({ plane }) => plane.id);
    expect(left).not.toContain("round-3-8");
    expect(left).not.toContain("hollow-3-8");
    const ran = await run("cyma.json", "--without", "round-3-8");
    // The one round is what the hollow half needs: without it something stays uncut.
    expect(ran.code).toBe(1);
    expect(oneLine(ran.out)).toContain("Left out small round; not used, as asked");
  });

  test("no plane leans further than it is allowed, in any pose", async () => {
    const leans = (plan: Plan): number[] =>
      plan.cuts.flatMap(({ runs, cant }) =>
        (runs ?? []).flat().map(([, , tilt]) => Math.abs(((tilt + cant + 540) % 360) - 180)),
      );
    const usual = Math.max(...leans(await planOf("cyma.json")));
    const mostDeg = Math.floor(usual / 2);
    expect(mostDeg).toBeGreaterThan(0);
    expect(Math.max(...leans(await planOf("cyma.json", "--lean", String(mostDeg))))).toBeLessThanOrEqual(
      mostDeg + 1e-6,
    );
  });

  test("the side that may be missed: a radius off the shelf's stands proud, or lies under, and not both", async () => {
    // The cyma drawn a twentieth larger than the planes' radius, so that neither curve can be met exactly.
    const larger = structuredClone(CYMA);
    larger.section.parts[2] = { kind: "cyma recta", acrossMm: 14, riseMm: -14 };
    await bench.put("larger.json", JSON.stringify(larger));
    const aside = (plan: Plan): number => Math.abs(ringArea(plan.planned)) - Math.abs(ringArea(plan.section));
    const proud = await planOf("larger.json", "--side", "proud");
    const under = await planOf("larger.json", "--side", "under");
    // Wood left: what is aimed at holds more than the drawing. Wood taken: less.
    expect(aside(proud)).toBeGreaterThan(0);
    expect(aside(under)).toBeLessThan(0);
  });

  test("more sticks take more strokes at the same settings; a pace of one's own is reckoned with", async () => {
    const usual = await planOf("cyma.json");
    const four = await planOf("cyma.json", "--sticks", "4");
    expect(four.time?.settingMinutes).toBe(usual.time?.settingMinutes);
    expect(four.time?.testPieceMinutes).toBe(usual.time?.testPieceMinutes);
    expect(four.time?.strokeMinutes).toBeCloseTo(4 * (usual.time?.strokeMinutes ?? 0), 0);
    const own = await planOf("cyma.json", "--pace", "set=0, stroke=8, test=0, sharpen=0");
    expect(own.time).toMatchObject({ settingMinutes: 0, testPieceMinutes: 0, sharpeningMinutes: 0 });
    expect(own.time?.strokeMinutes).toBeCloseTo(2 * (usual.time?.strokeMinutes ?? 0), 0);
    expect(own.time?.reckonedWith).toMatchObject({ setMinutes: 0, secondsPerMetre: 8, sharpForM: 200 });
  });

  test("a hand of one's own has its own errors, said where it is taken as given", async () => {
    const usual = await planOf("cyma.json");
    const shaky = await planOf("cyma.json", "--hand", "gauge=0.5mm;line=0,5;sideways=1");
    shaky.marks.forEach((mark, i) => {
      expect(mark.error).toBeGreaterThan(usual.marks[i]?.error ?? Number.POSITIVE_INFINITY);
    });
    expect(oneLine(shaky.assumed.join(" "))).toContain("gauge set within 0.5 mm, knife line 0.5 mm");
  });

  test("an inch rule of sixty-fourths is read in sixty-fourths, in sentences and on the card", async () => {
    const ran = await run("cyma.json", "--unit", "in", "--step", "64");
    expect(ran.out).toMatch(/[¹²³⁴⁵⁶⁷⁸⁹⁰]+⁄₆₄″/);
    const coarse = await run("cyma.json", "--unit", "in", "--step", "16");
    const marks = coarse.out.slice(coarse.out.indexOf("Marks"), coarse.out.indexOf("Cuts\n"));
    expect(marks).not.toMatch(/⁄₃₂″/);
    expect(coarse.out).not.toMatch(/\d\.\d+″/);
  });

  test.each<[string, readonly string[], string]>([
    ["a word that is none", ["--hand", "guage=0.1"], "gauge= and a figure"],
    ["a figure past all hands", ["--hand", "gauge=60"], "from 0 to 5"],
    ["a pace without a figure", ["--pace", "set"], "set=1"],
    ["a pace that is no figure", ["--pace", "set=soon"], "from 0 to 240"],
    ["a step no rule has", ["--step", "12"], "16 or 32 or 64"],
  ])("%s is refused", async (_, words, wanted) => {
    const ran = await run("cyma.json", ...words);
    expect(ran.code).toBe(2);
    expect(oneLine(ran.err)).toContain(wanted);
  });

  test("a band of a count is made with a plane of the shelf, its ends even", async () => {
    const job = {
      ...CYMA,
      name: "Chart cabinet: reeded pilaster",
      stick: { widthMm: 60, thicknessMm: 22 },
      section: {
        parts: [
          { kind: "fillet", widthMm: 10 },
          { kind: "step", riseMm: -1.276084 },
          { kind: "band", of: "reeds", widthMm: 40, count: 4, name: "reeds" },
          { kind: "step", riseMm: 1.276084 },
          { kind: "fillet", widthMm: "rest" },
        ],
      },
    };
    await bench.put("band.json", JSON.stringify(job));
    const plan = await planOf("band.json");
    // Four of 3/8 in are 38.1 mm: 0.95 mm of flat is left at each end.
    const [band] = plan.bands ?? [];
    expect(band?.width).toBeCloseTo(38.1, 6);
    expect(band?.from[0]).toBeCloseTo(10.95, 6);
    expect(band?.to[0]).toBeCloseTo(49.05, 6);
    expect(band?.error).toBe(Math.min(band?.errorFromEdge ?? 0, band?.errorFromFoot ?? 0));
    expect(oneLine((await run("band.json")).out)).toContain("Reeds, 38.1 mm wide: lines from the gauge edge");
  });

  test("lying flat is planned alone where it is asked for, though bevels are sawn", async () => {
    const plan = await planOf("cornice.json", "--way", "flat");
    expect(plan.ways.map(({ way }) => way)).toEqual(["flat"]);
    const all = await planOf("cornice.json");
    expect(all.ways.length).toBeGreaterThan(1);
  });

  test("a way asked for is taken, and lying flat stands beside it", async () => {
    const plan = await planOf("cornice.json", "--way", "canted");
    expect(plan.way).toBe("canted");
    expect([...plan.ways.map(({ way }) => way)].sort()).toEqual(["canted", "flat"]);
    const ran = await run("cornice.json", "--way", "canted");
    expect(ran.err).not.toContain("The way asked for");
    const card = oneLine(ran.out);
    expect(card).toContain("Ways compared");
    for (const { way, cuts, settings } of plan.ways) {
      expect(card.toLowerCase()).toMatch(
        new RegExp(`${way}( \\(taken\\))?: ${cuts} cuts, ${settings} settings, about `),
      );
    }
  });

  test("a way that the section does not have is told of, and the plan is made another way", async () => {
    const ran = await run("cyma.json", "--way", "bevelled");
    expect(oneLine(ran.err)).toContain(
      "The way asked for, “bevelled”, cannot be had with this section; the plan is made the way “flat”.",
    );
  });

  test("advice is looked for where it is asked for, and stands in the plan", async () => {
    const without = ["--without", "hollow-3-8"];
    const plan = await planOf("cyma.json", ...without, "--advise");
    const cures = plan.cures ?? [];
    expect(cures.length).toBeGreaterThan(0);
    for (const cure of cures)
      expect(
        cure.placesAfter < cure.placesBefore ||
          cure.cutsAfter < cure.cutsBefore ||
          (cure.settingsAfter ?? 0) < (cure.settingsBefore ?? 0),
      ).toBe(true);
  });

  test("more sticks and longer ones take longer by their strokes, and the sharpening these cost", async () => {
    const one = await planOf("cyma.json");
    const four = await planOf("cyma.json", "--sticks", "4", "--length", "1.2m");
    for (const [i, cut] of four.cuts.entries()) {
      // A setting of 3 minutes, 4 seconds for each metre of stroke on four sticks and the test piece, and a twentieth of
      // a minute of sharpening for each metre (what a plan assumes, and says).
      const strokesM = cut.passes * (4 * 1.2 + 0.3);
      expect(cut.passes).toBe(one.cuts[i]?.passes);
      const isSetAnew = cut.setting !== four.cuts[i - 1]?.setting;
      const planed = (isSetAnew ? 3 : 0) + (strokesM * 4) / 60 + strokesM / 20;
      const minutes = cut.line === undefined ? planed : cut.minutes;
      // Told to a tenth of a minute, so half of one off at most.
      expect(Math.abs(cut.minutes - minutes)).toBeLessThan(0.0501);
    }
    expect(four.assumed.join(" ")).toContain("4 sticks");
  });

  test("heavier shavings, fewer strokes", async () => {
    const strokes = (plan: Plan): number => plan.cuts.reduce((sum, { passes }) => sum + passes, 0);
    const heavy = await planOf("cyma.json", "--shaving", "0.6,0.3,0.08");
    expect(strokes(heavy)).toBeLessThan(strokes(await planOf("cyma.json")));
    for (const { shaving, line } of heavy.cuts) if (line === undefined) expect([0.6, 0.3]).toContain(shaving);
  });

  test("the gauge edge on the right: its lines are measured from there", async () => {
    const plan = await planOf("cyma.json", "--gauge", "right");
    expect(plan.marks.length).toBeGreaterThan(0);
    for (const { at, fromGaugeEdge } of plan.marks) expect(fromGaugeEdge).toBeCloseTo(28 - at[0], 6);
  });

  test("an edge kept square: the plan says until when", async () => {
    const plan = await planOf("cyma.json", "--keep-square", "both");
    for (const edge of ["gauge", "far"]) {
      expect(plan.warnings.filter((words) => words.startsWith(`The ${edge} edge `))).toHaveLength(1);
    }
    expect(oneLine((await run("cyma.json", "--keep-square", "far")).out)).toContain("The far edge ");
  });

  test.each<[string, (plan: Plan) => number]>([
    ["planes", ({ cuts }) => new Set(cuts.map(({ plane }) => plane.id)).size],
    ["settings", ({ cuts }) => new Set(cuts.map(({ setting }) => setting)).size],
    ["strokes", ({ cuts }) => cuts.reduce((sum, { passes }) => sum + passes, 0)],
  ])(
    "preferring fewer %s: no more of them than otherwise, and nothing stays uncut",
    async (prefer, count) => {
      const preferred = await planOf("cyma.json", "--prefer", prefer);
      expect(preferred.uncut).toEqual([]);
      expect(count(preferred)).toBeLessThanOrEqual(count(await planOf("cyma.json")));
    },
  );

  test("the job says the same as the options, and an option goes before the job", async () => {
    const job = {
      ...CYMA,
      way: {
        without: ["rebate-6"],
        gaugeEdge: "right",
        keepSquare: "gauge",
        greatestLeanDeg: 50,
        prefer: "fewer planes",
        missSide: "proud",
        ways: ["flat"],
        shavings: { heavyMm: 0.6, ordinaryMm: 0.3, lastMm: 0.1 },
      },
      working: { sticks: 4, lengthMm: 1200 },
    };
    await bench.put("worked.json", JSON.stringify(job));
    const options = ["--without", "rebate-6", "--gauge", "right", "--lean", "50", "--prefer", "planes"];
    const more = [
      "--keep-square",
      "gauge",
      "--side",
      "proud",
      "--way",
      "flat",
      "--shaving",
      "0.6,0.3,0.1",
      "--sticks",
      "4",
    ];
    const typed = await planOf("cyma.json", ...options, ...more, "--length", "1.2 m");
    expect(await planOf("worked.json")).toEqual(typed);
    const fewer = await planOf("worked.json", "--sticks", "2");
    expect(fewer.assumed.join(" ")).toContain("2 sticks run at each setting, each of 1.2 m");
  });

  test("the finished section stands among the pictures", async () => {
    const ran = await run("cyma.json", "--pictures", bench.path("card"));
    expect(ran.code).toBe(0);
    expect(await bench.read("card/chart-cabinet-cyma-section.svg")).toMatch(/^<\?xml[\s\S]*<svg /);
  });

  test("a finer rule is read off the pictures too", async () => {
    const figures = async (step: string): Promise<string> => {
      await run("cyma.json", "--unit", "in", "--step", step, "--pictures", bench.path(`rule-${step}`));
      return bench.read(`rule-${step}/chart-cabinet-cyma-section.svg`);
    };
    // The stick is 28 mm wide: 35.3 thirty-seconds, 70.6 sixty-fourths of an inch.
    expect(await figures("64")).not.toBe(await figures("32"));
  });
});

describe("from where it stands", () => {
  const goOn = (...words: readonly string[]): Promise<Ran> =>
    runHere(["plan", "--from", bench.path("begun.json"), ...words]);
  let begun: Plan;
  beforeAll(async () => {
    await run("cyma.json", "--out", bench.path("begun.json"));
    begun = await planOf("cyma.json");
  });

  const measuredFile = async (content: object): Promise<string> =>
    bench.put("measured.json", JSON.stringify({ format: "mouldwright/measured", version: 1, ...content }));

  test("after none, after each and after all of its cuts the rest holds, and less and less is left to do", async () => {
    let before = Number.POSITIVE_INFINITY;
    for (let after = 0; after <= begun.cuts.length; after += 1) {
      const ran = await goOn("--after", String(after), "--json");
      expect(ran.code).toBe(0);
      const rest = heldPlan(ran);
      expect(rest.section).toEqual(begun.section);
      expect(rest.tolerance).toBe(begun.tolerance);
      const left = rest.cuts.reduce((sum, cut) => sum + cut.takes, 0);
      expect(left).toBeLessThan(before);
      before = left;
    }
    // No wood is left to take once every cut is made.
    expect(before).toBe(0);
  });

  test("the rest begins with the wood that the cuts made have left", async () => {
    const rest = heldPlan(await goOn("--after", "2", "--json"));
    const stands = begun.cuts[1]?.after[0];
    expect(ringArea(rest.stick)).toBeCloseTo(ringArea(stands ?? []), 1);
  });

  test("a cut that came out shallow leaves more to take, by its width times what is missing at most", async () => {
    const usual = heldPlan(await goOn("--after", "1", "--json"));
    await measuredFile({ cuts: { "1": { deeper: "-0.3 mm" } } });
    const ran = await goOn("--after", "1", "--measured", bench.path("measured.json"), "--json");
    const rest = heldPlan(ran);
    const more = ringArea(rest.stick) - ringArea(usual.stick);
    expect(more).toBeGreaterThan(0);
    const width = Math.max(...(begun.cuts[0]?.sole ?? []).map(([x]) => x)) * 2;
    expect(more).toBeLessThanOrEqual(0.3 * width + 0.1);
  });

  test("planes are planned with as they were measured", async () => {
    await measuredFile({
      planes: { "rebate-12": { width: "11.6 mm" }, "round-3-8": { radius: 9.6, width: 9.4 } },
    });
    const ran = await goOn("--after", "2", "--measured", bench.path("measured.json"), "--json");
    const rest = heldPlan(ran);
    const { planes } = rest.shelf as { planes: { id: string; width: number; radius?: number }[] };
    expect(planes.find(({ id }) => id === "rebate-12")?.width).toBe(11.6);
    expect(planes.find(({ id }) => id === "round-3-8")).toMatchObject({ width: 9.4, radius: 9.6 });
  });

  test("a cut that went far under the drawing is said, since nothing puts the wood back", async () => {
    const last = begun.cuts.length;
    await measuredFile({ cuts: { [last]: { deeper: 1 } } });
    const ran = await goOn("--after", String(last), "--measured", bench.path("measured.json"));
    expect(oneLine(ran.err)).toContain("under the drawing already; 0.2 mm is allowed");
  });

  test("the section, the shelf and the tolerance that are given go before the plan's own", async () => {
    const ran = await run(
      "cyma.json",
      "--from",
      bench.path("begun.json"),
      "--after",
      "2",
      "--tolerance",
      "0.3mm",
      "--json",
    );
    const rest = heldPlan(ran);
    expect(rest.tolerance).toBe(0.3);
    expect(rest.name).toBe("Chart cabinet: cyma");
  });

  test("a plan in inches goes on in inches, and on its own gauge edge", async () => {
    const made = await run(
      "cyma.json",
      "--unit",
      "in",
      "--gauge",
      "right",
      "--out",
      bench.path("inches.json"),
    );
    expect(made.code).toBe(0);
    const from = ["plan", "--from", bench.path("inches.json"), "--after", "2"];
    const card = await runHere(from);
    expect(card.out).toContain("″");
    const rest = heldPlan(await runHere([...from, "--json"]));
    expect(rest.marks.length).toBeGreaterThan(0);
    for (const { at, fromGaugeEdge } of rest.marks) expect(fromGaugeEdge).toBeCloseTo(28 - at[0], 6);
    expect((await runHere([...from, "--unit", "mm"])).out).toMatch(/Stick\s+28 mm wide/);
  });

  test("neither plan nor measurements are written over", async () => {
    await measuredFile({});
    for (const name of ["begun.json", "measured.json"]) {
      const text = await bench.read(name);
      const out = ["--out", bench.path(name), "--force"];
      const ran = await goOn("--after", "2", "--measured", bench.path("measured.json"), ...out);
      expect(ran.code).toBe(3);
      expect(await bench.read(name)).toBe(text);
    }
  });

  test.each<[string, object, readonly string[]]>([
    [
      "a plane that is not there",
      { planes: { "round-3-9": { width: 9 } } },
      ["“round-3-9”", "Was “round-3-8” meant?"],
    ],
    [
      "__proto__ for a plane",
      JSON.parse('{"planes": {"__proto__": {"width": 9}}}') as object,
      ["“__proto__”"],
    ],
    ["a size a plane has not", { planes: { "rebate-12": { radius: 9 } } }, ["“rebate”", "radius"]],
    [
      "a sole wider than its circle",
      { planes: { "round-3-8": { width: 40 } } },
      ["round-3-8", "cannot be part of a circle"],
    ],
    ["a size less than nought", { planes: { "rebate-12": { width: -12 } } }, ["rebate-12", "-12"]],
    ["a size of words", { planes: { "rebate-12": { width: "wide" } } }, ["rebate-12", "wide"]],
    ["an unknown key", { plains: {} }, ["“plains”", "Was “planes” meant?"]],
    [
      "an unknown key of a plane",
      { planes: { "rebate-12": { widht: 9 } } },
      ["“widht”", "Was “width” meant?"],
    ],
    ["an unknown key of a cut", { cuts: { "1": { depper: 9 } } }, ["“depper”", "Was “deeper” meant?"]],
    [
      "a cut not made yet",
      { cuts: { "4": { deeper: 0.1 } } },
      ["Cut 4", "none of the 2", "Was cut 2 meant?"],
    ],
    ["a cut without a number", { cuts: { first: { deeper: 0.1 } } }, ["Cut first", "none of the 2"]],
    ["a cut far off", { cuts: { "1": { across: 25 } } }, ["25 mm out", "at most 10 mm"]],
    [
      "another kind of file",
      { format: "mouldwright/plan" },
      ["it holds a plan", "a sheet of measurements is"],
    ],
    ["a newer version", { version: 2 }, ["version 2"]],
  ])("measurements refused: %s", async (_, content, said) => {
    await measuredFile(content);
    const ran = await goOn("--after", "2", "--measured", bench.path("measured.json"));
    expect(ran).toMatchObject({ code: 2, out: "" });
    expect(ran.err).toContain("measured.json");
    for (const text of said) expect(oneLine(ran.err).replace(/\u00a0/g, " ")).toContain(text);
  });

  test.each<[string, readonly string[], readonly string[]]>([
    ["no --after", [], ["--after is missing"]],
    ["more cuts than there are", ["--after", "99"], ["“99” of --after", "a whole number from 0 to"]],
    ["less than none", ["--after=-1"], ["“-1” of --after"]],
    ["half a cut", ["--after", "1.5"], ["“1.5” of --after", "whole number"]],
    [
      "a stick without a section",
      ["--after", "1", "--stick", "40x20"],
      ["“40x20” of --stick", "with a section file"],
    ],
    [
      "measurements that are not there",
      ["--after", "1", "--measured", "gone.json"],
      ["gone.json", "no such file"],
    ],
  ])("refused: %s", async (_, words, said) => {
    const ran = await goOn(...words);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(oneLine(ran.err)).toContain(text);
  });
});

describe("values that do not fit", () => {
  test.each<[string, readonly string[], readonly string[]]>([
    ["an unknown plane", ["--without", "rebate-21"], ["“rebate-21”", "Was “rebate-12” meant?"]],
    ["a plane like no other", ["--without", "zzz"], ["“zzz”", "On the shelf are hollow-3-8"]],
    ["no plane named", ["--without", ","], ["“,” of --without"]],
    ["every plane left out", ["--without", SHELF.planes.map(({ id }) => id).join(",")], ["All 7 planes"]],
    ["a lean beyond any hand", ["--lean", "61"], ["“61” of --lean", "from 0 to 60 degrees"]],
    ["a lean below nought", ["--lean=-1"], ["“-1” of --lean"]],
    ["a lean of words", ["--lean", "steep"], ["“steep” of --lean"]],
    ["another preference", ["--prefer", "speed"], ["“speed” of --prefer", "planes or settings or strokes"]],
    ["another side", ["--side", "left"], ["“left” of --side", "proud or under"]],
    ["another way", ["--way", "upright"], ["“upright” of --way", "flat or bevelled or canted"]],
    ["no stick", ["--sticks", "0"], ["“0” of --sticks", "from 1 to 1000"]],
    ["half a stick", ["--sticks", "1.5"], ["“1.5” of --sticks"]],
    ["a stick too short to hold", ["--length", "20mm"], ["“20mm” of --length", "50 mm to 10 m"]],
    ["a stick too long", ["--length", "11m"], ["“11m” of --length"]],
    ["a length of words", ["--length", "long"], ["--length", "long"]],
    ["two shavings", ["--shaving", "0.3,0.15"], ["“0.3,0.15” of --shaving", "heavy, ordinary, last"]],
    ["a last shaving heavier than the first", ["--shaving", "0.1,0.2,0.3"], ["--shaving", "ever thinner"]],
    ["a shaving of nothing", ["--shaving", "0.3,0.1,0"], ["--shaving", "0.01 to 2 mm"]],
    [
      "a shaving of inches meant as millimetres",
      ["--shaving", "0.3,0.15,0.08", "--unit", "in"],
      ["--shaving"],
    ],
    ["another edge", ["--gauge", "front"], ["“front” of --gauge", "left or right"]],
    [
      "an edge to keep that is none",
      ["--keep-square", "left"],
      ["“left” of --keep-square", "gauge or far or both"],
    ],
    ["--after without --from", ["--after", "3"], ["--from is missing"]],
    ["--measured without --from", ["--measured", "m.json"], ["--from is missing"]],
  ])("%s", async (_, words, said) => {
    const ran = await run("cyma.json", ...words);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of said) expect(oneLine(ran.err)).toContain(text);
  });

  test.each<[string, object, readonly string[]]>([
    ["an unknown plane", { way: { without: ["rebate-21"] } }, ["way.without[0]", "Was “rebate-12” meant?"]],
    ["a lean beyond any hand", { way: { greatestLeanDeg: 61 } }, ["way.greatestLeanDeg", "60 or less"]],
    ["another preference", { way: { prefer: "speed" } }, ["way.prefer", "fewer planes"]],
    [
      "shavings out of order",
      { way: { shavings: { heavyMm: 0.1, ordinaryMm: 0.2, lastMm: 0.05 } } },
      ["way.shavings"],
    ],
    ["an unknown key", { way: { witout: [] } }, ["way.witout", "Was “without” meant?"]],
    ["half a stick", { working: { sticks: 1.5 } }, ["working.sticks"]],
  ])("a job with %s", async (_, more, said) => {
    await bench.put("bad.json", JSON.stringify({ ...CYMA, shelf: { file: "planes.json" }, ...more }));
    const ran = await runHere(["plan", bench.path("bad.json")]);
    expect(ran).toMatchObject({ code: 2, out: "" });
    for (const text of ["bad.json", ...said]) expect(oneLine(ran.err)).toContain(text);
  });
});

/** Area inside a ring of lines and arcs, mm²: the triangles from the origin, and under each arc its segment. */
function ringArea(ring: readonly (readonly [number, number, number?])[]): number {
  return ring.reduce((sum, [x, y, bulge = 0], i) => {
    const [nextX, nextY] = ring[(i + 1) % ring.length]!;
    const chord = Math.hypot(nextX - x, nextY - y);
    const sweep = 4 * Math.atan(bulge);
    const radius = bulge === 0 ? 0 : chord / 2 / Math.sin(sweep / 2);
    return sum + (x * nextY - nextX * y) / 2 + ((sweep - Math.sin(sweep)) * radius * radius) / 2;
  }, 0);
}
