export { buildSection, stickRing } from "./build-section.ts";
export { SOLE_SWEEP_DEG } from "./forms/rounds.ts";
export { type Inspection, inspectSection } from "./inspect.ts";
export { type Join, joinsOf, OPENEST_QUIRK_DEG, WIDEST_QUIRK_MM } from "./joins.ts";
export { mirrorSection } from "./mirror-section.ts";
export type * from "./part-spec.ts";
export type { FreeSpan, JoinKind, NamedSpan, Section } from "./types.ts";
export { MOST_LEAN_DEG, type UndercutPlace, undercutPlaces } from "./way-out.ts";
export { type Worked, type WorkedFace, workedFaces } from "./worked.ts";
