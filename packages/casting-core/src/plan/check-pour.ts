import type { JobContainer } from "../job/types.js";
import { pieceKinds } from "../pieces/kinds.js";
import { areaOf, type Look, toldIn } from "./measure.js";
import type { Plan } from "./types.js";

/** Density of water at 20 °C, kg/L (CIPM formula, 2001). */
const WATER = 0.998;

/** What of the pour is measured again: volumes from the sphere, the balance, batches and their marks. */
export const pourLooks: Look[] = [
  ["mold", moldFault],
  ["volumes", balanceFault],
  ["batches", batchFault],
  ["marks", markFault],
  ["masses", massFault],
  ["dam", damFault],
];

function off(found: number, written: number, digits = 1e-6): boolean {
  return !(Math.abs(found - written) <= digits * Math.max(1, Math.abs(written)));
}

/** Cylinder to the fill line and the cap below or above it, by slices: another way than the closed form. */
function moldFault(plan: Plan): string | undefined {
  const { pour, tool, blank, job } = plan;
  const { length, volume: told } = toldIn(plan);
  const half = tool.diameter / 2;
  const radius = tool.curveRadius;
  const { edge, centre } = pour.fill;
  const sign = blank.curve === "convex" ? -1 : 1;
  const wantedCentre = edge + (radius === undefined ? 0 : sign * tool.sagitta);
  if (off(wantedCentre, centre, 1e-9))
    return `the cast is ${length(wantedCentre)} high on the axis, not ${length(centre)}`;
  if (centre <= 0 || edge <= 0) return "the fill line does not cover the glass";
  const slices = 2000;
  let cap = 0;
  if (radius !== undefined) {
    const depth = radius - Math.sqrt(radius * radius - half * half);
    const step = depth / slices;
    for (let n = 0; n < slices; n++) {
      const height = (n + 0.5) * step;
      // Circle at that height above the sphere's lowest point.
      cap += (2 * radius * height - height * height) * step;
    }
  }
  const volume = (Math.PI * (half * half * (edge - (job.plaster.film ?? 0)) + sign * cap)) / 1000;
  return off(volume, pour.moldVolume) ? `the mold holds ${told(volume)}, not ${told(pour.moldVolume)}` : undefined;
}

function balanceFault(plan: Plan): string | undefined {
  const { pour, layout, job } = plan;
  const { volume } = toldIn(plan);
  const kinds = pieceKinds(job);
  const pieces = layout.pieces.reduce((sum, { kind, radius, outline }) => {
    const { bore, thickness } = kinds[kind]!;
    const area = radius === undefined ? areaOf(outline) : Math.PI * radius * radius;
    return sum + ((area - (Math.PI * bore * bore) / 4) * thickness) / 1000;
  }, 0);
  // Corners are written to a micrometre.
  if (off(pieces, pour.piecesVolume, 2e-4))
    return `the pieces take ${volume(pieces)}, not ${volume(pour.piecesVolume)}`;
  const socket = socketVolume(
    job,
    pour.fill.centre,
    Math.max(...layout.pieces.map(({ kind }) => kinds[kind]!.thickness)),
  );
  if (off(socket, pour.socketVolume)) return `the socket takes ${volume(socket)}, not ${volume(pour.socketVolume)}`;
  const cast = pour.moldVolume - pour.piecesVolume - pour.socketVolume;
  if (off(cast, pour.castVolume, 1e-8)) return `the cast takes ${volume(cast)}, not ${volume(pour.castVolume)}`;
  const mix = pour.castVolume * (1 + job.plaster.spare);
  return off(mix, pour.mixVolume, 1e-8) ? `the mix is ${volume(mix)}, not ${volume(pour.mixVolume)}` : undefined;
}

/** What the socket takes of the mold, mL: its cylinder from its foot on film or pieces to the fill line, less an open bore. */
function socketVolume({ socket, plaster: { film = 0 } }: Plan["job"], centre: number, thickest: number): number {
  if (!socket) return 0;
  const embedded = Math.min(socket.length, centre - film - (socket.foot === "glass" ? 0 : thickest));
  const hole = socket.plugged ? 0 : (socket.bore ?? 0);
  return ((Math.PI / 4) * (socket.diameter - hole) * (socket.diameter + hole) * embedded) / 1000;
}

function batchFault(plan: Plan): string | undefined {
  const { pour } = plan;
  const { volume, mass } = toldIn(plan);
  const sum = pour.batches.reduce((total, { mix }) => total + mix, 0);
  if (off(sum, pour.mixVolume, 1e-8)) return `the batches hold ${volume(sum)}, not ${volume(pour.mixVolume)}`;
  for (const [n, { powder, water, mix }] of pour.batches.entries()) {
    if (off(powder * pour.plaster.water, water, 1e-8))
      return `batch ${n + 1} has ${mass(water)} of water for ${mass(powder)} of powder`;
    const made = (powder / pour.plaster.density + water / WATER) * 1000;
    if (off(made, mix, 1e-3)) return `batch ${n + 1} makes ${volume(made)}, not ${volume(mix)}`;
  }
  return undefined;
}

/** Content of a container up to a height, mL, by slices. */
function contentTo(container: JobContainer, height: number): number {
  if (container.shape === "marks") {
    let [below, held] = [0, 0];
    for (const mark of container.marks) {
      if (height <= mark.height) return held + ((mark.volume - held) * (height - below)) / (mark.height - below);
      [below, held] = [mark.height, mark.volume];
    }
    return held;
  }
  if (container.shape === "stacked") {
    let [floor, held] = [0, 0];
    for (const { height: tall, bottom, top } of container.sections) {
      if (height <= floor) break;
      const part = { shape: "tapered", bottom, top, height: tall, headroom: 0 } as const;
      held += contentTo(part, Math.min(tall, height - floor));
      floor += tall;
    }
    return held;
  }
  const slices = 2000;
  const step = height / slices;
  let sum = 0;
  for (let n = 0; n < slices; n++) {
    const up = (n + 0.5) * step;
    if (container.shape === "box") sum += container.length * container.width * step;
    else {
      const across =
        container.shape === "round"
          ? container.diameter
          : container.bottom + ((container.top - container.bottom) * up) / container.height;
      sum += (Math.PI / 4) * across * across * step;
    }
  }
  return sum / 1000;
}

function markFault(plan: Plan): string | undefined {
  const { pour, job } = plan;
  const { volume } = toldIn(plan);
  const { container } = job;
  for (const [n, { water, mix, waterMark, mixMark }] of pour.batches.entries()) {
    if (!container) {
      if (waterMark !== undefined || mixMark !== undefined) return "there are marks, but no container";
      continue;
    }
    if (waterMark === undefined || mixMark === undefined) return `batch ${n + 1} has no marks`;
    if (mixMark > container.height - container.headroom + 1e-6)
      return `the mix of batch ${n + 1} stands above the headroom`;
    if (off(contentTo(container, mixMark), mix, 1e-6))
      return `at its mark the container holds ${volume(contentTo(container, mixMark))}, not ${volume(mix)}`;
    const litres = (water / WATER) * 1000;
    if (off(contentTo(container, waterMark), litres, 1e-3))
      return `at the water mark the container holds ${volume(contentTo(container, waterMark))}, not ${volume(litres)}`;
  }
  return undefined;
}

function massFault(plan: Plan): string | undefined {
  const { pour, layout, job } = plan;
  const { mass } = toldIn(plan);
  const { wet, dry, pieces, socket } = pour.mass;
  const kinds = pieceKinds(job);
  const laid = layout.pieces.reduce((sum, { kind }) => {
    const { area, bore, thickness, density } = kinds[kind]!;
    return sum + (area - (Math.PI * bore * bore) / 4) * thickness * density * 1e-6;
  }, 0);
  if (off(laid, pieces)) return `the pieces weigh ${mass(laid)}, not ${mass(pieces)}`;
  const { water, density } = pour.plaster;
  const powder = pour.castVolume / (1 / density + water / WATER) / 1000;
  const cast = pieces + socket + powder * (1 + water);
  if (off(cast, wet)) return `the wet tool weighs ${mass(cast)}, not ${mass(wet)}`;
  if (!(dry > pieces + socket && dry <= wet)) return `a tool of ${mass(wet)} wet and ${mass(dry)} dry cannot be`;
  const { rise, ceiling } = pour.heat;
  return off(Math.min(100, 20 + rise), ceiling, 1e-6)
    ? `a rise of ${rise} K leads to ${Math.min(100, 20 + rise)} °C, not ${ceiling}`
    : undefined;
}

function damFault(plan: Plan): string | undefined {
  const { pour, job, tool, blank } = plan;
  const { length: told } = toldIn(plan);
  const around = Math.min(tool.diameter, blank.diameter);
  if (off(around, pour.dam.formDiameter, 1e-9))
    return `the dam goes round ${told(around)}, not ${told(pour.dam.formDiameter)}`;
  const length = Math.PI * (around + job.dam.sheet) + job.dam.overlap;
  if (off(length, pour.dam.length, 1e-9)) return `the dam is ${told(length)} long, not ${told(pour.dam.length)}`;
  return pour.dam.height < pour.fill.edge ? "the dam is lower than the fill line" : undefined;
}
