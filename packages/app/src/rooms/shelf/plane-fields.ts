/** What can be said of each kind of plane: its sizes with their labels, and what stands there before anything is typed. */
import { type Plane, wallAllowanceMm } from "mouldwright/shelf";
import type { Entry, FileKind } from "./shelf-edits.ts";

export interface PlaneField {
  /** The key of the shelf file. */
  readonly key: string;
  readonly label: string;
  readonly holds: "length" | "angle" | "hand" | "irons" | "walls";
  /** What a new plane begins with, mm or degrees; absent: the reader fills it in and says so. */
  readonly begins?: number | string | readonly number[];
  readonly help?: string;
}

const width = (begins: number, label = "Width of the sole"): PlaneField => ({
  key: "width",
  label,
  holds: "length",
  begins,
});

const HAND: PlaneField = {
  key: "hand",
  label: "Hand",
  holds: "hand",
  begins: "right",
  help: "The side of its upright wall, looking along the stroke.",
};

const CURVED: readonly PlaneField[] = [
  { key: "radius", label: "Radius", holds: "length", begins: 9.525 },
  width(9.525),
  { key: "pitch", label: "Pitch of the bed", holds: "angle", help: "Leave empty where it is not measured." },
  { key: "skew", label: "Skew of the iron", holds: "angle" },
  {
    key: "wall",
    label: "Wall it clears",
    holds: "length",
    help: "Standing wood beside the sole, where you have tried it.",
  },
];

const FENCED: readonly PlaneField[] = [
  { key: "fence", label: "Fence reaches", holds: "length" },
  { key: "depth", label: "Greatest depth", holds: "length" },
];

export const PLANE_FIELDS: Readonly<Record<FileKind, readonly PlaneField[]>> = {
  hollow: CURVED,
  round: CURVED,
  "snipe bill": [
    HAND,
    width(6, "Width"),
    { key: "nose", label: "Width of the nose", holds: "length", begins: 0.4 },
    { key: "slope", label: "Flank from level", holds: "angle", begins: 60 },
    { key: "reach", label: "Reach", holds: "length", begins: 5, help: "How deep a wall its beak cuts." },
  ],
  rebate: [width(12)],
  smoother: [width(50)],
  "moving fillister": [width(38), ...FENCED],
  plough: [{ key: "widths", label: "Irons", holds: "irons", begins: [3, 6, 9] }, ...FENCED],
  "side round": [HAND, width(10, "Width of its foot"), { key: "radius", label: "Radius", holds: "length" }],
  "side snipe": [HAND, width(3, "Width of its foot")],
  "side rebate": [HAND, width(3, "Width of its foot")],
  bead: [
    width(6, "Width of the bead"),
    { key: "quirk", label: "Width of the quirk", holds: "length" },
    { ...HAND, label: "Quirk on the", help: "Looking along the stroke." },
  ],
  shaped: [{ key: "cutsWall", label: "Cuts a wall", holds: "walls", begins: "none" }],
};

/** A heading and a plural for each kind. */
export const KIND_WORDS: Readonly<Record<FileKind, { readonly one: string; readonly many: string }>> = {
  hollow: { one: "Hollow", many: "Hollows" },
  round: { one: "Round", many: "Rounds" },
  "snipe bill": { one: "Snipe bill", many: "Snipe bills" },
  rebate: { one: "Rebate plane", many: "Rebate planes" },
  smoother: { one: "Smoother", many: "Smoothers" },
  "moving fillister": { one: "Moving fillister", many: "Moving fillisters" },
  plough: { one: "Plough", many: "Ploughs" },
  "side round": { one: "Side round", many: "Side rounds" },
  "side snipe": { one: "Side snipe", many: "Side snipes" },
  "side rebate": { one: "Side rebate plane", many: "Side rebate planes" },
  bead: { one: "Bead plane", many: "Bead planes" },
  shaped: { one: "Shaped plane", many: "Shaped planes" },
};

/** A new plane of a kind, as its entry in millimetres. */
export function beginningOf(kind: FileKind): Readonly<Record<string, unknown>> {
  const begun = PLANE_FIELDS[kind].flatMap(({ key, begins }) =>
    begins === undefined ? [] : [[key, begins]],
  );
  return { kind, ...Object.fromEntries(begun) };
}

/** What the maker has not said but the program takes: it stands in the fields all the same. */
export function filledOf(plane: Plane, entry: Entry): Entry {
  const more: Record<string, unknown> = {};
  if (plane.kind === "hollow" || plane.kind === "round") {
    const wall = wallAllowanceMm(plane, "left");
    if (wall.kind === "up to") more.wall = wall.allowanceMm;
  }
  if (plane.kind === "side round") more.radius = plane.radiusMm ?? plane.widthMm;
  if (plane.kind === "bead") more.hand = plane.hand ?? "right";
  return { ...more, ...entry };
}
