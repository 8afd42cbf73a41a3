import { describe, expect, test } from "vitest";
import { readJob, sectionOfJob, shelfFileOfJob, shelfOfJob, writeJob } from "./index.ts";

/** The glazing bar's ovolo, half of it: a 4.5 mm fillet, then an ovolo of 12 × 12 down the far edge. */
const JOB = {
  format: "mouldwright/job",
  version: 1,
  name: "Glazing bar",
  unit: "mm",
  notes: "harbour office, chart cabinet",
  section: {
    parts: [
      { kind: "fillet", widthMm: 4.5 },
      { kind: "step", riseMm: -1.5 },
      { kind: "ovolo", acrossMm: 12, riseMm: -12, name: "ovolo" },
    ],
  },
  stick: { widthMm: 16.5, thicknessMm: 20 },
  shelf: {
    format: "mouldwright/shelf",
    version: 1,
    unit: "mm",
    planes: [{ kind: "hollow", radius: 12, width: 12 }],
  },
  way: { toleranceMm: 0.2 },
};

type Json = Record<string, unknown>;

function changed(change: (job: Json) => void): string {
  const job = structuredClone(JOB) as Json;
  change(job);
  return JSON.stringify(job);
}

function refusal(text: string): Json {
  const outcome = readJob(text);
  if (outcome.ok) throw new Error("the job was read, but should have been refused");
  const { code, where, facts } = outcome.trouble;
  return { code, where, facts };
}

const partsOf = (job: Json): Json[] => (job.section as Json).parts as Json[];

test("a job reads, and what is written of it reads the same", () => {
  const first = readJob(JSON.stringify(JOB));
  expect(first).toEqual({ ok: true, value: JOB, warnings: [] });
  if (first.ok) expect(readJob(writeJob(first.value))).toEqual(first);
});

test("its parts make the section: the stick's far edge is met 6.5 mm above the back", () => {
  const job = readJob(JSON.stringify(JOB));
  if (!job.ok) throw new Error(job.trouble.code);
  const section = sectionOfJob(job.value);
  if (!section.ok) throw new Error(section.trouble.code);
  // 20 - 1.5 - 12 = 6.5, on the far edge at 16.5.
  const corners = section.value.outline.pieces.map((piece) => [piece.from.x, piece.from.y]);
  expect(corners).toContainEqual([16.5, 6.5]);
  expect(section.value.name).toBe("Glazing bar");
});

test("a path is taken as drawn, its arcs exact", () => {
  const text = changed((job) => {
    // A quarter of radius 6 off the top right corner of 20 × 10: tan(90° / 4) is its bulge.
    const bulge = Math.tan(Math.PI / 8);
    job.section = {
      path: [
        [0, 0],
        [20, 0],
        [20, 4, bulge],
        [14, 10],
        [0, 10],
      ],
    };
    job.stick = { widthMm: 20, thicknessMm: 10 };
  });
  const job = readJob(text);
  if (!job.ok) throw new Error(job.trouble.code);
  const section = sectionOfJob(job.value);
  if (!section.ok) throw new Error(section.trouble.code);
  const arcs = section.value.outline.pieces.filter((piece) => piece.kind === "arc");
  expect(arcs).toHaveLength(1);
  expect(arcs[0]).toMatchObject({ from: { x: 20, y: 4 }, to: { x: 14, y: 10 } });
});

test("a path that crosses itself is refused when the section is made", () => {
  const job = readJob(
    changed((one) => {
      one.section = {
        path: [
          [0, 0],
          [16, 18],
          [16, 4],
          [0, 18],
        ],
      };
    }),
  );
  if (!job.ok) throw new Error(job.trouble.code);
  const section = sectionOfJob(job.value);
  expect(section.ok === false && section.trouble.code).toBe("section-crosses-itself");
});

test("a path that crosses itself into two like halves is refused before that", () => {
  const text = changed((one) => {
    one.section = {
      path: [
        [0, 0],
        [16, 18],
        [16, 0],
        [0, 18],
      ],
    };
  });
  expect(refusal(text)).toMatchObject({ code: "file-outline-empty", where: "section.path" });
});

test("a shelf in a file is named, and refused until somebody opens it", () => {
  const job = readJob(
    changed((one) => {
      one.shelf = { file: "shelves/full.json" };
    }),
  );
  if (!job.ok) throw new Error(job.trouble.code);
  expect(shelfFileOfJob(job.value)).toBe("shelves/full.json");
  const shelf = shelfOfJob(job.value);
  expect(shelf.ok === false && shelf.trouble.code).toBe("job-shelf-missing");
});

describe("refused", () => {
  test.each<[string, (job: Json) => void, Json]>([
    [
      "a newer version, whatever else it holds",
      (job) => {
        job.version = 2;
        job.section = "in a shape of the future";
      },
      { code: "file-version-newer", where: "version", facts: { found: 2, known: 1 } },
    ],
    [
      "another format",
      (job) => {
        job.format = "mouldwright/plan";
      },
      { code: "file-format-other", where: "format" },
    ],
    [
      "an unknown key at the top",
      (job) => {
        job.stik = {};
      },
      { code: "file-key-unknown", where: "stik", facts: { nearest: "stick" } },
    ],
    [
      "a misspelt size in a part",
      (job) => {
        partsOf(job)[0] = { kind: "fillet", widthMn: 4.5 };
      },
      { code: "file-key-missing", where: "section.parts[0].widthMm" },
    ],
    [
      "a key of another kind of part",
      (job) => {
        partsOf(job)[1]!.widthMm = 3;
      },
      { code: "file-key-unknown", where: "section.parts[1].widthMm" },
    ],
    [
      "a kind of part that is not there",
      (job) => {
        partsOf(job)[2]!.kind = "ovollo";
      },
      { code: "file-value-wrong", where: "section.parts[2].kind" },
    ],
    [
      "a size of nought",
      (job) => {
        (job.stick as Json).widthMm = 0;
      },
      { code: "file-value-out-of-range", where: "stick.widthMm" },
    ],
    [
      "a size beyond all boards",
      (job) => {
        (job.stick as Json).widthMm = 1e308;
      },
      { code: "file-value-out-of-range", where: "stick.widthMm" },
    ],
    [
      "a misspelt key of a plane in the job's own shelf",
      (job) => {
        (job.shelf as Json).planes = [{ kind: "hollow", radius: 12, widht: 12 }];
      },
      { code: "shelf-unknown-key", where: "shelf.planes[0].widht" },
    ],
    [
      "parts and a path",
      (job) => {
        (job.section as Json).path = [
          [0, 0],
          [1, 0],
          [1, 1],
        ];
      },
      { code: "job-section-twofold", where: "section" },
    ],
    [
      "neither parts nor a path",
      (job) => {
        job.section = {};
      },
      { code: "job-section-missing", where: "section" },
    ],
    [
      "a tolerance finer than the program can hold",
      (job) => {
        job.way = { toleranceMm: 0.001 };
      },
      { code: "file-value-out-of-range", where: "way.toleranceMm" },
    ],
  ])("%s", (_, change, expected) => {
    expect(refusal(changed(change))).toMatchObject(expected);
  });

  test.each([
    "../shelf.json",
    "/etc/passwd",
    "C:\\shelf.json",
    "a/../../b.json",
    "a//b.json",
    "./x.json",
    "x\u001b.json",
  ])("the shelf file %j", (file) => {
    const text = changed((job) => {
      job.shelf = { file };
    });
    expect(refusal(text)).toMatchObject({ code: "job-shelf-elsewhere", where: "shelf.file" });
  });

  test("__proto__ as a key, at the top and inside", () => {
    const top = JSON.stringify(JOB).replace("{", '{"__proto__": {"unit": "in"}, ');
    expect(refusal(top)).toMatchObject({ code: "file-key-unknown", where: '["__proto__"]' });
    const inside = JSON.stringify(JOB).replace(
      '{"widthMm":16.5',
      '{"__proto__": {"widthMm": 1}, "widthMm":16.5',
    );
    expect(refusal(inside)).toMatchObject({ code: "file-key-unknown" });
    expect(({} as Json).unit).toBeUndefined();
  });
});
