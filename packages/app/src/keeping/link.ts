/**
 * A job in a link: the job file, pressed (deflate) and spelled in letters that a link may hold (base64url), after `#job=`.
 * What stands after `#` never leaves the browser. A link comes from a stranger: it is bounded before it is unpacked,
 * while it is unpacked, and then read like any other job file.
 */
import { Deflate, Inflate } from "fflate";
import { type Job, readJob, writeJob } from "mouldwright/job";
import type { Trouble } from "mouldwright/measure";
import { bringsJob, LINK_START } from "./link-start.ts";

export const LINK_LIMITS = {
  /** Letters after `#job=`; longer ones are cut off by programs that pass links on. */
  mostLetters: 64_000,
  /** Bytes that may come out: a job with a large shelf has some tens of thousands. */
  mostBytes: 500_000,
} as const;

/** Unpacked so many bytes at a time, so that no more than about a thousand times as many come out before they are counted. */
const BITE = 256;

export type Packed =
  | { readonly kind: "link"; readonly fragment: string }
  /** Too long to be passed on whole: a file does it. */
  | { readonly kind: "too long"; readonly letters: number };

export type LinkTrouble =
  /** Not spelled as such a link is, or cut off on the way. */
  | { readonly kind: "broken" }
  /** Longer, or holding more, than a job is. */
  | { readonly kind: "too large" }
  | { readonly kind: "no job"; readonly troubles: readonly Trouble[] };

export type Unpacked =
  | { readonly kind: "job"; readonly job: Job; readonly warnings: readonly Trouble[] }
  | { readonly kind: "trouble"; readonly trouble: LinkTrouble };

export function packJob(job: Job): Packed {
  // The file as it is written, without its line breaks: the same numbers.
  const text = JSON.stringify(JSON.parse(writeJob(job)));
  const letters = base64url(deflated(new TextEncoder().encode(text)));
  if (letters.length > LINK_LIMITS.mostLetters) return { kind: "too long", letters: letters.length };
  return { kind: "link", fragment: `${LINK_START}${letters}` };
}

/** The job in a fragment. Never throws, whatever stands there. */
export function unpackJob(fragment: string): Unpacked {
  const letters = fragment.slice(LINK_START.length);
  if (!bringsJob(fragment) || letters.length === 0) return refuse({ kind: "broken" });
  if (letters.length > LINK_LIMITS.mostLetters) return refuse({ kind: "too large" });
  const packed = bytesOf(letters);
  if (packed === null) return refuse({ kind: "broken" });
  const bytes = inflated(packed);
  if (bytes === "broken" || bytes === "too large") return refuse({ kind: bytes });
  const text = textOf(bytes);
  if (text === null) return refuse({ kind: "broken" });
  const read = readJob(text);
  return read.ok
    ? { kind: "job", job: read.value, warnings: read.warnings }
    : refuse({ kind: "no job", troubles: [read.trouble, ...(read.more ?? [])] });
}

function refuse(trouble: LinkTrouble): Unpacked {
  return { kind: "trouble", trouble };
}

function deflated(bytes: Uint8Array): Uint8Array {
  const pieces: Uint8Array[] = [];
  const deflate = new Deflate({ level: 9 }, (piece) => pieces.push(piece));
  deflate.push(bytes, true);
  return joined(pieces);
}

/** Unpacks in small bites and counts what comes out, so that a small packet that would swell is given up at once. */
export function inflated(
  packed: Uint8Array,
  mostBytes: number = LINK_LIMITS.mostBytes,
): Uint8Array | "broken" | "too large" {
  const pieces: Uint8Array[] = [];
  let count = 0;
  let isWhole = false;
  const inflate = new Inflate((piece, isLast) => {
    count += piece.length;
    isWhole = isLast;
    if (count <= mostBytes) pieces.push(piece);
  });
  try {
    for (let at = 0; at < packed.length; at += BITE) {
      inflate.push(packed.slice(at, at + BITE), at + BITE >= packed.length);
      if (count > mostBytes) return "too large";
    }
  } catch {
    return "broken";
  }
  return isWhole ? joined(pieces) : "broken";
}

function joined(pieces: readonly Uint8Array[]): Uint8Array {
  const all = new Uint8Array(pieces.reduce((sum, { length }) => sum + length, 0));
  let at = 0;
  for (const piece of pieces) {
    all.set(piece, at);
    at += piece.length;
  }
  return all;
}

/** Letters at a time that `String.fromCharCode` is given. */
const RUN = 8192;

function base64url(bytes: Uint8Array): string {
  let plain = "";
  for (let at = 0; at < bytes.length; at += RUN)
    plain += String.fromCharCode(...bytes.subarray(at, at + RUN));
  return btoa(plain).replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "");
}

function bytesOf(letters: string): Uint8Array | null {
  if (!/^[\w-]+$/.test(letters)) return null;
  try {
    const plain = atob(letters.replaceAll("-", "+").replaceAll("_", "/"));
    return Uint8Array.from(plain, (letter) => letter.charCodeAt(0));
  } catch {
    return null;
  }
}

function textOf(bytes: Uint8Array): string | null {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(bytes);
  } catch {
    return null;
  }
}
