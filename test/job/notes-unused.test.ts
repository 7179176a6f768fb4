// What a job leaves open or says in vain.
import { describe, expect, it } from "vitest";
import { unusedNotes } from "../../packages/casting-core/src/job/notes-unused.js";
import { readJob } from "../../packages/casting-core/src/job/read.js";

function codes(more: string, blank = "diameter: 400, radius: 3060"): string[] {
  return unusedNotes(readJob(`blank: {${blank}}\npieces: {item: iso-4032-m12}\n${more}`)).map(({ code }) => code);
}
const readings = (instrument: string, ...zones: string[]) =>
  codes(
    "",
    `diameter: 400, readings: {instrument: {${instrument}}, zones: [${zones.map((zone) => `{${zone}}`).join(", ")}]}`,
  );

describe("what a job leaves open", () => {
  it("is a glass that nothing is known of", () => {
    expect(codes("", "diameter: 400, radius: 3060, material: plate")).toEqual(["material-unknown"]);
    expect(codes("", "diameter: 400, radius: 3060, material: soda-lime")).toEqual([]);
    const told = (material: string) =>
      unusedNotes(readJob(`blank: {diameter: 400, radius: 3060, material: ${material}}\npieces: {item: iso-4032-m12}`));
    expect(told("plate")[0]!.text).toContain("write one of borosilicate, soda-lime, crown, fused-silica for");
    expect(told("soda lime")[0]!.text).toContain("write soda-lime, if it is that, for");
  });

  it("is a spread that one reading cannot tell", () => {
    expect(readings("ring: 100", "at: 0, reading: 0.5")).toEqual(["one-reading"]);
    expect(readings("ring: 100", "at: 0, reading: 0.5", "at: 60, reading: 0.5")).toEqual([]);
  });

  it("is the direction of a bar", () => {
    expect(readings("bar: 100", "at: 0, reading: 0.5, along: 0", "at: 60, reading: 0.5")).toEqual(["no-direction"]);
    expect(readings("bar: 100", "at: 0, reading: 0.5, along: 0", "at: 0, reading: 0.5, along: 90")).toEqual([]);
  });

  it("is a direction where no bar is laid", () => {
    const two = ["at: 0, along: 0, reading: 0.5", "at: 60, reading: 0.5"];
    expect(readings("ring: 100", ...two)).toEqual(["along-unused"]);
    expect(readings("legs: 100", ...two)).toEqual(["along-unused"]);
  });

  it("is a wall beside balls, and an open socket without a bore", () => {
    const two = ["at: 0, reading: 0.5", "at: 60, reading: 0.5"];
    expect(readings("ring: 100, wall: 4, ball: 6", ...two)).toEqual(["wall-unused"]);
    expect(readings("ring: 100, wall: 4", ...two)).toEqual([]);
    expect(codes("socket: {diameter: 28, length: 30, plugged: false}")).toEqual(["open-without-bore"]);
    expect(codes("socket: {diameter: 28, bore: 20, length: 30, plugged: false}")).toEqual([]);
    expect(codes("socket: {diameter: 28, length: 30}")).toEqual([]);
  });
});
