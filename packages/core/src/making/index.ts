/** From a proven section to pieces on the wall, the case and the frame. Each folder here has its own index. */
export * from "./fit/index.ts";
export * from "./lengths/index.ts";
export * from "./stick/index.ts";
