/**
 * One way to compress everywhere. The PDF library asks the platform, and two platforms press the same page into
 * different bytes; so it is told to press nothing, and every stream is pressed here just before it is written.
 */
import { zlibSync } from "fflate";

/** A stream of the library as far as it is used here; its types tell less. */
interface Stream {
  buffer: Uint8Array[];
  data: Record<string, unknown>;
  finalize: () => void;
}

/** Anything that makes the library's objects. */
interface Maker<Made> {
  ref: (data: object) => Made;
}

/** From now on every stream that `maker` makes is compressed (Flate), except those that say how they are. */
export function compressAlike<Made>(maker: Maker<Made>): void {
  const make = maker.ref.bind(maker);
  maker.ref = (data) => {
    const made = make(data);
    if (isStream(made)) compressLast(made);
    return made;
  };
}

function compressLast(stream: Stream): void {
  const finalize = stream.finalize.bind(stream);
  stream.finalize = () => {
    if (stream.buffer.length > 0 && stream.data.Filter === undefined) {
      stream.buffer = [zlibSync(joined(stream.buffer))];
      stream.data.Filter = "FlateDecode";
    }
    finalize();
  };
}

export function joined(chunks: readonly Uint8Array[]): Uint8Array {
  const bytes = new Uint8Array(chunks.reduce((sum, chunk) => sum + chunk.length, 0));
  let offset = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, offset);
    offset += chunk.length;
  }
  return bytes;
}

function isStream(made: unknown): made is Stream {
  return (
    typeof made === "object" &&
    made !== null &&
    "buffer" in made &&
    Array.isArray(made.buffer) &&
    "data" in made &&
    typeof made.data === "object" &&
    made.data !== null &&
    "finalize" in made &&
    typeof made.finalize === "function"
  );
}
