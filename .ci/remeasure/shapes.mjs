// The true size of each kind of piece, from what the job says of it.

/**
 * The kinds of a plan's job: corners round the centroid (or a radius), area, bore, thickness, density. `items` holds the
 * sizes of catalogue pieces by name.
 */
export function kindsOf(job, items) {
  return job.pieces.map((piece) => {
    const own = piece.item === undefined ? piece : items.get(piece.item);
    if (!own) throw new Error(`no size is known of ${piece.item}`);
    const { bore = 0, thickness, density } = own;
    return { ...shapeOf(own), bore, thickness, density, stock: piece.stock };
  });
}

function shapeOf(own) {
  switch (own.shape) {
    case "hexagon":
      return regular(6, own.across / Math.cos(Math.PI / 6) / 2, 0);
    case "triangle":
      return regular(3, own.across / Math.sqrt(3), 0);
    case "square":
      return regular(4, own.across / Math.SQRT2, 45);
    case "rectangle": {
      const [x, y] = [own.length / 2, own.width / 2];
      return polygon([
        [x, y],
        [-x, y],
        [-x, -y],
        [x, -y],
      ]);
    }
    case "round":
      return { radius: own.diameter / 2, area: (Math.PI * own.diameter ** 2) / 4 };
    default:
      return polygon(own.points);
  }
}

function regular(corners, radius, first) {
  return polygon(
    Array.from({ length: corners }, (_, n) => {
      const angle = ((first + (360 * n) / corners) * Math.PI) / 180;
      return [radius * Math.cos(angle), radius * Math.sin(angle)];
    }),
  );
}

/** Counter-clockwise round its centroid, corners that lie on a straight side left out. */
function polygon(points) {
  const { area, x, y } = massOf(points);
  const corners = points.map((point) => [point[0] - x, point[1] - y]);
  if (area < 0) corners.reverse();
  const bent = corners.filter(([bx, by], n) => {
    const [ax, ay] = corners.at(n - 1);
    const [cx, cy] = corners[(n + 1) % corners.length];
    return Math.abs((bx - ax) * (cy - by) - (by - ay) * (cx - bx)) > 1e-9;
  });
  return { corners: bent, area: Math.abs(area) };
}

/** Area (positive counter-clockwise) and centroid of an outline. */
export function massOf(points) {
  let [area, x, y] = [0, 0, 0];
  const [ox, oy] = points[0];
  for (let n = 2; n < points.length; n++) {
    const [ax, ay] = [points[n - 1][0] - ox, points[n - 1][1] - oy];
    const [bx, by] = [points[n][0] - ox, points[n][1] - oy];
    const part = (ax * by - ay * bx) / 2;
    area += part;
    x += (part * (ax + bx)) / 3;
    y += (part * (ay + by)) / 3;
  }
  return { area, x: ox + x / area, y: oy + y / area };
}
