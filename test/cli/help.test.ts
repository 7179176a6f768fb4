import { expect, it } from "vitest";
import { casting } from "./support.js";

it("is word by word what fixtures/help.txt has: of the whole, and of each command", async () => {
  const pages: string[] = [];
  const whole = await casting("--help");
  const commands = [...whole.out.matchAll(/^ {2}([a-z]+) .*? {2}/gm)].map(([, name]) => name!);
  for (const command of ["", ...commands.filter((name) => !["casting", "help"].includes(name))]) {
    const { code, out, err } = await casting(...(command === "" ? [] : [command]), "--help");
    expect([code, err]).toEqual([0, ""]);
    pages.push(`$ casting ${command === "" ? "" : `${command} `}--help\n\n${out}`);
  }
  expect(pages).toHaveLength(12);
  await expect(pages.join("\n")).toMatchFileSnapshot("../../fixtures/help.txt");
});
