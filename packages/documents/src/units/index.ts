export { type ColumnUnit, readColumnUnit } from "./column-unit.ts";
export { expectedOfKind, isQuantityKind, type KindUnits, unitsOfKind } from "./kind-units.ts";
export { parseQuantity, type QuantityReading, type Uncertainty } from "./quantity-text.ts";
