/** Sentences about the wanted section and its stick. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const sectionTroubles = catalogue({});
