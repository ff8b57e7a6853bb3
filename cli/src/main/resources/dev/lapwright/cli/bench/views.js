// The views beside the lap: a picture of the setup in hand against the one pinned, and below it the command's own report.

import { blocks } from "./blocks.js";
import { el, fixed } from "./dom.js";
import { colours, decimals, extent, polyline, scale, surface, ticks } from "./plot.js";

import { shown, shownAll, unit } from "./units.js";

export const TITLES = { lap: "Lap", balance: "Balance", gears: "Gears", air: "Air", tyres: "Tyres and fuel" };

const PHASES = ["entry", "lift-off", "middle", "exit"];
const LEFT = 56;

function axes(g, c, w, h, x, y, [xTitle, yTitle], [x0, x1], [y0, y1]) {
  g.strokeStyle = c.rule;
  g.fillStyle = c.muted;
  g.lineWidth = 1;
  const xs = ticks(x0, x1, w / 90);
  const ys = ticks(y0, y1, h / 45);
  g.textAlign = "center";
  g.textBaseline = "top";
  for (const t of xs) {
    g.beginPath();
    g.moveTo(x(t), y(y0));
    g.lineTo(x(t), y(y1));
    g.stroke();
    g.fillText(fixed(t, decimals(xs)), x(t), y(y0) + 4);
  }
  g.textAlign = "right";
  g.textBaseline = "middle";
  for (const t of ys) {
    g.beginPath();
    g.moveTo(x(x0), y(t));
    g.lineTo(x(x1), y(t));
    g.stroke();
    g.fillText(fixed(t, decimals(ys)), x(x0) - 5, y(t));
  }
  g.textBaseline = "bottom";
  g.fillText(xTitle, x(x1), h - 1);
  g.textAlign = "left";
  g.textBaseline = "top";
  g.fillText(yTitle, 2, 0);
}

/** Which axle gives up first: to the left the rear, to the right the front. */
function balance(canvas, answer) {
  const corners = answer.now;
  canvas.style.height = `${corners.length * 30 + 54}px`;
  const { g, w, h } = surface(canvas);
  const c = colours();
  const all = [corners, answer.reference || []].flat().flatMap((corner) => PHASES.map((p) => corner[p]));
  const most = Math.max(0.05, ...all.filter((v) => v !== null).map(Math.abs)) * 1.08;
  const names = Math.min(150, w * 0.3);
  const x = scale(-most, most, names, w - 12);
  g.fillStyle = c.muted;
  g.textBaseline = "top";
  g.textAlign = "left";
  g.fillText("\u2190 rear gives up first", names, 0);
  g.textAlign = "right";
  g.fillText("front gives up first, g \u2192", w - 12, 0);
  const marks = ticks(-most, most, w / 110);
  g.textAlign = "center";
  g.strokeStyle = c.rule;
  for (const t of marks) {
    g.beginPath();
    g.moveTo(x(t), 20);
    g.lineTo(x(t), h - 18);
    g.stroke();
    g.fillText(fixed(Math.abs(t), decimals(marks)), x(t), h - 14);
  }
  g.strokeStyle = c.ink;
  g.beginPath();
  g.moveTo(x(0), 18);
  g.lineTo(x(0), h - 18);
  g.stroke();
  corners.forEach((corner, i) => {
    const y = 36 + i * 30;
    g.fillStyle = c.ink;
    g.textAlign = "right";
    g.textBaseline = "middle";
    g.fillText(corner.label, names - 10, y, names - 12);
    PHASES.forEach((phase, k) => {
      const py = y - 9 + k * 6;
      const held = answer.reference?.[i]?.[phase];
      const value = corner[phase];
      if (held !== null && held !== undefined && value !== null) {
        g.strokeStyle = c.pin;
        g.beginPath();
        g.moveTo(x(held), py - 3);
        g.lineTo(x(held), py + 3);
        g.stroke();
      }
      if (value !== null) {
        g.fillStyle = c.now;
        g.globalAlpha = 1 - 0.2 * k;
        g.fillRect(Math.min(x(0), x(value)), py - 2, Math.abs(x(value) - x(0)) || 1, 4);
        g.globalAlpha = 1;
      }
    });
  });
}

/** The force of each gear over speed, against what holds the car back. */
function gears(canvas, answer) {
  canvas.style.height = "320px";
  const { g, w, h } = surface(canvas);
  const c = colours();
  const inUnits = (one) => one && { ...one, topKmh: shown(one.topKmh, "km/h"), speedKmh: shownAll(one.speedKmh, "km/h"),
    gears: one.gears.map((gear) => ({ ...gear, fromKmh: shown(gear.fromKmh, "km/h"), limitKmh: shown(gear.limitKmh, "km/h") })),
    forceN: one.forceN.map((force) => shownAll(force, "kN")), resistanceN: shownAll(one.resistanceN, "kN") };
  const now = inUnits(answer.now);
  const reference = inUnits(answer.reference);
  const most = Math.max(...now.forceN.flat().filter((v) => v !== null)) / 1000;
  const xr = [0, Math.max(now.speedKmh.at(-1), reference ? reference.speedKmh.at(-1) : 0)];
  const x = scale(...xr, LEFT, w - 12);
  const y = scale(0, most * 1.05, h - 36, 20);
  axes(g, c, w, h, x, y, [`speed, ${unit("km/h")}`, `force at the wheels, ${unit("kN")}, and what holds the car back`], xr, [0, most * 1.05]);
  const draw = (one, colour, dash, width) => {
    for (const force of one.forceN) {
      polyline(g, one.speedKmh, force.map((f) => f === null ? null : f / 1000), x, y, { colour, dash, width });
    }
  };
  if (reference) {
    draw(reference, c.pin, [5, 3], 1.3);
  }
  draw(now, c.now, [], 1.8);
  polyline(g, now.speedKmh, now.resistanceN.map((f) => f / 1000), x, y, { colour: c.ink, width: 1.3 });
  g.fillStyle = c.ink;
  g.textAlign = "left";
  g.textBaseline = "bottom";
  for (const gear of now.gears) {
    const i = now.speedKmh.findIndex((v) => v >= (gear.fromKmh + gear.limitKmh) / 2);
    const force = now.forceN[gear.gear - 1][i];
    if (force) {
      g.fillText(`${gear.gear}`, x(now.speedKmh[i]), y(force / 1000) - 4);
    }
  }
  for (const [one, colour] of [[reference, c.pin], [now, c.now]]) {
    if (one) {
      g.strokeStyle = colour;
      g.beginPath();
      g.moveTo(x(one.topKmh), y(0));
      g.lineTo(x(one.topKmh), y(most * 0.25));
      g.stroke();
    }
  }
  g.fillStyle = c.now;
  g.textAlign = "right";
  g.fillText(`top speed ${fixed(now.topKmh, 1)}`, x(now.topKmh) - 4, y(most * 0.25));
}

/** What each gear is used for: seconds of the lap. */
function gearTimes(answer) {
  const most = Math.max(...answer.now.gears.map((gear) => gear.timeS), 1);
  return el("ul", { class: "bars" }, answer.now.gears.map((gear, i) => {
    const held = answer.reference?.gears[i];
    const bar = el("span", { class: "bar" });
    bar.style.width = `${(100 * gear.timeS) / most}%`;
    return el("li", {}, el("span", {}, `gear ${gear.gear}`), el("span", { class: "rail" }, bar),
      el("span", { class: "figure" }, fixed(gear.timeS, 1) + " s"),
      el("span", { class: "figure held" }, held ? fixed(held.timeS, 1) + " s" : ""));
  }));
}

/** Top speed against cornering, along the range of each knob that moves air. */
function air(canvas, answer, knobs) {
  canvas.style.height = "340px";
  const { g, w, h } = surface(canvas);
  const c = colours();
  const curves = knobs.sheet.knobs.filter((knob) => knob.air).map((knob) => ({ knob, points: (knobs.found.get(knob.name)?.points ?? []).filter((p) => p[2] !== null && p[3] !== null).map((p) => [p[0], p[1], shown(p[2], "km/h"), shown(p[3], "km/h")]) })).filter((curve) => curve.points.length > 1);
  const inUnits = (one) => one && { topKmh: shown(one.topKmh, "km/h"), cornerKmh: shown(one.cornerKmh, "km/h") };
  const [now, reference] = [inUnits(answer.now), inUnits(answer.reference)];
  const marks = [now, reference].filter(Boolean);
  const xr = extent([curves.flatMap((curve) => curve.points.map((p) => p[2])), marks.map((m) => m.topKmh)], 2, 0.08);
  const yr = extent([curves.flatMap((curve) => curve.points.map((p) => p[3])), marks.map((m) => m.cornerKmh)], 1, 0.12);
  const x = scale(...xr, LEFT, w - 16);
  const y = scale(...yr, h - 36, 20);
  axes(g, c, w, h, x, y, [`top speed, ${unit("km/h")}`, `mean speed in corners, ${unit("km/h")}`], xr, yr);
  curves.forEach(({ knob, points }, k) => {
    polyline(g, points.map((p) => p[2]), points.map((p) => p[3]), x, y, { colour: c.ink, width: 1.4, dash: [[], [7, 3], [2, 3]][k % 3] });
    g.fillStyle = c.ink;
    g.textBaseline = "bottom";
    for (const p of [points[0], points.at(-1)]) {
      const right = x(p[2]) > w / 2;
      g.textAlign = right ? "right" : "left";
      g.fillText(`${knob.label} ${p[0]} ${knob.unit}`, x(p[2]) + (right ? -5 : 5), y(p[3]) - 3);
    }
  });
  for (const [mark, colour, name] of [[reference, c.pin, "pinned"], [now, c.now, "now"]]) {
    if (mark) {
      g.fillStyle = colour;
      g.beginPath();
      g.arc(x(mark.topKmh), y(mark.cornerKmh), 5, 0, 7);
      g.fill();
      g.textAlign = "left";
      g.textBaseline = name === "now" ? "top" : "bottom";
      g.fillText(name, x(mark.topKmh) + 8, y(mark.cornerKmh) + (name === "now" ? 3 : -3));
    }
  }
}

/** How much each tyre works: kilojoules a lap, as the car stands seen from above. */
function tyres(answer) {
  const most = Math.max(...Object.values(answer.now));
  return el("div", { class: "car" }, Object.entries(answer.now).map(([wheel, energy]) => {
    const held = answer.reference?.[wheel];
    const block = el("span", { class: "tyre" });
    block.style.height = `${(100 * energy) / most}%`;
    return el("div", {}, el("span", { class: "pot" }, block), el("span", { class: "figure" }, `${wheel} ${fixed(energy, 0)} kJ`),
      el("span", { class: "figure held" }, held ? `${fixed(held, 0)} kJ` : ""));
  }));
}

const WORDS = {
  balance: "Which axle gives up first in each corner, and what the other has left then. Bars from above: entry, lift-off, middle, exit; the thin mark is where the pinned setup has it.",
  gears: "Where the rising line meets the last gear, the car goes no faster. Right of the bars: seconds in each gear, now and pinned.",
  air: "Each line is the whole range of one knob: to the right it is faster on the straight, upwards faster in corners.",
  tyres: "Energy that slip puts into each tyre on a lap: it compares the sides and ends of this car, no more. Under each, what the pinned setup makes of it. Below, fuel for the race.",
};

/** Lays out a view's answer. */
export function view(root, name, answer, knobs, extra) {
  const parts = [el("p", { class: "reading" }, WORDS[name])];
  let canvas = null;
  if (answer.failure) {
    parts.push(el("p", { class: "caution" }, answer.failure));
  } else {
    if (name !== "tyres") {
      canvas = el("canvas", { class: "plot", role: "img", "aria-label": WORDS[name] + " The tables below hold the same." });
      parts.push(canvas);
    }
    if (name === "gears") {
      parts.push(gearTimes(answer));
    } else if (name === "tyres") {
      parts.push(tyres(answer), extra);
    }
    parts.push(...blocks(answer.blocks ?? []));
  }
  root.replaceChildren(...parts.filter(Boolean));
  if (canvas) {
    ({ balance, gears, air })[name](canvas, answer, knobs);
  }
}
