import { describe, expect, it } from "vitest";
import { containerFromText } from "../../packages/casting-core/src/pour/container-text.js";

describe("a container on one line", () => {
  it.each([
    ["round 230mm", { shape: "round", diameter: 230, height: Infinity, headroom: 0 }],
    ["round 230 mm x 240 mm", { shape: "round", diameter: 230, height: 240, headroom: 0 }],
    ["round 9 1/4 in", { shape: "round", diameter: 234.95, height: Infinity, headroom: 0 }],
    ["tapered 180mm 220mm 250mm 30mm", { shape: "tapered", bottom: 180, top: 220, height: 250, headroom: 30 }],
    ["box 300x200x250", { shape: "box", length: 300, width: 200, height: 250, headroom: 0 }],
    ["box 12in, 8in", { shape: "box", length: 304.8, width: 203.2, height: Infinity, headroom: 0 }],
    [
      "marks 50mm=1L 100mm=2.1L",
      {
        shape: "marks",
        height: 100,
        headroom: 0,
        marks: [
          { height: 50, volume: 1000 },
          { height: 100, volume: 2100 },
        ],
      },
    ],
  ])("reads %s", (text, container) => {
    expect(containerFromText(text, "mm")).toEqual(container);
  });

  it("reads every mark of a long list, and refuses what is longer than any", () => {
    const marks = Array.from({ length: 60 }, (_, n) => `${5 * (n + 1)}mm=${(n + 1) / 10}L`).join(" ");
    expect(containerFromText(`marks ${marks}`, "mm")).toMatchObject({ height: 300, marks: { length: 60 } });
    expect(() => containerFromText(`marks ${marks.repeat(4)}`, "mm")).toThrow(/\d+ letters, more than 2000/);
  });

  it.each([
    ["rond 230mm", /did you mean round/],
    ["round", /not a round container/],
    ["round 230mm wide", /not a round container/],
    ["round 0mm", /not more than 0/],
    ["tapered 180mm 220mm", /not a tapered container/],
    ["round 230mm 100mm 120mm", /headroom leaves nothing/],
    ["marks 50mm=1L 40mm=2L", /does not rise/],
    ["marks", /marks are missing/],
    // A decimal comma would make two sizes of one.
    ["round 230,5mm", /"230,5" may be one size or two; write 230\.5 with a point/],
    ["round 5,5in 7in", /write 5\.5 with a point/],
    ["tapered 230mm 260mm", /its inside bottom, top, height, then headroom if wanted/],
    ["", /no known shape/],
  ])("refuses %s", (text, words) => {
    expect(() => containerFromText(text, "mm")).toThrow(words);
  });
});
