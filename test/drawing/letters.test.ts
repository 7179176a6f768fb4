import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { textWidth, wrapped } from "../../packages/casting-core/src/drawing/letters.js";

/** `text` broken into lines no wider than the widest of `parts`. */
const broken = (text: string, parts: readonly string[]) =>
  wrapped(text, 4, 0.001 + Math.max(...parts.map((part) => textWidth(part, 4))));

describe("a line of text", () => {
  it.each([
    ["Tool 5 1/2 in, rim 1/8 in,", ["Tool", "5 1/2 in,", "rim", "1/8 in,"]],
    ["1.31 US qt or 2.10 US fl oz of water", ["1.31 US qt", "or", "2.10 US fl oz", "of", "water"]],
    ["up to 189 °F (87 °C), 66 K", ["up", "to", "189 °F", "(87 °C),", "66 K"]],
    ["36 of square 20 mm x 6 mm", ["36", "of", "square", "20 mm", "x", "6 mm"]],
    ["45.8 % in 12 inches", ["45.8 %", "in", "12", "inches"]],
    ["cut 35 in all, 4 minutes", ["cut", "35 in", "all,", "4", "minutes"]],
  ])("breaks between words and keeps figures with their units: %s", (text, parts) => {
    expect(parts.join(" ")).toBe(text);
    const lines = broken(text, parts);
    for (const part of parts) expect(lines.some((line) => line.includes(part))).toBe(true);
  });

  it("breaks before a word that only looks like a unit", () => {
    expect(broken("in the middle of a word", ["middle"])).toEqual(["in the", "middle", "of a", "word"]);
  });

  it("is broken without losing or adding a word, and no line is too wide", () => {
    const word = fc.stringMatching(/^[a-z]{1,9}$/);
    fc.assert(
      fc.property(
        fc.array(word, { minLength: 1, maxLength: 30 }),
        fc.integer({ min: 25, max: 120 }),
        (words, width) => {
          const lines = wrapped(words.join(" "), 4, width);
          expect(lines.join(" ")).toBe(words.join(" "));
          for (const line of lines) expect(textWidth(line, 4)).toBeLessThanOrEqual(width);
        },
      ),
    );
  });
});
