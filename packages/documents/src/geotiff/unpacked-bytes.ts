/** Unpacks a strip or tile into at most `size` bytes; a shorter answer means that the data end early. */
export type Unpack = (packed: Uint8Array, size: number) => Uint8Array;

const clearCode = 256;
const endCode = 257;
const narrowest = 9;
const widest = 12;
const mostCodes = 2 ** widest;

/**
 * LZW as TIFF packs it: codes of 9 to 12 bits, most significant bit first, one wider as soon as the widest code is reached.
 * Codes that no writer makes are refused, so that damaged data neither run on nor loop.
 *
 * Checked against files of another writer.
 *
 * @source adobe-tiff-6, section 13, from memory
 */
export function unpackLzw(packed: Uint8Array, size: number): Uint8Array {
  const table = { prefix: new Uint16Array(mostCodes), last: new Uint8Array(mostCodes), length: new Uint16Array(mostCodes) };
  for (let code = 0; code < clearCode; code++) {
    table.last[code] = code;
    table.length[code] = 1;
  }
  const output = new Uint8Array(size);
  const bits = { position: 0, width: narrowest };
  let [filled, free, previous] = [0, endCode + 1, -1];
  while (filled < size) {
    const code = nextCode(packed, bits);
    if (code === endCode) break;
    if (code === clearCode) {
      [free, previous, bits.width] = [endCode + 1, -1, narrowest];
      continue;
    }
    const fresh = previous >= 0 && code === free && free < mostCodes;
    if (!fresh && !(code < clearCode || (previous >= 0 && code < free && code > endCode))) throw new Error("its LZW data are damaged");
    if (previous >= 0 && free < mostCodes) {
      table.prefix[free] = previous;
      table.length[free] = (table.length[previous] as number) + 1;
      table.last[free] = firstByte(table, fresh ? previous : code);
      free += 1;
      if (free >= 2 ** bits.width - 1 && bits.width < widest) bits.width += 1;
    }
    filled = put(table, code, output, filled);
    previous = code;
  }
  return output.subarray(0, filled);
}

interface CodeTable {
  readonly prefix: Uint16Array;
  readonly last: Uint8Array;
  readonly length: Uint16Array;
}

function nextCode(packed: Uint8Array, bits: { position: number; readonly width: number }): number {
  const end = bits.position + bits.width;
  if (end > 8 * packed.length) return endCode;
  let code = 0;
  for (let at = bits.position; at < end; at++) code = (code << 1) | (((packed[at >> 3] as number) >> (7 - (at & 7))) & 1);
  bits.position = end;
  return code;
}

function firstByte({ prefix, last, length }: CodeTable, code: number): number {
  let at = code;
  for (let left = length[code] as number; left > 1; left--) at = prefix[at] as number;
  return last[at] as number;
}

function put({ prefix, last, length }: CodeTable, code: number, output: Uint8Array, from: number): number {
  const count = length[code] as number;
  let at = code;
  for (let index = from + count - 1; index >= from; index--) {
    if (index < output.length) output[index] = last[at] as number;
    at = prefix[at] as number;
  }
  return Math.min(output.length, from + count);
}

/**
 * PackBits: runs of equal bytes and runs of differing ones, each behind a signed count; −128 means nothing.
 *
 * Checked against files of another writer.
 *
 * @source adobe-tiff-6, section 9, from memory
 */
export function unpackBits(packed: Uint8Array, size: number): Uint8Array {
  const output = new Uint8Array(size);
  let filled = 0;
  for (let at = 0; at < packed.length && filled < size; ) {
    const head = ((packed[at] as number) << 24) >> 24;
    if (head >= 0) {
      const run = packed.subarray(at + 1, at + 2 + head).subarray(0, size - filled);
      output.set(run, filled);
      filled += run.length;
      at += 2 + head;
    } else {
      const count = head === -128 || at + 1 >= packed.length ? 0 : Math.min(1 - head, size - filled);
      output.fill(packed[at + 1] ?? 0, filled, filled + count);
      filled += count;
      at += head === -128 ? 1 : 2;
    }
  }
  return output.subarray(0, filled);
}
