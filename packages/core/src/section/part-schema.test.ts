import { expect, test } from "vitest";
import { z } from "../measure/index.ts";
import { partSchema, sectionSpecSchema } from "./index.ts";
import { CHART_CABINET } from "./testing/chart-cabinet.ts";

test("the chart cabinet's sections pass through JSON and the schema unchanged", () => {
  for (const spec of CHART_CABINET) {
    expect(sectionSpecSchema.parse(JSON.parse(JSON.stringify(spec)))).toEqual(spec);
  }
});

test("an unknown kind, an unknown key and a missing size are refused at their place", () => {
  const problemOf = (part: unknown) => {
    const read = partSchema.safeParse(part);
    return read.success ? "read" : `${read.error.issues[0]?.code} ${read.error.issues[0]?.path.join(".")}`;
  };
  expect(problemOf({ kind: "fillet", widthMm: 4 })).toBe("read");
  expect(problemOf({ kind: "fillet", widthMm: "rest" })).toBe("read");
  expect(problemOf({ kind: "swag", widthMm: 4 })).toBe("invalid_union kind");
  expect(problemOf({ kind: "bead", widthMm: 4, radius: 2 })).toBe("unrecognized_keys ");
  expect(problemOf({ kind: "bead" })).toBe("invalid_type widthMm");
  expect(problemOf({ kind: "bead", widthMm: Number.NaN })).toBe("invalid_type widthMm");
});

test("a JSON Schema can be made of it", () => {
  const schema = z.toJSONSchema(sectionSpecSchema) as { properties: Record<string, unknown> };
  expect(Object.keys(schema.properties).sort()).toEqual(["back", "name", "parts", "startHeightMm", "stick"]);
});
