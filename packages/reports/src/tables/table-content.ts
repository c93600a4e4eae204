import type { Axis, TableColumn, TableFigure } from "@wingseed/engine";

/** Columns and rows without a name of their own. */
export interface Content {
  readonly columns: readonly TableColumn[];
  readonly rows: TableFigure["rows"];
}

/** A column of values along an axis. */
export function column(axis: Axis): TableColumn {
  const unit = axis.unit === undefined ? {} : { unit: axis.unit };
  const datum = axis.datum === undefined ? {} : { datum: axis.datum };
  return { label: axis.label, quantity: axis.quantity, ...unit, ...datum };
}
