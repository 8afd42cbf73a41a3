/** Sentences about drawings read from SVG and DXF. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const drawingTroubles = catalogue({});
