export * from "./draw/index.ts";
export * from "./format/index.ts";
