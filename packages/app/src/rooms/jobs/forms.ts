/**
 * Classical forms to begin a job with: each a few sizes to set, the section and its stick following from them. Sizes to
 * begin with are those of planes in ordinary use (common practice, no source).
 */
import type { Job } from "mouldwright/job";
import { SOLE_SWEEP_DEG } from "mouldwright/section";

export interface FormSize {
  readonly key: string;
  readonly label: string;
  readonly kind: "length" | "count";
  readonly least: number;
  readonly most: number;
  /** To begin with; lengths in mm. */
  readonly value: number;
}

export type Sizes = Readonly<Record<string, number>>;

export interface Form {
  readonly id: string;
  readonly name: string;
  /** What it is, in a sentence. */
  readonly says: string;
  readonly sizes: readonly FormSize[];
  readonly draw: (sizeOf: (key: string) => number) => Pick<Job, "section" | "stick">;
}

type Part = NonNullable<Job["section"]["parts"]>[number];

const IN = 25.4;
/** Left standing under the lowest flat, mm. */
const BACK_MM = 7;

/** What a segment of one sole's arc rises above its chord, for a chord of so many mm. */
function riseOfSole(widthMm: number): number {
  const half = (SOLE_SWEEP_DEG / 2) * (Math.PI / 180);
  return (widthMm / 2 / Math.sin(half)) * (1 - Math.cos(half));
}

const length = (key: string, label: string, value: number, least: number, most: number): FormSize => ({
  key,
  label,
  kind: "length",
  value,
  least,
  most,
});
const fillet = (widthMm: number, name: string): Part => ({ kind: "fillet", widthMm, name });
const step = (riseMm: number): Part => ({ kind: "step", riseMm });
const REST: Part = { kind: "fillet", widthMm: "rest", name: "lower fillet" };

const ACROSS = length("acrossMm", "Across", (5 / 8) * IN, 4, 75);
const DOWN = length("downMm", "Down", (5 / 8) * IN, 4, 75);
const FILLET = length("filletMm", "Fillet above", 6, 2, 60);
const STEP = length("stepMm", "Step below the fillet", 2, 0.5, 15);

/** Up to a tenth of a millimetre: a stick is not ordered finer. */
function tenths(lengthMm: number): number {
  return Math.ceil(lengthMm * 10 - 1 / 1000) / 10;
}

/** A form that falls from the fillet on the gauge edge to a flat on the far side. */
function falling(
  parts: readonly Part[],
  size: { readonly acrossMm: number; readonly downMm: number },
): Pick<Job, "section" | "stick"> {
  return {
    section: { parts: [...parts, REST] },
    stick: {
      widthMm: tenths(size.acrossMm + Math.max(6, size.acrossMm / 4)),
      thicknessMm: tenths(size.downMm + BACK_MM),
    },
  };
}

function quarter(kind: "ovolo" | "cavetto"): Form["draw"] {
  return (sizeOf) => {
    const [filletMm, acrossMm, downMm] = [sizeOf("filletMm"), sizeOf("acrossMm"), sizeOf("downMm")];
    // An ovolo stands below its fillet; a cavetto runs out of it.
    const stepMm = kind === "ovolo" ? sizeOf("stepMm") : 0;
    return falling(
      [
        fillet(filletMm, "upper fillet"),
        ...(stepMm > 0 ? [step(-stepMm)] : []),
        { kind, acrossMm, riseMm: -downMm, name: kind },
      ],
      { acrossMm: filletMm + acrossMm, downMm: stepMm + downMm },
    );
  };
}

function cyma(kind: "cyma recta" | "cyma reversa"): Form["draw"] {
  return (sizeOf) => {
    const [filletMm, acrossMm, downMm] = [sizeOf("filletMm"), sizeOf("acrossMm"), sizeOf("downMm")];
    const stepMm = sizeOf("stepMm");
    return falling(
      [fillet(filletMm, "upper fillet"), step(-stepMm), { kind, acrossMm, riseMm: -downMm, name: kind }],
      { acrossMm: filletMm + acrossMm, downMm: stepMm + downMm },
    );
  };
}

/** A half-round standing on the flats beside it. */
function proud(kind: "astragal" | "torus"): Form["draw"] {
  return (sizeOf) => {
    const [filletMm, widthMm] = [sizeOf("filletMm"), sizeOf("widthMm")];
    const flatMm = kind === "torus" ? widthMm / 2 : BACK_MM;
    const thicknessMm = tenths(flatMm + widthMm / 2);
    return {
      section: {
        startHeightMm: thicknessMm - widthMm / 2,
        parts: [fillet(filletMm, "flat"), { kind, widthMm, name: kind }, fillet(filletMm, "flat")],
      },
      stick: { widthMm: widthMm + 2 * filletMm, thicknessMm },
    };
  };
}

/** Reeds or flutes over the middle of a flat face: reeds are sunk so that their tops are level with it. */
function row(kind: "reeds" | "flutes"): Form["draw"] {
  return (sizeOf) => {
    const [count, widthMm, marginMm] = [sizeOf("count"), sizeOf("widthMm"), sizeOf("filletMm")];
    const gapMm = kind === "flutes" ? sizeOf("gapMm") : 0;
    const sinkMm = kind === "reeds" ? riseOfSole(widthMm) : 0;
    const parts: Part[] = [{ kind, count, widthMm, ...(gapMm > 0 ? { gapMm } : {}), name: kind }];
    return {
      section: {
        parts: [
          fillet(marginMm, "margin"),
          ...(sinkMm > 0 ? [step(-sinkMm), ...parts, step(sinkMm)] : parts),
          { kind: "fillet", widthMm: "rest", name: "margin" },
        ],
      },
      stick: {
        widthMm: 2 * marginMm + count * widthMm + (count - 1) * gapMm,
        thicknessMm: tenths(riseOfSole(widthMm) + 2 * BACK_MM),
      },
    };
  };
}

const COUNT: FormSize = { key: "count", label: "How many", kind: "count", value: 5, least: 1, most: 40 };
/** The line on which hollow and round of one radius meet at 45°: their two chords, and each a radius long. */
const CYMA_MM = (3 / 8) * IN * Math.SQRT2;

export const FORMS: readonly Form[] = [
  {
    id: "ovolo",
    name: "Ovolo",
    says: "A convex quarter below a fillet.",
    sizes: [ACROSS, DOWN, FILLET, STEP],
    draw: quarter("ovolo"),
  },
  {
    id: "cavetto",
    name: "Cavetto",
    says: "A hollow quarter running out of a fillet.",
    sizes: [ACROSS, DOWN, FILLET],
    draw: quarter("cavetto"),
  },
  {
    id: "scotia",
    name: "Scotia",
    says: "A deep hollow of two quarters, the small one a third of the width, the large one two thirds.",
    sizes: [length("acrossMm", "Across", 0.75 * IN, 8, 75), FILLET],
    draw: (sizeOf) => {
      const [acrossMm, filletMm] = [sizeOf("acrossMm"), sizeOf("filletMm")];
      // The lip of the large quarter stands a third of the width above the other.
      const thicknessMm = tenths((2 / 3) * acrossMm + 2 * BACK_MM);
      return {
        section: {
          startHeightMm: thicknessMm - acrossMm / 3,
          parts: [
            fillet(filletMm, "lower fillet"),
            { kind: "scotia", acrossMm, small: "first", name: "scotia" },
            { kind: "fillet", widthMm: "rest", name: "upper fillet" },
          ],
        },
        stick: { widthMm: tenths(2 * filletMm + acrossMm), thicknessMm },
      };
    },
  },
  {
    id: "cyma-recta",
    name: "Cyma recta",
    says: "An ogee with the hollow at the proud end.",
    sizes: [
      length("acrossMm", "Across", CYMA_MM, 6, 120),
      length("downMm", "Down", CYMA_MM, 3, 75),
      FILLET,
      STEP,
    ],
    draw: cyma("cyma recta"),
  },
  {
    id: "cyma-reversa",
    name: "Cyma reversa",
    says: "An ogee with the round at the proud end.",
    sizes: [
      length("acrossMm", "Across", (5 / 3) * CYMA_MM, 6, 120),
      length("downMm", "Down", (5 / 3) * CYMA_MM, 3, 75),
      FILLET,
      STEP,
    ],
    draw: cyma("cyma reversa"),
  },
  {
    id: "low-bead",
    name: "Low bead",
    says: "The round that one hollow leaves, sunk level with the face between two steps.",
    sizes: [
      length("widthMm", "Width of the bead", (3 / 8) * IN, 3, 38),
      length("filletMm", "Flat on either side", 10, 2, 100),
    ],
    draw: (sizeOf) => {
      const [widthMm, filletMm] = [sizeOf("widthMm"), sizeOf("filletMm")];
      const sinkMm = riseOfSole(widthMm);
      return {
        section: {
          parts: [
            fillet(filletMm, "flat"),
            step(-sinkMm),
            { kind: "low bead", widthMm, name: "bead" },
            step(sinkMm),
            { kind: "fillet", widthMm: "rest", name: "flat" },
          ],
        },
        stick: { widthMm: 2 * filletMm + widthMm, thicknessMm: tenths(sinkMm + 2 * BACK_MM) },
      };
    },
  },
  {
    id: "quirked-bead",
    name: "Bead with a quirk",
    says: "A bead on the far edge, set off from the face by a quirk.",
    sizes: [
      length("widthMm", "Width of the bead", (3 / 8) * IN, 3, 38),
      length("filletMm", "Face beside it", 30, 5, 200),
    ],
    draw: (sizeOf) => {
      const [widthMm, filletMm] = [sizeOf("widthMm"), sizeOf("filletMm")];
      const radiusMm = widthMm / 2;
      // Down to where the bead's side stands this steep, so that its top is level with the face.
      const leanDeg = 75;
      const downMm = radiusMm * (1 - Math.cos(leanDeg * (Math.PI / 180)));
      return {
        section: {
          parts: [
            { kind: "fillet", widthMm: "rest", name: "face" },
            step(-downMm),
            { kind: "swept arc", radiusMm, sweepDeg: leanDeg + 90, bend: "round", leanDeg, name: "bead" },
          ],
        },
        stick: { widthMm: tenths(filletMm + widthMm), thicknessMm: tenths(radiusMm + 2 * BACK_MM) },
      };
    },
  },
  {
    id: "astragal",
    name: "Astragal",
    says: "A small half-round standing proud on a flat.",
    sizes: [
      length("widthMm", "Width of the astragal", (3 / 8) * IN, 3, 38),
      length("filletMm", "Flat on either side", 8, 2, 60),
    ],
    draw: proud("astragal"),
  },
  {
    id: "torus",
    name: "Torus",
    says: "A large half-round standing proud on a flat.",
    sizes: [
      length("widthMm", "Width of the torus", IN, 10, 76),
      length("filletMm", "Flat on either side", 10, 2, 60),
    ],
    draw: proud("torus"),
  },
  {
    id: "reeds",
    name: "Reeds",
    says: "Beads side by side, sunk level with the face.",
    sizes: [
      COUNT,
      length("widthMm", "Width of one reed", (3 / 16) * IN, 3, 38),
      length("filletMm", "Margin on either side", 9, 2, 200),
    ],
    draw: row("reeds"),
  },
  {
    id: "flutes",
    name: "Flutes",
    says: "Hollows side by side with flats between them.",
    sizes: [
      COUNT,
      length("widthMm", "Width of one flute", 0.25 * IN, 3, 38),
      length("gapMm", "Flat between two", 3, 0.5, 38),
      length("filletMm", "Margin on either side", 9, 2, 200),
    ],
    draw: row("flutes"),
  },
  {
    id: "chamfer",
    name: "Chamfer",
    says: "A corner taken off.",
    sizes: [
      length("acrossMm", "Across", 8, 1, 60),
      length("downMm", "Down", 8, 1, 60),
      length("filletMm", "Face beside it", 25, 5, 200),
    ],
    draw: (sizeOf) => {
      const [acrossMm, downMm, filletMm] = [sizeOf("acrossMm"), sizeOf("downMm"), sizeOf("filletMm")];
      return {
        section: {
          parts: [
            { kind: "fillet", widthMm: "rest", name: "face" },
            { kind: "chamfer", acrossMm, riseMm: -downMm, name: "chamfer" },
          ],
        },
        stick: { widthMm: tenths(filletMm + acrossMm), thicknessMm: tenths(downMm + 12) },
      };
    },
  },
];

/** The sizes a form begins with. */
export function firstSizes(form: Form): Sizes {
  return Object.fromEntries(form.sizes.map(({ key, value }) => [key, value]));
}

/** A job of that form; shelf and unit as given. Whether it makes a section is for `sectionOfJob` to say. */
export function jobOfForm(form: Form, sizes: Sizes, given: Pick<Job, "shelf" | "unit" | "inchStep">): Job {
  const begun = firstSizes(form);
  return {
    format: "mouldwright/job",
    version: 1,
    name: form.name,
    ...given,
    ...form.draw((key) => sizes[key] ?? begun[key] ?? 0),
  };
}
