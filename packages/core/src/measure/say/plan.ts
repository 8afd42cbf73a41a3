/** Sentences about planning, plans and their proof. The pattern of an entry stands in `catalogue.ts`. */
import { catalogue } from "./catalogue.ts";

export const planTroubles = catalogue({});
