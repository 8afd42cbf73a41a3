/** The books that the tables rest on. Each row names one, because the books differ and the number means nothing alone. */
import type { Source } from "./types.ts";

const HANDBOOK = "USDA Forest Products Laboratory, Wood Handbook, FPL-GTR-190 (2010)";

export const SHRINKAGE_TABLE: Source = { where: `${HANDBOOK}, Table 4-3, p. 4-6`, standing: "published" };
export const IMPORTED_SHRINKAGE_TABLE: Source = {
  where: `${HANDBOOK}, Table 4-4, p. 4-8`,
  standing: "published",
};
export const SHRINKAGE_MEMORY: Source = {
  where: `${HANDBOOK}, Tables 4-3 and 4-4, page not seen`,
  standing: "from memory",
};
export const GENUS_TABLE: Source = {
  where:
    "R. B. Hoadley, Chemical and Physical Properties of Wood, in The Structural Conservation of Panel Paintings (Getty 1998), Table 1, p. 15",
  standing: "published",
};
export const COEFFICIENT_TABLE: Source = {
  where: `${HANDBOOK}, Table 13-5, p. 13-16`,
  standing: "published",
};
export const FROM_SHRINKAGE = "C = S / (3000 − 20 S): eq. 13-3 of the Wood Handbook at 10 % moisture content";
export const FLOOR_HARDNESS: Source = {
  where: "thewoodfloorsource.com/janka-hardness",
  standing: "published",
};
export const MAPLE_HARDNESS: Source = {
  where: "thewoodfloorsource.com/janka-hardness; maplefloor.org",
  standing: "published",
};
export const OREGON_HARDNESS: Source = {
  where: "Oregon State University table from the Wood Handbook (owic.oregonstate.edu)",
  standing: "published",
};
export const PINE_HARDNESS: Source = { where: "regularcutups.com/soft-pine.html", standing: "published" };
export const HARDNESS_MEMORY: Source = {
  where: "Wood Handbook, Tables 5-3b and 5-5b, page not seen",
  standing: "from memory",
};
export const OWN: Source = { where: "given by the maker", standing: "own" };
