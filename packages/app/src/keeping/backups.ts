/** Which backups of a job are kept, and when another is made. Pure; days are told by whoever asks. */

/** Of today: the first and the two newest. */
const OF_TODAY = 3;
/** In all, of one job. */
const IN_ALL = 10;
/** While work goes on, one is made about so often. */
export const BACKUP_EVERY_MS = 20 * 60_000;

/** A name for the day a moment falls on, as the maker's calendar has it. */
export type DayOf = (ms: number) => string;

export function localDay(ms: number): string {
  const date = new Date(ms);
  return `${date.getFullYear()}-${date.getMonth() + 1}-${date.getDate()}`;
}

/**
 * The moments whose backups are kept, newest first: three of today (the two newest, and the day's first, so that the
 * state in which the day began stays), the last of each day before, ten in all.
 */
export function keptBackups(stoodAtMs: readonly number[], nowMs: number, dayOf: DayOf = localDay): number[] {
  const newestFirst = [...stoodAtMs].sort((one, other) => other - one);
  const today = dayOf(nowMs);
  const ofToday = newestFirst.filter((ms) => dayOf(ms) === today || ms > nowMs);
  const kept =
    ofToday.length <= OF_TODAY ? ofToday : [...ofToday.slice(0, OF_TODAY - 1), ...ofToday.slice(-1)];
  const daysSeen = new Set<string>();
  for (const ms of newestFirst) {
    if (kept.length >= IN_ALL) break;
    const day = dayOf(ms);
    if (ms > nowMs || day === today || daysSeen.has(day)) continue;
    daysSeen.add(day);
    kept.push(ms);
  }
  return kept;
}

export interface BackupQuestion {
  readonly newestBackupMs: number | null;
  readonly nowMs: number;
  /** The first save since the job was laid on the bench: what lay there is worth a backup. */
  readonly isFirstSinceOpened: boolean;
  /** Something is about to be replaced on purpose: a backup put back. */
  readonly isAskedFor: boolean;
}

/** Whether the state that is being replaced becomes a backup. */
export function isBackupDue({
  newestBackupMs,
  nowMs,
  isFirstSinceOpened,
  isAskedFor,
}: BackupQuestion): boolean {
  if (isAskedFor || isFirstSinceOpened || newestBackupMs === null) return true;
  // A clock set back must not stop backups.
  return nowMs - newestBackupMs >= BACKUP_EVERY_MS || newestBackupMs > nowMs;
}
