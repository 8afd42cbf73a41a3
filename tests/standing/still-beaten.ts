/**
 * Small plans that another order still beats, and what that order does better. Each is a test that is expected to
 * fail; once it holds, its line here goes.
 */
export const STILL_BEATEN: Readonly<Record<string, string>> = {};
