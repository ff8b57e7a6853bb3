// Drawing on canvas: sizes, scales, ticks and the page's own colours.

/** The colours of the page, as its style has them now. */
export function colours() {
  const style = getComputedStyle(document.documentElement);
  const of = (name) => style.getPropertyValue("--" + name).trim();
  return { paper: of("paper"), ink: of("ink"), muted: of("muted"), rule: of("rule"), wash: of("wash"), now: of("now"), pin: of("pin") };
}

export const FONT = "12px system-ui, sans-serif";

/** A canvas made sharp, cleared, and measured in CSS pixels. */
export function surface(canvas) {
  const ratio = window.devicePixelRatio || 1;
  const w = canvas.clientWidth;
  const h = canvas.clientHeight;
  if (canvas.width !== Math.round(w * ratio) || canvas.height !== Math.round(h * ratio)) {
    canvas.width = Math.round(w * ratio);
    canvas.height = Math.round(h * ratio);
  }
  const g = canvas.getContext("2d");
  g.setTransform(ratio, 0, 0, ratio, 0, 0);
  g.clearRect(0, 0, w, h);
  g.font = FONT;
  g.lineJoin = "round";
  return { g, w, h };
}

/** A linear map of one range onto another. */
export function scale(from, to, first, last) {
  const span = to - from || 1;
  const map = (value) => first + ((value - from) / span) * (last - first);
  map.back = (place) => from + ((place - first) / (last - first)) * span;
  return map;
}

/** Round values within a range, about so many. */
export function ticks(from, to, count) {
  const raw = (to - from) / Math.max(1, count);
  if (!(raw > 0)) {
    return [from];
  }
  const power = 10 ** Math.floor(Math.log10(raw));
  const step = [1, 2, 5, 10].map((m) => m * power).find((s) => s >= raw * 0.999);
  const list = [];
  for (let i = Math.ceil(from / step - 1e-9); i * step <= to + 1e-9 * step; i++) {
    list.push(i * step);
  }
  return list;
}

/** Decimals that tell ticks apart. */
export function decimals(list) {
  const step = list.length > 1 ? Math.abs(list[1] - list[0]) : 1;
  return Math.max(0, Math.min(4, -Math.floor(Math.log10(step) + 1e-9)));
}

/** A line through places; a gap where there is no number. */
export function polyline(g, xs, ys, x, y, style = {}) {
  g.save();
  g.strokeStyle = style.colour;
  g.lineWidth = style.width || 1.5;
  g.setLineDash(style.dash || []);
  g.beginPath();
  let pen = false;
  for (let i = 0; i < xs.length; i++) {
    if (ys[i] === null || ys[i] === undefined) {
      pen = false;
    } else if (pen) {
      g.lineTo(x(xs[i]), y(ys[i]));
    } else {
      g.moveTo(x(xs[i]), y(ys[i]));
      pen = true;
    }
  }
  g.stroke();
  g.restore();
}

/** Range of numbers, a little wider than they are. */
export function extent(lists, least = 0, room = 0.06) {
  let low = Infinity;
  let high = -Infinity;
  for (const list of lists) {
    for (const value of list) {
      if (value !== null && value !== undefined) {
        low = Math.min(low, value);
        high = Math.max(high, value);
      }
    }
  }
  if (!(high >= low)) {
    return [0, 1];
  }
  const span = Math.max(high - low, least);
  const middle = (low + high) / 2;
  return [middle - span * (0.5 + room), middle + span * (0.5 + room)];
}

/** Place of the last number not above a value, in a rising list. */
export function indexAt(list, value) {
  let low = 0;
  let high = list.length - 1;
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (list[middle] <= value) {
      low = middle;
    } else {
      high = middle;
    }
  }
  return low;
}

/** Value of a column at a distance, on a straight line between two rows. */
export function valueAt(s, values, at) {
  const i = indexAt(s, at);
  const w = s[i + 1] > s[i] ? Math.max(0, Math.min(1, (at - s[i]) / (s[i + 1] - s[i]))) : 0;
  return values[i] * (1 - w) + values[i + 1] * w;
}
