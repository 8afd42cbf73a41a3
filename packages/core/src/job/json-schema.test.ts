import { expect, test } from "vitest";
import { jobJsonSchema } from "./json-schema.ts";
import published from "./schema.json" with { type: "json" };

test("the published schema is the one the program checks with (npm run schema renews it)", () => {
  expect(published).toEqual(JSON.parse(JSON.stringify(jobJsonSchema())));
});

test("the schema forbids unknown keys in every group", () => {
  const open: string[] = [];
  const walk = (value: unknown, path: string): void => {
    if (typeof value !== "object" || value === null) return;
    const group = value as Readonly<Record<string, unknown>>;
    if (group.type === "object" && group.additionalProperties !== false) open.push(path);
    for (const [key, inner] of Object.entries(group)) walk(inner, `${path}/${key}`);
  };
  walk(published, "");
  expect(open).toEqual([]);
});
