import { describe, expect, it } from "vitest";
import { svgDrawer } from "../../packages/casting-cli/src/outputs.js";
import { type Shape, type Sheet, THIN } from "../../packages/casting-core/src/drawing/sheet.js";

const drawn = await svgDrawer();

function sheetOf(...shapes: Shape[]): Sheet {
  const groups = [{ id: "marks", shapes }];
  return { name: "test", width: 210, height: 148.5, caption: "A < B & C", facts: [], bodyHeight: 100, groups };
}

/** What is written between the group's tags for one shape. */
function written(shape: Shape): string {
  const text = drawn(sheetOf(shape));
  return /<g id="marks">(.*)<\/g>/s.exec(text)![1]!;
}

describe("a sheet as SVG", () => {
  it("is one unit a millimetre on white, with its caption as the title", () => {
    expect(drawn(sheetOf())).toBe(
      `<?xml version="1.0" encoding="UTF-8"?>
<svg xmlns="http://www.w3.org/2000/svg" version="1.1" xmlns:xlink="http://www.w3.org/1999/xlink" width="210mm" height="148.5mm" viewBox="0 0 210 148.5" role="img" font-family="Helvetica, Arial, sans-serif"><title>A &lt; B &amp; C</title><rect width="210" height="148.5" fill="#ffffff"></rect><g id="marks"></g></svg>
`,
    );
  });

  it.each<[string, Shape, string]>([
    [
      "a line, with as few decimals as it needs, never minus zero",
      {
        kind: "polyline",
        points: [
          [-0.0001, 10],
          [100.5, 20.12345],
        ],
        style: THIN,
      },
      `<polyline points="0,10 100.5,20.123" fill="none" stroke="#000000" stroke-width="0.25" stroke-linejoin="round"></polyline>`,
    ],
    [
      "a piece: its number, its fill and no line",
      {
        kind: "polygon",
        points: [
          [0, 0],
          [1, 0],
          [0, 1],
        ],
        piece: 7,
        style: { line: 0, dash: [3, 2], fill: "pale" },
      },
      `<polygon data-piece="7" points="0,0 1,0 0,1" fill="#cccccc"></polygon>`,
    ],
    [
      "a round piece, grey and dashed",
      { kind: "circle", centre: [10, 20], radius: 12.5, piece: 1, style: { line: 0.5, dash: [3, 2.5], ink: "grey" } },
      `<circle data-piece="1" cx="10" cy="20" r="12.5" fill="none" stroke="#777777" stroke-width="0.5" stroke-dasharray="3 2.5" stroke-linejoin="round"></circle>`,
    ],
    [
      "lines and arcs, closed: a quarter to the left, then the long way round to the right",
      {
        kind: "path",
        steps: [
          { to: [10, 0] },
          { to: [0, -10], arc: { radius: 10, left: true, large: false } },
          { to: [-10, -10] },
          { to: [-10, 10], arc: { radius: 15, left: false, large: true } },
        ],
        style: { line: 0.25, ink: "white", fill: "black" },
      },
      `<path d="M10 0A10 10 0 0 0 0 -10L-10 -10A15 15 0 1 1 -10 10Z" fill="#000000" stroke="#ffffff" stroke-width="0.25" stroke-linejoin="round"></path>`,
    ],
    [
      "text with signs of markup",
      { kind: "text", at: [5, 6], text: `<b> & "c"`, size: 3.4, align: "middle" },
      `<text x="5" y="6" font-size="3.4" text-anchor="middle">&lt;b&gt; &amp; &quot;c&quot;</text>`,
    ],
  ])("writes %s", (_, shape, text) => {
    expect(written(shape)).toBe(text);
  });

  it("writes large and tiny numbers without an exponent", () => {
    const style = { line: 0.2 };
    expect(written({ kind: "circle", centre: [1e6, 1e-7], radius: 1000, style })).toContain(
      `cx="1000000" cy="0" r="1000"`,
    );
  });
});
