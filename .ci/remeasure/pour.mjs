// Volumes, masses and marks worked out again, by formulas of its own.

/** Density of water at 20 °C, kg/L (CIPM formula, 2001), as the plan's batches are said to use it. */
const WATER = 0.998;

/** What does not hold of the pour of a plan; `kinds` as kindsOf gives them. */
export function pourFaults({ pour, layout, tool, blank, job }, kinds) {
  const faults = [];
  const same = (what, found, written, share = 1e-9) => {
    if (!(Math.abs(found - written) <= share * Math.max(1, Math.abs(found))))
      faults.push(`${what} comes to ${found}, not ${written}`);
  };
  const [half, radius, convex] = [tool.diameter / 2, tool.curveRadius, blank.curve === "convex"];
  // The sagitta without taking two near numbers from each other.
  const rise = radius === undefined ? 0 : (half * half) / (radius + Math.sqrt((radius - half) * (radius + half)));
  same("the tool's sagitta", rise, tool.sagitta);
  const cap = (Math.PI * rise * (3 * half * half + rise * rise)) / 6;
  const { edge, centre } = pour.fill;
  same("the height at the centre", edge + (convex ? -rise : rise), centre);
  const { film = 0 } = job.plaster;
  const depth = edge - film;
  const mold = (Math.PI * half * half * depth + (convex ? -cap : cap)) / 1000;
  same("the mold", mold, pour.moldVolume);

  const solid = ({ kind }) => {
    const { area, bore, thickness } = kinds[kind];
    return ((area - (Math.PI * bore * bore) / 4) * thickness) / 1000;
  };
  const pieces = layout.pieces.reduce((sum, piece) => sum + solid(piece), 0);
  same("the pieces", pieces, pour.piecesVolume);
  const mass = layout.pieces.reduce((sum, piece) => sum + (solid(piece) * kinds[piece.kind].density) / 1000, 0);
  same("the mass of the pieces", mass, pour.mass.pieces);

  const thickest = Math.max(...kinds.map(({ thickness }) => thickness));
  let socket = 0;
  if (job.socket) {
    const { diameter, bore = 0, length, foot, plugged } = job.socket;
    const deep = Math.min(length, centre - film - (foot === "glass" ? 0 : thickest));
    const hole = plugged ? 0 : bore;
    socket = ((Math.PI / 4) * (diameter * diameter - hole * hole) * deep) / 1000;
  }
  same("the socket", socket, pour.socketVolume);
  const cast = mold - pieces - socket;
  same("the cast", cast, pour.castVolume);
  same("the mix", cast * (1 + job.plaster.spare), pour.mixVolume);
  if (!(Math.min(edge, centre) > film + thickest)) faults.push("a piece stands out of the plaster");

  const { water: ratio, density } = pour.plaster;
  same(
    "the batches together",
    pour.batches.reduce((sum, { mix }) => sum + mix, 0),
    pour.mixVolume,
  );
  for (const { powder, water, mix, waterMark, mixMark } of pour.batches) {
    same("a batch's water", powder * ratio, water);
    same("a batch", 1000 * (powder / density + water / WATER), mix);
    if (!job.container) continue;
    same("the mix up to its mark", contentTo(job.container, mixMark), mix, 1e-8);
    same("the water up to its mark", contentTo(job.container, waterMark), (1000 * water) / WATER, 1e-8);
    if (mixMark > job.container.height - job.container.headroom + 1e-9) faults.push("a mix stands above the headroom");
  }
  const powder = cast / (1 / density + ratio / WATER) / 1000;
  same("the wet mass", mass + pour.mass.socket + powder * (1 + ratio), pour.mass.wet);
  const round = Math.min(tool.diameter, blank.diameter);
  same("the dam", Math.PI * (round + job.dam.sheet) + job.dam.overlap, pour.dam.length);
  return faults;
}

/** What a container holds up to a height, mL. */
function contentTo(container, height) {
  const frustum = (bottom, top, tall) => (Math.PI * tall * (bottom * bottom + bottom * top + top * top)) / 12000;
  switch (container.shape) {
    case "round":
      return frustum(container.diameter, container.diameter, height);
    case "box":
      return (container.length * container.width * height) / 1000;
    case "tapered": {
      const { bottom, top } = container;
      return frustum(bottom, bottom + ((top - bottom) * height) / container.height, height);
    }
    case "stacked":
      return container.sections.reduce(
        ({ floor, held }, { bottom, top, height: tall }) => {
          const up = Math.min(tall, Math.max(0, height - floor));
          return { floor: floor + tall, held: held + frustum(bottom, bottom + ((top - bottom) * up) / tall, up) };
        },
        { floor: 0, held: 0 },
      ).held;
    default: {
      const marks = [{ height: 0, volume: 0 }, ...container.marks];
      const above = marks.findIndex((mark) => mark.height >= height);
      if (above <= 0) return above === 0 ? 0 : NaN;
      const [low, high] = [marks[above - 1], marks[above]];
      return low.volume + ((high.volume - low.volume) * (height - low.height)) / (high.height - low.height);
    }
  }
}
