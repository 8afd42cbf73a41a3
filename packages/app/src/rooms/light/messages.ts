/** What goes to the worker that knows light, and what comes back: plain data. */
import type { Job } from "mouldwright/job";
import type { Hanging, Lamp, SectionInLight, Tone } from "mouldwright/light";
import type { Trouble } from "mouldwright/measure";

/** The sections to be looked at: each is built once and looked at often. */
export interface Versions {
  readonly kind: "versions";
  readonly jobs: readonly Job[];
}

export interface Look {
  readonly kind: "look";
  readonly wish: number;
  readonly lamp: Lamp;
  /** Null: level, gauge edge up, leaning as the section's own bevels say. */
  readonly hanging: Hanging | null;
}

export type Corner = "outside" | "inside" | "none";

export interface SolidWish {
  readonly kind: "solid";
  readonly wish: number;
  readonly hanging: Hanging | null;
  readonly corner: Corner;
}

export type ToLight = Versions | Look | SolidWish;

/** A version as it is seen, or why it cannot be. */
export type SeenVersion =
  | { readonly ok: true; readonly lit: SectionInLight; readonly tones: readonly Tone[] }
  | { readonly ok: false; readonly troubles: readonly Trouble[] };

export interface Seen {
  readonly kind: "seen";
  readonly wish: number;
  readonly versions: readonly SeenVersion[];
}

/** Triangles of the first version, nine numbers each, mm: to the right, up, out of the wall. */
export interface SolidMade {
  readonly kind: "solid";
  readonly wish: number;
  readonly solid: TurnedSolid | null;
  readonly troubles: readonly Trouble[];
}

export interface TurnedSolid {
  readonly run: Hanging["run"];
  readonly corner: Corner;
  /** The piece along the wall, and the one round the corner. */
  readonly pieces: readonly Float32Array<ArrayBuffer>[];
  /** How long each piece is at the wall, how far it stands out, and how much of the wall it covers, mm. */
  readonly lengthMm: number;
  readonly projectionMm: number;
  readonly widthMm: number;
}

export type FromLight = Seen | SolidMade;
