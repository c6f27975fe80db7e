#!/usr/bin/env python3
"""Draws docs/drawings/height.svg: where bench height, lip, sink and cut height are, and how one screw moves both sides.

Run it without arguments; it writes beside itself. Lengths are mm of the unit; the space under the edge is drawn four times too high so that it can
be seen, and the drawing says so.
"""
import math
import os

FRONT, REAR, SPAN, EDGE_X = 57.0, 64.0, 210.0, 95.0       # roller diameters, axes, edge from the front axis
BENCH, LIP, SINK, HIGH = 5.0, 2.2, 0.8, 4.0               # and how much too high the small heights are drawn
SCALE = 2.0
OX, GROUND = 110.0, 250.0                                 # front axis and bench plane on the page


def line(x1, y1, x2, y2, kind="thin"):
    return f'<line class="{kind}" x1="{x1:.1f}" y1="{y1:.1f}" x2="{x2:.1f}" y2="{y2:.1f}"/>'


def text(x, y, words, anchor="start"):
    return f'<text x="{x:.1f}" y="{y:.1f}" text-anchor="{anchor}">{words}</text>'


def arrow(x, y1, y2):
    """A measure between two heights."""
    return f'<line class="measure" x1="{x:.1f}" y1="{y1:.1f}" x2="{x:.1f}" y2="{y2:.1f}"/>'


def side_view():
    out = [text(20, 30, "From the side (travel to the left; heights under the edge drawn ×4)")]
    for x, d, name in ((0, FRONT, "front roller"), (SPAN, REAR, "rear roller")):
        r = d / 2 * SCALE
        cx, cy = OX + x * SCALE, GROUND - r
        out += [f'<circle class="body" cx="{cx:.1f}" cy="{cy:.1f}" r="{r:.1f}"/>', line(cx - 5, cy, cx + 5, cy), line(cx, cy - 5, cx, cy + 5),
                text(cx, cy - r - 8, name, "middle")]
    out.append(line(40, GROUND, 640, GROUND, "plane"))
    out.append(text(650, GROUND + 18, "plane under both rollers", "end"))
    turf = GROUND - SINK * HIGH * SCALE
    out.append(line(40, turf, 640, turf, "turf"))
    out.append(text(40, GROUND + 36, "green: where the turf carries, the rollers sink in"))
    ex, ey = OX + EDGE_X * SCALE, GROUND - BENCH * HIGH * SCALE
    lip = ey + LIP * HIGH * SCALE
    out.append(f'<path class="knife" d="M {ex:.1f} {ey:.1f} l 46 -12 l 0 10 L {ex + 14:.1f} {lip:.1f} Z"/>')
    out.append(text(ex + 50, ey - 10, "bedknife"))
    out += [arrow(ex - 6, ey, GROUND), text(ex - 10, ey + 10, "bench height", "end")]
    out += [arrow(ex + 28, lip, turf), text(ex + 28, GROUND + 18, "knife clear", "middle")]
    out += [arrow(ex + 130, turf, GROUND), text(ex + 126, GROUND + 18, "sink")]
    out += [arrow(ex + 80, ey, turf), text(ex + 86, ey + 10, "height cut"), text(ex + 86, ey + 25, "= bench − sink")]
    out += [line(ex, ey, ex + 80, ey)]
    return out


def front_view():
    y0, mid, turn = 400.0, 340.0, 46.0
    bracket, read = 280.0, 230.0
    at = lambda mm: mid + mm
    out = [text(20, 310, "From behind: one turn of the left screw moves both readings (height drawn much too large)")]
    out.append(line(at(-bracket) - 20, y0, at(bracket) + 20, y0, "plane"))
    lift = lambda mm: turn * (bracket - mm) / (2 * bracket)
    out.append(line(at(-bracket), y0, at(bracket), y0, "thin"))
    out.append(line(at(-bracket), y0 - lift(-bracket), at(bracket), y0 - lift(bracket), "knifeline"))
    for mm, name in ((-bracket, "left bracket"), (bracket, "right bracket")):
        out += [f'<circle class="body" cx="{at(mm):.1f}" cy="{y0:.1f}" r="5"/>', text(at(mm), y0 + 22, name, "middle")]
    for mm, name in ((-read, "own side"), (read, "pulled")):
        out += [arrow(at(mm), y0 - lift(mm), y0), text(at(mm) + 8, y0 - lift(mm) - 8, name)]
    share = (bracket - read) / (bracket + read)
    out.append(text(mid, y0 + 44, f"brackets ± {bracket:.0f}, read at ± {read:.0f}: the other side follows by {bracket - read:.0f}/{bracket + read:.0f} = {share:.2f} of it", "middle"))
    return out


def main():
    style = """
    <style>
      text { font: 13px sans-serif; fill: #222 }
      .body { fill: #eee; stroke: #222 }
      .thin { stroke: #888; stroke-width: 1 }
      .plane { stroke: #222; stroke-width: 2 }
      .turf { stroke: #2a7d2a; stroke-width: 2; stroke-dasharray: 6 3 }
      .knife { fill: #bbb; stroke: #222 }
      .knifeline { stroke: #222; stroke-width: 3 }
      .measure { stroke: #b03030; stroke-width: 1.5; marker-start: url(#tip); marker-end: url(#tip) }
    </style>
    <defs><marker id="tip" viewBox="0 0 10 10" refX="9" refY="5" markerWidth="6" markerHeight="6" orient="auto-start-reverse"><path d="M 0 0 L 10 5 L 0 10 Z" fill="#b03030"/></marker></defs>
    <rect width="680" height="460" fill="white"/>"""
    assert math.isclose(BENCH - SINK, 4.2)                 # the drawing's own numbers, as the page quotes them
    body = "\n  ".join(side_view() + front_view())
    words = "Bench height, lip, sink and height cut from the side; from behind, how one screw moves both readings"
    svg = f'<svg xmlns="http://www.w3.org/2000/svg" viewBox="0 0 680 460" role="img" aria-label="{words}">{style}\n  {body}\n</svg>\n'
    with open(os.path.join(os.path.dirname(os.path.abspath(__file__)), "height.svg"), "w", encoding="utf-8") as f:
        f.write(svg)


if __name__ == "__main__":
    main()
