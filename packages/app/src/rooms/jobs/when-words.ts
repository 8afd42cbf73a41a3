/** When something was last changed, as one says it: "today 14:32", "yesterday 9:05", "3 May". */

const DAY_MS = 24 * 60 * 60_000;

export function whenWords(ms: number, nowMs: number = Date.now()): string {
  if (ms <= 0) return "";
  const date = new Date(ms);
  const time = date.toLocaleTimeString("en-GB", { hour: "numeric", minute: "2-digit" });
  if (isSameDay(date, new Date(nowMs))) return `today ${time}`;
  if (isSameDay(date, new Date(nowMs - DAY_MS))) return `yesterday ${time}`;
  const isThisYear = date.getFullYear() === new Date(nowMs).getFullYear();
  const day = date.toLocaleDateString("en-GB", {
    day: "numeric",
    month: "long",
    ...(isThisYear ? {} : { year: "numeric" }),
  });
  return `${day}, ${time}`;
}

function isSameDay(one: Date, other: Date): boolean {
  return one.toDateString() === other.toDateString();
}
