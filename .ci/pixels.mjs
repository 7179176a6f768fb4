// Finds ruled lines and circles in rendered pixels, to a small part of a pixel.
import { readFileSync } from "node:fs";
import { PNG } from "pngjs";

/** Grey picture: `dark(x, y)` is 0 for white to 1 for black. */
export function readPng(file) {
  return fromPng(readFileSync(file));
}

export function fromPng(bytes) {
  const { width, height, data } = PNG.sync.read(bytes);
  const grey = new Uint8Array(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = 255 - (data[4 * i] + data[4 * i + 1] + data[4 * i + 2]) / 3;
  return {
    width,
    height,
    dark: (x, y) => (x < 0 || y < 0 || x >= width || y >= height ? 0 : grey[y * width + x] / 255),
  };
}

/** A binary PGM, as pdftoppm -gray writes it. */
export function readPgm(file) {
  const bytes = readFileSync(file);
  const head = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 64).toString("latin1"));
  const [width, height, from] = [Number(head[1]), Number(head[2]), head[0].length];
  return {
    width,
    height,
    dark: (x, y) => (x < 0 || y < 0 || x >= width || y >= height ? 0 : 1 - bytes[from + y * width + x] / 255),
  };
}

const median = (values) => [...values].sort((a, b) => a - b)[values.length >> 1];

/** Middle of the dark line across a run of pixels `at(n)`, n from 0 to count − 1; undefined where none is dark. */
function middleOf(at, count) {
  let [sum, weight] = [0, 0];
  for (let n = 0; n < count; n++) {
    const dark = at(n);
    if (dark < 0.1) continue;
    sum += dark * (n + 0.5);
    weight += dark;
  }
  return weight > 0.3 ? sum / weight : undefined;
}

/**
 * Where an upright (`axis` x) or level (y) line near `expected` mm runs, between `from` and `to` mm along it: the median
 * of many short looks, so that what crosses it does not count. `scale` is pixels per mm.
 */
export function lineNear(image, axis, scale, expected, from, to) {
  const slack = 0.36;
  const first = Math.round((expected - slack) * scale);
  const count = Math.round(2 * slack * scale);
  const looks = [];
  for (let n = 0; n < 160; n++) {
    const along = Math.round((from + ((to - from) * (n + 0.5)) / 160) * scale);
    const found = middleOf((k) => (axis === "x" ? image.dark(first + k, along) : image.dark(along, first + k)), count);
    if (found !== undefined) looks.push((first + found) / scale);
  }
  if (looks.length < 40) throw new Error(`no line near ${expected.toFixed(2)} mm`);
  return median(looks);
}

/** Sides of a square (or nearly one) whose upper left corner is expected at (x, y), mm: its width and height. */
export function squareNear(image, scale, x, y, width, height = width) {
  const within = (from, size) => [from + 0.12 * size, from + 0.88 * size];
  const across = [x, x + width].map((at) => lineNear(image, "x", scale, at, ...within(y, height)));
  const down = [y, y + height].map((at) => lineNear(image, "y", scale, at, ...within(x, width)));
  return { width: across[1] - across[0], height: down[1] - down[0] };
}

/** Radius of the circle expected about (x, y), mm: the median over many directions of where its line runs. */
export function circleNear(image, scale, x, y, radius, slack = 0.6) {
  const looks = [];
  for (let n = 0; n < 360; n++) {
    const [c, s] = [Math.cos((n * Math.PI) / 180), Math.sin((n * Math.PI) / 180)];
    const count = Math.round(2 * slack * scale * 4); // a quarter of a pixel each
    const found = middleOf((k) => {
      const r = (radius - slack) * scale + (k + 0.5) / 4;
      const [px, py] = [x * scale + r * c - 0.5, y * scale + r * s - 0.5];
      const [ix, iy] = [Math.floor(px), Math.floor(py)];
      const [fx, fy] = [px - ix, py - iy];
      return (
        (1 - fy) * ((1 - fx) * image.dark(ix, iy) + fx * image.dark(ix + 1, iy)) +
        fy * ((1 - fx) * image.dark(ix, iy + 1) + fx * image.dark(ix + 1, iy + 1))
      );
    }, count);
    if (found !== undefined) looks.push(radius - slack + found / 4 / scale);
  }
  if (looks.length < 60) throw new Error(`no circle of ${radius} mm`);
  return median(looks);
}
