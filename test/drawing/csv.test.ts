import { describe, expect, it } from "vitest";
import { piecesCsv } from "../../packages/casting-core/src/drawing/csv.js";
import type { PlacedPiece } from "../../packages/casting-core/src/layout/types.js";

function written(...changes: Partial<PlacedPiece>[]): string {
  const pieces = changes.map((change, i) => ({ id: i + 1, kind: 0, x: 0, y: 0, angle: 0, outline: [], ...change }));
  return piecesCsv({ layout: { pieces } as never });
}

/** The item's cell of one piece. */
function cell(item: string): string {
  return /^1,0,(.*),0\.000,0\.000,0\.000\r\n$/s.exec(written({ item }).slice("id,kind,item,x,y,angle\r\n".length))![1]!;
}

describe("pieces.csv", () => {
  it("has a head, a row a piece with three decimals, and a line break after each", () => {
    expect(
      written({ item: "iso-4032-m10", x: 12.5, y: -0.0004, angle: 359.9996 }, { kind: 1, x: -7, y: 0.1235, angle: 30 }),
    ).toBe("id,kind,item,x,y,angle\r\n1,0,iso-4032-m10,12.500,0.000,360.000\r\n2,1,,-7.000,0.123,30.000\r\n");
    expect(written()).toBe("id,kind,item,x,y,angle\r\n");
  });

  it.each([
    ["=1+2", "'=1+2"],
    ["+1", "'+1"],
    ["-1", "'-1"],
    ["@SUM(A1)", "'@SUM(A1)"],
    ["\t=1", "'\t=1"],
    ["\r=1", `"'\r=1"`],
    ["a=1", "a=1"],
    ["a,b", `"a,b"`],
    ['3/8" nut', `"3/8"" nut"`],
    ['"a" and "b"', `"""a"" and ""b"""`],
    ["two\nlines", `"two\nlines"`],
    ["two\rlines", `"two\rlines"`],
  ])("writes the item %j as text: %j", (item, text) => {
    expect(cell(item)).toBe(text);
  });
});
