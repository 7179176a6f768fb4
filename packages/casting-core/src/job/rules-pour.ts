import type { Fault } from "../errors.js";
import { fault, mmIn } from "./fault.js";
import type { Job } from "./types.js";
import { faultsOfEach } from "./unread.js";

/** A plaster of the maker's own needs its figures; one of the table has them. */
export function plasterFaults({ plaster }: Pick<Job, "plaster">): Fault[] {
  if (plaster.kind !== "custom") {
    if (plaster.density === undefined) return [];
    return [
      fault(["plaster", "density"], "only a custom plaster has a density of its own; remove it, or write kind: custom"),
    ];
  }
  return faultsOfEach(["water", "density"] as const, (key) =>
    plaster[key] === undefined
      ? [fault(["plaster", key], `a custom plaster needs ${key}; write it below plaster`)]
      : [],
  );
}

/** A container holds its headroom. */
export function headroomFaults({ container, units }: Pick<Job, "container" | "units">): Fault[] {
  if (!container || container.headroom < container.height) return [];
  const mm = mmIn(units);
  const text = `a headroom of ${mm(container.headroom)} leaves nothing of a container of ${mm(container.height)}; write less than its height`;
  return [fault(["container", "headroom"], text)];
}

/** A container holds its marks, and they rise. */
export function markFaults({ container, units }: Pick<Job, "container" | "units">): Fault[] {
  if (container?.shape !== "marks") return [];
  const mm = mmIn(units);
  const { height } = container;
  return faultsOfEach(container.marks, (mark, index) => {
    const faults: Fault[] = [];
    const path = ["container", "marks", index];
    const before = container.marks[index - 1] ?? { height: 0, volume: 0 };
    if (mark.height > height) {
      faults.push(
        fault([...path, "height"], `a mark at ${mm(mark.height)} is above the container of ${mm(height)}; check both`),
      );
    }
    for (const key of ["height", "volume"] as const) {
      if (mark[key] > before[key]) continue;
      const text =
        index === 0
          ? `the first mark is at 0; the floor is 0 already, so begin with the lowest mark above it`
          : `the marks do not rise here; write each with more ${key} than the one before`;
      faults.push(fault([...path, key], text));
    }
    return faults;
  });
}

/** A socket's bore leaves a wall. */
export function socketFaults({ socket, units }: Pick<Job, "socket" | "units">): Fault[] {
  if (socket?.bore === undefined || socket.bore < socket.diameter) return [];
  const mm = mmIn(units);
  const text = `a bore of ${mm(socket.bore)} leaves no wall in a socket of ${mm(socket.diameter)}; check both`;
  return [fault(["socket", "bore"], text)];
}

/** A socket stands within the tool. */
export function socketOnToolFaults({ socket, tool, units }: Pick<Job, "socket" | "tool" | "units">): Fault[] {
  if (!socket || socket.diameter < tool.diameter) return [];
  const mm = mmIn(units);
  const text = `a socket of ${mm(socket.diameter)} leaves no plaster round it in a tool of ${mm(tool.diameter)}; check both figures and their units`;
  return [fault(["socket", "diameter"], text)];
}
