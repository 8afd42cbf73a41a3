import "fake-indexeddb/auto";
import { writeJob } from "mouldwright/job";
import { afterEach, describe, expect, test, vi } from "vitest";
import type { Failure } from "./failure.ts";
import { type SavedElsewhere, type Saver, startSaver } from "./saver.ts";
import type { JobStore } from "./store.ts";
import { freshStore } from "./testing/fresh-store.ts";
import { plinth } from "./testing/jobs.ts";

afterEach(() => vi.restoreAllMocks());

interface Heard {
  readonly saved: string[];
  readonly failures: Failure[];
  readonly elsewhere: SavedElsewhere[];
}

function saverOn(store: JobStore): Heard & { readonly saver: Saver } {
  const heard: Heard = { saved: [], failures: [], elsewhere: [] };
  const saver = startSaver({
    store,
    nameOfCopy: (name) => `${name} (copy)`,
    events: {
      onSaving: () => undefined,
      onSaved: (jobId, revision) => heard.saved.push(`${jobId} ${revision}`),
      onFailed: (_jobId, failure) => heard.failures.push(failure),
      onSavedElsewhere: (found) => heard.elsewhere.push(found),
    },
  });
  return { ...heard, saver };
}

async function names(store: JobStore): Promise<string[]> {
  return (await store.list()).map((kept) => (kept.kind === "job" ? kept.job.name : kept.kind)).sort();
}

describe("saving in turn", () => {
  test("the newest state wins, and nothing waits at the end", async () => {
    const { store } = await freshStore();
    const { saver, saved } = saverOn(store);
    for (let width = 30; width < 60; width += 1) {
      saver.keep("a", plinth({ stick: { widthMm: width, thicknessMm: 22 } }));
    }
    expect(saver.hasUnsaved()).toBe(true);
    await saver.settled();
    expect(saver.hasUnsaved()).toBe(false);
    expect(await store.read("a")).toMatchObject({ job: { stick: { widthMm: 59 } } });
    expect(saved.length).toBeLessThan(30);
  });

  test("what changes while a save is under way is saved after it", async () => {
    const { store } = await freshStore();
    const { saver } = saverOn(store);
    saver.keep("a", plinth({ name: "one" }));
    await Promise.resolve();
    await Promise.resolve();
    saver.keep("a", plinth({ name: "two" }));
    await saver.settled();
    expect(await names(store)).toEqual(["two"]);
  });

  test("two jobs in one breath are both kept", async () => {
    const { store } = await freshStore();
    const { saver } = saverOn(store);
    saver.keep("a", plinth({ name: "one" }));
    saver.keep("b", plinth({ name: "two" }));
    await saver.settled();
    expect(await names(store)).toEqual(["one", "two"]);
  });
});

describe("another window saved first", () => {
  test("both are kept: theirs under its name, this one under a name of its own, and it is told", async () => {
    const { store } = await freshStore();
    const { saver, elsewhere } = saverOn(store);
    saver.keep("a", plinth({ name: "cornice" }));
    await saver.settled();
    await store.save({
      jobId: "a",
      fromRevision: 1,
      text: writeJob(plinth({ name: "cornice", notes: "theirs" })),
    });
    saver.keep("a", plinth({ name: "cornice", notes: "mine" }));
    await saver.settled();
    expect(await names(store)).toEqual(["cornice", "cornice (copy)"]);
    expect(elsewhere).toMatchObject([
      { jobId: "a", copyName: "cornice (copy)", there: { job: { notes: "theirs" } } },
    ]);
    expect(await store.read(elsewhere[0]?.copyId ?? "")).toMatchObject({ job: { notes: "mine" } });
  });

  test("the copy goes on being saved under its own name in the store", async () => {
    const { store } = await freshStore();
    const { saver, elsewhere } = saverOn(store);
    saver.keep("a", plinth());
    await saver.settled();
    await store.save({ jobId: "a", fromRevision: 1, text: writeJob(plinth({ notes: "theirs" })) });
    saver.keep("a", plinth({ notes: "mine" }));
    await saver.settled();
    saver.keep(elsewhere[0]?.copyId ?? "", plinth({ name: "own", notes: "mine, changed" }));
    await saver.settled();
    expect(elsewhere).toHaveLength(1);
    expect(await store.read(elsewhere[0]?.copyId ?? "")).toMatchObject({ revision: 2, job: { name: "own" } });
  });

  test("a job thrown away elsewhere while it is worked on here is kept as a copy", async () => {
    const { store } = await freshStore();
    const { saver, elsewhere } = saverOn(store);
    saver.keep("a", plinth());
    await saver.settled();
    await store.destroy("a");
    saver.keep("a", plinth({ notes: "mine" }));
    await saver.settled();
    expect(elsewhere).toMatchObject([{ there: null }]);
    expect((await store.list()).length).toBe(1);
  });
});

describe("a save that is refused", () => {
  const fill = (): void => {
    vi.spyOn(IDBObjectStore.prototype, "add").mockImplementation(() => {
      throw new DOMException("no room", "QuotaExceededError");
    });
  };

  test("is told, stays here, and is made good by trying again", async () => {
    const { store } = await freshStore();
    const { saver, failures } = saverOn(store);
    fill();
    saver.keep("a", plinth({ notes: "mine" }));
    await saver.settled();
    expect(failures).toEqual([{ kind: "full" }]);
    expect(saver.hasUnsaved() && saver.hasFailed()).toBe(true);
    vi.restoreAllMocks();
    saver.tryAgain();
    await saver.settled();
    expect(saver.hasUnsaved() || saver.hasFailed()).toBe(false);
    expect(await store.read("a")).toMatchObject({ job: { notes: "mine" } });
  });

  test("the next change tries again with the newest state, the others with it", async () => {
    const { store } = await freshStore();
    const { saver } = saverOn(store);
    fill();
    saver.keep("a", plinth({ notes: "one" }));
    saver.keep("b", plinth({ name: "other" }));
    await saver.settled();
    vi.restoreAllMocks();
    saver.keep("a", plinth({ notes: "two" }));
    await saver.settled();
    expect(await store.read("a")).toMatchObject({ job: { notes: "two" } });
    expect(await names(store)).toContain("other");
    expect(saver.hasUnsaved()).toBe(false);
  });
});
