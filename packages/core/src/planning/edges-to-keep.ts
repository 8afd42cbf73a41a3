/** The edges that a maker asks to be kept square. */
export type KeptEdge = "gauge edge" | "far edge";

/** What a maker may ask to be kept square. */
export type KeepSquare = "gauge" | "far" | "both";

export function keptEdges(asked: KeepSquare | undefined): readonly KeptEdge[] {
  switch (asked) {
    case "gauge":
      return ["gauge edge"];
    case "far":
      return ["far edge"];
    case "both":
      return ["gauge edge", "far edge"];
    default:
      return [];
  }
}
