import { expect, it } from "vitest";
import { nearest } from "../packages/casting-core/src/nearest.js";

it("looks at names that are longer or shorter by up to half their letters, and at no others", () => {
  expect(nearest("ab", ["abcd", "abcde"])).toBe("abcd");
  expect(nearest("abcd", ["ab"])).toBe("ab");
  expect(nearest("ab", ["abcde"])).toBeUndefined();
  expect(nearest("abcde", ["ab"])).toBeUndefined();
});

it("takes the nearest, wherever in the list it stands", () => {
  expect(nearest("thicknes", ["across", "thickness", "thick"])).toBe("thickness");
  expect(nearest("thicknes", ["thick", "thickness"])).toBe("thickness");
  expect(nearest("M11", ["iso-m12", "m10", "m12", "m20"])).toBe("m10");
});
