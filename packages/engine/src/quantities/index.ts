export { type QuantityKind, quantityKinds } from "./kinds.ts";
export { type InputRole, type QuantityOptions, quantity } from "./schema.ts";
