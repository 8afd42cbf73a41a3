/** The real launcher as a process of its own: streams, exit codes, interrupts. Each start takes about a second. */
import { afterAll, beforeAll, expect, test } from "vitest";
import { readPlan } from "../../packages/core/src/cutting/index.ts";
import { type Bench, launch, newBench, SHELF_JSON, STEP_SVG } from "./run.ts";

let bench: Bench;
beforeAll(async () => {
  bench = await newBench();
  await bench.put("step.svg", STEP_SVG);
  await bench.put("planes.json", SHELF_JSON);
});
afterAll(() => bench.clear());

test("--json: the plan file on the one stream and nothing else", async () => {
  const ran = await launch(["plan", bench.path("step.svg"), "--shelf", bench.path("planes.json"), "--json"])
    .ran;
  const plan = readPlan(ran.out);
  if (!plan.ok) throw new Error(`${plan.trouble.code} at ${plan.trouble.where}`);
  expect(plan.value.name).toBe("step");
  expect(ran.code).toBe(plan.value.uncut.length > 0 ? 1 : 0);
});

test("a refusal: 2, said on the other stream, with place and hint, without a trace of the insides", async () => {
  const ran = await launch(["plan", bench.path("gone.svg"), "--shelf", bench.path("planes.json")]).ran;
  expect(ran).toMatchObject({ code: 2, out: "" });
  expect(ran.err).toContain("gone.svg");
  expect(ran.err).not.toMatch(/\bat .*\(|node:internal|\.ts:/);
});

test("Ctrl-C while it plans: 130 and nothing left behind", async () => {
  // A drawing without units is noted before the planning begins: the sign that the keys are pressed in time.
  const reeds = Array.from({ length: 12 }, (_, i) => `A 6 6 0 0 0 ${12 * (11 - i)} 10`).join(" ");
  await bench.put(
    "reeds.svg",
    `<svg xmlns="http://www.w3.org/2000/svg"><path id="section" d="M0 30 H144 V10 ${reeds} Z"/></svg>`,
  );
  const before = await bench.names();
  const { child, ran } = launch([
    "plan",
    bench.path("reeds.svg"),
    "--shelf",
    bench.path("planes.json"),
    "--out",
    bench.path("reeds-plan.json"),
    "--pictures",
    bench.path("reeds"),
  ]);
  child.stderr?.once("data", () => child.kill("SIGINT"));
  const ended = await ran;
  expect(ended.err).toMatch(/^Note: .*reeds\.svg/);
  expect(ended.err).toContain("Interrupted");
  expect(ended).toMatchObject({ code: 130, out: "" });
  expect(await bench.names()).toEqual(before);
});
