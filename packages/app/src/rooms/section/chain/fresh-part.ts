/** A part as it is first put in: a plain one of its kind, of a size that suits the stick it comes into. */
import type { PartKind, PartSpec } from "mouldwright/section";

/** The kinds in the order of the menu: straight ones, rounds, hollows, both, by the maker's own numbers. */
export const KINDS_IN_MENU: readonly {
  readonly group: string;
  readonly kinds: readonly PartKind[];
}[] = [
  { group: "Flats and walls", kinds: ["fillet", "step", "bevel", "chamfer"] },
  { group: "Grooves", kinds: ["quirk", "vee quirk"] },
  { group: "Rounds", kinds: ["low bead", "bead", "astragal", "torus", "ovolo"] },
  { group: "Hollows", kinds: ["cavetto", "scotia"] },
  { group: "Both in one S", kinds: ["cyma recta", "cyma reversa"] },
  { group: "In a row", kinds: ["reeds", "flutes", "band"] },
  { group: "By your own numbers", kinds: ["arc", "swept arc", "running arc"] },
];

/** What a kind is called, and what it does. */
export const KIND_WORDS: Readonly<Record<PartKind, { readonly name: string; readonly does: string }>> = {
  fillet: { name: "Fillet", does: "a flat" },
  step: { name: "Step", does: "an upright wall" },
  bevel: { name: "Bevel", does: "a sloping flat" },
  chamfer: { name: "Chamfer", does: "a corner off at 45°" },
  quirk: { name: "Quirk", does: "a narrow square groove" },
  "vee quirk": { name: "V quirk", does: "a groove with a point" },
  bead: { name: "Bead", does: "a small half-round" },
  astragal: { name: "Astragal", does: "a half-round standing proud" },
  torus: { name: "Torus", does: "a large half-round" },
  "low bead": { name: "Low bead", does: "what one hollow makes" },
  reeds: { name: "Reeds", does: "low beads side by side" },
  flutes: { name: "Flutes", does: "coves side by side" },
  band: { name: "Band", does: "reeds or flutes to a width" },
  ovolo: { name: "Ovolo", does: "a round quarter" },
  cavetto: { name: "Cavetto", does: "a hollow quarter" },
  scotia: { name: "Scotia", does: "a deep cove of two curves" },
  "cyma recta": { name: "Cyma recta", does: "an ogee, hollow at the top" },
  "cyma reversa": { name: "Cyma reversa", does: "an ogee, round at the top" },
  arc: { name: "Curve to a point", does: "by its end and radius" },
  "swept arc": { name: "Curve by its turn", does: "by its radius and how far round" },
  "running arc": { name: "Curve running on", does: "smoothly from the part before" },
  "free curve": { name: "Free curve", does: "drawn by hand" },
};

/** A fresh part no wider than `roomMm`; lengths are whole and half millimetres. */
export function freshPart(kind: PartKind, roomMm: number): PartSpec {
  const mm = (wishMm: number): number => Math.max(1, Math.round(Math.min(wishMm, roomMm) * 2) / 2);
  switch (kind) {
    case "fillet":
      return { kind, widthMm: mm(4) };
    case "step":
      return { kind, riseMm: -2 };
    case "bevel":
      return { kind, acrossMm: mm(6), riseMm: -3 };
    case "chamfer":
      return { kind, acrossMm: mm(4) };
    case "quirk":
      return { kind, widthMm: mm(3), depthMm: 3 };
    case "vee quirk":
      return { kind, widthMm: mm(2), depthMm: 2 };
    case "bead":
    case "astragal":
      return { kind, widthMm: mm(6) };
    case "torus":
      return { kind, widthMm: mm(12) };
    case "low bead":
      return { kind, widthMm: mm(8) };
    case "reeds":
    case "flutes":
      return { kind, count: 3, widthMm: mm(Math.min(roomMm / 3, 5)) };
    case "band":
      return { kind, of: "reeds", widthMm: mm(18), count: 3 };
    case "ovolo":
    case "cavetto":
      return { kind, acrossMm: mm(8), riseMm: -mm(8) };
    case "scotia":
      return { kind, acrossMm: mm(9) };
    case "cyma recta":
    case "cyma reversa":
      return { kind, acrossMm: mm(16), riseMm: -Math.max(0.5, mm(16) / 2) };
    case "arc":
      return { kind, acrossMm: mm(8), riseMm: -3, radiusMm: Math.max(mm(8), 10), bend: "round" };
    case "swept arc":
      return { kind, radiusMm: mm(8), sweepDeg: 60, bend: "round" };
    case "running arc":
      return { kind, acrossMm: mm(6), riseMm: -2 };
    case "free curve":
      return {
        kind,
        beziers: [{ control1: [mm(3), 0], control2: [mm(4), -3], to: [mm(7), -3] }],
      };
  }
}
