import { lstat, symlink } from "node:fs/promises";
import { afterEach, beforeEach, describe, expect, test } from "vitest";
import { readPlan, recutPlan } from "../../packages/core/src/cutting/index.ts";
import { type Bench, COVE_SVG, newBench, runHere, SHELF_JSON, STEP_SVG } from "./run.ts";

let bench: Bench;
beforeEach(async () => {
  bench = await newBench();
  await bench.put("step.svg", STEP_SVG);
  await bench.put("planes.json", SHELF_JSON);
});
afterEach(() => bench.clear());

const planStep = (...more: readonly string[]) =>
  runHere(["plan", bench.path("step.svg"), "--shelf", bench.path("planes.json"), ...more]);

describe("plan", () => {
  test("a step: a whole plan, printed as a card, nothing written", async () => {
    const before = await bench.names();
    const ran = await planStep();
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(ran.out).toContain("step");
    expect(ran.out).toMatch(/rebate/i);
    for (const line of ran.out.split("\n")) expect([...line].length).toBeLessThanOrEqual(80);
    expect(await bench.names()).toEqual(before);
  });

  test("on narrow paper every line is narrow", async () => {
    const ran = await runHere(["plan", bench.path("step.svg"), "--shelf", bench.path("planes.json")], {
      columns: 40,
    });
    for (const line of ran.out.split("\n")) expect([...line].length).toBeLessThanOrEqual(40);
  });

  test("--out and --pictures: the plan as a file that holds, one picture a cut, a strip and the section", async () => {
    const ran = await planStep("--out", bench.path("plan.json"), "--pictures", bench.path("card"));
    expect(ran.code).toBe(0);
    const plan = readPlan(await bench.read("plan.json"));
    if (!plan.ok) throw new Error(`${plan.trouble.code} at ${plan.trouble.where}`);
    expect(recutPlan(plan.value).findings).toEqual([]);
    const pictures = (await bench.names()).filter((name) => name.startsWith("card/"));
    expect(pictures).toHaveLength(plan.value.cuts.length + 2);
    for (const picture of pictures) expect(await bench.read(picture)).toMatch(/^<\?xml[\s\S]*<svg /);
    expect(ran.out).toContain(bench.path("plan.json"));
    expect(ran.out).toContain(bench.path("card"));
  });

  test("the file of --out is the text of --json, byte for byte, each time", async () => {
    await planStep("--out", bench.path("plan.json"));
    const ran = await planStep("--json");
    expect(ran.out).toBe(await bench.read("plan.json"));
  });

  test("a place that is taken: 3, and what stands there stays; with --force it is replaced", async () => {
    await bench.put("plan.json", "mine");
    const refusedRun = await planStep("--out", bench.path("plan.json"));
    expect(refusedRun.code).toBe(3);
    expect(refusedRun.err).toContain("--force");
    expect(await bench.read("plan.json")).toBe("mine");
    expect((await planStep("--out", bench.path("plan.json"), "--force")).code).toBe(0);
    expect(await bench.read("plan.json")).not.toBe("mine");
  });

  test("not even --force writes over what is read", async () => {
    const ran = await planStep("--out", bench.path("step.svg"), "--force");
    expect(ran.code).toBe(3);
    expect(await bench.read("step.svg")).toBe(STEP_SVG);
  });

  test("a folder that is not there: 3, before anything is planned", async () => {
    const ran = await planStep("--out", bench.path("gone/plan.json"));
    expect(ran).toMatchObject({ code: 3, out: "" });
    expect(ran.err).toContain("does not exist");
  });

  test("bad input goes before a bad place: 2", async () => {
    await bench.put("plan.json", "mine");
    await bench.put("step.svg", "");
    expect((await planStep("--out", bench.path("plan.json"))).code).toBe(2);
  });

  test("a stick of another size: the step is planned in it", async () => {
    const ran = await planStep("--stick", "34x14", "--at", "0,0", "--json");
    const plan = readPlan(ran.out);
    if (!plan.ok) throw new Error(plan.trouble.code);
    expect(plan.value.stick).toEqual([
      [0, 0],
      [34, 0],
      [34, 14],
      [0, 14],
    ]);
  });

  test("a cove with a rebate plane alone: 1, and the card names what is missing", async () => {
    await bench.put("cove.svg", COVE_SVG);
    await bench.put(
      "few.json",
      JSON.stringify({
        format: "mouldwright/shelf",
        version: 1,
        unit: "mm",
        planes: [{ kind: "rebate", width: 19 }],
      }),
    );
    const ran = await runHere(["plan", bench.path("cove.svg"), "--shelf", bench.path("few.json")]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain("Stays uncut");
    expect(ran.out).toMatch(/round/);
  });

  test("scripts, links and pictures from elsewhere in a drawing are passed over and reach no picture", async () => {
    const busy = STEP_SVG.replace(
      "</svg>",
      '<script>alert(1)</script><image href="http://localhost:9/x.png" width="5" height="5"/><use href="file:///etc/passwd#a"/><a href="javascript:alert(2)"><text>x</text></a></svg>',
    );
    await bench.put("step.svg", busy);
    const ran = await planStep("--pictures", bench.path("card"), "--json");
    expect(ran.code).toBe(0);
    const pictures = (await bench.names()).filter((name) => name.startsWith("card/"));
    for (const text of [ran.out, ...(await Promise.all(pictures.map(bench.read)))]) {
      expect(text).not.toMatch(/script|alert|localhost|passwd/);
    }
  });

  test("an arc whose radius is smaller than half its chord grows to it, as SVG has it, and that is said", async () => {
    // From 26 to 14 with radius 3: a half circle of radius 6.
    await bench.put("cove.svg", COVE_SVG.replace("A12 12", "A3 3"));
    const ran = await runHere(["section", "describe", bench.path("cove.svg")]);
    expect(ran.code).toBe(0);
    expect(ran.err).toMatch(/^Note: .*cove\.svg/);
    expect(ran.out.replace(/\s/g, " ")).toContain("radius 6 mm, 180°");
  });

  test("the plan and a picture cannot have one place", async () => {
    const out = bench.path("card/step-strip.svg");
    const ran = await planStep("--out", out, "--pictures", bench.path("card"), "--force");
    expect(ran).toMatchObject({ code: 3, out: "" });
    expect(ran.err).toContain("same place");
  });

  test("a link is written through, not replaced", async () => {
    await bench.put("shared.json", "old");
    await symlink(bench.path("shared.json"), bench.path("plan.json"));
    await planStep("--out", bench.path("plan.json"), "--force");
    expect((await lstat(bench.path("plan.json"))).isSymbolicLink()).toBe(true);
    expect(readPlan(await bench.read("shared.json")).ok).toBe(true);
  });

  test("not even --force replaces a device", async () => {
    const ran = await planStep("--out", "/dev/null", "--force");
    expect(ran.code).toBe(3);
    expect(ran.err).toContain("no ordinary file");
  });

  test("interrupted: 130 and nothing written", async () => {
    const ran = await runHere(
      [
        "plan",
        bench.path("step.svg"),
        "--shelf",
        bench.path("planes.json"),
        "--out",
        bench.path("plan.json"),
      ],
      { interrupted: AbortSignal.abort() },
    );
    expect(ran).toMatchObject({ code: 130, out: "" });
    expect(await bench.names()).not.toContain("plan.json");
  });

  test("a job with its own shelf beside it", async () => {
    const job = {
      format: "mouldwright/job",
      version: 1,
      name: "Plinth \u001b[2J of the chart cabinet",
      unit: "in",
      section: {
        parts: [
          { kind: "fillet", widthMm: 20 },
          { kind: "step", riseMm: -4 },
          { kind: "fillet", widthMm: "rest" },
        ],
      },
      stick: { widthMm: 30, thicknessMm: 12 },
      shelf: { file: "planes.json" },
    };
    await bench.put("plinth.json", JSON.stringify(job));
    const words = ["plan", bench.path("plinth.json"), "--pictures", bench.path("card")];
    const ran = await runHere(words);
    expect(ran.code).toBe(0);
    expect(ran.out).toContain("″");
    const pictures = (await bench.names()).filter((name) => name.startsWith("card/"));
    expect(pictures).toContain("card/plinth-2j-of-the-chart-cabinet-strip.svg");
    for (const text of [ran.out, ran.err, ...(await Promise.all(pictures.map(bench.read)))]) {
      expect(text).not.toContain("\u001b");
    }
  });
});

describe("recut", () => {
  test("a plan of ours holds", async () => {
    await planStep("--out", bench.path("plan.json"));
    const ran = await runHere(["recut", bench.path("plan.json")]);
    expect(ran).toMatchObject({ code: 0, err: "" });
    expect(ran.out).toContain("holds");
  });

  test("a plan that was tampered with does not: 1, and the place is named", async () => {
    await planStep("--out", bench.path("plan.json"));
    const plan = JSON.parse(await bench.read("plan.json")) as { cuts: { takes: number }[] };
    plan.cuts[0]!.takes += 1;
    await bench.put("plan.json", JSON.stringify(plan));
    const ran = await runHere(["recut", bench.path("plan.json")]);
    expect(ran.code).toBe(1);
    expect(ran.out).toContain("does not hold");
    expect(ran.err).toMatch(/Does not hold: .*plan\.json, cuts\[0\]/);
  });

  test("a plan cut short: 2", async () => {
    await bench.put("plan.json", '{"format": "mouldwright/plan", "version": 1, ');
    expect((await runHere(["recut", bench.path("plan.json")])).code).toBe(2);
  });
});

describe("section and shelf", () => {
  test("describe: sizes, parts with radii, joins with angles", async () => {
    // A chord as long as the radius: 60° of arc, which meets the level face at 30°, 150° through the wood.
    await bench.put("cove.svg", COVE_SVG);
    const cove = (await runHere(["section", "describe", bench.path("cove.svg")])).out.replace(/\s+/g, " ");
    expect(cove).toContain("cove: 40 mm × 20 mm");
    expect(cove).toContain("arris of 150° 1 concave arc, radius 12 mm, 60°, 12 mm across arris of 150°");
    // From the gauge edge on: down the wall, then along the floor.
    const step = (await runHere(["section", "describe", bench.path("step.svg")])).out.replace(/\s+/g, " ");
    expect(step).toContain("arris of 90° 1 wall, down 4 mm step of 90° 2 flat, 10 mm across arris of 90°");
  });

  test("describe: a free curve is one stretch, its joins only at its two ends", async () => {
    // It leaves the wall's flat level (a control point 10 mm along it) and meets the far edge level: an arris of 90°.
    const curve = COVE_SVG.replace(/ d="[^"]*"/, ' d="M0 20 H40 V8 C30 8 30 2 20 2 H12 V0 H0 Z"');
    await bench.put("free.svg", curve);
    const said = (await runHere(["section", "describe", bench.path("free.svg")])).out.replace(/\s+/g, " ");
    expect(said).toContain(
      "2 flat, 8 mm across runs on smoothly 3 free curve, 20 mm across, down 6 mm arris of 90°",
    );
  });

  test("convert to DXF and back: the same section", async () => {
    await bench.put("cove.svg", COVE_SVG);
    const there = await runHere([
      "section",
      "convert",
      bench.path("cove.svg"),
      "--out",
      bench.path("cove.dxf"),
    ]);
    expect(there.code).toBe(0);
    const back = await runHere([
      "section",
      "convert",
      bench.path("cove.dxf"),
      "--out",
      bench.path("again.svg"),
    ]);
    expect(back.code).toBe(0);
    const [first, last] = await Promise.all(
      ["cove.svg", "again.svg"].map((name) => runHere(["section", "describe", bench.path(name)])),
    );
    expect(last!.out.replace("again:", "cove:")).toBe(first!.out);
  });

  test("check: what can be planned from is said so; a crossing is refused", async () => {
    await bench.put(
      "crossed.svg",
      '<svg xmlns="http://www.w3.org/2000/svg" width="30mm" height="12mm" viewBox="0 0 30 12"><path id="section" d="M0 12 L30 12 L10 2 L28 0 L0 4 Z"/></svg>',
    );
    const ran = await runHere(["section", "check", bench.path("step.svg"), bench.path("crossed.svg")]);
    expect(ran.code).toBe(2);
    expect(ran.out).toContain("step.svg can be planned from");
    expect(ran.err).toContain("crossed.svg");
  });

  test("shelf: every plane with its size, in the unit asked for", async () => {
    const ran = await runHere(["shelf", bench.path("planes.json"), "--unit", "in"]);
    expect(ran.code).toBe(0);
    expect(ran.out).toMatch(/rebate.*0\.748\sin/);
    expect(ran.out.split("\n").filter((line) => /snipe bill/.test(line)).length).toBeGreaterThanOrEqual(2);
  });
});
