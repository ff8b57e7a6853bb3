// The lap over distance: speed, its difference, the time gap and the gear, above one axis and under one cursor.

import { fixed, signed } from "./dom.js";
import { colours, decimals, extent, FONT, polyline, scale, surface, ticks, valueAt } from "./plot.js";

const LEFT = 46;
const RIGHT = 12;
const TOP = 20;
const BOTTOM = 20;
const GAP = 20;

import { shownAll, unit } from "./units.js";
export class Traces {
  /** Moved is told a distance under the cursor, or null; zoomed a part that was dragged over. */
  constructor(base, over, moved, zoomed) {
    this.base = base;
    this.over = over;
    this.moved = moved;
    this.zoomed = zoomed;
    this.cursor = null;
    this.drag = null;
    over.addEventListener("pointermove", (event) => this.point(event));
    over.addEventListener("pointerleave", () => this.drag === null && this.moved(null));
    over.addEventListener("pointerdown", (event) => {
      this.drag = this.at(event);
      over.setPointerCapture(event.pointerId);
      this.point(event);
    });
    over.addEventListener("pointerup", (event) => {
      const from = this.drag;
      const to = this.at(event);
      this.drag = null;
      if (from !== null && Math.abs(this.x(to) - this.x(from)) > 12) {
        this.zoomed({ from: Math.min(from, to), to: Math.max(from, to) });
      } else {
        this.draw();
      }
    });
    over.addEventListener("dblclick", () => this.zoomed({ from: 0, to: 0 }));
    over.addEventListener("keydown", (event) => this.key(event));
  }

  set(sheet, lap, names, zoom) {
    this.sheet = sheet;
    this.lap = lap;
    this.names = names;
    this.zoom = zoom;
    this.paint();
  }

  range() {
    return this.zoom && this.zoom.to > this.zoom.from ? [this.zoom.from, this.zoom.to] : [0, this.sheet.lengthM];
  }

  at(event) {
    const box = this.over.getBoundingClientRect();
    const [from, to] = this.range();
    return Math.max(from, Math.min(to, this.x.back(event.clientX - box.left)));
  }

  point(event) {
    if (this.x) {
      this.moved(this.at(event));
    }
  }

  key(event) {
    const [from, to] = this.range();
    const step = ((to - from) / 200) * (event.shiftKey ? 10 : 1);
    const here = this.cursor === null ? from : this.cursor;
    const places = { ArrowLeft: here - step, ArrowRight: here + step, Home: from, End: to };
    if (event.key in places) {
      event.preventDefault();
      this.moved(Math.max(from, Math.min(to, places[event.key])));
    }
  }

  lanes(h) {
    const against = Boolean(this.lap.behind);
    const shares = against ? [["v", 0.42], ["dv", 0.15], ["behind", 0.25], ["gear", 0.18]] : [["v", 0.72], ["gear", 0.28]];
    const room = h - TOP - BOTTOM - GAP * (shares.length - 1);
    let top = TOP;
    return shares.map(([name, share]) => {
      const lane = { name, top, bottom: top + room * share };
      top = lane.bottom + GAP;
      return lane;
    });
  }

  paint() {
    if (!this.lap || this.base.clientWidth === 0) {
      return;
    }
    const { g, w, h } = surface(this.base);
    const c = colours();
    const lap = this.lap;
    const s = lap.columns.s;
    const speed = shownAll(lap.columns.v, "km/h");
    const held = lap.reference ? shownAll(lap.reference.v, "km/h") : null;
    const [from, to] = this.range();
    this.x = scale(from, to, LEFT, w - RIGHT);
    this.axis(g, c, w, h, from, to);
    const inside = s.map((at) => at >= from && at <= to);
    const seen = (list) => list.filter((_, i) => inside[i]);
    const difference = held ? speed.map((v, i) => v - held[i]) : null;
    this.plots = this.lanes(h);
    for (const lane of this.plots) {
      g.save();
      if (lane.name === "v") {
        lane.lists = [speed, held].filter(Boolean);
        lane.title = `speed, ${unit("km/h")}`;
        lane.digits = 1;
        this.frame(g, c, w, lane, extent(lane.lists.map(seen), 20));
        this.clip(g, w, lane);
        if (lap.reference) {
          polyline(g, s, held, this.x, lane.y, { colour: c.pin, width: 1.4, dash: [5, 3] });
        }
        polyline(g, s, speed, this.x, lane.y, { colour: c.now, width: 1.8 });
      } else if (lane.name === "gear") {
        lane.lists = [lap.columns.gear, lap.reference && lap.reference.gear].filter(Boolean);
        lane.title = "gear";
        lane.digits = 0;
        lane.stepped = true;
        this.frame(g, c, w, lane, [Math.min(...lane.lists.flat()) - 0.4, Math.max(...lane.lists.flat()) + 0.4]);
        this.clip(g, w, lane);
        if (lap.reference) {
          this.steps(g, s, lap.reference.gear, lane, c.pin, [5, 3]);
        }
        this.steps(g, s, lap.columns.gear, lane, c.now, []);
      } else {
        const list = lane.name === "dv" ? difference : lap.behind;
        lane.lists = [list];
        lane.title = lane.name === "dv"
          ? `speed less that of ${this.names.reference}, ${unit("km/h")}`
          : `time against ${this.names.reference}, s: below the line is ahead`;
        lane.digits = lane.name === "dv" ? 1 : 3;
        lane.signed = true;
        const [low, high] = extent([seen(list), [0]], lane.name === "dv" ? 2 : 0.02, 0.1);
        this.frame(g, c, w, lane, [low, high]);
        this.clip(g, w, lane);
        g.fillStyle = c.now;
        g.globalAlpha = 0.16;
        g.beginPath();
        g.moveTo(this.x(s[0]), lane.y(0));
        s.forEach((at, i) => g.lineTo(this.x(at), lane.y(list[i])));
        g.lineTo(this.x(s.at(-1)), lane.y(0));
        g.fill();
        g.globalAlpha = 1;
        polyline(g, [from, to], [0, 0], this.x, lane.y, { colour: c.pin, width: 1.2, dash: [5, 3] });
        polyline(g, s, list, this.x, lane.y, { colour: c.now, width: 1.5 });
      }
      g.restore();
    }
    this.draw();
  }

  clip(g, w, lane) {
    g.beginPath();
    g.rect(LEFT, lane.top - 2, w - LEFT - RIGHT, lane.bottom - lane.top + 4);
    g.clip();
  }

  steps(g, s, gears, lane, colour, dash) {
    g.save();
    g.strokeStyle = colour;
    g.lineWidth = 1.5;
    g.setLineDash(dash);
    g.beginPath();
    for (let i = 0; i < s.length; i++) {
      if (i > 0) {
        g.lineTo(this.x(s[i]), lane.y(gears[i - 1]));
      }
      g[i === 0 ? "moveTo" : "lineTo"](this.x(s[i]), lane.y(gears[i]));
    }
    g.stroke();
    g.restore();
  }

  frame(g, c, w, lane, [low, high]) {
    lane.y = scale(low, high, lane.bottom, lane.top);
    g.fillStyle = c.muted;
    g.textAlign = "left";
    g.textBaseline = "bottom";
    g.fillText(lane.title, LEFT, lane.top - 3);
    g.textAlign = "right";
    g.textBaseline = "middle";
    const marks = lane.stepped
      ? ticks(Math.ceil(low), Math.floor(high), 4).filter(Number.isInteger)
      : ticks(low, high, Math.max(2, (lane.bottom - lane.top) / 34));
    const places = decimals(marks);
    g.strokeStyle = c.rule;
    g.lineWidth = 1;
    for (const mark of marks) {
      const y = Math.round(lane.y(mark)) + 0.5;
      g.beginPath();
      g.moveTo(LEFT, y);
      g.lineTo(w - RIGHT, y);
      g.stroke();
      g.fillText(lane.signed ? signed(mark, places) : fixed(mark, places), LEFT - 6, y);
    }
  }

  axis(g, c, w, h, from, to) {
    g.textBaseline = "top";
    let free = 0;
    for (const corner of this.sheet.corners) {
      const parts = corner.to >= corner.from
        ? [[corner.from, corner.to]]
        : [[corner.from, this.sheet.lengthM], [0, corner.to]];
      g.fillStyle = c.wash;
      for (const [a, b] of parts) {
        const left = Math.max(LEFT, this.x(a));
        const right = Math.min(w - RIGHT, this.x(b));
        if (right > left) {
          g.fillRect(left, TOP - 4, right - left, h - TOP - BOTTOM + 8);
        }
      }
      const middle = this.x(corner.apex);
      if (middle > LEFT && middle < w - RIGHT && middle - 11 > free) {
        g.fillStyle = c.muted;
        g.textAlign = "center";
        g.fillText("T" + corner.number, middle, h - BOTTOM + 5);
        free = middle + 11;
      }
    }
  }

  /** The cursor and what is under it, on a canvas of its own. */
  draw(cursor = this.cursor) {
    this.cursor = cursor;
    if (!this.plots) {
      return;
    }
    const { g, w, h } = surface(this.over);
    const [from, to] = this.range();
    if (cursor === null || cursor < from || cursor > to) {
      return;
    }
    const c = colours();
    const px = this.x(cursor);
    if (this.drag !== null) {
      g.fillStyle = c.now;
      g.globalAlpha = 0.12;
      g.fillRect(Math.min(px, this.x(this.drag)), TOP, Math.abs(px - this.x(this.drag)), h - TOP - BOTTOM);
      g.globalAlpha = 1;
    }
    g.strokeStyle = c.ink;
    g.lineWidth = 1;
    g.beginPath();
    g.moveTo(px, TOP - 4);
    g.lineTo(px, h - BOTTOM + 3);
    g.stroke();
    const s = this.lap.columns.s;
    g.font = FONT;
    for (const lane of this.plots) {
      lane.lists.forEach((list, k) => {
        const value = lane.stepped ? list[s.findLastIndex((at) => at <= cursor)] ?? list[0] : valueAt(s, list, cursor);
        g.fillStyle = k === 0 ? c.now : c.pin;
        g.beginPath();
        g.arc(px, lane.y(value), 3, 0, 7);
        g.fill();
        const text = lane.signed ? signed(value, lane.digits) : fixed(value, lane.digits);
        const tx = w - RIGHT - (lane.lists.length - k) * 56 + 56;
        g.textAlign = "right";
        g.textBaseline = "bottom";
        const width = g.measureText(text).width;
        g.fillStyle = c.paper;
        g.fillRect(tx - width - 2, lane.top - 17, width + 4, 15);
        g.fillStyle = k === 0 ? c.now : c.pin;
        g.fillText(text, tx, lane.top - 3);
      });
    }
  }
}
