import { randomBytes } from "node:crypto";
import { createServer, type IncomingMessage, type Server, type ServerResponse } from "node:http";
import type { AddressInfo } from "node:net";
import { viewPage } from "./page.js";

/** What the page shows: whether the job can be made, the words above the sheet, the controls, the sheets there are. */
export interface View {
  holds: boolean;
  text: string;
  seed: string;
  gap: string;
  sheets: string[];
}

/** What stands behind the page. */
export interface Viewed {
  view(): View;
  /** The text and type of a sheet by its file name. */
  sheet(name: string): { type: string; text: string } | undefined;
  /** Shows other values without writing them; writes them into the job. Both may throw with one sentence. */
  show(seed: string, gap: string): void;
  save(seed: string, gap: string): void;
}

/** A running view: where it is, how to tell its pages of a change, how to end it. */
export interface Running {
  url: string;
  changed(): void;
  close(): void;
}

/** Longest body of a request: two short values. */
const BODY = 1000;

/**
 * Serves the live view on this machine only. A page elsewhere cannot reach it under a name of its own (the host is
 * checked), nor change anything (each change carries the page's token).
 */
export async function serve(viewed: Viewed, port: number): Promise<Running> {
  const token = randomBytes(16).toString("hex");
  const pages = new Set<ServerResponse>();
  let version = 0;
  const tell = (page: ServerResponse): void => {
    page.write(`data: ${JSON.stringify({ ...viewOf(viewed), version })}\n\n`);
  };
  const server = createServer((request, response) => {
    const own = hostsOf(server);
    if (!own.includes(request.headers.host ?? "")) return end(response, 403, "this view is for its own machine only");
    const path = (request.url ?? "/").split("?")[0]!;
    if (request.method === "POST") return void change(request, response, path, token, viewed);
    if (request.method !== "GET") return end(response, 405, "only GET and POST are answered");
    if (path === "/") return end(response, 200, viewPage(token), "text/html; charset=utf-8", policy(token));
    if (path === "/events") {
      response.writeHead(200, { "content-type": "text/event-stream", "cache-control": "no-store" });
      pages.add(response);
      response.on("close", () => pages.delete(response));
      return tell(response);
    }
    return showSheet(response, path, viewed);
  });
  await new Promise<void>((ready, failed) => {
    server.once("error", failed);
    server.listen(port, "127.0.0.1", ready);
  });
  return {
    url: `http://127.0.0.1:${(server.address() as AddressInfo).port}/`,
    changed() {
      version += 1;
      for (const page of pages) tell(page);
    },
    close() {
      server.close();
      server.closeAllConnections();
    },
  };
}

function hostsOf(server: Server): string[] {
  const { port } = server.address() as AddressInfo;
  return [`127.0.0.1:${port}`, `localhost:${port}`];
}

/** What the page shows; where that cannot be drawn, why: the view goes on. */
function viewOf(viewed: Viewed): View {
  try {
    return viewed.view();
  } catch (error) {
    return { holds: false, text: undrawn(error), seed: "", gap: "", sheets: [] };
  }
}

function showSheet(response: ServerResponse, path: string, viewed: Viewed): void {
  try {
    const sheet = path.startsWith("/sheet/") ? viewed.sheet(decoded(path.slice(7))) : undefined;
    if (sheet) end(response, 200, sheet.text, sheet.type, "default-src 'none'; style-src 'unsafe-inline'");
    else end(response, 404, "there is no such page");
  } catch (error) {
    end(response, 500, undrawn(error));
  }
}

function undrawn(error: unknown): string {
  return `this could not be drawn (${error instanceof Error ? error.message : "unknown"}); change the job and look again`;
}

function decoded(text: string): string {
  try {
    return decodeURIComponent(text);
  } catch {
    return "";
  }
}

function policy(nonce: string): string {
  return `default-src 'none'; script-src 'nonce-${nonce}'; style-src 'unsafe-inline'; connect-src 'self'; frame-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'`;
}

async function change(
  request: IncomingMessage,
  response: ServerResponse,
  path: string,
  token: string,
  viewed: Viewed,
): Promise<void> {
  if (request.headers["x-casting"] !== token)
    return end(response, 403, "only this view's own page may change anything");
  if (path !== "/show" && path !== "/save") return end(response, 404, "there is no such page");
  try {
    let body = "";
    for await (const part of request) {
      body += String(part);
      if (body.length > BODY) return end(response, 413, "that is too long for a seed and a gap");
    }
    const { seed, gap } = JSON.parse(body) as { seed?: unknown; gap?: unknown };
    if (typeof seed !== "string" || typeof gap !== "string") throw new Error("write a seed and a gap");
    if (path === "/show") viewed.show(seed, gap);
    else viewed.save(seed, gap);
    end(response, 200, "done");
  } catch (error) {
    end(response, 400, error instanceof Error ? error.message : "that cannot be done");
  }
}

function end(
  response: ServerResponse,
  status: number,
  text: string,
  type = "text/plain; charset=utf-8",
  policy = "default-src 'none'",
): void {
  response.writeHead(status, {
    "content-type": type,
    "content-security-policy": policy,
    "cache-control": "no-store",
    "x-content-type-options": "nosniff",
  });
  response.end(text);
}
