"""Audits a grooves.dxf against its plan.json with ezdxf: /usr/bin/python3 .ci/audit-dxf.py grooves.dxf plan.json"""

import json
import math
import sys

import ezdxf
from ezdxf import recover


def main(drawing, plan_file):
    document = ezdxf.readfile(drawing)
    faults = [str(error.message) for error in document.audit().errors + document.audit().fixes]
    _, auditor = recover.readfile(drawing)
    faults += [str(error.message) for error in auditor.errors]
    with open(plan_file, encoding="utf-8") as file:
        plan = json.load(file)
    expect = faults.append

    if document.dxfversion < "AC1015":
        expect(f"version {document.dxfversion} is older than AC1015")
    if document.header["$INSUNITS"] != 4:
        expect(f"$INSUNITS is {document.header['$INSUNITS']}, not millimetres")

    space = document.modelspace()
    on = {name: list(space.query(f'*[layer=="{name}"]')) for name in ("CHANNELS", "UNCUT", "PIECES", "TOOL_EDGE", "MARKS")}
    edges = plan["grooves"]["edges"]
    for name, wanted in (("CHANNELS", True), ("UNCUT", False)):
        drawn = sorted(line_of(entity) for entity in on[name])
        planned = sorted(mirrored(edge) for edge in edges if edge["cut"] is wanted)
        if drawn != planned:
            expect(f"{name}: {len(drawn)} lines drawn, {len(planned)} in the plan, or their points differ")
    if len(on["PIECES"]) != len(plan["layout"]["pieces"]):
        expect(f"{len(on['PIECES'])} pieces drawn, {len(plan['layout']['pieces'])} in the plan")
    circles = [entity for entity in on["TOOL_EDGE"] if entity.dxftype() == "CIRCLE"]
    if [2 * circle.dxf.radius for circle in circles] != [plan["tool"]["diameter"]]:
        expect("the tool's edge is not one circle of the tool's diameter")
    length = sum(length_of(entity) for entity in on["CHANNELS"])
    if not math.isclose(length, plan["grooves"]["totals"]["length"], abs_tol=1e-3):
        expect(f"channels are {length} mm long, {plan['grooves']['totals']['length']} mm in the plan")

    for fault in faults:
        print(fault, file=sys.stderr)
    print(f"{drawing}: {len(list(space))} entities, {len(faults)} faults")
    return 1 if faults else 0


def points_of(entity):
    points = [(round(x, 3), round(y, 3)) for x, y in entity.get_points("xy")]
    return points + points[:1] if entity.closed else points


def line_of(entity):
    points = tuple(points_of(entity))
    return min(points, points[::-1])


def mirrored(edge):
    points = tuple((round(-x, 3) + 0.0, y) for x, y in edge["points"])
    return min(points, points[::-1])


def length_of(entity):
    points = points_of(entity)
    return sum(math.dist(a, b) for a, b in zip(points, points[1:]))


if __name__ == "__main__":
    sys.exit(main(*sys.argv[1:3]))
