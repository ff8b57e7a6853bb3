// The circuit from above. Ticks stand across the line where time is won and lost: to its right where the setup in hand gains.

import { colours, indexAt, surface, valueAt } from "./plot.js";

const MARGIN = 26;
const LONGEST_TICK = 16;

export class TrackMap {
  constructor(canvas, moved) {
    this.canvas = canvas;
    this.cursor = null;
    canvas.addEventListener("pointermove", (event) => moved(this.nearest(event)));
    canvas.addEventListener("pointerdown", (event) => moved(this.nearest(event)));
  }

  set(sheet, lap, zoom) {
    this.sheet = sheet;
    this.lap = lap;
    this.zoom = zoom;
    this.draw();
  }

  place(s) {
    const { s: all, x, y } = this.sheet.map;
    return [this.x(valueAt(all, x, s)), this.y(valueAt(all, y, s))];
  }

  nearest(event) {
    const box = this.canvas.getBoundingClientRect();
    const px = event.clientX - box.left;
    const py = event.clientY - box.top;
    const { s, x, y } = this.sheet.map;
    let best = 0;
    let least = Infinity;
    for (let i = 0; i < s.length; i++) {
      const away = (this.x(x[i]) - px) ** 2 + (this.y(y[i]) - py) ** 2;
      if (away < least) {
        least = away;
        best = i;
      }
    }
    return s[best];
  }

  draw(cursor = this.cursor) {
    this.cursor = cursor;
    if (!this.sheet || this.canvas.clientWidth === 0) {
      return;
    }
    const { g, w, h } = surface(this.canvas);
    const c = colours();
    const { s, x, y } = this.sheet.map;
    const [x0, x1, y0, y1] = [Math.min(...x), Math.max(...x), Math.min(...y), Math.max(...y)];
    const size = Math.min((w - 2 * MARGIN) / (x1 - x0 || 1), (h - 2 * MARGIN) / (y1 - y0 || 1));
    const cx = (x0 + x1) / 2;
    const cy = (y0 + y1) / 2;
    this.x = (v) => w / 2 + (v - cx) * size;
    this.y = (v) => h / 2 - (v - cy) * size;
    g.lineWidth = 2;
    g.strokeStyle = c.ink;
    g.beginPath();
    for (let i = 0; i < s.length; i++) {
      g[i === 0 ? "moveTo" : "lineTo"](this.x(x[i]), this.y(y[i]));
    }
    g.stroke();
    if (this.zoom && this.zoom.to > this.zoom.from) {
      g.lineWidth = 5;
      g.beginPath();
      for (let i = indexAt(s, this.zoom.from); i < s.length && s[i] <= this.zoom.to; i++) {
        g.lineTo(this.x(x[i]), this.y(y[i]));
      }
      g.stroke();
    }
    this.ticks(g, c);
    this.names(g, c);
    const [sx, sy] = this.place(0);
    g.fillStyle = c.paper;
    g.strokeStyle = c.ink;
    g.lineWidth = 1.5;
    g.beginPath();
    g.rect(sx - 3.5, sy - 3.5, 7, 7);
    g.fill();
    g.stroke();
    if (cursor !== null) {
      const [px, py] = this.place(cursor);
      g.fillStyle = c.now;
      g.beginPath();
      g.arc(px, py, 5.5, 0, 7);
      g.fill();
    }
  }

  ticks(g, c) {
    const lap = this.lap;
    if (!lap || !lap.behind) {
      return;
    }
    const s = lap.columns.s;
    const step = this.sheet.lengthM / 160;
    const rates = [];
    for (let at = step / 2; at < this.sheet.lengthM; at += step) {
      const from = valueAt(s, lap.behind, Math.max(0, at - step / 2));
      const to = valueAt(s, lap.behind, Math.min(this.sheet.lengthM, at + step / 2));
      rates.push([at, (to - from) / step]);
    }
    const most = Math.max(2e-6, ...rates.map((r) => Math.abs(r[1])));
    g.lineWidth = 2;
    g.strokeStyle = c.now;
    for (const [at, rate] of rates) {
      const [ax, ay] = this.place(Math.max(0, at - 2));
      const [bx, by] = this.place(Math.min(this.sheet.lengthM, at + 2));
      const length = Math.hypot(bx - ax, by - ay) || 1;
      // Positive to the left of the way driven, as everywhere; a loss is positive.
      const [nx, ny] = [(by - ay) / length, -(bx - ax) / length];
      const tall = (rate / most) * LONGEST_TICK;
      if (Math.abs(tall) < 0.7) {
        continue;
      }
      const [mx, my] = [(ax + bx) / 2, (ay + by) / 2];
      const gap = Math.sign(tall) * 3;
      g.beginPath();
      g.moveTo(mx + nx * gap, my + ny * gap);
      g.lineTo(mx + nx * (gap + tall), my + ny * (gap + tall));
      g.stroke();
    }
  }

  names(g, c) {
    g.fillStyle = c.muted;
    g.textAlign = "center";
    g.textBaseline = "middle";
    for (const corner of this.sheet.corners) {
      const [px, py] = this.place(corner.apex);
      const [ax, ay] = this.place(Math.max(0, corner.apex - 5));
      const [bx, by] = this.place(Math.min(this.sheet.lengthM, corner.apex + 5));
      const length = Math.hypot(bx - ax, by - ay) || 1;
      const side = corner.left ? -1 : 1;
      g.fillText("T" + corner.number, px + (side * 15 * (by - ay)) / length, py - (side * 15 * (bx - ax)) / length);
    }
  }
}
