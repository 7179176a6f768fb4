import { readFileSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { afterEach, describe, expect, it } from "vitest";
import { JobView } from "../../packages/casting-cli/src/view/job-view.js";
import { type Running, serve } from "../../packages/casting-cli/src/view/server.js";
import { emptyFolder } from "./support.js";

const JOB = "blank: {diameter: 120, radius: 900}\npieces: {item: iso-4032-m8}\nlayout: {seed: 1, gap: 4 mm}\n";
let running: Running | undefined;
afterEach(() => running?.close());

async function started(text = JOB) {
  const file = join(emptyFolder(), "job.yaml");
  writeFileSync(file, text);
  const view = new JobView(file, () => "<svg/>");
  running = await serve(view, 0);
  return { file, view, url: running.url };
}

function ask(url: string, options: { method?: string; headers?: Record<string, string>; body?: string } = {}) {
  return new Promise<{ status: number; text: string; headers: Record<string, unknown> }>((done, failed) => {
    const { body, ...rest } = options;
    const sent = request(url, rest, (answer) => {
      let text = "";
      answer.on("data", (part) => {
        text += part;
      });
      answer.on("end", () => done({ status: answer.statusCode!, text, headers: answer.headers }));
    });
    sent.on("error", failed);
    sent.end(body);
  });
}

describe("the live view", () => {
  it("shows its page and the sheets, and nothing else", async () => {
    const { url } = await started();
    const page = await ask(url);
    expect(page.status).toBe(200);
    expect(String(page.headers["content-security-policy"])).toMatch(/default-src 'none'; script-src 'nonce-/);
    expect((await ask(`${url}sheet/job-sheet.html`)).text).toMatch(/^<!DOCTYPE html>/);
    expect((await ask(`${url}sheet/placement.svg`)).text).toBe("<svg/>");
    expect((await ask(`${url}sheet/..%2f..%2fetc%2fpasswd`)).status).toBe(404);
    expect((await ask(`${url}sheet/constructor`)).status).toBe(404);
    expect((await ask(`${url}sheet/%zz`)).status).toBe(404);
  });

  it("answers to its own name only", async () => {
    const { url } = await started();
    expect((await ask(url, { headers: { host: "evil.example" } })).status).toBe(403);
  });

  it("changes nothing without the page's token", async () => {
    const { url, file } = await started();
    const body = JSON.stringify({ seed: "9", gap: "5 mm" });
    expect((await ask(`${url}save`, { method: "POST", body })).status).toBe(403);
    expect(readFileSync(file, "utf8")).toBe(JOB);
  });

  it("shows another seed and gap, and writes them into the job when asked to", async () => {
    const { url, file, view } = await started();
    const token = /const token = "(\w+)"/.exec((await ask(url)).text)![1]!;
    const send = (path: string, seed: string, gap: string) =>
      ask(`${url}${path}`, { method: "POST", headers: { "x-casting": token }, body: JSON.stringify({ seed, gap }) });
    expect((await send("show", "9", "5 mm")).status).toBe(200);
    expect(view.view()).toMatchObject({ holds: true, seed: "9", gap: "5 mm" });
    expect(readFileSync(file, "utf8")).toBe(JOB);
    expect((await send("save", "x", "5 mm")).status).toBe(400);
    expect((await send("save", "9", "5 mm")).status).toBe(200);
    expect(readFileSync(file, "utf8")).toBe(JOB.replace("seed: 1, gap: 4 mm", 'seed: 9, gap: "5 mm"'));
  });

  it("says what is wrong with a job while it is being written, and follows the file", async () => {
    const { file, view } = await started();
    writeFileSync(file, JOB.replace("radius", "raduis"));
    expect(view.reread()).toBe(true);
    expect(view.view()).toMatchObject({ holds: false });
    expect(view.view().text).toMatch(/job.yaml:1:24: blank.raduis: .*did you mean "radius"/);
    writeFileSync(file, JOB);
    expect(view.reread()).toBe(true);
    expect(view.view().holds).toBe(true);
  });
});
