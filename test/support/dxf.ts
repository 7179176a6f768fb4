/** Group codes and values of a DXF text. */
export function groups(text: string): [number, string][] {
  const lines = text.split("\n").map((line) => line.replace(/\r$/, ""));
  return Array.from({ length: Math.floor(lines.length / 2) }, (_, i) => [Number(lines[2 * i]), lines[2 * i + 1]!]);
}

/** Entities of one type on one layer, each as its groups. */
export function entities(text: string, type: string, layer: string): [number, string][][] {
  const found: [number, string][][] = [];
  let current: [number, string][] | undefined;
  for (const group of groups(text)) {
    if (group[0] === 0) {
      current = group[1] === type ? [] : undefined;
      if (current) found.push(current);
    }
    current?.push(group);
  }
  return found.filter((entity) => entity.some(([code, value]) => code === 8 && value === layer));
}

/** The values of one group code, as numbers. */
export function values(entity: readonly [number, string][], code: number): number[] {
  return entity.flatMap((group) => (group[0] === code ? [Number(group[1])] : []));
}

/** Each line of a layer as its four coordinates: from x, y to x, y. */
export function lines(text: string, layer: string): number[][] {
  return entities(text, "LINE", layer).map((line) => [10, 20, 11, 21].flatMap((code) => values(line, code)));
}

/** Each circle of a layer as its centre and radius. */
export function circles(text: string, layer: string): number[][] {
  return entities(text, "CIRCLE", layer).map((circle) => [10, 20, 40].flatMap((code) => values(circle, code)));
}

/** Names of the layers in the layer table, each with its colour and type of line. */
export function layers(text: string): Record<string, [colour: number, line: string]> {
  const found: Record<string, [number, string]> = {};
  let name: string | undefined;
  let colour = 0;
  let inTable = false;
  for (const [code, value] of groups(text)) {
    if (code === 0) inTable = value === "LAYER";
    if (!inTable) continue;
    if (code === 2) name = value;
    if (code === 62) colour = Number(value);
    if (code === 6 && name !== undefined) found[name] = [colour, value];
  }
  return found;
}
