import { describe, expect, it } from "vitest";
import { mayTouch, packMost } from "../../packages/casting-core/src/layout/touching.js";
import { hexagonKind, roundKind } from "../support/kinds.js";

/** Starts of which each holds at most so many pieces, in turn; `asked` gets what each was asked for. */
function startsHolding(most: number[], asked: number[]) {
  return (count: number, _sweeps: number, n: number) => {
    asked.push(count);
    return { pieces: new Array(Math.min(count, most[n] ?? 0)).fill({}) };
  };
}

describe("Pieces packed for their number alone", () => {
  it("are rounds without a gap, few enough to be packed so", () => {
    expect(mayTouch([roundKind(20)], 0, 90)).toBe(true);
    expect(mayTouch([roundKind(20), roundKind(12)], 0, 90)).toBe(true);
    expect(mayTouch([roundKind(20)], 0.1, 90)).toBe(false);
    expect(mayTouch([roundKind(20), hexagonKind(20)], 0, 90)).toBe(false);
    expect(mayTouch([roundKind(20)], 0, 400)).toBe(true);
    expect(mayTouch([roundKind(20)], 0, 401)).toBe(false);
  });

  it("begin with five more than a lattice holds and go on one by one while all are held", () => {
    const asked: number[] = [];
    expect(packMost(85.5, 500, startsHolding([90, 91, 91, 99], asked)).pieces).toHaveLength(91);
    expect(asked).toEqual([90, 91, 92]);
  });

  it("are tried again without a quarter of those that found no place, never with so few that nothing is won", () => {
    const asked: number[] = [];
    expect(packMost(85.5, 500, startsHolding([89, 82, 80, 70, 88, 87], asked)).pieces).toHaveLength(89);
    expect(asked).toHaveLength(12);
    expect(new Set(asked)).toEqual(new Set([90]));
    const low: number[] = [];
    // Of 90 only 82: then 88, which holds 86, then 88 again (one of the two lost is still one more than 86).
    expect(packMost(85.5, 500, startsHolding([82, 86, 87], low)).pieces).toHaveLength(87);
    expect(low.slice(0, 4)).toEqual([90, 88, 88, 88]);
  });

  it("are no more than there are", () => {
    const asked: number[] = [];
    expect(packMost(85.5, 60, startsHolding([60, 61], asked)).pieces).toHaveLength(60);
    expect(asked).toEqual([60]);
  });

  it("get few starts where each takes long", () => {
    const asked: number[] = [];
    packMost(193.5, 500, startsHolding([], asked));
    expect(asked).toHaveLength(8);
    packMost(395, 500, startsHolding([], asked));
    expect(asked).toHaveLength(10);
  });
});
