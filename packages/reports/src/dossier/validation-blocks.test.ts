import { expect, it } from "vitest";
import { errorText } from "./validation-blocks.ts";

const plain = (text: string) => text.replaceAll("\u00a0", " ");

it("writes small errors as decimals, and only the smallest as raised powers of ten", () => {
  expect(plain(errorText("+5·10^-4 %"))).toBe("+0.0005 %");
  expect(plain(errorText("−9·10^-6"))).toBe("−0.000009");
  expect(plain(errorText("1.5·10^-3 %"))).toBe("0.0015 %");
  expect(plain(errorText("3·10^-9"))).toBe("3 × 10⁻⁹");
  expect(plain(errorText("±12 % below 105 rpm"))).toBe("±12 % below 105 rpm");
  expect(errorText(-0.012345)).toBe("−0.0123");
});
