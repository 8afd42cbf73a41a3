import { cataloguedTrouble, fine, type Outcome, refused } from "mouldwright/measure";
import type { Given } from "./arguments.ts";

/** The one file name a command takes. */
export function onlyName(given: Given, wanted: string): Outcome<string> {
  const [name, second] = given.names;
  if (name === undefined || name === "")
    return refused(cataloguedTrouble("argument-missing", "", { wanted }));
  if (second !== undefined) return refused(cataloguedTrouble("argument-too-many", "", { first: second }));
  return fine(name);
}
