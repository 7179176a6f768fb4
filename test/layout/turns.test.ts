// Ratios of turns that bring the same pieces over the same glass again and again.
import { describe, expect, it } from "vitest";
import { turnNotes } from "../../packages/casting-core/src/layout/notes/notes-turns.js";
import { exampleJob } from "../support/jobs.js";

const texts = (turns: number) =>
  turnNotes(exampleJob({ setup: { ...exampleJob().setup, "tool-turns": turns } })).map(({ text }) => text);

describe("a ratio of turns", () => {
  it.each([
    [2 / 3, "turns 2/3 times"],
    [0.6667, "turns 2/3 times"],
    [0.667, "turns 2/3 times"],
    [0.3333, "turns 1/3 times"],
    [0.9999, "turns once"],
    [-0.5001, "turns 1/2 times"],
    [1.25, "turns 5/4 times"],
    [0, "does not turn"],
  ])("%s repeats its track", (turns, words) => {
    expect(texts(turns)).toEqual([expect.stringContaining(`A tool that ${words}`)]);
  });

  it.each([0.9, 0.67 + 0.01, 0.63, 0.93, 1.13])("%s does not", (turns) => {
    expect(texts(turns)).toEqual([]);
  });

  it("that is offered instead never repeats its own", () => {
    let offers = 0;
    for (let turns = -3; turns <= 3; turns += 1 / 60) {
      const offered = texts(turns)[0]?.match(/such as (-?[\d.]+)\.$/)?.[1];
      if (offered === undefined) continue;
      offers += 1;
      // The same way round.
      expect(Number(offered) * (turns < 0 ? -1 : 1)).toBeGreaterThan(0);
      expect(texts(Number(offered))).toEqual([]);
    }
    // Every whole, half, third, quarter, fifth and sixth.
    expect(offers).toBe(73);
  });
});
