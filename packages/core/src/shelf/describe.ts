/** The shelf in lines for a terminal or a list: each plane with its sizes and what it is for. */
import { type LengthUnit, sameMm, type Writer, writerFor } from "../measure/index.ts";
import { wallAllowanceMm } from "./limits.ts";
import { sizeText } from "./plane-name.ts";
import { soleAngleDeg, soleDepthMm } from "./sole.ts";
import type { CurvedPlane, Plane, Shelf } from "./types.ts";

/** Between a figure and its unit in print, so that a line never breaks there. */
const NO_BREAK_SPACE = "\u00a0";

export interface ShelfWriting {
  /** The unit that sizes are written in. */
  readonly unit: LengthUnit;
  /** "plain" keeps measures in ASCII, for terminals; names stay as the maker wrote them. "print" unless given. */
  readonly form?: "print" | "plain";
}

export interface PlaneDescription {
  readonly id: string;
  readonly name: string;
  /** Radius, width, arc and depth, as far as the kind has them. */
  readonly sizes: string;
  /** What the plane does, in one phrase. */
  readonly use: string;
}

/** One line a plane, in the shelf's order, its id and name set out in columns; one line that says so if it is empty. */
export function describeShelf(shelf: Shelf, writing: ShelfWriting): readonly string[] {
  if (shelf.planes.length === 0) return ["There is no plane on the shelf."];
  const planes = shelf.planes.map((plane) => describePlane(plane, writing));
  const idColumns = Math.max(...planes.map(({ id }) => columnsOf(id)));
  const nameColumns = Math.max(...planes.map(({ name }) => columnsOf(name)));
  return planes.map(({ id, name, sizes, use }) =>
    [padded(id, idColumns), padded(name, nameColumns), `${sizes}; ${use}`].join("  "),
  );
}

/** A plane's sizes and its use in the maker's words. */
export function describePlane(plane: Plane, writing: ShelfWriting): PlaneDescription {
  const write = writerFor(writing.unit, writing.form);
  return {
    id: plane.id,
    name: write.text(plane.name),
    sizes: sizesText(plane, write, writing),
    use: useText(plane, write),
  };
}

function sizesText(plane: Plane, write: Writer, writing: ShelfWriting): string {
  // A plane's own sizes are written exactly: rounded to a rule's divisions, two planes of a pair could look alike.
  const form = writing.form ?? "print";
  const size = (sizeMm: number) => {
    const text = sizeText({ mm: sizeMm, unit: writing.unit }, form);
    return form === "plain" ? text : text.replaceAll(" ", NO_BREAK_SPACE);
  };
  switch (plane.kind) {
    case "hollow":
    case "round":
      return curvedSizes(plane, write, size);
    case "snipe bill":
      return `${size(plane.widthMm)} wide, nose ${size(plane.noseMm)}, flank ${write.degrees(plane.slopeDeg)} from level`;
    case "plough":
      return `irons ${write.list(plane.widthsMm.map(size))}`;
    case "side round":
      return `foot ${size(plane.widthMm)}, radius ${size(plane.radiusMm ?? plane.widthMm)}`;
    case "side snipe":
    case "side rebate":
      return `foot ${size(plane.widthMm)}`;
    case "bead":
      return `${size(plane.widthMm)} wide, quirk ${size(plane.quirkMm)}`;
    case "shaped": {
      const pieces = plane.sole.pieces;
      return `${size(pieces[pieces.length - 1]!.to.x - pieces[0]!.from.x)} wide`;
    }
    default:
      return `${size(plane.widthMm)} wide`;
  }
}

function curvedSizes(plane: CurvedPlane, write: Writer, size: (sizeMm: number) => string): string {
  const { radiusMm, widthMm } = plane;
  const both = sameMm(radiusMm, widthMm)
    ? `radius and width ${size(radiusMm)}`
    : `radius ${size(radiusMm)}, width ${size(widthMm)}`;
  return `${both}, arc ${write.degrees(soleAngleDeg(plane))}, depth ${size(soleDepthMm(plane))}`;
}

function useText(plane: Plane, write: Writer): string {
  switch (plane.kind) {
    case "hollow":
      return `rounds over to its radius; ${clearsText(plane, write)}`;
    case "round":
      return `sinks a cove of its radius; ${clearsText(plane, write)}`;
    case "snipe bill":
      return `opens and sharpens a quirk, its wall on the ${plane.hand}, up to ${write.length(plane.reachMm)} deep`;
    case "rebate":
      return "cuts a step, floor and wall, no narrower than itself";
    case "smoother":
      return "planes a bare flat or chamfer, never beside a wall";
    case "moving fillister":
      return `cuts a step along an edge, up to ${write.length(plane.fenceMm)} wide and ${write.length(plane.depthMm)} deep`;
    case "plough":
      return `cuts a groove up to ${write.length(plane.fenceMm)} from an edge and ${write.length(plane.depthMm)} deep`;
    case "side round":
      return `reaches up the flank of a cove on the ${plane.hand}`;
    case "side snipe":
      return `sharpens the side of a quirk on the ${plane.hand}`;
    case "side rebate":
      return `pares a standing wall on the ${plane.hand}`;
    case "bead":
      return `makes one bead at an edge, its quirk on the ${plane.hand ?? "right"}`;
    case "shaped":
      return plane.cutsWall === "none"
        ? "makes its own shape"
        : `makes its own shape and cuts a wall on ${plane.cutsWall === "both" ? "both sides" : `the ${plane.cutsWall}`}`;
  }
}

function clearsText(plane: CurvedPlane, write: Writer): string {
  const allowance = wallAllowanceMm(plane, "left");
  return allowance.kind === "unlimited"
    ? "goes down beside any wall"
    : `clears ${write.length(allowance.allowanceMm)} of standing wood beside it`;
}

/** Columns a text takes on a terminal, as far as the trade's names go: one a character. */
function columnsOf(text: string): number {
  return [...text].length;
}

function padded(text: string, columns: number): string {
  return text + " ".repeat(columns - columnsOf(text));
}
