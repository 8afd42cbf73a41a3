/** The browser's database: which shelves it has, how it is opened, and what happens when another version holds it. */
import { type DBSchema, type IDBPDatabase, openDB } from "idb";
import type { RawRecord } from "./record.ts";

/** Counted up when the database gets another shelf. Shelves once removed are never used again. */
export const DATABASE_VERSION = 1;

export const DATABASE_NAME = "mouldwright";

export interface RawBackup extends RawRecord {
  /** When the job was saved so. */
  readonly stoodAtMs: number;
}

export interface KeepingSchema extends DBSchema {
  /** One record a revision; more than one of a job only while it is being saved. */
  jobs: { key: [string, number]; value: RawRecord };
  backups: { key: [string, number]; value: RawBackup };
  /** What this browser remembers beside the jobs: which was last on the bench, which hints are done. */
  remembered: { key: string; value: unknown };
}

export type Database = IDBPDatabase<KeepingSchema>;

export type OpenedDatabase =
  | { readonly kind: "open"; readonly database: Database }
  /** A newer version of the program made it: read, never written. */
  | { readonly kind: "read only"; readonly database: Database }
  | { readonly kind: "none"; readonly detail: string };

export interface DatabaseEvents {
  /** A newer version of the program has taken over in another window; this one has let go. */
  readonly onTakenOver: () => void;
  /** The browser has ended the connection. */
  readonly onLost: () => void;
}

export async function openDatabase(events: DatabaseEvents, name = DATABASE_NAME): Promise<OpenedDatabase> {
  try {
    const database = await openDB<KeepingSchema>(name, DATABASE_VERSION, {
      upgrade: (fresh, oldVersion) => {
        if (oldVersion < 1) {
          fresh.createObjectStore("jobs", { keyPath: ["jobId", "revision"] });
          fresh.createObjectStore("backups", { keyPath: ["jobId", "stoodAtMs"] });
          fresh.createObjectStore("remembered");
        }
      },
      // A newer program wants to add a shelf: this window lets go, or it would hold the other up for ever.
      blocking: (_current, _blocked, event) => {
        if (event.target instanceof IDBDatabase) event.target.close();
        events.onTakenOver();
      },
      terminated: events.onLost,
    });
    return { kind: "open", database };
  } catch (error) {
    if (error instanceof DOMException && error.name === "VersionError") return openNewer(name);
    return { kind: "none", detail: error instanceof Error ? error.message : String(error) };
  }
}

/** Opened as it is, whatever its version: nothing is changed in it. */
async function openNewer(name: string): Promise<OpenedDatabase> {
  try {
    const database = await openDB<KeepingSchema>(name);
    if (database.objectStoreNames.contains("jobs")) return { kind: "read only", database };
    database.close();
    return { kind: "none", detail: "its shelves are not known here" };
  } catch (error) {
    return { kind: "none", detail: error instanceof Error ? error.message : String(error) };
  }
}
