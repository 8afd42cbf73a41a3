/** Sections and shelves on which a random run once found fault, kept in full precision. Known faults fail here on purpose. */
import { readdirSync, readFileSync } from "node:fs";
import { dirname, join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { ringFromVertices, type Vertex } from "../../packages/core/src/curve/index.ts";
import { recutPlan } from "../../packages/core/src/cutting/index.ts";
import { mirrorSection, type Section } from "../../packages/core/src/section/index.ts";
import { readShelf } from "../../packages/core/src/shelf/index.ts";
import { planFileOf } from "../second-route/classical.ts";
import type { PlanJson } from "../second-route/plan-json.ts";
import { examine, type Rule } from "../second-route/recut-by-polygons.ts";
import { otherHands, type PlaneEntry } from "./random-shelves.ts";
import { mirrorDifferences } from "./same-plans.ts";

interface Found {
  readonly stick: readonly Vertex[];
  readonly section: readonly Vertex[];
  readonly planes: readonly PlaneEntry[];
}

const FOLDER = join(dirname(fileURLToPath(import.meta.url)), "found");
const NAMES = readdirSync(FOLDER).map((file) => file.replace(/\.json$/, ""));

const found = (name: string): Found =>
  JSON.parse(readFileSync(join(FOLDER, `${name}.json`), "utf8")) as Found;

function sectionOf({ stick, section }: Found, name: string): Section {
  return {
    name,
    stick: ringFromVertices(stick),
    outline: ringFromVertices(section),
    freeSpans: [],
    named: [],
  };
}

function shelfOf(planes: readonly PlaneEntry[]) {
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit: "mm", planes });
  if (!read.ok) throw new Error(JSON.stringify(read.trouble));
  return read.value;
}

/** What the second route still finds, and nothing else; each line is a test that fails until it is put right. */
const STILL_FOUND: Readonly<Record<string, readonly Rule[]>> = {};

/** Cases whose mirror image is not yet planned as the mirror image. */
const STILL_HANDED: readonly string[] = [];

for (const name of NAMES) {
  const still = STILL_FOUND[name] ?? [];
  let plan: PlanJson | undefined;
  const planned = (): PlanJson => {
    const one = found(name);
    plan ??= planFileOf({ section: sectionOf(one, name), shelf: shelfOf(one.planes) });
    return plan;
  };
  const findings = () => examine(planned());

  test(`${name}: nothing is found, known failures apart`, () => {
    expect(findings().filter(({ rule }) => !still.includes(rule))).toEqual([]);
  });

  test(`${name}: the program's own proof finds nothing`, () => {
    expect(recutPlan(planned() as never).findings).toEqual([]);
  });

  for (const rule of still)
    test.fails(`${name}: ${rule}`, () => {
      expect(findings().filter((finding) => finding.rule === rule)).toEqual([]);
    });

  const mirrored = () => {
    const one = found(name);
    const section = sectionOf(one, name);
    const other = planFileOf({
      section: mirrorSection(section),
      shelf: shelfOf(otherHands(one.planes)),
      gaugeEdge: "right",
    });
    expect(mirrorDifferences(planned(), other)).toEqual([]);
  };
  if (STILL_HANDED.includes(name)) test.fails(`${name}: the other hand`, mirrored);
  else test(`${name}: the other hand`, mirrored);
}
