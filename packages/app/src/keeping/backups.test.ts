import { describe, expect, test } from "vitest";
import { BACKUP_EVERY_MS, isBackupDue, keptBackups } from "./backups.ts";

const HOUR = 3_600_000;
const DAY = 24 * HOUR;
const dayOf = (ms: number): string => String(Math.floor(ms / DAY));
/** Day 100, an hour of it. */
const at = (day: number, hour: number): number => day * DAY + hour * HOUR;

describe("which backups stay", () => {
  test("of today the first and the two newest", () => {
    const today = [8, 9, 10, 11, 12].map((hour) => at(100, hour));
    expect(keptBackups(today, at(100, 13), dayOf)).toEqual([at(100, 12), at(100, 11), at(100, 8)]);
  });

  test("of a day before, the last", () => {
    const made = [at(99, 8), at(99, 17), at(98, 9)];
    expect(keptBackups(made, at(100, 8), dayOf)).toEqual([at(99, 17), at(98, 9)]);
  });

  test("ten in all", () => {
    const made = Array.from({ length: 60 }, (_, index) => at(100 - Math.floor(index / 4), 20 - (index % 4)));
    const kept = keptBackups(made, at(100, 21), dayOf);
    expect(kept).toHaveLength(10);
    expect(kept.slice(3)).toEqual([99, 98, 97, 96, 95, 94, 93].map((day) => at(day, 20)));
  });

  test("a clock set back loses none of what it calls tomorrow's newest", () => {
    expect(keptBackups([at(101, 3), at(100, 2)], at(100, 5), dayOf)).toEqual([at(101, 3), at(100, 2)]);
  });

  test("what is kept stays kept when it is thinned again", () => {
    const made = Array.from({ length: 40 }, (_, index) => at(100, 20) - index * 5 * HOUR);
    const once = keptBackups(made, at(100, 21), dayOf);
    expect(keptBackups(once, at(100, 21), dayOf)).toEqual(once);
  });
});

describe("when one is made", () => {
  const quiet = { nowMs: at(100, 9), isFirstSinceOpened: false, isAskedFor: false };

  test("when there is none, when the job was just opened, when it is asked for", () => {
    expect(isBackupDue({ ...quiet, newestBackupMs: null })).toBe(true);
    expect(isBackupDue({ ...quiet, newestBackupMs: at(100, 9), isFirstSinceOpened: true })).toBe(true);
    expect(isBackupDue({ ...quiet, newestBackupMs: at(100, 9), isAskedFor: true })).toBe(true);
  });

  test("else every twenty minutes, whatever the clock was set to before", () => {
    const newest = at(100, 9);
    expect(isBackupDue({ ...quiet, newestBackupMs: newest, nowMs: newest + BACKUP_EVERY_MS - 1 })).toBe(
      false,
    );
    expect(isBackupDue({ ...quiet, newestBackupMs: newest, nowMs: newest + BACKUP_EVERY_MS })).toBe(true);
    expect(isBackupDue({ ...quiet, newestBackupMs: newest + DAY })).toBe(true);
  });
});
