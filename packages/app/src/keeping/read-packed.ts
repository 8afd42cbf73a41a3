/** A packed file that a maker chooses or drops: every job and drawing in it, each read like a file of its own. */
import type { FromBench } from "./drawn-job.ts";
import { isPacked, type Unpacked } from "./packed-files.ts";
import { LARGEST_FILE_BYTES, type ReadFile, type Reading, readFile } from "./read-file.ts";

export interface PackedFile {
  readonly kind: "packed";
  readonly fileName: string;
  readonly files: readonly ReadFile[];
  /** Files inside that were too large or too many to be looked at. */
  readonly leftOut: number;
}

export type AnyFile = ReadFile | PackedFile;
type Opened = Pick<File, "name" | "size" | "text" | "arrayBuffer">;

/** What unpacks it; in the page a worker. */
export type Unpacker = (bytes: Uint8Array) => Promise<Unpacked | null>;

/** A packed file by its first bytes; anything else as `readFile` reads it. */
export async function readAnyFile(
  file: Opened,
  given: FromBench,
  { unpackBytes = unpackInWorker, ...reading }: Reading & { readonly unpackBytes?: Unpacker } = {},
): Promise<AnyFile> {
  if (file.size > LARGEST_FILE_BYTES) return readFile(file, given, reading);
  const bytes = await file.arrayBuffer().then(
    (buffer) => new Uint8Array(buffer),
    () => null,
  );
  if (bytes === null || !isPacked(bytes)) return readFile(file, given, reading);
  const unpacked = await unpackBytes(bytes);
  if (unpacked === null) return { kind: "cannot be opened", fileName: file.name };
  const files: ReadFile[] = [];
  for (const { name, text } of unpacked.files) {
    files.push(await readFile({ name, size: text.length, text: async () => text }, given, reading));
  }
  return { kind: "packed", fileName: file.name, files, leftOut: unpacked.leftOut };
}

function unpackInWorker(bytes: Uint8Array): Promise<Unpacked | null> {
  return new Promise((resolve, reject) => {
    const worker = new Worker(new URL("./unpack.worker.ts", import.meta.url), { type: "module" });
    worker.onmessage = ({ data }: MessageEvent<Unpacked | null>) => {
      worker.terminate();
      resolve(data);
    };
    worker.onerror = (event) => {
      worker.terminate();
      reject(new Error(event.message));
    };
    worker.postMessage(bytes);
  });
}
