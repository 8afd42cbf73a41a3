/** A way of working: flat on the back, lying on a bevel sawn first, or held in a canted jaw. */
export type Way = "flat" | "bevelled" | "canted";
