export { readTable } from "./read-table.ts";
