import type { Job } from "mouldwright/job";
import { readShelf } from "mouldwright/shelf";
import { describe, expect, test } from "vitest";
import {
  entriesOf,
  hasMadeName,
  keyOf,
  leftOutIds,
  shelfOn,
  withPlaneChanged,
  withPlaneLeftOut,
  withPlaneNoted,
  withPlaneRemoved,
  withPlanesAdded,
  withShelfAdded,
} from "./shelf-edits.ts";

const EMPTY: Job = {
  format: "mouldwright/job",
  version: 1,
  name: "Plinth",
  section: { parts: [{ kind: "fillet", widthMm: "rest" }] },
  stick: { widthMm: 20, thicknessMm: 20 },
};

function shelfOfFile(planes: readonly unknown[], unit = "in") {
  const read = readShelf({ format: "mouldwright/shelf", version: 1, unit, planes });
  if (!read.ok) throw new Error(read.trouble.code);
  return read.value;
}

function done<Value>(outcome: { ok: true; value: Value } | { ok: false; trouble: { code: string } }): Value {
  if (!outcome.ok) throw new Error(outcome.trouble.code);
  return outcome.value;
}

const names = (job: Job) => done(shelfOn(job)).planes.map(({ name }) => name);
const HOLLOW = { kind: "hollow", radius: 9.525, width: 9.525 };
const SNIPE = { kind: "snipe bill", hand: "left" };

describe("planes come", () => {
  test("in the job's unit their names are made", () => {
    expect(names(done(withPlanesAdded(EMPTY, [HOLLOW])))).toEqual(["9.525 mm hollow"]);
    expect(names(done(withPlanesAdded({ ...EMPTY, unit: "in" }, [HOLLOW])))).toEqual(["⅜ in hollow"]);
  });

  test("after those there are, each with an id of its own", () => {
    const job = done(withPlanesAdded(done(withPlanesAdded(EMPTY, [HOLLOW])), [HOLLOW, SNIPE]));
    const ids = done(shelfOn(job)).planes.map(({ id }) => id);
    expect(new Set(ids).size).toBe(3);
  });

  test("what cannot be a plane is refused at its own key", () => {
    const outcome = withPlanesAdded(EMPTY, [{ ...HOLLOW, width: 30 }]);
    expect(outcome.ok ? null : outcome.trouble.where).toBe("width");
  });

  test("from a file only those that are not here yet, whatever they are called", () => {
    const job = done(withPlanesAdded(EMPTY, [{ ...HOLLOW, id: "mine", name: "grandfather's" }]));
    const brought = shelfOfFile([
      { kind: "hollow", radius: "3/8 in", width: "3/8 in" },
      { id: "mine", kind: "round", radius: "3/8 in", width: "3/8 in" },
    ]);
    const { job: next, addedCount, knownCount } = done(withShelfAdded(job, brought));
    expect([addedCount, knownCount]).toEqual([1, 1]);
    expect(names(next)).toEqual(["grandfather's", "⅜ in round"]);
  });
});

describe("planes change", () => {
  const job = done(
    withPlanesAdded(EMPTY, [
      { ...HOLLOW, id: "a" },
      { ...HOLLOW, id: "b", name: "old friend" },
    ]),
  );
  const entry = (id: string) => entriesOf(done(shelfOn(job))).find((one) => one.id === id) ?? {};

  test("a made name follows the size, a given one stays", () => {
    const one = done(withPlaneChanged(job, "a", { ...entry("a"), radius: 12, width: 12 }));
    const both = done(withPlaneChanged(one, "b", { ...entry("b"), radius: 12, width: 12 }));
    expect(names(both)).toEqual(["12 mm hollow", "old friend"]);
  });

  test("a name in inches counts as made in a job in millimetres", () => {
    const [plane] = shelfOfFile([{ kind: "hollow", radius: "3/8 in", width: "3/8 in" }]).planes;
    expect(plane?.name).toBe("⅜ in hollow");
    expect(plane !== undefined && hasMadeName(plane)).toBe(true);
  });

  test("an emptied name is made again; the note comes and goes", () => {
    const named = done(withPlaneChanged(job, "b", { ...entry("b"), name: "", note: "boxed" }));
    const [, changed] = done(shelfOn(named)).planes;
    expect([changed?.name, changed?.note]).toEqual(["9.525 mm hollow", "boxed"]);
  });

  test("an impossible size changes nothing and is told at its key", () => {
    const outcome = withPlaneChanged(job, "a", { ...entry("a"), pitch: 200 });
    expect(outcome.ok ? null : outcome.trouble.where).toBe("pitch");
  });
});

describe("planes go", () => {
  const job = done(
    withPlanesAdded(EMPTY, [
      { ...HOLLOW, id: "a" },
      { ...SNIPE, id: "b" },
    ]),
  );
  const shelf = done(shelfOn(job));

  test("left out of the job and taken in again, the rest of the way as it was", () => {
    const withWay: Job = { ...job, way: { toleranceMm: 0.3 } };
    const out = withPlaneLeftOut(withWay, shelf, "b", true);
    expect(out.way).toEqual({ toleranceMm: 0.3, without: ["b"] });
    expect(withPlaneLeftOut(out, shelf, "b", false).way).toEqual({ toleranceMm: 0.3 });
    expect(withPlaneLeftOut(withPlaneLeftOut(job, shelf, "b", true), shelf, "b", false)).toEqual(job);
  });

  test("names in the job mean the same planes as ids do", () => {
    const out: Job = { ...job, way: { without: ["LEFT snipe bill", "nobody's plane"] } };
    expect(leftOutIds(out, shelf)).toEqual(["b"]);
  });

  test("off the shelf it is not left out any longer", () => {
    const out = withPlaneLeftOut(job, shelf, "b", true);
    const gone = done(withPlaneRemoved(out, "b"));
    expect(done(shelfOn(gone)).planes.map(({ id }) => id)).toEqual(["a"]);
    expect(gone.way).toBeUndefined();
  });
});

test("the key of a trouble's place", () => {
  expect(keyOf("planes[12].widths[0]")).toBe("widths");
  expect(keyOf("planes[3].shoulder.width")).toBe("shoulder");
  expect(keyOf("unit")).toBe("unit");
});

describe("a note on a plane", () => {
  const short: Job = {
    ...EMPTY,
    shelf: {
      format: "mouldwright/shelf",
      version: 1,
      unit: "in",
      planes: [
        { kind: "hollow", radius: "3/8", width: "3/8" },
        { kind: "snipe bill", hand: "left", note: "lent to Ruth" },
      ],
    },
  };
  const idOf = (index: number) => done(shelfOn(short)).planes[index]?.id ?? "";

  test("is all that is written of the shelf", () => {
    const noted = done(withPlaneNoted(short, idOf(0), "reground"));
    expect(noted.shelf).toMatchObject({
      unit: "in",
      planes: [{ kind: "hollow", radius: "3/8", width: "3/8", note: "reground" }, { note: "lent to Ruth" }],
    });
  });

  test("goes when it is emptied", () => {
    const bare = done(withPlaneNoted(short, idOf(1), ""));
    expect(bare.shelf).toMatchObject({ planes: [{}, { kind: "snipe bill", hand: "left" }] });
    expect(JSON.stringify(bare.shelf)).not.toContain("note");
  });

  test("that no file can hold is refused at the note", () => {
    const outcome = withPlaneNoted(short, idOf(0), "x".repeat(100_000));
    expect(outcome.ok ? null : outcome.trouble.where).toBe("note");
  });
});
