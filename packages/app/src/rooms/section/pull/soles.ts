/** The radii on the shelf, each with the plane that has it: a hollow makes a round, a round makes a hollow. */
import type { Shelf } from "mouldwright/shelf";

export interface ShelfRadius {
  readonly radiusMm: number;
  /** What the curve is that it leaves. */
  readonly makes: "round" | "hollow";
  readonly plane: string;
}

export function shelfRadii(shelf: Shelf | null): readonly ShelfRadius[] {
  return (shelf?.planes ?? []).flatMap((plane): readonly ShelfRadius[] => {
    switch (plane.kind) {
      case "hollow":
        return [{ radiusMm: plane.radiusMm, makes: "round", plane: plane.name }];
      case "round":
        return [{ radiusMm: plane.radiusMm, makes: "hollow", plane: plane.name }];
      case "bead":
        return [{ radiusMm: plane.widthMm / 2, makes: "round", plane: plane.name }];
      default:
        return [];
    }
  });
}
