// The landscape of a knob: lap time over its whole range, all else as it stands. Below is faster.

import { svg } from "./dom.js";

const W = 150;
const H = 30;
const FOOT = 5;
const EDGE = 4;

/** Setting at a place of the strip, 0 to 1 across its drawn width. */
export function settingAt(knob, share) {
  const inner = Math.max(0, Math.min(1, (share * W - EDGE) / (W - 2 * EDGE)));
  const low = knob.settings[0];
  const wanted = low + inner * (knob.settings.at(-1) - low);
  return knob.settings.reduce((best, s) => (Math.abs(s - wanted) < Math.abs(best - wanted) ? s : best));
}

/** Ends of the band at each setting known: what is told at some settings, less the curve, changes evenly between them. */
function doubted(known, standing, told) {
  if (told.length === 0) {
    return [];
  }
  const curve = (s) => known.reduce((best, p) => (Math.abs(p[0] - s) < Math.abs(best[0] - s) ? p : best))[1];
  const away = [[standing, 0, 0], ...told.map(([s, low, high]) => [s, low - curve(s), high - curve(s)])].sort((a, b) => a[0] - b[0]);
  return known.map(([s, difference]) => {
    const after = away.find((one) => one[0] >= s) ?? away.at(-1);
    const before = away.findLast((one) => one[0] <= s) ?? away[0];
    const share = after[0] > before[0] ? (s - before[0]) / (after[0] - before[0]) : 0;
    return [s, ...[1, 2].map((end) => difference + before[end] + share * (after[end] - before[end]))];
  });
}

/** The strip of a knob that stands somewhere; found is its landscape, if there is one yet. */
export function strip(knob, standing, pinned, found, visible) {
  const low = Math.min(knob.settings[0], standing, pinned ?? standing);
  const high = Math.max(knob.settings.at(-1), standing, pinned ?? standing);
  const x = (s) => EDGE + ((s - low) / (high - low || 1)) * (W - 2 * EDGE);
  const parts = [];
  const points = (found && found.points) || [];
  const known = points.filter((p) => p[1] !== null);
  const doubt = doubted(known, standing, found?.band?.points ?? []);
  const least = Math.min(0, ...known.map((p) => p[1]));
  const most = Math.max(0, ...known.map((p) => p[1]));
  // What the driver's laps can show is the least that fills the strip: what cannot be seen looks flat.
  const span = Math.max(most - least, 2 * visible);
  const middle = (least + most) / 2;
  const y = (d) => 2 + (H - FOOT - 4) * (0.5 - (d - middle) / span);
  if (knob.seen) {
    const top = Math.max(0, y(visible));
    const bottom = Math.min(H - FOOT, y(-visible));
    if (known.length > 0) {
      parts.push(svg("rect", { class: "band", x: 0, y: top, width: W, height: Math.max(0, bottom - top) }));
    }
    if (doubt.length > 1) {
      const edge = (end, list) => list.map(([s, ...ends]) => `${x(s).toFixed(1)} ${Math.max(-H, Math.min(2 * H, y(ends[end]))).toFixed(1)}`).join("L");
      parts.push(svg("path", { class: found.band.old ? "doubt before" : "doubt", d: `M${edge(0, doubt)}L${edge(1, [...doubt].reverse())}Z` }));
    }
    const n = knob.settings.length;
    const every = Math.ceil(n / 40);
    const marks = knob.settings.filter((_, i) => i % every === 0).map((s) => `M${x(s).toFixed(1)} ${H - FOOT + 1}v3`);
    parts.push(svg("path", { class: "ticks", d: marks.join("") }));
    let d = "";
    let pen = false;
    for (const [s, difference] of points) {
      if (difference === null) {
        pen = false;
      } else {
        d += `${pen ? "L" : "M"}${x(s).toFixed(1)} ${y(difference).toFixed(1)}`;
        pen = true;
      }
    }
    parts.push(svg("path", { class: "curve", d }));
    const none = points.filter((p) => p[1] === null);
    if (none.length > 0) {
      parts.push(svg("path", { class: "none", d: none.map((p) => `M${(x(p[0]) - 2).toFixed(1)} ${H - FOOT - 8}l4 4m0 -4l-4 4`).join("") }));
    }
    if (pinned !== undefined && pinned !== null) {
      parts.push(svg("path", { class: "pinned", d: `M${x(pinned).toFixed(1)} 5l-3.5 -5h7z` }));
    }
    const height = known.length > 0 ? y(0) : (H - FOOT) / 2;
    parts.push(svg("line", { class: "now", x1: x(standing), x2: x(standing), y1: 0, y2: H }));
    parts.push(svg("circle", { class: "now", cx: x(standing), cy: height, r: 3.2 }));
  } else {
    const hatch = [];
    for (let i = -H; i < W; i += 7) {
      hatch.push(`M${i} ${H}l${H} ${-H}`);
    }
    parts.push(svg("path", { class: "hatch", d: hatch.join("") }));
  }
  return svg("svg", { class: "strip", viewBox: `0 0 ${W} ${H}`, "aria-hidden": "true" }, parts);
}
