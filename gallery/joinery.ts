/** What a joiner is asked for: large cornices, skirtings, frames, rails, nosings. Sizes in mm. */
import { fillet, type GalleryEntry, rest, rise60Mm, step } from "./entry.ts";

export const JOINERY: readonly GalleryEntry[] = [
  {
    id: "cornice-ten",
    shelf: "full",
    section: {
      name: "Cornice of ten parts",
      stick: { widthMm: 112, thicknessMm: 45 },
      parts: [
        fillet(8),
        step(-3),
        { kind: "cyma recta", acrossMm: 38, riseMm: -14 },
        fillet(4),
        step(-3),
        { kind: "cavetto", acrossMm: 19.05, riseMm: -10, radiusMm: 19.05 },
        fillet(3),
        step(-2),
        { kind: "low bead", widthMm: 9.525 },
        rest,
      ],
      back: [
        { kind: "bevel", edge: "gauge", riseMm: 30, fromBackDeg: 52 },
        { kind: "bevel", edge: "far", riseMm: 8, fromBackDeg: 38 },
      ],
    },
  },
  {
    id: "cornice-sixteen",
    shelf: "full",
    section: {
      name: "Cornice of sixteen parts",
      stick: { widthMm: 165, thicknessMm: 50 },
      parts: [
        fillet(9),
        step(-3),
        { kind: "cyma recta", acrossMm: 40, riseMm: -16 },
        fillet(4),
        step(-2),
        { kind: "low bead", widthMm: 9.525 },
        { kind: "cavetto", acrossMm: 22.225, riseMm: -11, radiusMm: 22.225 },
        fillet(3.5),
        step(-3),
        { kind: "ovolo", acrossMm: 15.875, riseMm: -8 },
        fillet(4),
        step(-rise60Mm(6.35)),
        { kind: "low bead", widthMm: 6.35 },
        { kind: "swept arc", radiusMm: 12.7, sweepDeg: 60, bend: "hollow", smooth: true },
        rest,
      ],
      back: [{ kind: "bevel", edge: "gauge", riseMm: 34, fromBackDeg: 52 }],
    },
  },
  {
    id: "wide-skirting",
    shelf: "full",
    section: {
      name: "Skirting of 250 mm with an ogee on its upper edge",
      stick: { widthMm: 250, thicknessMm: 25 },
      parts: [fillet(208), step(-3), { kind: "cyma recta", acrossMm: 28, riseMm: -13 }, rest],
    },
  },
  {
    id: "wide-two-bands",
    shelf: "full",
    section: {
      name: "Board of 250 mm with a low bead far from both edges",
      stick: { widthMm: 250, thicknessMm: 20 },
      parts: [
        fillet(118),
        step(-rise60Mm(12.7)),
        { kind: "low bead", widthMm: 12.7 },
        step(rise60Mm(12.7)),
        rest,
      ],
    },
  },
  {
    id: "frame-two-rebates",
    shelf: "full",
    section: {
      name: "Frame with a rebate on both sides of the back",
      stick: { widthMm: 48, thicknessMm: 26 },
      startHeightMm: 14,
      parts: [
        { kind: "ovolo", acrossMm: 9.525, riseMm: 9.525 },
        step(2.475),
        fillet(28.95),
        step(-2.475),
        { kind: "ovolo", acrossMm: 9.525, riseMm: -9.525 },
      ],
      back: [
        { kind: "rebate", edge: "gauge", widthMm: 9, depthMm: 8 },
        { kind: "rebate", edge: "far", widthMm: 9, depthMm: 8 },
      ],
    },
  },
  {
    id: "bolection",
    shelf: "full",
    section: {
      name: "Bolection with a rebate at the back",
      stick: { widthMm: 58, thicknessMm: 30 },
      startHeightMm: 16,
      parts: [
        { kind: "ovolo", acrossMm: 12.7, riseMm: 12.7 },
        step(1.3),
        fillet(6),
        step(-2),
        { kind: "cyma recta", acrossMm: 30, riseMm: -14 },
        rest,
      ],
      back: [{ kind: "rebate", edge: "gauge", widthMm: 14, depthMm: 10 }],
    },
  },
  {
    id: "chamfers",
    shelf: "small",
    section: {
      name: "Post with two chamfers",
      stick: { widthMm: 30, thicknessMm: 30 },
      startHeightMm: 23,
      parts: [
        { kind: "chamfer", acrossMm: 7, riseMm: 7 },
        rest,
        { kind: "chamfer", acrossMm: 7, riseMm: -7 },
      ],
    },
  },
  {
    id: "fielded-panel",
    shelf: "full",
    section: {
      name: "Edge of a fielded panel",
      stick: { widthMm: 90, thicknessMm: 18 },
      parts: [fillet(50), step(-2), { kind: "bevel", acrossMm: 32, riseMm: -8 }, rest],
    },
  },
  {
    id: "picture-rail",
    shelf: "full",
    section: {
      name: "Picture rail: round nose over a cove and an ogee",
      stick: { widthMm: 56, thicknessMm: 24 },
      startHeightMm: 16,
      parts: [
        fillet(5),
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 75, bend: "hollow", leanDeg: -15 },
        { kind: "swept arc", radiusMm: 6.35, sweepDeg: 120, bend: "round", smooth: true },
        step(-2),
        { kind: "cyma recta", acrossMm: 22, riseMm: -11 },
        rest,
      ],
    },
  },
  {
    id: "stair-nosing",
    shelf: "full",
    section: {
      name: "Nosing: half-round edge",
      stick: { widthMm: 70, thicknessMm: 25.4 },
      startHeightMm: 25.4,
      parts: [fillet(57.3), { kind: "swept arc", radiusMm: 12.7, sweepDeg: 180, bend: "round" }],
    },
  },
  {
    id: "three-coves",
    shelf: "full",
    section: {
      name: "Three coves falling, one into the next",
      stick: { widthMm: 60, thicknessMm: 34 },
      parts: [
        fillet(6),
        { kind: "cavetto", acrossMm: 9.525, riseMm: -9.525 },
        fillet(3),
        { kind: "cavetto", acrossMm: 12.7, riseMm: -12.7 },
        fillet(3),
        { kind: "cavetto", acrossMm: 7.9375, riseMm: -7.9375 },
        rest,
      ],
    },
  },
  {
    id: "architrave",
    shelf: "full",
    section: {
      name: "Architrave: two fascias, ogee and edge bead",
      stick: { widthMm: 95, thicknessMm: 28 },
      parts: [
        fillet(7),
        step(-3),
        { kind: "cyma reversa", acrossMm: 17, riseMm: -9 },
        fillet(25),
        step(-3),
        fillet(30),
        step(-2),
        { kind: "low bead", widthMm: 7.9375 },
        rest,
      ],
    },
  },
];
