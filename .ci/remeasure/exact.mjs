// Distances between laid pieces, decided in whole numbers: no tolerance, no rounding.

/** Decimals of a millimetre that a length is kept to. */
const DECIMALS = 18;
/** Nearer than this to what it is compared with, mm, doubles do not decide. */
const DOUBT = 1e-6;

/** A length in mm as a whole number of 1e-18 mm; the shortest decimal of a double is what was written. */
export function whole(length) {
  const [, sign, digits, part = "", power = "0"] = /^(-?)(\d+)(?:\.(\d+))?(?:e([+-]?\d+))?$/.exec(String(length));
  const places = DECIMALS - part.length + Number(power);
  if (places < 0) throw new RangeError(`${length} has more decimals than are kept`);
  return BigInt(sign + digits + part) * 10n ** BigInt(places);
}

/** Clear distance of two pieces in mm, by doubles; -1 where they overlap. A piece has `corners`, or `centre` and `radius`. */
export function clearance(a, b) {
  if (a.radius !== undefined && b.radius !== undefined)
    return Math.hypot(a.centre[0] - b.centre[0], a.centre[1] - b.centre[1]) - a.radius - b.radius;
  if (a.radius !== undefined) return pointClearance(a.centre, b) - a.radius;
  if (b.radius !== undefined) return pointClearance(b.centre, a) - b.radius;
  if (!parted(a.corners, b.corners) && !parted(b.corners, a.corners)) return -1;
  return Math.min(
    ...a.corners.map((corner) => toBoundary(corner, b.corners)),
    ...b.corners.map((corner) => toBoundary(corner, a.corners)),
  );
}

/** Distance of a point from a piece in mm, by doubles; -1 inside an outline. */
export function pointClearance(point, { corners, centre, radius }) {
  if (radius !== undefined) return Math.hypot(point[0] - centre[0], point[1] - centre[1]) - radius;
  return within(point, corners) ? -1 : toBoundary(point, corners);
}

/** Whether two pieces are at least `gap` apart (a whole number of 1e-18 mm): exactly. */
export function areApart(a, b, gap) {
  const wanted = Number(gap) / 1e18;
  const found = clearance(a, b);
  if (Math.abs(found - wanted) > DOUBT) return found > wanted;
  if (a.radius !== undefined && b.radius !== undefined)
    return isFar(a.centre, b.centre, gap + whole(a.radius) + whole(b.radius));
  if (a.radius !== undefined) return sidesFar(a.centre, b.corners, gap + whole(a.radius));
  if (b.radius !== undefined) return sidesFar(b.centre, a.corners, gap + whole(b.radius));
  return (
    a.corners.every((corner) => sidesFar(corner, b.corners, gap)) &&
    b.corners.every((corner) => sidesFar(corner, a.corners, gap))
  );
}

/** Whether a piece is at least `gap` (as above) from the circle round `centre`: exactly. */
export function isOutside(piece, centre, gap) {
  return piece.radius === undefined
    ? !within(centre, piece.corners) && sidesFar(centre, piece.corners, gap)
    : isFar(piece.centre, centre, gap + whole(piece.radius));
}

/** Whether a piece lies wholly within `reach` (as above) of the axis: exactly. */
export function isWithin({ corners, centre, radius }, reach) {
  const inside = ([x, y], far) => {
    const [wx, wy] = [whole(x), whole(y)];
    return far >= 0n && wx * wx + wy * wy <= far * far;
  };
  return radius === undefined ? corners.every((c) => inside(c, reach)) : inside(centre, reach - whole(radius));
}

/** Farthest that a piece reaches from the axis, mm. */
export function reachOf({ corners, centre, radius }) {
  return radius === undefined ? Math.max(...corners.map(([x, y]) => Math.hypot(x, y))) : Math.hypot(...centre) + radius;
}

/** Distance from a point to the straight line between two others, mm. */
export function toSegment([x, y], [ax, ay], [bx, by]) {
  const [dx, dy] = [bx - ax, by - ay];
  const along = (x - ax) * dx + (y - ay) * dy;
  const square = dx * dx + dy * dy;
  if (along <= 0) return Math.hypot(x - ax, y - ay);
  if (along >= square) return Math.hypot(x - bx, y - by);
  return Math.abs((x - ax) * dy - (y - ay) * dx) / Math.sqrt(square);
}

function toBoundary(point, corners) {
  return Math.min(...corners.map((corner, n) => toSegment(point, corner, corners[(n + 1) % corners.length])));
}

function within(point, corners) {
  return corners.every((corner, n) => left(corner, corners[(n + 1) % corners.length], point) >= 0);
}

/** Twice the area of a triangle, in whole square micrometres: exact, as corners are whole micrometres below 2 m. */
function left([ax, ay], [bx, by], [cx, cy]) {
  const um = (a, b) => Math.round((a - b) * 1000);
  return um(bx, ax) * um(cy, ay) - um(by, ay) * um(cx, ax);
}

/** Whether a side of `a` has all of `b` beyond it. */
function parted(a, b) {
  return a.some((corner, n) => b.every((point) => left(corner, a[(n + 1) % a.length], point) <= 0));
}

function isFar([ax, ay], [bx, by], gap) {
  const [dx, dy] = [whole(ax) - whole(bx), whole(ay) - whole(by)];
  return dx * dx + dy * dy >= gap * gap;
}

/** Whether every side of an outline is at least `gap` from a point. */
function sidesFar(point, corners, gap) {
  return corners.every((corner, n) => {
    const next = corners[(n + 1) % corners.length];
    const [dx, dy] = [whole(next[0]) - whole(corner[0]), whole(next[1]) - whole(corner[1])];
    const [px, py] = [whole(point[0]) - whole(corner[0]), whole(point[1]) - whole(corner[1])];
    const [along, square] = [px * dx + py * dy, dx * dx + dy * dy];
    if (along <= 0n) return isFar(point, corner, gap);
    if (along >= square) return isFar(point, next, gap);
    const cross = px * dy - py * dx;
    return cross * cross >= gap * gap * square;
  });
}
