/** Classical forms in several sizes, each alone on its stick. Sizes in mm. */
import { fillet, type GalleryEntry, rest, rise60Mm, step } from "./entry.ts";

export const CLASSICAL: readonly GalleryEntry[] = [
  {
    id: "ovolo-small",
    shelf: "full",
    section: {
      name: "Ovolo of ¼ in",
      stick: { widthMm: 16, thicknessMm: 12 },
      parts: [fillet(5), step(-1.5), { kind: "ovolo", acrossMm: 6.35, riseMm: -6.35 }, rest],
    },
  },
  {
    id: "ovolo-and-fillet",
    shelf: "small",
    section: {
      name: "Ovolo of ⅝ in between fillets",
      stick: { widthMm: 38, thicknessMm: 25 },
      parts: [fillet(8), step(-2.5), { kind: "ovolo", acrossMm: 15.875, riseMm: -15.875 }, rest],
    },
  },
  {
    id: "ovolo-large",
    shelf: "full",
    section: {
      name: "Ovolo of 1¼ in on the corner",
      stick: { widthMm: 50, thicknessMm: 45 },
      parts: [fillet(12), step(-3), { kind: "ovolo", acrossMm: 31.75, riseMm: -31.75 }, rest],
    },
  },
  {
    id: "ovolo-flat",
    shelf: "full",
    section: {
      name: "Ovolo of less than a quarter, radius not on the shelf",
      stick: { widthMm: 32, thicknessMm: 18 },
      parts: [fillet(6), step(-2), { kind: "ovolo", acrossMm: 18, riseMm: -10 }, rest],
    },
  },
  {
    id: "cavetto-small",
    shelf: "small",
    section: {
      name: "Cavetto of ⅜ in",
      stick: { widthMm: 20, thicknessMm: 16 },
      parts: [fillet(6), { kind: "cavetto", acrossMm: 9.525, riseMm: -9.525 }, rest],
    },
  },
  {
    id: "cavetto-large",
    shelf: "full",
    section: {
      name: "Cavetto of 1½ in",
      stick: { widthMm: 54, thicknessMm: 46 },
      parts: [fillet(8), { kind: "cavetto", acrossMm: 38.1, riseMm: -38.1 }, rest],
    },
  },
  {
    id: "cove-and-bead",
    shelf: "small",
    section: {
      name: "Cove of ⅝ in and low bead of ⅜ in",
      stick: { widthMm: 42, thicknessMm: 20 },
      parts: [
        fillet(4),
        step(-rise60Mm(9.525)),
        { kind: "low bead", widthMm: 9.525 },
        { kind: "cavetto", acrossMm: 15.875, riseMm: -15.875 },
        rest,
      ],
    },
  },
  {
    id: "cyma-recta-flat-small",
    shelf: "small",
    section: {
      name: "Cyma recta, flat, ⅜ in",
      stick: { widthMm: 24, thicknessMm: 18 },
      parts: [fillet(5), step(-1.5), { kind: "cyma recta", acrossMm: 13.470384, riseMm: -13.470384 }, rest],
    },
  },
  {
    id: "cyma-recta-flat-large",
    shelf: "full",
    section: {
      name: "Cyma recta, flat, 1 in",
      stick: { widthMm: 56, thicknessMm: 42 },
      parts: [fillet(10), step(-3), { kind: "cyma recta", acrossMm: 35.921024, riseMm: -35.921024 }, rest],
    },
  },
  {
    id: "cyma-recta-thick",
    shelf: "full",
    section: {
      name: "Cyma recta of two quadrants of ½ in",
      stick: { widthMm: 40, thicknessMm: 32 },
      parts: [
        fillet(7),
        step(-2),
        { kind: "cyma recta", acrossMm: 25.4, riseMm: -25.4, construction: "thick" },
        rest,
      ],
    },
  },
  {
    id: "cyma-recta-uneven",
    shelf: "full",
    section: {
      name: "Cyma recta with the larger hollow",
      stick: { widthMm: 46, thicknessMm: 26 },
      parts: [
        fillet(6),
        step(-2),
        { kind: "cyma recta", acrossMm: 32, riseMm: -15.454813, hollowRatio: 0.6 },
        rest,
      ],
    },
  },
  {
    id: "cyma-reversa-flat",
    shelf: "small",
    section: {
      name: "Cyma reversa, flat, ⅝ in",
      stick: { widthMm: 36, thicknessMm: 28 },
      parts: [fillet(7), step(-2), { kind: "cyma reversa", acrossMm: 22.45064, riseMm: -22.45064 }, rest],
    },
  },
  {
    id: "cyma-reversa-thick",
    shelf: "full",
    section: {
      name: "Cyma reversa of two quadrants of ⅜ in",
      stick: { widthMm: 32, thicknessMm: 24 },
      parts: [
        fillet(6),
        step(-2),
        { kind: "cyma reversa", acrossMm: 19.05, riseMm: -19.05, construction: "thick" },
        rest,
      ],
    },
  },
  {
    id: "scotia-small",
    shelf: "full",
    section: {
      name: "Scotia, small radius by the gauge edge",
      stick: { widthMm: 34, thicknessMm: 28 },
      parts: [fillet(6), { kind: "scotia", acrossMm: 19.05, small: "first" }, rest],
      startHeightMm: 21.65,
    },
  },
  {
    id: "scotia-large",
    shelf: "full",
    section: {
      name: "Scotia, large radius by the gauge edge",
      stick: { widthMm: 56, thicknessMm: 40 },
      parts: [fillet(8), { kind: "scotia", acrossMm: 38.1, small: "last" }, rest],
    },
  },
  {
    id: "torus",
    shelf: "full",
    section: {
      name: "Torus of 1 in between fillets",
      stick: { widthMm: 46, thicknessMm: 30 },
      startHeightMm: 17.3,
      parts: [fillet(10.3), { kind: "torus", widthMm: 25.4 }, fillet(10.3)],
    },
  },
  {
    id: "astragal",
    shelf: "full",
    section: {
      name: "Astragal of ⅜ in between fillets",
      stick: { widthMm: 25.525, thicknessMm: 16 },
      startHeightMm: 11.2375,
      parts: [fillet(8), { kind: "astragal", widthMm: 9.525 }, fillet(8)],
    },
  },
  {
    id: "quirked-bead",
    shelf: "full",
    section: {
      name: "Bead of ⅜ in on the edge with a quirk",
      stick: { widthMm: 40, thicknessMm: 18 },
      parts: [
        rest,
        // Down to where the bead's side stands at 75°, so that its top is level with the face.
        step(-3.52988),
        { kind: "swept arc", radiusMm: 4.7625, sweepDeg: 165, bend: "round", leanDeg: 75 },
      ],
    },
  },
  {
    id: "low-bead",
    shelf: "small",
    section: {
      name: "Low bead of ⅜ in sunk in a face",
      stick: { widthMm: 30, thicknessMm: 16 },
      parts: [
        fillet(10),
        step(-rise60Mm(9.525)),
        { kind: "low bead", widthMm: 9.525 },
        step(rise60Mm(9.525)),
        rest,
      ],
    },
  },
  {
    id: "reeds-3",
    shelf: "small",
    section: {
      name: "Three reeds of ⅜ in over the whole stick",
      stick: { widthMm: 28.575, thicknessMm: 14 },
      startHeightMm: 14 - rise60Mm(9.525),
      parts: [{ kind: "reeds", count: 3, widthMm: 9.525 }],
    },
  },
  {
    id: "reeds-7",
    shelf: "full",
    section: {
      name: "Seven reeds of ⅛ in sunk between margins",
      stick: { widthMm: 36, thicknessMm: 20 },
      parts: [
        fillet(6.8875),
        step(-rise60Mm(3.175)),
        { kind: "reeds", count: 7, widthMm: 3.175 },
        step(rise60Mm(3.175)),
        rest,
      ],
    },
  },
  {
    id: "flutes-3",
    shelf: "small",
    section: {
      name: "Three flutes of ⅜ in",
      stick: { widthMm: 50, thicknessMm: 20 },
      parts: [fillet(6.7125), { kind: "flutes", count: 3, widthMm: 9.525, gapMm: 4 }, rest],
    },
  },
  {
    id: "flutes-5-deep",
    shelf: "full",
    section: {
      name: "Five flutes of half a circle, ½ in wide",
      stick: { widthMm: 92, thicknessMm: 24 },
      parts: [fillet(6.25), { kind: "flutes", count: 5, widthMm: 12.7, sweepDeg: 180, gapMm: 4 }, rest],
    },
  },
  {
    id: "thumb",
    shelf: "full",
    section: {
      name: "Thumb of two radii with a fillet",
      stick: { widthMm: 30, thicknessMm: 18 },
      parts: [
        fillet(8),
        step(-2),
        { kind: "swept arc", radiusMm: 25.4, sweepDeg: 35, bend: "round" },
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 45, bend: "round", smooth: true },
        rest,
      ],
    },
  },
];
