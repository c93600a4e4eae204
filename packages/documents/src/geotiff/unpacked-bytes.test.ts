import fc from "fast-check";
import { expect, test } from "vitest";
import { unpackBits, unpackLzw } from "./unpacked-bytes.ts";

test("the worked example of the TIFF specification's LZW section", () => {
  // From memory of TIFF 6.0, section 13: bytes 7 7 7 8 8 7 7 6 6 become codes 256 7 258 8 8 258 6 6 257.
  const codes = [256, 7, 258, 8, 8, 258, 6, 6, 257];
  const bits = codes.map((code) => code.toString(2).padStart(9, "0")).join("");
  const packed = Uint8Array.from(bits.match(/.{1,8}/gu) ?? [], (byte) => Number.parseInt(byte.padEnd(8, "0"), 2));
  expect([...unpackLzw(packed, 9)]).toEqual([7, 7, 7, 8, 8, 7, 7, 6, 6]);
  expect([...unpackLzw(packed, 4)]).toEqual([7, 7, 7, 8]);
  expect([...unpackLzw(packed.subarray(0, 4), 9)]).toEqual([7, 7, 7]);
});

test("the worked example of PackBits", () => {
  // From memory of TIFF 6.0, section 9, and its source: FE AA 02 80 00 2A FD AA 03 80 00 2A 22 F7 AA.
  const packed = Uint8Array.from([0xfe, 0xaa, 0x02, 0x80, 0x00, 0x2a, 0xfd, 0xaa, 0x03, 0x80, 0x00, 0x2a, 0x22, 0xf7, 0xaa]);
  const bytes = [0xaa, 0xaa, 0xaa, 0x80, 0x00, 0x2a, 0xaa, 0xaa, 0xaa, 0xaa, 0x80, 0x00, 0x2a, 0x22, ...Array(10).fill(0xaa)];
  expect([...unpackBits(packed, 24)]).toEqual(bytes);
  expect([...unpackBits(Uint8Array.from([0x80, 0x00, 0x07]), 9)]).toEqual([7]);
});

test("damaged data end, and never make more than was asked for", () => {
  fc.assert(
    fc.property(fc.uint8Array({ maxLength: 3000 }), fc.nat(5000), (packed, size) => {
      expect(unpackBits(packed, size).length).toBeLessThanOrEqual(size);
      try {
        expect(unpackLzw(packed, size).length).toBeLessThanOrEqual(size);
      } catch (error) {
        expect(error).toEqual(new Error("its LZW data are damaged"));
      }
    }),
    { numRuns: 500 },
  );
});
