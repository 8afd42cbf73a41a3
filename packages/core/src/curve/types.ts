/**
 * The plain data of the plane geometry: points, pieces, chains, rings, regions.
 *
 * Frame: millimetres; x from the gauge edge, y up from the back; angles anticlockwise.
 * Everything here is immutable plain data, so that it passes through a worker, a store and JSON unchanged.
 */

/** A point of the section, mm. */
export interface Point {
  readonly x: number;
  readonly y: number;
}

/** A straight piece. `source` names the curve it came from (a part of the drawing, a plane's sole). */
export interface Line {
  readonly kind: "line";
  readonly from: Point;
  readonly to: Point;
  readonly source?: number;
}

/**
 * A circular piece of at most a half circle. It keeps its end points, so that neighbours meet exactly;
 * `bulge` is tan(sweep / 4) as in DXF, positive anticlockwise, -1 to 1; centre and radius are derived.
 */
export interface Arc {
  readonly kind: "arc";
  readonly from: Point;
  readonly to: Point;
  readonly bulge: number;
  readonly source?: number;
}

export type Piece = Line | Arc;

/** An open run of pieces, each starting where the one before ends. */
export interface Chain {
  readonly pieces: readonly Piece[];
}

/** A closed run of pieces; anticlockwise around what is inside; the last piece ends where the first starts. */
export interface Ring {
  readonly pieces: readonly Piece[];
}

/** A vertex as it stands in files: `[x, y]` or `[x, y, bulge]` of the piece to the next vertex. */
export type Vertex = readonly [number, number] | readonly [number, number, number];

/**
 * A closed polygon of a region. Edge i runs from vertex i to vertex i + 1 (the last one back to 0) and
 * `sources[i]` is the id of the curve that this edge came from, 0 if none.
 * Outer rings are anticlockwise, holes clockwise.
 */
export interface FlatRing {
  readonly xs: Float64Array;
  readonly ys: Float64Array;
  readonly sources: Int32Array;
}

/** A flat region with holes, the form booleans are computed in. */
export type Region = readonly FlatRing[];

/** The circles that edges of a region may have come from, by source id: what turns flattened edges back into arcs. */
export type Circles = ReadonlyMap<number, Circle>;

export interface Circle {
  readonly centre: Point;
  readonly radiusMm: number;
}
