/** What a shelf file says it is. */
export const SHELF_FORMAT = "mouldwright/shelf";

/** The version of shelf file written and read here. */
export const SHELF_VERSION = 1;
