/** Inputs with one more set of values for each combination of the axes; the last axis runs fastest. */
export function sweep(inputs: unknown, axes: Readonly<Record<string, readonly unknown[]>>): readonly unknown[] {
  return Object.entries(axes).reduce<readonly unknown[]>(
    (cases, [path, values]) => cases.flatMap((one) => values.map((value) => withInput(one, path, value))),
    [inputs],
  );
}

/**
 * A copy of the inputs with the value at a dotted path set ("inputs.rotor.radius"; the leading "inputs" may be left out).
 * An item of a list is named by its `id`; only a list whose items have none is entered by place, from 0.
 */
export function withInput(inputs: unknown, path: string, value: unknown): unknown {
  const names = path.split(".").filter((name, index) => !(index === 0 && name === "inputs"));
  if (names.length === 0 || names.some((name) => name === "" || name === "__proto__"))
    throw new RangeError(`"${path}" does not name an input.`);
  return setAt(inputs ?? {}, names, value, path);
}

function setAt(node: unknown, names: readonly string[], value: unknown, path: string): unknown {
  const [name, ...rest] = names;
  if (name === undefined) return value;
  if (Array.isArray(node)) {
    const byId = node.findIndex((item: { id?: unknown } | null) => item?.id === name);
    const hasIds = node.some((item: { id?: unknown } | null) => item?.id !== undefined);
    const place = byId < 0 && !hasIds && /^\d+$/.test(name) && Number(name) < node.length ? Number(name) : byId;
    if (place < 0) throw new RangeError(`"${path}": the list has no item with the id "${name}".`);
    return node.map((item, index) => (index === place ? setAt(item, rest, value, path) : item));
  }
  const object = typeof node === "object" && node !== null ? (node as Record<string, unknown>) : {};
  return { ...object, [name]: setAt(object[name], rest, value, path) };
}
