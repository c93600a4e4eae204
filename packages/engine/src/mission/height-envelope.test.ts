import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rateLimitedEnvelope } from "./height-envelope.ts";

const even = (value: number, count: number) => Array.from({ length: count }, () => value);

describe("rate-limited envelope", () => {
  it("climbs before a ridge and descends behind it, at the allowed rates", () => {
    const required = [0, 0, 0, 30, 0, 0, 0];
    const heights = rateLimitedEnvelope(required, even(10, 6), { climb: even(1, 6), descent: even(2, 6) });
    expect([...heights]).toEqual([0, 10, 20, 30, 10, 0, 0]);
  });

  it("leaves heights alone that are gentle enough", () => {
    const required = [0, 5, 10, 5, 0];
    expect([...rateLimitedEnvelope(required, even(10, 4), { climb: even(1, 4), descent: even(1, 4) })]).toEqual(required);
  });

  it("keeps the required height everywhere, respects both rates, and nothing lower does", () => {
    const piece = fc.record({
      required: fc.double({ min: -50, max: 500, noNaN: true }),
      duration: fc.double({ min: 0.1, max: 20, noNaN: true }),
      climb: fc.double({ min: 0, max: 4, noNaN: true }),
      descent: fc.double({ min: 0, max: 4, noNaN: true }),
    });
    fc.assert(
      fc.property(fc.array(piece, { minLength: 2, maxLength: 40 }), (pieces) => {
        const column = (name: keyof (typeof pieces)[number]) => pieces.map((entry) => entry[name]);
        const required = column("required");
        const allowance = { climb: column("climb"), descent: column("descent") };
        const heights = rateLimitedEnvelope(required, column("duration"), allowance);
        for (let at = 0; at < pieces.length; at++) {
          const here = heights[at] as number;
          expect(here).toBeGreaterThanOrEqual(required[at] as number);
          const next = heights[at + 1];
          const entry = pieces[at];
          if (next === undefined || entry === undefined) continue;
          expect(next - here).toBeLessThanOrEqual(entry.climb * entry.duration + 1e-9);
          expect(here - next).toBeLessThanOrEqual(entry.descent * entry.duration + 1e-9);
        }
        // Least: every raised height is held up by a neighbour at exactly the allowed rate.
        for (let at = 0; at < pieces.length; at++) {
          const here = heights[at] as number;
          if (here <= (required[at] as number) + 1e-9) continue;
          const held = (piece: number, neighbour: number, rate: "climb" | "descent") => {
            const entry = pieces[piece];
            return entry === undefined || heights[neighbour] === undefined
              ? -1
              : (heights[neighbour] as number) - here - entry[rate] * entry.duration;
          };
          const after = held(at, at + 1, "climb");
          const before = held(at - 1, at - 1, "descent");
          expect(Math.max(after, before)).toBeGreaterThan(-1e-9);
        }
      }),
    );
  });
});
