/** A name for a job that no other job has: 128 random bits. Never shown. */
export function newJobId(): string {
  // `crypto.randomUUID` is missing where the page comes over plain http from another machine.
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return [...bytes].map((byte) => byte.toString(16).padStart(2, "0")).join("");
}
