import "fake-indexeddb/auto";
import { IDBFactory as FakeFactory } from "fake-indexeddb";
import { openDB } from "idb";
import { writeJob } from "mouldwright/job";
import { afterEach, describe, expect, test, vi } from "vitest";
import { DATABASE_NAME, openDatabase } from "./database.ts";
import { RECORD_VERSION } from "./record.ts";
import { type JobStore, jobStore } from "./store.ts";
import { freshStore } from "./testing/fresh-store.ts";
import { plinth } from "./testing/jobs.ts";

const MINUTE = 60_000;
const text = (name: string): string => writeJob(plinth({ name }));

afterEach(() => vi.restoreAllMocks());

async function saved(store: JobStore, fromRevision: number, name: string): Promise<number> {
  const answer = await store.save({ jobId: "a", fromRevision, text: text(name) });
  if (answer.kind !== "saved") throw new Error(answer.kind);
  return answer.revision;
}

async function nameInStore(store: JobStore): Promise<string | null> {
  const kept = await store.read("a");
  return kept?.kind === "job" ? kept.job.name : null;
}

describe("saving", () => {
  test("a job is read back as it was given, and one revision of it lies there", async () => {
    const { store, database } = await freshStore();
    expect(await saved(store, 0, "first")).toBe(1);
    expect(await saved(store, 1, "second")).toBe(2);
    expect(await nameInStore(store)).toBe("second");
    expect(await database.getAllKeys("jobs")).toEqual([["a", 2]]);
  });

  test("every write asks the browser to have it on the disk before it says so", async () => {
    const { store } = await freshStore();
    const asked: unknown[] = [];
    const original = IDBDatabase.prototype.transaction;
    vi.spyOn(IDBDatabase.prototype, "transaction").mockImplementation(function (this: IDBDatabase, ...given) {
      if (given[1] === "readwrite") asked.push(given[2]);
      return original.apply(this, given);
    });
    await saved(store, 0, "first");
    await saved(store, 1, "second");
    expect(asked.length).toBeGreaterThan(1);
    expect(new Set(asked.map((options) => JSON.stringify(options)))).toEqual(
      new Set(['{"durability":"strict"}']),
    );
  });

  test("where another window has saved since, nothing is written and its job is handed over", async () => {
    const { store, openAgain } = await freshStore();
    await saved(store, 0, "first");
    const other = jobStore(await openAgain());
    await other.save({ jobId: "a", fromRevision: 1, text: text("theirs") });
    const answer = await store.save({ jobId: "a", fromRevision: 1, text: text("mine") });
    expect(answer).toMatchObject({
      kind: "saved elsewhere",
      there: { kind: "job", job: { name: "theirs" } },
    });
    expect(await nameInStore(store)).toBe("theirs");
  });

  test("two windows that save at the same moment never both succeed", async () => {
    const { store, openAgain } = await freshStore();
    await saved(store, 0, "first");
    const other = jobStore(await openAgain());
    const answers = await Promise.all([
      store.save({ jobId: "a", fromRevision: 1, text: text("mine") }),
      other.save({ jobId: "a", fromRevision: 1, text: text("theirs") }),
    ]);
    expect(answers.map(({ kind }) => kind).sort()).toEqual(["saved", "saved elsewhere"]);
  });

  test("two windows that come to the same job agree", async () => {
    const { store } = await freshStore();
    await saved(store, 0, "first");
    expect(await store.save({ jobId: "a", fromRevision: 0, text: text("first") })).toMatchObject({
      kind: "saved",
      revision: 1,
    });
  });

  test("a browser killed before the old revision goes leaves the new one whole, and the next save tidies up", async () => {
    const { store, database } = await freshStore();
    await saved(store, 0, "first");
    await database.add("jobs", {
      jobId: "a",
      revision: 2,
      recordVersion: RECORD_VERSION,
      savedAtMs: 5,
      text: text("second"),
    });
    expect(await nameInStore(store)).toBe("second");
    expect((await store.list()).length).toBe(1);
    expect(await saved(store, 2, "third")).toBe(3);
    expect(await database.getAllKeys("jobs")).toEqual([["a", 3]]);
  });
});

describe("what cannot be kept", () => {
  const full = (): never => {
    throw new DOMException("no room", "QuotaExceededError");
  };

  test("a full store refuses, says so, and keeps what was there", async () => {
    const { store } = await freshStore();
    await saved(store, 0, "first");
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(full);
    const answer = await store.save({ jobId: "a", fromRevision: 1, text: text("second") });
    expect(answer).toEqual({ kind: "failed", failure: { kind: "full" } });
    vi.restoreAllMocks();
    expect(await nameInStore(store)).toBe("first");
    expect(await saved(store, 1, "second")).toBe(2);
  });

  test("a backup without room never holds up a save", async () => {
    const { store, database } = await freshStore();
    await saved(store, 0, "first");
    vi.spyOn(IDBObjectStore.prototype, "put").mockImplementation(full);
    const answer = await store.save({ jobId: "a", fromRevision: 1, text: text("second") });
    expect(answer).toEqual({ kind: "saved", revision: 2, backup: "failed" });
    expect(await nameInStore(store)).toBe("second");
    expect(await database.getAllKeys("jobs")).toEqual([["a", 2]]);
  });

  test("what comes back otherwise than it was given is taken away again, and the old one stays", async () => {
    const { store, database } = await freshStore();
    await saved(store, 0, "first");
    const original = IDBObjectStore.prototype.add;
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(function (this: IDBObjectStore, value, key) {
      return original.call(this, { ...value, text: "damaged" }, key);
    });
    const answer = await store.save({ jobId: "a", fromRevision: 1, text: text("second") });
    expect(answer).toEqual({ kind: "failed", failure: { kind: "came back otherwise" } });
    expect(await nameInStore(store)).toBe("first");
    expect(await database.getAllKeys("jobs")).toEqual([["a", 1]]);
  });
});

describe("other versions", () => {
  test("a record of a newer program is listed as such, with its text, and stays as it is", async () => {
    const { store, database } = await freshStore();
    const newer = {
      jobId: "a",
      revision: 3,
      recordVersion: 9,
      savedAtMs: 7,
      text: text("tomorrow"),
      extra: [1],
    };
    await database.add("jobs", newer);
    expect(await store.read("a")).toMatchObject({ kind: "newer", name: "tomorrow", text: newer.text });
    expect(await store.save({ jobId: "a", fromRevision: 0, text: text("mine") })).toMatchObject({
      kind: "saved elsewhere",
    });
    expect(await database.get("jobs", ["a", 3])).toEqual(newer);
  });

  test("a job file of a newer version inside a record of today is listed as newer too", async () => {
    const { store } = await freshStore();
    const tomorrow = text("tomorrow").replace('"version": 1', '"version": 2');
    await store.save({ jobId: "a", fromRevision: 0, text: tomorrow });
    expect(await store.read("a")).toMatchObject({ kind: "newer", name: "tomorrow", text: tomorrow });
  });

  test("a damaged record is listed with what it holds; the revision before it can still be read", async () => {
    const { store, database } = await freshStore();
    await database.add("jobs", { jobId: "b", revision: 1, recordVersion: 1, savedAtMs: 7, text: "{" });
    expect(await store.read("b")).toMatchObject({ kind: "unreadable", text: "{" });
    await saved(store, 0, "first");
    await database.add("jobs", { jobId: "a", revision: 2, recordVersion: 1, savedAtMs: 7, text: "{" });
    expect(await nameInStore(store)).toBe("first");
    expect((await store.list()).map(({ kind }) => kind).sort()).toEqual(["job", "unreadable"]);
  });

  test("an older record is kept as a backup before today's takes its place", async () => {
    const { store, database } = await freshStore();
    await database.add("jobs", {
      jobId: "a",
      revision: 1,
      recordVersion: 0,
      savedAtMs: 7,
      text: text("old"),
    });
    await database.put("backups", {
      jobId: "a",
      revision: 1,
      recordVersion: 1,
      savedAtMs: Date.UTC(2024, 4, 6, 9),
      stoodAtMs: Date.UTC(2024, 4, 6, 9),
      text: text("before"),
    });
    await saved(store, 1, "new");
    expect((await database.getAll("backups")).map(({ recordVersion }) => recordVersion)).toEqual([0, 1]);
  });

  test("a database of a newer program is opened for reading only", async () => {
    const { store, database } = await freshStore();
    await saved(store, 0, "first");
    database.close();
    (await openDB(DATABASE_NAME, 7)).close();
    const opened = await openDatabase({ onTakenOver: () => undefined, onLost: () => undefined });
    expect(opened.kind).toBe("read only");
    if (opened.kind === "none") throw new Error("not opened");
    expect((await jobStore(opened.database).list()).length).toBe(1);
    expect(opened.database.version).toBe(7);
  });

  test("a window lets go when a newer program wants the database", async () => {
    await freshStore();
    let isTakenOver = false;
    await openDatabase({
      onTakenOver: () => {
        isTakenOver = true;
      },
      onLost: () => undefined,
    });
    // The store of `freshStore` lets go as well, or this would wait for ever.
    (await openDB(DATABASE_NAME, 2)).close();
    expect(isTakenOver).toBe(true);
  });

  test("a browser without a store says so", async () => {
    vi.spyOn(FakeFactory.prototype, "open").mockImplementation(() => {
      throw new DOMException("not allowed here", "SecurityError");
    });
    expect(await openDatabase({ onTakenOver: () => undefined, onLost: () => undefined })).toEqual({
      kind: "none",
      detail: "not allowed here",
    });
  });
});

describe("backups", () => {
  test("the state a job was opened in becomes one, then one about every twenty minutes of work", async () => {
    const { store, setClock } = await freshStore();
    const start = Date.UTC(2024, 4, 6, 9);
    await saved(store, 0, "as opened");
    for (let minute = 1; minute <= 45; minute += 1) {
      setClock(start + minute * MINUTE);
      await store.save({
        jobId: "a",
        fromRevision: minute,
        text: text(`minute ${minute}`),
        isFirstSinceOpened: minute === 1,
      });
    }
    const backups = await store.backups("a");
    expect(backups.map(({ job }) => (job.kind === "job" ? job.job.name : job.kind))).toEqual([
      "minute 38",
      "minute 19",
      "as opened",
    ]);
  });

  test("what is replaced on purpose becomes one at once", async () => {
    const { store } = await freshStore();
    await saved(store, 0, "first");
    await saved(store, 1, "second");
    await store.save({ jobId: "a", fromRevision: 2, text: text("first"), keepsOld: true });
    const names = (await store.backups("a")).map(({ job }) => (job.kind === "job" ? job.job.name : ""));
    expect(names).toContain("second");
  });

  test("a job destroyed takes its backups along and leaves the others", async () => {
    const { store } = await freshStore();
    await saved(store, 0, "first");
    await saved(store, 1, "second");
    await store.save({ jobId: "ab", fromRevision: 0, text: text("other") });
    expect(await store.destroy("a")).toBeNull();
    expect((await store.list()).map(({ jobId }) => jobId)).toEqual(["ab"]);
    expect(await store.backups("a")).toEqual([]);
  });

  test("a job thrown away is still there and says when", async () => {
    const { store } = await freshStore();
    await saved(store, 0, "first");
    await store.save({ jobId: "a", fromRevision: 1, text: text("first"), deletedAtMs: 42 });
    expect(await store.read("a")).toMatchObject({ kind: "job", deletedAtMs: 42 });
  });
});
