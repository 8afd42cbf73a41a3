/** Sentences about files: reading, writing, formats, versions. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

/** What each format of ours is called in front of a maker. */
const FORMAT_NAMES: Readonly<Record<string, string>> = {
  "mouldwright/plan": "a plan",
  "mouldwright/job": "a job",
  "mouldwright/shelf": "a shelf of planes",
  "mouldwright/cornice": "a run of cornice",
  "mouldwright/lengths": "pieces and sticks",
  "mouldwright/measured": "a sheet of measurements",
};

function formatName(format: string): string {
  // What a file says of itself is shown between quotes.
  return FORMAT_NAMES[format.replace(/[“”]/g, "")] ?? "another kind of file";
}

export const fileTroubles = catalogue({
  "file-empty": {
    example: {},
    sentence: () => "The file is empty.",
    hint: () => "Save it again from where it was made, or give another file.",
  },
  "file-too-large": {
    example: { megabytes: 50, mostMegabytes: 5 },
    sentence: (facts) =>
      `The file has ${tenths(facts.megabytes)} megabytes; at most ${tenths(facts.mostMegabytes)} are read.`,
    hint: () => "Look whether it is the right file: a moulding needs far less.",
  },
  "file-not-utf8": {
    example: {},
    sentence: () => "The file is not text in UTF-8.",
    hint: () => "Look whether it is the right file; if it is, save it again with the encoding UTF-8.",
  },
  "file-not-json": {
    example: { line: 3, column: 14, wanted: ", or }", found: "“width”" },
    sentence: (facts, write) =>
      `The file cannot be read at line ${facts.line}, column ${facts.column}: ${write.text(facts.wanted)} should stand there, but ${facts.found === "" ? "the file ends" : `${write.text(facts.found)} does`}.`,
    hint: () =>
      "Put that place right, or save the file again from where it was made; it may have been cut short.",
  },
  "file-too-deep": {
    example: { line: 1, column: 65, mostLevels: 64 },
    sentence: (facts) =>
      `At line ${facts.line}, column ${facts.column}, more than ${facts.mostLevels} brackets stand open inside each other.`,
    hint: () => "Look whether it is the right file: none of ours goes so deep.",
  },
  "file-format-other": {
    example: { found: "mouldwright/shelf", wanted: "mouldwright/plan" },
    sentence: (facts, write) =>
      `The file says it holds ${formatName(facts.found)} (${write.text(facts.found)}), but ${formatName(facts.wanted)} is wanted here.`,
    hint: (facts, write) =>
      `Give a file whose "format" is "${write.text(facts.wanted)}", or use the command for this kind of file.`,
  },
  "file-version-newer": {
    example: { found: 3, known: 1 },
    sentence: (facts) =>
      `The file is of version ${facts.found}; this program knows versions up to ${facts.known}. It was left untouched.`,
    hint: () => "Open it with the newer program that wrote it, or bring this one up to date.",
  },
  "file-key-missing": {
    example: { key: "width" },
    sentence: (facts, write) => `“${write.text(facts.key)}” is missing.`,
    hint: (facts, write) => `Add "${write.text(facts.key)}" at this place.`,
  },
  "file-key-unknown": {
    example: { key: "widht", nearest: "width", known: ["width", "radius"] as readonly string[] },
    sentence: (facts, write) => `The key “${write.text(facts.key)}” is not known here.`,
    hint: (facts, write) =>
      facts.nearest !== ""
        ? `Was “${write.text(facts.nearest)}” meant? Otherwise take the key out.`
        : `Take it out; known here are ${write.list(facts.known)}.`,
  },
  "file-value-wrong": {
    example: { found: "a list of 3", wanted: "a number" },
    sentence: (facts, write) =>
      `${capital(write.text(facts.found))} stands here, but ${write.text(facts.wanted)} is wanted.`,
    hint: (facts, write) => `Put ${write.text(facts.wanted)} there.`,
  },
  "file-number-not-finite": {
    example: { found: "Infinity" },
    sentence: (facts, write) => `The number here is beyond all measure (${write.text(facts.found)}).`,
    hint: () => "Put the real measure there.",
  },
  "file-value-out-of-range": {
    example: { found: "-3", allowed: "0 or more" },
    sentence: (facts, write) =>
      `${capital(write.text(facts.found))} stands here, but only ${write.text(facts.allowed)} is allowed.`,
    hint: (facts, write) => `Put a value there that is ${write.text(facts.allowed)}.`,
  },
  "file-too-many": {
    example: { what: "entries", most: 200 },
    sentence: (facts, write) => `There are more than ${facts.most} ${write.text(facts.what)} here.`,
    hint: (facts, write) => `Bring them down to ${facts.most} ${write.text(facts.what)} or fewer.`,
  },
  "file-too-few": {
    example: { what: "vertices", least: 3 },
    sentence: (facts, write) =>
      `There are fewer than ${facts.least} ${write.text(facts.what)} here, which is too few.`,
    hint: (facts, write) => `Give at least ${facts.least} ${write.text(facts.what)}.`,
  },
  "file-points-coincide": {
    example: {},
    sentence: () => "This point stands exactly on the one before it, so that nothing lies between them.",
    hint: () => "Take one of the two out.",
  },
  "file-outline-empty": {
    example: {},
    sentence: () => "The outline encloses nothing, or crosses itself into two like halves.",
    hint: () => "Give its points once round, anticlockwise, without crossing.",
  },
  "plan-cuts-out-of-order": {
    example: { number: 3, after: 4 },
    sentence: (facts) => `Cut ${facts.number} stands after cut ${facts.after}.`,
    hint: () => "Put the cuts in the order in which they are made and number them upwards.",
  },
  "plan-cut-has-no-movement": {
    example: { number: 2, kind: "round" },
    sentence: (facts, write) =>
      `Cut ${facts.number} (${write.text(facts.kind)}) does not say how its tool moves, or says it twice.`,
    hint: () =>
      'Give a plane its "sole" and its "runs", and only a saw (kind "saw") its "line" instead of them.',
  },
  "plan-names-no-cut": {
    example: { number: 7 },
    sentence: (facts) => `Cut ${facts.number} is named here, but the plan has no such cut.`,
    hint: () => "Put the number of a cut of this plan there.",
  },
  "job-section-twofold": {
    example: {},
    sentence: () => "The section is given as parts and as a path.",
    hint: () => 'Keep one of the two: "parts" or "path".',
  },
  "job-section-missing": {
    example: {},
    sentence: () => "The job says nothing of the section: neither parts nor a path.",
    hint: () => 'Give the section its "parts", or its "path" as a list of points.',
  },
  "job-shelf-missing": {
    example: {},
    sentence: () => "The job says nothing of the shelf, so that there is no plane to plan with.",
    hint: () => "Put the shelf into the job, name its file there, or give it with --shelf SHELF.json.",
  },
  "job-shelf-elsewhere": {
    example: { file: "../../shelf.json" },
    sentence: (facts, write) =>
      `The job names the shelf file “${write.text(facts.file)}”, which is not a plain file name in the job's own folder or one below it.`,
    hint: () => "Put the shelf file beside the job, or give it with --shelf SHELF.json.",
  },
  "plane-unknown": {
    example: {
      word: "rebate-21",
      nearest: "rebate-12",
      known: ["rebate-12", "round-5-8"] as readonly string[],
    },
    sentence: (facts, write) => `No plane on the shelf goes by “${write.text(facts.word)}”.`,
    hint: (facts, write) =>
      facts.nearest !== ""
        ? `Was “${write.text(facts.nearest)}” meant?`
        : `On the shelf are ${write.list(facts.known)}.`,
  },
  "planes-all-left-out": {
    example: { planes: 3 },
    sentence: (facts) =>
      facts.planes === 1
        ? "The only plane on the shelf is left out."
        : `All ${facts.planes} planes on the shelf are left out.`,
    hint: () => "Leave at least one to work with.",
  },
  "plan-way-not-taken": {
    example: { asked: "canted", taken: "flat" },
    sentence: (facts, write) =>
      `The way asked for, “${write.text(facts.asked)}”, cannot be had with this section; the plan is made the way “${write.text(facts.taken)}”.`,
    hint: () =>
      "Bevelled wants a bevel to saw that is wide enough to lie on, canted wants curves that lean to one side.",
  },
  "plan-sentences-unit": {
    example: { written: "mm", asked: "in" },
    sentence: ({ written, asked }) =>
      `The sentences of this plan were written in ${unitWord(written)} and stay so; all figures beside them are in ${unitWord(asked)}.`,
    hint: ({ asked }) =>
      `For sentences in ${unitWord(asked)} plan the job again with --unit ${asked === "in" ? "in" : "mm"}.`,
  },
  "plan-stands-under": {
    example: { underMm: 0.5, toleranceMm: 0.2 },
    sentence: (facts, write) =>
      `The stick lies up to ${write.length(facts.underMm)} under the drawing already; ${write.length(facts.toleranceMm)} is allowed. Nothing puts that wood back, and recut will say so of this plan.`,
    hint: () =>
      "Look whether the joins still please the eye; else begin on a new stick, or draw the section that deep.",
  },
  "measured-size-other": {
    example: { kind: "plough", size: "radius" },
    sentence: (facts, write) =>
      `A plane of the kind “${write.text(facts.kind)}” is given a ${write.text(facts.size)}, which is not measured on it here.`,
    hint: (facts, write) => `Take the ${write.text(facts.size)} out.`,
  },
  "measured-cut-unknown": {
    example: { number: "7", nearest: 4, made: 4 },
    sentence: (facts, write) =>
      facts.made === 0
        ? `Cut ${write.text(facts.number)} is measured here, but no cut is made yet.`
        : `Cut ${write.text(facts.number)} is measured here, but it is none of the ${facts.made} that are made.`,
    hint: (facts) =>
      facts.made === 0
        ? "Take it out, or say with --after how many cuts are made."
        : `Was cut ${facts.nearest} meant? Otherwise take it out, or say with --after how many cuts are made.`,
  },
  "measured-cut-sawn": {
    example: { number: 1 },
    sentence: (facts) => `Cut ${facts.number} is sawn; only cuts made with a plane are measured here.`,
    hint: () => "Take it out; plane the sawn face to its line first.",
  },
  "measured-cut-far-off": {
    example: { offMm: 25, mostMm: 10 },
    sentence: (facts, write) =>
      `This cut is said to be ${write.length(facts.offMm)} out; at most ${write.length(facts.mostMm)} is taken.`,
    hint: () =>
      "Give how far it came out from its place, not where it lies; a cut further out is another cut, and the section wants drawing anew.",
  },
  "path-missing": {
    example: {},
    sentence: () => "There is no such file.",
    hint: () => "Look at the spelling and at the folder you are in.",
  },
  "path-is-folder": {
    example: {},
    sentence: () => "This is a folder, not a file.",
    hint: () => "Give the name of a file inside it.",
  },
  "path-not-a-folder": {
    example: {},
    sentence: () => "This is a file, but a folder is wanted for the pictures.",
    hint: () => "Give another name for the folder.",
  },
  "path-not-a-file": {
    example: {},
    sentence: () => "This is no ordinary file but a device or a pipe.",
    hint: () => "Give the name of an ordinary file.",
  },
  "path-unreadable": {
    example: { reason: "EACCES" },
    sentence: (facts, write) => `The file could not be read (${reasonWords(write.text(facts.reason))}).`,
    hint: () => "Look at its permissions and at the disk, or copy it to a place you may read.",
  },
  "path-kind-unknown": {
    example: { wanted: [".svg", ".dxf"] as readonly string[] },
    sentence: (facts, write) => `The ending of this name is none of ${write.list(facts.wanted)}.`,
    hint: () => "Save the drawing as SVG or DXF and give the file its proper ending.",
  },
  "path-exists": {
    example: {},
    sentence: () => "A file of this name stands there already; it was left as it is.",
    hint: () => "Give another name, or add --force to replace it.",
  },
  "path-is-input": {
    example: {},
    sentence: () => "This is the very file that is read; writing to it would lose it.",
    hint: () => "Give another name for what is to be written.",
  },
  "path-given-twice": {
    example: {},
    sentence: () => "Two things are to be written to this same place.",
    hint: () => "Give each its own name.",
  },
  "folder-missing": {
    example: { folder: "plans" },
    sentence: () => "The folder this file is to go into does not exist.",
    hint: () => "Make the folder first, or give another name.",
  },
  "path-not-writable": {
    example: { reason: "EACCES" },
    sentence: (facts, write) => `Nothing could be written there (${reasonWords(write.text(facts.reason))}).`,
    hint: () => "Look at the folder's permissions, or give another place.",
  },
  "disk-full": {
    example: { reason: "ENOSPC" },
    sentence: () => "The disk is full; nothing was written.",
    hint: () => "Make room, or give a place on another disk.",
  },
  interrupted: {
    example: {},
    sentence: () => "Interrupted; nothing was written.",
    hint: () => "Start the command again when you are ready.",
  },
  "command-unknown": {
    example: {
      word: "paln",
      nearest: "plan",
      known: ["plan", "recut", "section", "shelf"] as readonly string[],
    },
    sentence: (facts, write) =>
      facts.word === "" ? "No command was given." : `“${write.text(facts.word)}” is no command.`,
    hint: (facts, write) =>
      facts.nearest !== ""
        ? `Was “${write.text(facts.nearest)}” meant? --help shows them all.`
        : `The commands are ${facts.known.slice(0, -1).map(write.text).join(", ")} and ${write.text(facts.known.at(-1) ?? "?")}; --help shows them all.`,
  },
  "option-unknown": {
    example: { option: "--shelv", nearest: "--shelf", known: ["--shelf", "--stick"] as readonly string[] },
    sentence: (facts, write) => `The option ${write.text(facts.option)} is not known here.`,
    hint: (facts, write) =>
      facts.nearest !== ""
        ? `Was ${write.text(facts.nearest)} meant?`
        : facts.known.length === 0
          ? "Leave it out; --help shows what may be given."
          : `Known here are ${write.list(facts.known)}.`,
  },
  "option-needs-value": {
    example: { option: "--shelf", sample: "--shelf planes.json" },
    sentence: (facts, write) => `The option ${write.text(facts.option)} needs a value after it.`,
    hint: (facts, write) => `Write it like this: ${write.text(facts.sample)}.`,
  },
  "option-takes-no-value": {
    example: { option: "--force" },
    sentence: (facts, write) => `The option ${write.text(facts.option)} takes no value.`,
    hint: (facts, write) => `Write ${write.text(facts.option)} alone.`,
  },
  "option-value-wrong": {
    example: {
      option: "--stick",
      value: "42",
      wanted: "width x thickness, such as 42x18 or 1 5/8 in x 3/4 in",
    },
    sentence: (facts, write) =>
      `The value “${write.text(facts.value)}” of ${write.text(facts.option)} cannot be used.`,
    hint: (facts, write) => `Give ${write.text(facts.wanted)}.`,
  },
  "option-missing": {
    example: { option: "--shelf", sample: "--shelf planes.json" },
    sentence: (facts, write) => `${write.text(facts.option)} is missing, and nothing can be done without it.`,
    hint: (facts, write) => `Add it like this: ${write.text(facts.sample)}.`,
  },
  "argument-missing": {
    example: { wanted: "a section file" },
    sentence: (facts, write) => `The command needs ${write.text(facts.wanted)}.`,
    hint: () => "Write its name after the command; --help shows an example.",
  },
  "argument-too-many": {
    example: { first: "second.svg" },
    sentence: (facts, write) => `“${write.text(facts.first)}” is one name more than this command takes.`,
    hint: () => 'Leave it out; a name with blanks in it stands between quotes, as in "my cornice.svg".',
  },
});

/** A count of megabytes as it is said: whole ones, tenths when small. */
function unitWord(unit: string): string {
  return unit === "in" ? "inches" : "millimetres";
}

function tenths(megabytes: number): string {
  return Number.isFinite(megabytes) ? String(Math.round(megabytes * 10) / 10) : "?";
}

function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}

/** What an operating system's short code means. */
function reasonWords(code: string): string {
  const words: Readonly<Record<string, string>> = {
    EACCES: "permission denied",
    EPERM: "not permitted",
    EROFS: "the disk is read-only",
    EIO: "the disk reports a fault",
    EMFILE: "too many files are open",
    ENAMETOOLONG: "the name is too long",
    ELOOP: "links lead round in a circle",
    ENOENT: "the folder is gone",
    ENOTDIR: "a file stands where a folder should",
    EBUSY: "it is in use",
  };
  return words[code] ?? code;
}
