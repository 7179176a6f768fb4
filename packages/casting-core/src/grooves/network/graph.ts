/** What joins two nodes of a graph; equal for a loop. */
export interface Joint {
  a: number;
  b: number;
}

/** A joint with its length, mm. */
export interface Link extends Joint {
  length: number;
}

/** For each node the indices of its links; a loop stands twice. */
export function linksAt(nodeCount: number, links: readonly Joint[]): number[][] {
  const at: number[][] = Array.from({ length: nodeCount }, () => []);
  links.forEach(({ a, b }, i) => {
    at[a]!.push(i);
    at[b]!.push(i);
  });
  return at;
}

/** Number of the connected part that each node is in, counted from 0 in the order of nodes; −1 for nodes without links. */
export function partsOf(links: readonly Joint[], at: readonly number[][]): { part: number[]; count: number } {
  const part = at.map(() => -1);
  let count = 0;
  for (let start = 0; start < at.length; start++) {
    if (part[start]! >= 0 || at[start]!.length === 0) continue;
    const stack = [start];
    part[start] = count;
    for (let node = stack.pop(); node !== undefined; node = stack.pop()) {
      for (const link of at[node]!) {
        const other = links[link]!.a === node ? links[link]!.b : links[link]!.a;
        if (part[other]! >= 0) continue;
        part[other] = count;
        stack.push(other);
      }
    }
    count++;
  }
  return { part, count };
}

/** One step of a way: a link and whether it is gone along from a to b. */
export interface Step {
  link: number;
  forward: boolean;
}

/** A closed way from `start` over every link of its connected part once; every node's degree is even (Hierholzer, 1873). */
export function closedWay(start: number, links: readonly Joint[], at: readonly number[][]): Step[] {
  const used = new Uint8Array(links.length);
  const tried = new Int32Array(at.length);
  const stack: { node: number; by?: Step }[] = [{ node: start }];
  const way: Step[] = [];
  while (stack.length > 0) {
    const { node, by } = stack[stack.length - 1]!;
    const here = at[node]!;
    while (tried[node]! < here.length && used[here[tried[node]!]!] === 1) tried[node]!++;
    if (tried[node] === here.length) {
      stack.pop();
      if (by) way.push(by);
      continue;
    }
    const link = here[tried[node]!]!;
    used[link] = 1;
    const forward = links[link]!.a === node;
    stack.push({ node: forward ? links[link]!.b : links[link]!.a, by: { link, forward } });
  }
  return way.reverse();
}
