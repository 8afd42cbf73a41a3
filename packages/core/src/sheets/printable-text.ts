/** Text from a maker's file, made fit for a sheet or a terminal. */
export { printable } from "../measure/index.ts";
