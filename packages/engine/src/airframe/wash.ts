/** Air from another part: its number among its kind, and how strongly. */
export interface Wash {
  readonly kind: "rotor-downwash" | "slipstream" | "wing-downwash";
  readonly from: number;
  readonly strength: number;
}

/** An order in which every surface follows those whose wake it meets; the file is checked to have no circles. */
export function orderByWake(washes: readonly (readonly Wash[])[]): readonly number[] {
  const order: number[] = [];
  const visit = (index: number, path: readonly number[]) => {
    if (order.includes(index) || path.includes(index)) return;
    for (const { kind, from } of washes[index] ?? []) if (kind === "wing-downwash") visit(from, [...path, index]);
    order.push(index);
  };
  for (let index = 0; index < washes.length; index++) visit(index, []);
  return order;
}
