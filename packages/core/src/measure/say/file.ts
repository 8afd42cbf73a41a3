/** Sentences about files: reading, writing, formats, versions. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const fileTroubles = catalogue({});
