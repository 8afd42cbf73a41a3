import { IDBFactory } from "fake-indexeddb";
import { type Database, openDatabase } from "../database.ts";
import { type JobStore, jobStore } from "../store.ts";

export interface FreshStore {
  readonly database: Database;
  readonly store: JobStore;
  /** Another window on the same database. */
  readonly openAgain: () => Promise<Database>;
  readonly setClock: (ms: number) => void;
}

/** A database of its own for each test, with a clock that is set by hand. */
export async function freshStore(): Promise<FreshStore> {
  globalThis.indexedDB = new IDBFactory();
  let nowMs = Date.UTC(2024, 4, 6, 9);
  const database = await openPlain();
  return {
    database,
    store: jobStore(database, () => nowMs),
    openAgain: openPlain,
    setClock: (ms) => {
      nowMs = ms;
    },
  };
}

async function openPlain(): Promise<Database> {
  const opened = await openDatabase({ onTakenOver: () => undefined, onLost: () => undefined });
  if (opened.kind !== "open") throw new Error(`not open: ${opened.kind}`);
  return opened.database;
}
