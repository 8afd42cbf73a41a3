import { strToU8, zipSync } from "fflate";
import { writeJob } from "mouldwright/job";
import { expect, test } from "vitest";
import { pack, unpack } from "./packed-files.ts";
import { readAnyFile } from "./read-packed.ts";
import { plinth } from "./testing/jobs.ts";

const FILES = [
  { name: "plinth.json", text: writeJob(plinth()) },
  {
    name: "Kehlleiste Küche.json",
    text: writeJob(plinth({ name: "Kehlleiste Küche", notes: "½ in → 12.7" })),
  },
];

function opened(name: string, bytes: Uint8Array<ArrayBuffer>) {
  return {
    name,
    size: bytes.length,
    text: async () => new TextDecoder().decode(bytes),
    arrayBuffer: async () => bytes.buffer,
  };
}

const unpackBytes = async (bytes: Uint8Array) => unpack(bytes);

test("what is packed comes out letter for letter", () => {
  const packed = pack(FILES);
  if (!packed.ok) throw new Error(packed.lost.join());
  expect(unpack(packed.bytes)).toEqual({ files: FILES, leftOut: 0 });
});

test("what does not read back as it went in is named, and nothing is given out", () => {
  const cut = pack(FILES, (files) => zipSync(files).slice(0, 200));
  expect(cut).toEqual({ ok: false, lost: FILES.map(({ name }) => name) });
  const spoilt = pack(FILES, (files) => zipSync({ ...files, "plinth.json": strToU8("{}") }));
  expect(spoilt).toEqual({ ok: false, lost: ["plinth.json"] });
  // Half a character is no text that a file can hold.
  expect(pack([{ name: "half.json", text: "\ud83d" }])).toEqual({ ok: false, lost: ["half.json"] });
});

test("a packed file gives every job in it, and tells of each file that is none", async () => {
  const packed = pack([...FILES, { name: "letter.txt", text: "Dear sir" }]);
  if (!packed.ok) throw new Error(packed.lost.join());
  const found = await readAnyFile(
    opened("all.zip", packed.bytes),
    {},
    {
      unpackBytes,
      readDrawing: async () => ({ kind: "refused", troubles: [] }),
    },
  );
  if (found.kind !== "packed") throw new Error(found.kind);
  expect(found.files.map((file) => (file.kind === "job" ? file.job.name : file.kind))).toEqual([
    plinth().name,
    "Kehlleiste Küche",
    "refused",
  ]);
});

test("a job file that is no packed one is read as ever", async () => {
  const text = new TextEncoder().encode(FILES[0]?.text ?? "");
  expect((await readAnyFile(opened("plinth.json", text), {})).kind).toBe("job");
});

test("a broken packed file cannot be opened", async () => {
  const packed = pack(FILES);
  if (!packed.ok) throw new Error(packed.lost.join());
  const cut = packed.bytes.slice(0, 300);
  expect((await readAnyFile(opened("all.zip", cut), {}, { unpackBytes })).kind).toBe("cannot be opened");
});

test("a file inside that unpacks to far too much is left out", () => {
  const bomb = zipSync({
    "bomb.json": new Uint8Array(25_000_000),
    "plinth.json": strToU8(FILES[0]?.text ?? ""),
  });
  const unpacked = unpack(bomb);
  expect(unpacked?.leftOut).toBe(1);
  expect(unpacked?.files.map(({ name }) => name)).toEqual(["plinth.json"]);
});
