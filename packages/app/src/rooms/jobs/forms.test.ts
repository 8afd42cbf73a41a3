import fc from "fast-check";
import { sectionOfJob } from "mouldwright/job";
import { describe, expect, test } from "vitest";
import { FORMS, firstSizes, jobOfForm } from "./forms.ts";

describe.each(FORMS)("$name", (form) => {
  test("with the sizes it begins with it is a section, nothing to warn of", () => {
    const section = sectionOfJob(jobOfForm(form, firstSizes(form), {}));
    expect(section.ok ? section.warnings : section.trouble).toEqual([]);
  });

  test("with any sizes within its bounds it is a section, or too large or too shallow for one", () => {
    const sizes = fc.record(
      Object.fromEntries(
        form.sizes.map(({ key, kind, least, most }) => [
          key,
          kind === "count"
            ? fc.integer({ min: least, max: Math.min(most, 12) })
            : fc.double({ min: least, max: most, noNaN: true }),
        ]),
      ),
    );
    fc.assert(
      fc.property(sizes, (given) => {
        const job = jobOfForm(form, given, {});
        const section = sectionOfJob(job);
        const code = section.ok ? "a section" : section.trouble.code;
        // A row may grow wider than any stick; a long, shallow ogee rises above its fillet or into it.
        expect(["a section", "stick-size", "section-outside-stick", "section-crosses-itself"]).toContain(
          code,
        );
      }),
      { seed: 42, numRuns: 40 },
    );
  });
});
