import { describe, expect, it } from "vitest";
import { cutAt } from "./scene-cut.ts";

const box = { x: 0, y: 0, width: 10, height: 10 };

describe("a line cut at a box", () => {
  it("keeps its part inside, ended at the edges", () => {
    expect(
      cutAt(
        [
          [-5, 5],
          [15, 5],
        ],
        false,
        box,
      ),
    ).toEqual([
      [
        [0, 5],
        [10, 5],
      ],
    ]);
  });
  it("falls into parts where it leaves and comes back", () => {
    const parts = cutAt(
      [
        [2, 2],
        [2, 15],
        [8, 15],
        [8, 2],
      ],
      false,
      box,
    );
    expect(parts).toEqual([
      [
        [2, 2],
        [2, 10],
      ],
      [
        [8, 10],
        [8, 2],
      ],
    ]);
  });
  it("closes an outline along the edges and drops what lies outside", () => {
    const square = [
      [5, 5],
      [20, 5],
      [20, 20],
      [5, 20],
    ] as const;
    const [cut] = cutAt(square, true, box);
    const xs = cut?.map(([x]) => x) ?? [];
    expect([Math.min(...xs), Math.max(...xs)]).toEqual([5, 10]);
    expect(
      cutAt(
        square.map(([x, y]) => [x + 30, y] as const),
        true,
        box,
      ),
    ).toEqual([]);
  });
});
