export * from "./bearing.ts";
export * from "./curve-book.ts";
export * from "./depth.ts";
export { type Depth, deepestFrom } from "./depth.ts";
export * from "./edge.ts";
export {
  comesAway,
  type FaceFigures,
  faceFigures,
  offBoundaryMm,
  withoutFallen,
  withoutFins,
} from "./face.ts";
export { outlineFaults } from "./file-outline.ts";
export { closedObject, pathText, troublesOf } from "./file-shape.ts";
export { apartAtFilms } from "./film.ts";
export { STANDING_WALL, type WoodsOfWall, wallLeftMm, wallsBesideSole } from "./guide.ts";
export { type JsonLimits, readJsonText, shown } from "./json-text.ts";
export * from "./limits.ts";
export * from "./outline.ts";
export * from "./overcut.ts";
export * from "./plan-file.ts";
export { isFlatKind, isSoleOf, planeOfEntry } from "./plane-entry.ts";
export * from "./profile.ts";
export * from "./recut.ts";
export * from "./rest-beside-walls.ts";
export * from "./seat.ts";
export * from "./simulate.ts";
export * from "./sole-shape.ts";
export * from "./sweep.ts";
export * from "./thread.ts";
export * from "./turning.ts";
export * from "./types.ts";
export * from "./wall.ts";
export { jsonText } from "./write-json.ts";
