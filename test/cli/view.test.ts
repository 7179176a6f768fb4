import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { request } from "node:http";
import { connect, Server } from "node:net";
import { dirname, join } from "node:path";
import { afterEach, describe, expect, it, vi } from "vitest";
import { run } from "../../packages/casting-cli/src/run.js";
import { JobView } from "../../packages/casting-cli/src/view/job-view.js";
import { viewPage } from "../../packages/casting-cli/src/view/page.js";
import { type Running, serve, type Viewed } from "../../packages/casting-cli/src/view/server.js";
import { casting, emptyFolder } from "./support.js";

const JOB =
  "blank: {diameter: 120, radius: 900}\npieces: {item: iso-4032-m8}\nlayout: {seed: 1, gap: 4 mm, count: 3}\n";
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
  it("counts a single piece as one", async () => {
    const { view } = await started(JOB.replace("count: 3", "count: 1"));
    expect(view.view()).toMatchObject({ holds: true, text: "1 piece" });
  });

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

  it("goes on where a sheet, or what the page shows, cannot be drawn", async () => {
    const broken = (): never => {
      throw new TypeError("no such line");
    };
    const nothing = () => undefined;
    running = await serve({ view: broken, sheet: broken, show: nothing, save: nothing }, 0);
    const told = "this could not be drawn (no such line); change the job and look again";
    for (let n = 0; n < 2; n++)
      expect(await ask(`${running.url}sheet/placement.svg`)).toMatchObject({ status: 500, text: told });
    const events = request(`${running.url}events`);
    const first = new Promise<string>((done) => {
      events.on("response", (answer) => answer.on("data", (part) => done(String(part))));
    });
    events.end();
    expect(JSON.parse((await first).slice(6))).toMatchObject({ holds: false, text: told, sheets: [] });
    events.destroy();
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

/** What a page of the view is told, event by event, until `count` events have come. */
function told(url: string, count: number, meanwhile: (seen: number) => void) {
  return new Promise<Record<string, unknown>[]>((done, failed) => {
    const events: Record<string, unknown>[] = [];
    const sent = request(`${url}events`, (answer) => {
      expect(answer.headers["content-type"]).toBe("text/event-stream");
      expect(answer.headers["cache-control"]).toBe("no-store");
      answer.on("error", failed);
      answer.on("data", (part: Buffer) => {
        for (const [, event] of String(part).matchAll(/^data: (.*)\n\n/gm)) events.push(JSON.parse(event!));
        if (events.length >= count) {
          sent.destroy();
          done(events);
        } else meanwhile(events.length);
      });
    });
    sent.on("error", failed);
    sent.end();
  });
}

describe("the view's server", () => {
  const viewed: Viewed = {
    view: () => ({ holds: true, text: "3 pieces", seed: "1", gap: "4 mm", sheets: ["a.svg"] }),
    sheet: (name) => (name === "a b.svg" ? { type: "image/svg+xml", text: "<svg/>" } : undefined),
    show: (seed) => {
      if (seed === "bad") throw new Error("that seed is bad");
      if (seed === "worse") throw "words";
    },
    save: (seed) => {
      saved.push(seed);
    },
  };
  const saved: string[] = [];
  async function served() {
    running = await serve(viewed, 0);
    const { url } = running;
    const page = await ask(url);
    const token = /const token = "(\w+)"/.exec(page.text)![1]!;
    const post = (path: string, body: string, headers: Record<string, string> = { "x-casting": token }) =>
      ask(`${url}${path}`, { method: "POST", headers, body });
    return { url, page, token, post };
  }

  it("is this machine's own, under two names", async () => {
    const { url, page, token } = await served();
    const { port } = new URL(url);
    expect(url).toBe(`http://127.0.0.1:${port}/`);
    expect(token).toMatch(/^[0-9a-f]{32}$/);
    expect(page.headers).toMatchObject({
      "content-type": "text/html; charset=utf-8",
      "cache-control": "no-store",
      "x-content-type-options": "nosniff",
      "content-security-policy": `default-src 'none'; script-src 'nonce-${token}'; style-src 'unsafe-inline'; connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`,
    });
    expect(page.text).toContain(`<script nonce="${token}">`);
    expect((await ask(url, { headers: { host: `localhost:${port}` } })).status).toBe(200);
    const other = await ask(url, { headers: { host: `localhost:${Number(port) + 1}` } });
    expect([other.status, other.text]).toEqual([403, "this view is for its own machine only"]);
    const second = await served();
    expect(second.token).not.toBe(token);
  });

  it("listens on this machine's own address alone", async () => {
    const listen = vi.spyOn(Server.prototype, "listen");
    await served();
    expect(listen).toHaveBeenCalledExactlyOnceWith(0, "127.0.0.1", expect.any(Function));
    listen.mockRestore();
  });

  it("gives sheets by name, whatever is asked besides", async () => {
    const { url } = await served();
    const sheet = await ask(`${url}sheet/a%20b.svg?v=3`);
    expect([sheet.status, sheet.text, sheet.headers["content-type"]]).toEqual([200, "<svg/>", "image/svg+xml"]);
    expect(sheet.headers["content-security-policy"]).toBe("default-src 'none'; style-src 'unsafe-inline'");
    for (const path of ["sheet/other.svg", "sheet/", "sheets/a%20b.svg", "other", "other/a%20b.svg"]) {
      const none = await ask(`${url}${path}`);
      expect([path, none.status, none.text]).toEqual([path, 404, "there is no such page"]);
      expect(none.headers["content-type"]).toBe("text/plain; charset=utf-8");
      expect(none.headers["content-security-policy"]).toBe("default-src 'none'");
    }
    const put = await ask(`${url}sheet/a%20b.svg`, { method: "PUT" });
    expect([put.status, put.text]).toEqual([405, "only GET and POST are answered"]);
  });

  it("takes changes from its own page, short and whole ones", async () => {
    const { post } = await served();
    const body = (seed: string) => JSON.stringify({ seed, gap: "4 mm" });
    const answers = [
      await post("save", body("2")),
      await post("save", body("3"), {}),
      await post("other", body("3")),
      await post("save", "{"),
      await post("save", '{"seed": 1, "gap": "4 mm"}'),
      await post("save", '{"seed": "1"}'),
      await post("save", body("x".repeat(1000))),
      await post("show", body("bad")),
      await post("show", body("worse")),
      await post("show", body("5")),
    ].map(({ status, text }) => `${status} ${text}`);
    expect(answers.filter((_, n) => n !== 3)).toEqual([
      "200 done",
      "403 only this view's own page may change anything",
      "404 there is no such page",
      "400 write a seed and a gap",
      "400 write a seed and a gap",
      "413 that is too long for a seed and a gap",
      "400 that seed is bad",
      "400 that cannot be done",
      "200 done",
    ]);
    expect(answers[3]).toMatch(/^400 ./);
    expect(saved).toEqual(["2"]);
    // A body of just a thousand letters is read.
    expect((await post("save", body("y".repeat(1000 - body("").length)))).status).toBe(200);
  });

  it("lives on where a change breaks off halfway, and leaves nothing unhandled", async () => {
    const { url, token } = await served();
    const { host, port } = new URL(url);
    const unhandled = vi.fn();
    process.on("unhandledRejection", unhandled);
    const show = vi.spyOn(viewed, "show");
    const socket = connect(Number(port), "127.0.0.1");
    socket.write(`POST /show HTTP/1.1\r\nHost: ${host}\r\nX-Casting: ${token}\r\nContent-Length: 100\r\n\r\n{"seed"`);
    await new Promise((rest) => setTimeout(rest, 50));
    socket.destroy();
    await new Promise((rest) => setTimeout(rest, 50));
    process.off("unhandledRejection", unhandled);
    expect(unhandled).not.toHaveBeenCalled();
    expect(show).not.toHaveBeenCalled();
    show.mockRestore();
    expect((await ask(url)).status).toBe(200);
  });

  it("tells its pages at once, and of every change, each by a new version", async () => {
    const { url } = await served();
    const events = await told(url, 3, () => running!.changed());
    expect(events).toEqual([0, 1, 2].map((version) => ({ ...viewed.view(), version })));
    // A page that has gone is told no more.
    await new Promise((rest) => setTimeout(rest, 50));
    const view = vi.spyOn(viewed, "view");
    running!.changed();
    expect(view).not.toHaveBeenCalled();
    view.mockRestore();
  });

  it("ends with its pages", async () => {
    const { url } = await served();
    await expect(told(url, 9, () => running!.close())).rejects.toThrow();
    await expect(ask(url)).rejects.toThrow();
    running = undefined;
  });
});

describe("the job behind the view", () => {
  it("has its sheets, figures and controls by name", async () => {
    const { view } = await started();
    expect(view.view()).toEqual({
      holds: true,
      text: "3 pieces",
      seed: "1",
      gap: "4 mm",
      sheets: ["job-sheet.html", "placement.svg", "grooves.svg", "form.svg", "dam.svg", "figures.txt"],
    });
    expect(view.sheet("figures.txt")).toMatchObject({ type: "text/plain; charset=utf-8" });
    expect(view.sheet("figures.txt")!.text).toMatch(/^blank +120 mm concave/);
    expect(view.sheet("job-sheet.html")!.type).toBe("text/html; charset=utf-8");
    expect(view.sheet("form.svg")).toEqual({ type: "image/svg+xml", text: "<svg/>" });
    for (const name of ["gauge.svg", "retainer.svg", "other.svg", "toString"]) expect(view.sheet(name)).toBeUndefined();
  });

  it("keeps the last sheets while the job cannot be made, and has none before it could", async () => {
    const { file, view } = await started();
    writeFileSync(file, JOB.replace("count: 3", "count: 3000"));
    expect(view.reread()).toBe(true);
    expect(view.view()).toMatchObject({ holds: false, seed: "1", gap: "4 mm" });
    expect(view.view().text).toMatch(/^[^\n]*job\.yaml:\d+:\d+: layout\.count: [^\n]*[^\n\s]$/);
    expect(view.view().sheets).toContain("placement.svg");
    rmSync(file);
    expect(view.reread()).toBe(true);
    expect(view.view()).toMatchObject({ holds: false });
    expect(view.view().text).toContain("could not be read: there is no such file");
    const never = await started("blank: {}\n");
    expect(never.view.view()).toMatchObject({
      holds: false,
      seed: "",
      gap: "",
      sheets: ["job-sheet.html", "figures.txt"],
    });
    expect(never.view.sheet("job-sheet.html")).toBeUndefined();
  });

  it("tells of changes alone, and of what was tried", async () => {
    const { file, view } = await started();
    let shown = 0;
    view.onShown = () => {
      shown += 1;
    };
    expect(view.reread()).toBe(false);
    view.show("7", "nothing");
    expect(view.view()).toMatchObject({ holds: false, seed: "7", gap: "nothing" });
    expect(view.view().text).toContain("layout.gap: ");
    view.show("7", "4.5 mm");
    expect(view.view()).toMatchObject({ holds: true, seed: "7", gap: "4.5 mm" });
    expect(shown).toBe(2);
    // What was tried gives way to what is written.
    writeFileSync(file, JOB.replace("seed: 1", "seed: 2"));
    expect(view.reread()).toBe(true);
    expect(view.view()).toMatchObject({ seed: "2", gap: "4 mm" });
    view.save("3", "4 mm");
    expect(shown).toBe(3);
    expect(view.view()).toMatchObject({ holds: true, seed: "3", gap: "4 mm" });
    expect(view.reread()).toBe(false);
  });

  it("leaves a gap that is shown rounded as it was written", async () => {
    const { file, view } = await started();
    const inches = JOB.replace("seed: 1, gap: 4 mm", "seed: 1, gap: 0.1874 in").replace("blank:", "units: in\nblank:");
    writeFileSync(file, inches);
    view.reread();
    const { gap } = view.view();
    expect(gap).toBe("3/16 in");
    view.show("2", gap);
    view.save("2", gap);
    expect(readFileSync(file, "utf8")).toBe(inches.replace("seed: 1", "seed: 2"));
    // So does one that was tried.
    view.show("3", "0.1561 in");
    expect(view.view().gap).toBe("5/32 in");
    view.save("4", "5/32 in");
    expect(readFileSync(file, "utf8")).toBe(inches.replace("seed: 1, gap: 0.1874 in", 'seed: 4, gap: "0.1561 in"'));
  });

  it("never writes over what was saved meanwhile: it shows that, and says so", async () => {
    const { file, view } = await started();
    const shown = vi.fn();
    view.onShown = shown;
    const edited = JOB.replace("count: 3", "count: 2");
    writeFileSync(file, edited);
    expect(() => view.save("9", "5 mm")).toThrow(
      /^the job was changed in its file, and nothing is written; look at it as it is now and write again$/,
    );
    expect(readFileSync(file, "utf8")).toBe(edited);
    expect(shown).toHaveBeenCalledOnce();
    expect(view.view()).toMatchObject({ holds: true, text: "2 pieces", seed: "1", gap: "4 mm" });
    view.save("9", "5 mm");
    expect(readFileSync(file, "utf8")).toBe(edited.replace("seed: 1, gap: 4 mm", 'seed: 9, gap: "5 mm"'));
    rmSync(file);
    expect(() => view.save("3", "4 mm")).toThrow(/could not be read: there is no such file/);
    expect(existsSync(file)).toBe(false);
  });

  it("shows a file that was away and comes back as it was, with what was tried", async () => {
    const { file, view } = await started();
    view.show("7", "4.5 mm");
    const before = view.view();
    rmSync(file);
    expect(view.reread()).toBe(true);
    expect(view.view().holds).toBe(false);
    writeFileSync(file, JOB);
    expect(view.reread()).toBe(true);
    expect(view.view()).toEqual(before);
    expect(view.reread()).toBe(false);
  });
});

describe("the page of the view", () => {
  it("keeps what a refused change was told beside the state, which every event writes anew", async () => {
    const elements: Record<string, Record<string, unknown>> = {};
    const acts: Record<string, (event: object) => unknown> = {};
    const getElementById = (id: string) => {
      elements[id] ??= {
        value: "",
        replaceChildren: () => {},
        addEventListener: (_: string, act: (event: object) => unknown) => {
          acts[id] = act;
        },
      };
      return elements[id];
    };
    const answers = [
      { ok: false, text: async () => "that seed is bad" },
      { ok: true, text: async () => "done" },
    ];
    const events: { onmessage?: (event: { data: string }) => void } = {};
    const [, script] = /<script[^>]*>(.*)<\/script>/s.exec(viewPage("0"))!;
    new Function("document", "fetch", "EventSource", "Option", script!)(
      { getElementById },
      async () => answers.shift(),
      function EventSource() {
        return events;
      },
      class {},
    );
    await acts["save"]!({});
    events.onmessage!({ data: JSON.stringify({ holds: true, text: "3 pieces", sheets: ["a.svg"], version: 1 }) });
    expect([elements["state"]!["textContent"], elements["answer"]!["textContent"]]).toEqual([
      "3 pieces",
      "that seed is bad",
    ]);
    await acts["save"]!({});
    expect(elements["answer"]!["textContent"]).toBe("");
  });
});

describe("casting view", () => {
  it("says where it is, follows the file, and ends by Ctrl-C", async () => {
    // What a name hides is not played back.
    const file = join(emptyFolder(), "my\x1b[31mjob.yaml");
    writeFileSync(file, JOB);
    const said: string[] = [];
    const terminal = {
      out: (text: string) => void said.push(text),
      err: () => {},
      drawsProgress: false,
      colour: false,
    };
    const code = run(["view", file], { ...terminal, debug: false });
    while (said.length === 0) await new Promise((rest) => setTimeout(rest, 20));
    const [, url] =
      /^(http:\/\/127\.0\.0\.1:\d+\/)\nshows .*my\?\[31mjob\.yaml and follows its changes; Ctrl-C ends it\.\n$/.exec(
        said[0]!,
      )!;
    const events = await told(url!, 2, () => {
      writeFileSync(join(dirname(file), "other.yaml"), "");
      writeFileSync(file, JOB.replace("count: 3", "count: 2"));
    });
    expect(events.map(({ text }) => text)).toEqual(["3 pieces", "2 pieces"]);
    const token = /const token = "(\w+)"/.exec((await ask(url!)).text)![1]!;
    const shown = await told(url!, 2, () => {
      void ask(`${url}show`, { method: "POST", headers: { "x-casting": token }, body: '{"seed":"4","gap":"5 mm"}' });
    });
    expect(shown[1]).toMatchObject({ holds: true, seed: "4", gap: "5 mm" });
    process.emit("SIGINT");
    expect(await code).toBe(130);
    await expect(ask(url!)).rejects.toThrow();
  });

  it("needs a job file and a port that is free", async () => {
    const file = join(emptyFolder(), "job.yaml");
    writeFileSync(file, JOB);
    running = await serve(new JobView(file, () => "<svg/>"), 0);
    const { port } = new URL(running.url);
    const said = async (...args: string[]) => {
      const { code, err } = await casting("view", ...args);
      return `${code} ${err}`;
    };
    expect(await said("-")).toBe("2 casting: a live view needs a job file that can change; name one\n");
    expect(await said(file, "--port", port)).toMatch(
      new RegExp(`^1 casting: port ${port} cannot be used: .*; give another with --port, or none\n$`),
    );
    for (const wrong of ["65536", "x", "1x", "x1", "000001"]) {
      expect(await said(file, "--port", wrong)).toBe(
        `2 casting: --port ${wrong} is not a port; write a number from 1 to 65535\n`,
      );
    }
    expect(await said(file, "--port", "x".repeat(50))).toContain(`--port ${"x".repeat(40)} is not`);
    expect(await said(join(file, "none"))).toMatch(/^2 casting: .* could not be read: a part of its path is a file/);
  });
});
