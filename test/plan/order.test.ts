// What cannot be poured is told before anything is laid.
import { expect, it } from "vitest";
import { readJob } from "../../packages/casting-core/src/job/read.js";
import { makePlan } from "../../packages/casting-core/src/plan/make.js";

const job = (more: string) => readJob(`blank: {diameter: 300, radius: 2200}\npieces: {item: iso-4032-m10}\n${more}`);

it.each([
  ["a fill line below the pieces", "plaster: {fill: 3}\nlayout: {count: 500}\n", "plaster.fill"],
  ["a socket as wide as the tool", "socket: {diameter: 240, length: 30}\nlayout: {count: 500}\n", "socket.diameter"],
])("%s is named, not the pieces that found no room, and nothing is laid", (_, more, key) => {
  let laid = false;
  const progress = () => {
    laid = true;
  };
  expect(() => makePlan(job(more), { progress })).toThrow(
    expect.objectContaining({ kind: "invalid", faults: [expect.objectContaining({ path: key.split(".") })] }),
  );
  expect(laid).toBe(false);
});
