/**
 * From older records to today's. Each step is pure, numbered by the version it starts from, without gaps, and never
 * edited once it has gone out. There is one version yet, so the list is empty.
 */

export interface Migration {
  /** Version of the record it takes; it gives the next one. */
  readonly from: number;
  readonly step: (record: Readonly<Record<string, unknown>>) => Readonly<Record<string, unknown>>;
}

export const MIGRATIONS: readonly Migration[] = [];

/**
 * The record as version `to`, every step between taken in order. A record that is already there, or one for which a step
 * is missing, is given back as it is: whoever reads it checks it.
 */
export function migrate(
  record: Readonly<Record<string, unknown>>,
  to: number,
  migrations: readonly Migration[] = MIGRATIONS,
): Readonly<Record<string, unknown>> {
  let migrated = record;
  for (let version = versionOf(record); version < to; version += 1) {
    const migration = migrations.find(({ from }) => from === version);
    if (migration === undefined) return record;
    migrated = { ...migration.step(migrated), recordVersion: version + 1 };
  }
  return migrated;
}

function versionOf(record: Readonly<Record<string, unknown>>): number {
  const { recordVersion } = record;
  return typeof recordVersion === "number" && Number.isSafeInteger(recordVersion) && recordVersion > 0
    ? recordVersion
    : Number.POSITIVE_INFINITY;
}
