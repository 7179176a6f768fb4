import { touchAt } from "./contact";
import { kind, outline, x, y } from "./pieces";
import { circle, corners, edge, ROW, reach, stride } from "./shapes";

/**
 * Clear distance of piece `i`'s core from the middle of kept circle `n`, mm, less than 0 inside; says the core's point
 * that comes closest and the axis from the circle to it (see contact).
 */
export function fromCircle(i: i32, n: i32): f64 {
  const cx = circle[3 * n];
  const cy = circle[3 * n + 1];
  const k = kind[i];
  const all = corners[k];
  const from = i * stride * ROW;
  let best: f64 = -Infinity;
  let edgeAt: i32 = -1;
  for (let e = 0; all > 1 && e < all; e++) {
    const at = from + e * ROW;
    const beyond = (cx - outline[at]) * outline[at + 2] + (cy - outline[at + 1]) * outline[at + 3];
    if (beyond > best) {
      best = beyond;
      edgeAt = e;
    }
  }
  let corner: i32 = -1;
  if (edgeAt >= 0) {
    const at = from + edgeAt * ROW;
    const t = (cy - outline[at + 1]) * outline[at + 2] - (cx - outline[at]) * outline[at + 3];
    if (best > 0 && t < 0) corner = at;
    else if (best > 0 && t > edge[k * stride + edgeAt]) corner = from + (edgeAt + 1 === all ? 0 : edgeAt + 1) * ROW;
    else {
      const ux = -outline[at + 2];
      const uy = -outline[at + 3];
      touchAt(ux, uy, cx + best * ux, cy + best * uy);
      return best;
    }
  }
  const px = corner < 0 ? x[i] : outline[corner];
  const py = corner < 0 ? y[i] : outline[corner + 1];
  const dx = px - cx;
  const dy = py - cy;
  const distance = Math.sqrt(dx * dx + dy * dy);
  touchAt(distance > 0 ? dx / distance : 1, distance > 0 ? dy / distance : 0, px, py);
  return distance;
}

/** Whether piece `i` reaches into the circle round kept circle `n` at all. */
export function aboutCircle(i: i32, n: i32): bool {
  const dx = x[i] - circle[3 * n];
  const dy = y[i] - circle[3 * n + 1];
  const near = reach[kind[i]] + circle[3 * n + 2];
  return dx * dx + dy * dy < near * near;
}
