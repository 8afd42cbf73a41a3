/** Several files packed into one (ZIP): written, read back to be sure, and opened again. Only ever read as data. */
import { strFromU8, strToU8, unzipSync, zipSync } from "fflate";

export interface PlainFile {
  readonly name: string;
  readonly text: string;
}

/** Bounds of what is unpacked: a small packed file may claim to hold anything. */
export const PACKED_LIMITS = { mostFiles: 2000, mostBytes: 400_000_000, mostFileBytes: 20_000_000 } as const;

export interface Unpacked {
  readonly files: readonly PlainFile[];
  /** Files inside that were too large or too many to be looked at. */
  readonly leftOut: number;
}

export type Packed =
  | { readonly ok: true; readonly bytes: Uint8Array<ArrayBuffer> }
  /** Read back, these files were not what went in. */
  | { readonly ok: false; readonly lost: readonly string[] };

/** Packs files of different names, and reads the packed bytes back before they are given out. */
export function pack(files: readonly PlainFile[], zip: typeof zipSync = zipSync): Packed {
  const bytes = new Uint8Array(zip(Object.fromEntries(files.map(({ name, text }) => [name, strToU8(text)]))));
  const lost = lostIn(bytes, files);
  return lost.length === 0 ? { ok: true, bytes } : { ok: false, lost };
}

function lostIn(bytes: Uint8Array, files: readonly PlainFile[]): readonly string[] {
  const again = readBack(bytes);
  return files.filter(({ name, text }) => again.get(name) !== text).map(({ name }) => name);
}

function readBack(bytes: Uint8Array): ReadonlyMap<string, string> {
  try {
    return new Map(Object.entries(unzipSync(bytes)).map(([name, content]) => [name, strFromU8(content)]));
  } catch {
    return new Map();
  }
}

/** What is in a packed file; null where it is none, or broken. Folders in it are looked into. */
export function unpack(bytes: Uint8Array): Unpacked | null {
  let leftOut = 0;
  let count = 0;
  let total = 0;
  try {
    const found = unzipSync(bytes, {
      filter: ({ name, originalSize }) => {
        if (name.endsWith("/")) return false;
        count += 1;
        total += originalSize;
        const { mostFiles, mostBytes, mostFileBytes } = PACKED_LIMITS;
        const isTaken = count <= mostFiles && total <= mostBytes && originalSize <= mostFileBytes;
        if (!isTaken) leftOut += 1;
        return isTaken;
      },
    });
    const files = Object.entries(found).map(([name, content]) => ({
      name: name.slice(name.lastIndexOf("/") + 1),
      text: strFromU8(content),
    }));
    return { files, leftOut };
  } catch {
    return null;
  }
}

/** By its first bytes, whatever it is called. */
export function isPacked(bytes: Uint8Array): boolean {
  return SIGNATURE.every((byte, index) => bytes[index] === byte);
}

/** "PK" and the kind of its first part. Source: the published ZIP file format, local file header. */
const SIGNATURE = [0x50, 0x4b, 0x03, 0x04];
