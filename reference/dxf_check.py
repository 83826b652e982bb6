"""Reads cut files with ezdxf and writes what is in them as JSON: for each file
its version, units, what the audit found, closed paths with area and length,
open paths with length, circles, and texts. It shares no code with the program
that wrote the files. Lengths are millimetres."""

import json
import math
import sys

import ezdxf
from ezdxf.lldxf.encoding import decode_dxf_unicode
from ezdxf.math import bulge_to_arc


def path(places, closed):
    """Area by Green's theorem and length of (x, y, bulge) places."""
    area = length = 0.0
    n = len(places)
    for i in range(n if closed else n - 1):
        x1, y1, bulge = places[i]
        x2, y2, _ = places[(i + 1) % n]
        if bulge == 0:
            area += (x1 * y2 - x2 * y1) / 2
            length += math.hypot(x2 - x1, y2 - y1)
            continue
        centre, start, end, radius = bulge_to_arc((x1, y1), (x2, y2), bulge)
        sweep = (end - start) % (2 * math.pi)
        integral = radius * radius * sweep \
            + centre.x * radius * (math.sin(end) - math.sin(start)) \
            - centre.y * radius * (math.cos(end) - math.cos(start))
        area += integral / 2 if bulge > 0 else -integral / 2
        length += radius * sweep
    return {"area": area, "length": length, "closed": closed}


def contents(file):
    drawing = ezdxf.readfile(file)
    audit = drawing.audit()
    found = {"version": drawing.dxfversion, "units": drawing.units if drawing.dxfversion != "AC1009" else 4,
             "faults": [str(e.message) for e in audit.errors + audit.fixes],
             "paths": [], "circles": [], "texts": []}
    for entity in drawing.modelspace():
        kind, layer = entity.dxftype(), entity.dxf.layer
        if kind == "CIRCLE":
            found["circles"].append({"layer": layer, "x": entity.dxf.center.x, "y": entity.dxf.center.y,
                                     "diameter": 2 * entity.dxf.radius})
        elif kind == "LWPOLYLINE":
            found["paths"].append({"layer": layer, **path(list(entity.get_points("xyb")), entity.closed)})
        elif kind == "POLYLINE":
            places = [(v.dxf.location.x, v.dxf.location.y, v.dxf.get("bulge", 0)) for v in entity.vertices]
            found["paths"].append({"layer": layer, **path(places, entity.is_closed)})
        elif kind == "LINE":
            places = [(p.x, p.y, 0) for p in (entity.dxf.start, entity.dxf.end)]
            found["paths"].append({"layer": layer, **path(places, False)})
        elif kind == "TEXT":
            found["texts"].append(decode_dxf_unicode(entity.plain_text()))
        else:
            found["faults"].append("entity " + kind)
    return found


json.dump([contents(file) for file in sys.argv[1:]], sys.stdout)
