import type { JobContainer } from "../job/types.js";
import { PI } from "../trig.js";

/**
 * A container as sections stacked from the floor up. `round`: a cone's frustum from radius `bottom` to radius `top`;
 * `even`: the same area all the way. Heights and radii mm, areas mm².
 */
export type Section =
  | { shape: "round"; height: number; bottom: number; top: number }
  | { shape: "even"; height: number; area: number };

/** The sections of `container`, up to its inside height; one known by marks ends at its last mark. */
export function sectionsOf(container: JobContainer): Section[] {
  switch (container.shape) {
    case "round":
      return [frustum(container.height, container.diameter, container.diameter)];
    case "tapered":
      return [frustum(container.height, container.bottom, container.top)];
    case "stacked":
      return container.sections.map(({ height, bottom, top }) => frustum(height, bottom, top));
    case "box":
      return [{ shape: "even", height: container.height, area: container.length * container.width }];
    case "marks":
      return container.marks.map((mark, i) => {
        const below = container.marks[i - 1] ?? { height: 0, volume: 0 };
        const height = mark.height - below.height;
        return { shape: "even", height, area: ((mark.volume - below.volume) * 1000) / height };
      });
  }
}

function frustum(height: number, bottom: number, top: number): Section {
  return { shape: "round", height, bottom: bottom / 2, top: top / 2 };
}

/** mL below `height` mm in the stack; what stands above its top does not count. */
export function volumeAt(sections: readonly Section[], height: number): number {
  let below = 0;
  let volume = 0;
  for (const section of sections) {
    const part = Math.min(section.height, height - below);
    if (part <= 0) break;
    volume += sectionVolume(section, part);
    below += section.height;
  }
  return volume / 1000;
}

/** Height in mm to which `volume` mL fills the stack, or nothing where it holds less. */
export function heightOf(sections: readonly Section[], volume: number): number | undefined {
  let left = volume * 1000;
  let below = 0;
  for (const section of sections) {
    const whole = sectionVolume(section, section.height);
    if (left <= whole * (1 + 1e-9)) return below + partHeight(section, left);
    left -= whole;
    below += section.height;
  }
  return undefined;
}

/** Length along the wall up to `height` mm above the floor. */
export function alongWall(sections: readonly Section[], height: number): number {
  let below = 0;
  let length = 0;
  for (const section of sections) {
    const part = Math.min(section.height, height - below);
    if (part <= 0) break;
    const lean = section.shape === "round" ? (section.top - section.bottom) / section.height : 0;
    length += part * Math.sqrt(1 + lean * lean);
    below += section.height;
  }
  return length;
}

/** Whether the wall steps in or out below `height` mm: no strip lies along it there. */
export function hasLedge(sections: readonly Section[], height: number): boolean {
  let below = 0;
  return sections.some((section, n) => {
    const under = sections[n - 1];
    const steps = under?.shape === "round" && section.shape === "round" && under.top !== section.bottom;
    const reached = below < height;
    below += section.height;
    return steps && reached;
  });
}

/** mm³ in the lowest `height` mm of a section; a frustum holds π h (a² + a b + b²) / 3. */
function sectionVolume(section: Section, height: number): number {
  if (section.shape === "even") return section.area * height;
  const a = section.bottom;
  if (a === section.top) return PI * a * a * height;
  const b = a + ((section.top - a) * height) / section.height;
  return (PI * height * (a * a + a * b + b * b)) / 3;
}

/** The inverse of `sectionVolume`, by halving until the bits are used up: no cube root, the same on every engine. */
function partHeight(section: Section, volume: number): number {
  if (section.shape === "even") return Math.min(section.height, volume / section.area);
  if (section.bottom === section.top) {
    return Math.min(section.height, volume / (PI * section.bottom * section.bottom));
  }
  let low = 0;
  let high = section.height;
  for (;;) {
    const middle = low + (high - low) / 2;
    if (middle <= low || middle >= high) return middle;
    if (sectionVolume(section, middle) < volume) low = middle;
    else high = middle;
  }
}
