// The page: a state, what the server answers about it, and where that is shown.

import { table } from "./blocks.js";
import { byId, el, fixed, strong } from "./dom.js";
import { Knobs, told, turn } from "./knobs.js";
import { TrackMap } from "./map.js";
import { valueAt } from "./plot.js";
import { ask, once, presence } from "./server.js";
import { fromAddress, History } from "./state.js";
import { Tasks } from "./tasks.js";
import { Traces } from "./traces.js";
import { shown, unit, useUnits } from "./units.js";
import { TITLES, view as layView } from "./views.js";

const frozen = byId("frozen") !== null;
const page = { number: 0, laid: 0, waiting: false, again: false, turnedAt: null, answers: {}, cursor: null, news: [], alive: true, note: "" };
const WINDOW = Math.random().toString(36).slice(2, 12);

const state = () => page.history.state;
const letter = (i) => "ABCDEF"[i];

const knobs = new Knobs(byId("knobs"), turned, frozen);
const tasks = new Tasks(el("section", { id: "tasks", "aria-label": "Ask and keep" }), state, takeOver, (edit) => page.history.change(edit), laid);

// --- Turning ---------------------------------------------------------------------------------------------------------

function turned(knob, value) {
  page.turnedAt = page.turnedAt ?? performance.now();
  page.history.change((next) => turn(knob, next.now, value), knob.name);
}

/** Lays another car on the sheet, as its document has it. */
function changeCar(next, name) {
  next.car = name;
  next.now = { name: "now", set: {}, day: next.now.day };
  next.pins = [{ name: "standard", set: {}, day: next.now.day }];
  next.line = { kind: next.line.kind === "middle" ? "middle" : "smoothest" };
}

function changeCircuit(next, name) {
  next.circuit = name;
  next.line = { kind: next.line.kind === "middle" ? "middle" : "smoothest" };
}

function takeOver(one) {
  if (one.car && !page.start.cars.some((car) => car.name === one.car)) {
    page.start.cars.push({ name: one.car, title: one.title });
  }
  if (one.circuit && !page.start.circuits.some((circuit) => circuit.name === one.circuit)) {
    page.start.circuits.push({ name: one.circuit, title: one.title });
  }
  page.history.change((next) => {
    if (one.line) {
      next.line = one.line;
    } else if (one.circuit) {
      changeCircuit(next, one.circuit);
    } else if (one.car) {
      changeCar(next, one.car);
    } else if (one.setup) {
      next.now.set = { ...one.setup };
    } else {
      Object.assign(next.now.set, one.set);
    }
  });
}

/** Lays the documents of an event on the sheet in place of those that they were copied from; setups and pins stay. */
function laid({ car, circuit, carTitle, circuitTitle }) {
  page.start.cars.push({ name: car, title: carTitle });
  page.start.circuits.push({ name: circuit, title: circuitTitle });
  page.history.change((next) => { Object.assign(next, { car, circuit }); });
}

/** Tells the settings in which a setup differs from the one pinned first. */
function differing(stand, from) {
  return page.sheet.knobs
    .filter((knob) => valueOf(knob, stand) !== valueOf(knob, from))
    .map((knob) => `${knob.day ? knob.label.toLowerCase() : knob.name} ${told(knob, valueOf(knob, stand))}`);
}

function valueOf(knob, stand) {
  const part = knob.day ? stand.day : stand.set;
  return part[knob.day ? knob.name.slice("conditions.".length) : knob.name] ?? knob.standard;
}

function pin() {
  if (state().pins.length >= page.start.mostPins) {
    note(`There are ${page.start.mostPins} pins already: take one off first.`);
    return;
  }
  const reference = state().pins[0];
  const words = reference ? differing(state().now, reference) : [];
  const name = (words.length > 0 ? words.join(", ") : "standard").slice(0, 60);
  page.history.change((next) => next.pins.push({ ...next.now, name }));
}

// --- Asking ----------------------------------------------------------------------------------------------------------

/** Asks for the lap of the state; while a lap is on its way, only the newest state is kept. */
async function question() {
  if (frozen || !page.sheet) {
    return;
  }
  if (page.waiting) {
    page.again = true;
    return;
  }
  page.waiting = true;
  page.again = false;
  const number = ++page.number;
  const laid = page.laid;
  const began = page.turnedAt;
  const seen = new Set();
  let looked = false;
  page.turnedAt = null;
  const arrived = () => {
    if (page.waiting && number === page.number) {
      page.waiting = false;
      if (page.again) {
        question();
      }
    }
  };
  try {
    await ask("lap", { ...state(), window: WINDOW, number, hand: knobs.hand, zoom: page.zoom ?? {} }, (message) => {
      // What is still told of a sheet that has been taken away is not heard.
      const current = laid === page.laid;
      if (current && (message.type === "lap" || number === page.number)) {
        hear(message, began);
      }
      if (current && message.type === "landscapes" && number === page.number && began !== null) {
        knobs.drawDue();
        performance.measure("turned to all told", { start: began, end: performance.now() });
      }
      if (current && message.type === "landscape" && number === page.number) {
        seen.add(message.name);
        if (seen.size === page.sheet.knobs.length && began !== null && !looked) {
          looked = true;
          knobs.drawDue();
          performance.measure("turned to all landscapes", { start: began, end: performance.now() });
        }
      }
      if ((message.type === "bands" || message.type === "words") && current && number === page.number && began !== null) {
        knobs.drawDue();
        // With the laps of drawn cars that it took so far.
        performance.measure(`turned to all ${message.type}`, { start: began, end: performance.now(), detail: message.laps });
      }
      if (message.type === "lap" || message.type === "fault") {
        arrived();
      }
    });
    if (number === page.number) {
      performance.mark("all told");
      if (began !== null) {
        performance.measure("turned to all doubt told", { start: began, end: performance.now() });
      }
    }
  } catch {
    gone(false);
  }
  arrived();
}

/** Fetches the sheet of the state's car, circuit and line, then asks. */
async function fetchSheet() {
  const asked = state();
  page.sheet = null;
  page.laid++;
  page.answers = {};
  note("Laying out the sheet …");
  try {
    await ask("sheet", asked, (message) => {
      if (asked.car !== state().car || asked.circuit !== state().circuit) {
        return;
      }
      if (message.type === "progress") {
        note(`Looking for the fastest line: step ${message.done} …`);
      } else if (message.type === "fault") {
        note(message.what);
      } else if (message.type === "sheet") {
        note("");
        hear(message);
        question();
      }
    });
  } catch {
    gone(false);
  }
}

/** All that how sure a lap is hangs on. */
function driven() {
  const { now, pins, laps, scatterS, said } = state();
  return JSON.stringify([page.laid, now, pins, laps, scatterS, said]);
}

function hear(message, began = null) {
  if (message.type === "sheet") {
    page.sheet = message;
    page.lap = null;
    knobs.build(message);
    knobs.show(state());
    if (!frozen) {
      tasks.build(message, page.start);
    }
    subject();
    pins();
  } else if (message.type === "lap") {
    page.lap = message;
    // How sure it is stands as long as only what is looked at has changed.
    if (page.doubt?.of !== driven()) {
      page.doubt = null;
    }
    knobs.visible = message.visibleS;
    knobs.refuse(null);
    knobs.old();
    knobs.show(state());
    headline();
    pins();
    if (state().view === "lap") {
      showLap();
    }
    if (began !== null) {
      performance.measure("turned to drawn", { start: began, end: performance.now() });
    }
  } else if (message.type === "landscape") {
    knobs.fresh(message, page.doubt !== null);
    if (state().view === "air" && page.answers.air && knobs.sheet.knobs.find((k) => k.name === message.name)?.air) {
      showView();
    }
  } else if (message.type === "band") {
    knobs.band(message);
  } else if (message.type === "doubt") {
    page.doubt = { ...message, of: driven() };
    headline();
  } else if (message.type === "view") {
    page.answers[message.view] = message;
    if (message.view === state().view) {
      showView();
    }
  } else if (message.type === "fault") {
    knobs.refuse(message.what);
    byId("head").classList.add("older");
    note(`No lap so: ${message.what} What is shown is the lap before.`);
  }
}

// --- What is shown ---------------------------------------------------------------------------------------------------

function note(text) {
  page.note = text;
  notes();
}

function notes() {
  const list = [];
  if (!page.alive) {
    list.push(el("p", { class: "caution" }, page.ended
      ? "The bench has ended. What you see stays; start 'lapwright bench' again to turn knobs."
      : "The bench does not answer. It may have been stopped: what you see stays, and goes on when it is back."));
  }
  if (page.note) {
    list.push(el("p", {}, page.note));
  }
  for (const news of page.news) {
    list.push(el("p", {}, news + " The laps here are of the older text; the file is left alone. ",
      el("button", { type: "button", class: "word", onclick: readAgain }, "read it again")));
  }
  for (const caution of page.lap?.cautions ?? []) {
    list.push(el("p", { class: "caution" }, el("strong", {}, "Caution: "), caution));
  }
  for (const remark of [...(page.lap?.notes ?? []), page.sheet?.note ?? ""].filter(Boolean)) {
    list.push(el("p", {}, remark));
  }
  byId("notes").replaceChildren(...list);
}

async function readAgain() {
  try {
    // Their names and days may have changed as well.
    const { cars, circuits, days } = await once("again", state());
    Object.assign(page.start, { cars, circuits, days });
    page.subjectShown = null;
    page.news = [];
    fetchSheet();
  } catch (fault) {
    note(fault.message);
  }
}

function choice(label, list, value, chosen) {
  if (frozen) {
    return el("span", { class: "plain" }, list.find((one) => one.name === value)?.title ?? value);
  }
  return el("select", { "aria-label": label, onchange: (event) => chosen(event.target.value) },
    list.map((one) => el("option", { value: one.name, selected: one.name === value }, one.title)));
}

const sameDay = (a, b) => Object.keys({ ...a, ...b }).every((name) => a[name] === b[name]);

/** The days that have names, and what has been turned where it is none of them. */
function days() {
  const turned = "as turned";
  const names = page.start.days.map(({ title }) => ({ name: title, title }));
  const here = page.start.days.find(({ day }) => sameDay(day, state().now.day))?.title ?? turned;
  return choice("Day", here === turned ? [...names, { name: turned, title: "day as turned" }] : names, here, takeDay);
}

/** A day chosen as a whole is that of the sheet: pins that stood on the day of the setup in hand go along. */
function takeDay(title) {
  const found = page.start.days.find((one) => one.title === title);
  if (found) {
    page.history.change((next) => {
      const before = next.now.day;
      [next.now, ...next.pins].filter((one) => sameDay(one.day, before)).forEach((one) => { one.day = { ...found.day }; });
    });
  }
}

/** The units that are read; what is typed and turned keeps those of the documents. */
function unitsOf() {
  const systems = [{ name: "si", title: "SI" }, { name: "imperial", title: "imperial" }];
  return choice("Units", systems, state().units ?? "si", (value) => page.history.turn((next) => { next.units = value; }));
}

function subject() {
  const now = state();
  const look = JSON.stringify([now.units, now.car, now.circuit, now.line, now.now.day, page.sheet?.title, page.sheet?.line, page.history.past.length > 0, page.history.future.length > 0]);
  if (page.subjectShown === look) {
    return;
  }
  page.subjectShown = look;
  const set = (edit) => page.history.change(edit);
  byId("subject").replaceChildren(...[
    choice("Car", page.start.cars, now.car, (value) => set((next) => changeCar(next, value))),
    "at",
    choice("Circuit", page.start.circuits, now.circuit, (value) => set((next) => changeCircuit(next, value))),
    el("span", { class: "aside" }, "day:"),
    days(),
    frozen ? null : el("span", { class: "aside" }, "units:"),
    frozen ? null : unitsOf(),
    el("span", { class: "line" }, page.sheet ? "line: " + page.sheet.line.replace("; distances below are along it", "") : "…"),
    (now.line.kind === "fastest" || now.line.kind === "file") && !frozen
      ? el("button", { type: "button", class: "word", onclick: () => set((next) => { next.line = { kind: "smoothest" }; }) }, "back to the smoothest line")
      : null,
    frozen ? el("span", { class: "frozen" }, "A frozen page: its knobs do not turn. 'lapwright bench' has one that does.") : tools(),
  ].filter(Boolean));
  document.title = page.sheet ? `${page.sheet.title} – Lapwright bench` : "Lapwright bench";
}

function tools() {
  const button = (text, keys, run, off) => el("button", { type: "button", class: "word", title: `${text} (key ${keys})`, onclick: run, disabled: off }, text);
  return el("span", { class: "tools" },
    button("undo", "U", () => page.history.undo(), page.history.past.length === 0),
    button("redo", "R", () => page.history.redo(), page.history.future.length === 0),
    button("keys", "?", keysShown));
}

function keysShown() {
  note(byId("notes").dataset.keys === "on" ? "" : "Keys: Tab goes from knob to knob, arrows turn one click, Page up and down several, Home and End to the ends, Backspace back to the pin. "
    + "P pins, U undoes, R redoes, 1 to 5 choose the view, N and B go to the next corner and the one before, A shows the whole lap.");
  byId("notes").dataset.keys = byId("notes").dataset.keys === "on" ? "off" : "on";
}

function headline() {
  const lap = page.lap;
  byId("head").classList.remove("older");
  byId("time").textContent = lap.time;
  const [first, ...rest] = lap.headline;
  const doubt = page.doubt;
  const leading = doubt?.first ?? first;
  // While it is not known how sure it is, its lines keep their room: what is below stays under the hand.
  const lay = (id, parts) => {
    const part = byId(id);
    part.style.minHeight = doubt || part.offsetHeight === 0 ? "" : `${part.offsetHeight}px`;
    part.replaceChildren(...parts.filter(Boolean));
  };
  const [sure, ...known] = (doubt?.lines ?? []).map((text) => el("p", {}, strong(text)));
  const [where, ...laps] = rest.map((text) => el("p", {}, text));
  lay("words", [leading ? el("p", { class: "first" }, leading) : null, sure]);
  // Where it arises has no more digits than its doubt leaves.
  lay("more", [doubt?.where ? el("p", {}, doubt.where) : where, ...known, doubt?.failure ? el("p", { class: "caution" }, doubt.failure) : null, ...laps]);
  page.note = page.note.startsWith("No lap so") || page.note.startsWith("Laying") ? "" : page.note;
  notes();
}

/** Puts a pin elsewhere in the row; the first is the reference. */
function movePin(from, to) {
  if (to >= 0 && to < state().pins.length && to !== from) {
    page.history.change((next) => { next.pins.splice(to, 0, ...next.pins.splice(from, 1)); });
    document.querySelectorAll(".pins .letter")[to]?.focus();
  }
}

/** The letter of a pin, by which it is dragged to another place; arrow keys do the same. */
function handle(i) {
  return el("button", {
    type: "button",
    class: "letter",
    title: "Drag it elsewhere, or use the arrow keys; the first is the reference",
    "aria-label": `Move ${letter(i)}: drag, or arrow keys`,
    onpointerdown: (event) => dragPin(event, i),
    onkeydown: (event) => {
      const by = { ArrowLeft: -1, ArrowUp: -1, ArrowRight: 1, ArrowDown: 1 }[event.key];
      if (by) {
        event.preventDefault();
        event.stopPropagation();
        movePin(i, i + by);
      }
    },
  }, letter(i));
}

/** Listens on the window: the row may be drawn anew while a pin is on its way. */
function dragPin(event, from) {
  event.preventDefault();
  const items = () => [...document.querySelectorAll(".pins li")];
  let to = from;
  const over = (move) => {
    const under = document.elementFromPoint(move.clientX, move.clientY)?.closest(".pins li");
    to = under ? items().indexOf(under) : from;
    items().forEach((item, k) => item.classList.toggle("target", k === to && k !== from));
  };
  const end = (last) => {
    window.removeEventListener("pointermove", over);
    ["pointerup", "pointercancel"].forEach((kind) => window.removeEventListener(kind, end));
    items().forEach((item) => item.classList.remove("target"));
    if (last.type === "pointerup") {
      movePin(from, to);
    }
  };
  window.addEventListener("pointermove", over);
  ["pointerup", "pointercancel"].forEach((kind) => window.addEventListener(kind, end));
}

function pins() {
  const list = state().pins.map((one, i) => {
    const answer = page.lap?.pins[i];
    const act = (text, label, edit) => frozen ? null : el("button", { type: "button", class: "word small", "aria-label": `${label} ${letter(i)}`, onclick: () => page.history.change(edit) }, text);
    return el("li", { class: i === 0 ? "reference" : null, title: answer ? `${answer.setup}; ${answer.day}` : null },
      frozen || state().pins.length < 2 ? el("span", { class: "letter" }, letter(i)) : handle(i), " ",
      el("span", { class: "name" }, one.name), " ",
      el("span", { class: "figure" }, answer ? answer.time ?? answer.failure : "…"),
      i > 0 && answer?.difference ? el("span", { class: "figure held", title: "less the lap in hand" }, ` ${answer.difference}`) : null,
      " ",
      act("go to it", "Turn all knobs to", (next) => { next.now = { ...next.pins[i], name: "now" }; }),
      i > 0 ? act("hold against", "Hold the lap against", (next) => { next.pins.unshift(...next.pins.splice(i, 1)); }) : null,
      act("×", "Take off", (next) => { next.pins.splice(i, 1); }));
  });
  const focused = document.activeElement?.closest(".pins") ? document.activeElement.getAttribute("aria-label") : null;
  byId("pinline").replaceChildren(
    el("ol", { class: "pins", "aria-label": "Pins: setups to hold the lap against; the first is the reference" }, list),
    frozen ? "" : el("button", { type: "button", class: "pin", title: "Pin this setup (key P)", onclick: pin }, "pin this"));
  // Drawn anew it would lose the keyboard.
  [...document.querySelectorAll(".pins button")].find((one) => focused && one.getAttribute("aria-label") === focused)?.focus();
}

function views() {
  byId("views").replaceChildren(...page.start.views.map((name, i) => el("button", {
    type: "button", role: "tab", id: `tab-${name}`, "aria-selected": String(name === state().view), "aria-controls": "view",
    title: `key ${i + 1}`, tabindex: name === state().view ? "0" : "-1",
    onclick: () => page.history.turn((next) => { next.view = name; }),
    onkeydown: (event) => {
      const by = { ArrowRight: 1, ArrowLeft: -1 }[event.key];
      if (by) {
        event.preventDefault();
        const next = page.start.views.at((i + by) % page.start.views.length);
        page.history.turn((changed) => { changed.view = next; });
        byId(`tab-${next}`).focus();
      }
    },
  }, TITLES[name])));
  byId("view").setAttribute("aria-labelledby", `tab-${state().view}`);
}

function showView() {
  const name = state().view;
  if (name === "lap") {
    showLap();
  } else if (page.answers[name]) {
    layView(byId("view"), name, page.answers[name], knobs, race());
  } else {
    byId("view").replaceChildren(el("p", { class: "reading" }, frozen ? "This part was not kept." : "…"));
  }
}

function race() {
  if (frozen) {
    return null;
  }
  const input = el("input", { type: "number", id: "minutes", min: "1", max: "360", value: String(state().minutes), onchange: () => {
    const minutes = Math.max(1, Math.min(360, Number(input.value) || 20));
    page.history.change((next) => { next.minutes = minutes; });
  } });
  return el("p", {}, el("label", { for: "minutes" }, "Race of "), input, " minutes");
}

// --- The lap ---------------------------------------------------------------------------------------------------------

let traces = null;
let map = null;

function layLap() {
  const base = el("canvas", { "aria-hidden": "true" });
  const over = el("canvas", { tabindex: "0", role: "img", "aria-label": "Speed, speed difference, time gap and gear over distance; arrow keys move the cursor. The table below holds the figures." });
  const plan = el("canvas", { class: "plan", role: "img", "aria-label": "The circuit from above, with ticks where time is won and lost" });
  traces = new Traces(base, over, cursor, zoom);
  map = new TrackMap(plan, cursor);
  byId("view").replaceChildren(
    el("div", { class: "zoom", id: "zoom" }),
    el("div", { class: "traces" }, base, over),
    el("div", { class: "below" },
      el("div", { class: "mapbox" }, plan, el("p", { class: "reading", id: "mapwords" })),
      el("div", { id: "under" })),
    el("div", { id: "facts" }),
    el("div", { id: "parts" }));
  byId("view").dataset.kind = "lap";
}

function showLap() {
  if (!page.lap || !page.sheet) {
    return;
  }
  if (!byId("zoom")) {
    layLap();
  }
  const reference = state().pins[0]?.name ?? "";
  traces.set(page.sheet, page.lap, { reference }, page.zoom);
  map.set(page.sheet, page.lap, page.zoom);
  byId("mapwords").textContent = page.lap.behind
    ? `Ticks to the right of the way driven: time won on ${reference}; to the left: time lost.`
    : "Pin a setup to see where time is won and lost.";
  later();
  zoomWords();
  under();
}

let waiting = 0;

/** Lays out what stands below the lap once its picture is there; of several in a row only the last. */
function later() {
  clearTimeout(waiting);
  waiting = setTimeout(below, 0);
}

function below() {
  if (!byId("parts") || !page.lap) {
    return;
  }
  byId("facts").replaceChildren(el("dl", { class: "items" }, page.lap.facts.map((item) =>
    el("div", {}, el("dt", {}, item.name), el("dd", {}, strong(item.text))))));
  const zoomed = page.lap.parts.findIndex((part) => page.zoom && part.label === page.zoom.label);
  byId("parts").replaceChildren(...page.lap.table.map((block) => table(block, (r) => near(page.lap.parts[r]), zoomed)));
  partRows().forEach((row, r) => {
    const part = page.lap.parts[r];
    if (part) {
      row.addEventListener("pointerenter", () => cursor(within(part)));
      row.addEventListener("pointerleave", () => cursor(null));
    }
  });
  markPart();
}

const partRows = () => [...document.querySelectorAll("#parts tbody tr")];

/** The middle of a part; one that crosses the start line has it on either side. */
function within(part) {
  const length = page.sheet.lengthM;
  const to = part.to < part.from ? part.to + length : part.to;
  return ((part.from + to) / 2) % length;
}

/** Marks the row of the part that lies under the cursor: the corner where there is one, else the straight. */
function markPart() {
  const at = page.cursor;
  const holds = (part) => (part.from <= part.to ? at >= part.from && at <= part.to : at >= part.from || at <= part.to);
  const found = at === null ? [] : page.lap.parts.filter(holds);
  const part = found.find((one) => one.corner) ?? found[0];
  partRows().forEach((row, r) => row.classList.toggle("under", part !== undefined && page.lap.parts[r] === part));
}

function near(part) {
  if (!part) {
    return;
  }
  const length = page.sheet.lengthM;
  const room = part.corner ? Math.min(150, 0.1 * length) : 20;
  const to = part.to < part.from ? length : part.to;
  zoom({ from: Math.max(0, part.from - room), to: Math.min(length, to + room), label: part.label });
}

function zoom(part) {
  page.zoom = part.to > part.from ? part : null;
  showLap();
  question();
}

function zoomWords() {
  const corners = page.sheet.corners;
  byId("zoom").replaceChildren(
    page.zoom
      ? el("span", { class: "reading" }, `${fixed(shown(page.zoom.from, "m"), 0)} to ${fixed(shown(page.zoom.to, "m"), 0)} ${unit("m")}: `, el("button", { type: "button", class: "word", title: "key A", onclick: () => zoom({ from: 0, to: 0 }) }, "the whole lap"), " or")
      : el("span", { class: "reading" }, `All ${fixed(shown(page.sheet.lengthM, "m"), 0)} ${unit("m")}. Drag over a part to look closer, or go to`),
    " ",
    el("select", { "aria-label": "Look at a corner", onchange: (event) => event.target.value === "" ? zoom({ from: 0, to: 0 }) : nearCorner(Number(event.target.value)) },
      el("option", { value: "" }, "a corner"),
      corners.map((corner, i) => el("option", { value: String(i), selected: page.zoom?.label === corner.label }, corner.label))));
}

function nearCorner(i) {
  const corner = page.sheet.corners[i];
  near({ ...corner, corner: true });
}

/** The next corner, or the one before. */
function walk(by) {
  const n = page.sheet.corners.length;
  const here = page.sheet.corners.findIndex((corner) => corner.label === page.zoom?.label);
  if (n > 0) {
    nearCorner(here < 0 ? (by > 0 ? 0 : n - 1) : (here + by + n) % n);
  }
}

let drawing = 0;

function cursor(at) {
  page.cursor = at;
  if (!drawing) {
    drawing = requestAnimationFrame(() => {
      drawing = 0;
      if (byId("zoom")) {
        traces.draw(page.cursor);
        map.draw(page.cursor);
        under();
        markPart();
      }
    });
  }
}

/** What holds at the cursor: place, speed, accelerations, and how the car stands on its wheels. */
function under() {
  const c = page.lap.columns;
  if (page.cursor === null) {
    byId("under").replaceChildren(el("p", { class: "reading" }, "Move over the lap or the map: what each wheel carries stands here."));
    return;
  }
  const at = page.cursor;
  const value = (name) => valueAt(c.s, c[name], at);
  const row = Math.max(0, c.s.findLastIndex((s) => s <= at));
  const inside = page.sheet.corners.find((corner) => corner.from <= corner.to
    ? at >= corner.from && at <= corner.to : at >= corner.from || at <= corner.to);
  const most = Math.max(...["loadFL", "loadFR", "loadRL", "loadRR"].map((name) => Math.max(...c[name])));
  const wheel = (name, label) => {
    const block = el("span", { class: "tyre" });
    block.style.height = `${(100 * Math.max(0, value(name))) / most}%`;
    return el("div", {}, el("span", { class: "pot" }, block), el("span", { class: "figure" }, `${label} ${fixed(shown(value(name) / 1000, "kN"), unit("kN") === "kN" ? 1 : 0)} ${unit("kN")}`));
  };
  const fact = (name, text) => el("div", {}, el("dt", {}, name), el("dd", {}, text));
  byId("under").replaceChildren(
    el("dl", { class: "items tight" },
      fact("At", `${fixed(shown(at, "m"), 0)} ${unit("m")}${inside ? ", " + inside.label : ""}`),
      fact("Speed", `${fixed(shown(value("v"), "km/h"), 1)} ${unit("km/h")} in gear ${c.gear[row]}`),
      fact("Pull", `${fixed(Math.abs(value("along")), 2)} g ${value("along") < 0 ? "braking" : "driving"}, ${fixed(Math.abs(value("across")), 2)} g to the ${value("across") < 0 ? "right" : "left"}`),
      fact("Limited by", c.limit[row]),
      fact("Grip in use", `front ${fixed(100 * value("useF"), 0)} %, rear ${fixed(100 * value("useR"), 0)} %`)),
    el("div", { class: "car" }, wheel("loadFL", "FL"), wheel("loadFR", "FR"), wheel("loadRL", "RL"), wheel("loadRR", "RR")));
}

// --- Keys, window, start ---------------------------------------------------------------------------------------------

function key(event) {
  if (event.target.matches("input, select, textarea") || event.ctrlKey || event.metaKey || event.altKey || !page.sheet) {
    return;
  }
  const run = {
    p: frozen ? null : pin,
    u: () => page.history.undo(),
    r: () => page.history.redo(),
    n: () => walk(1),
    b: () => walk(-1),
    a: () => zoom({ from: 0, to: 0 }),
    "?": keysShown,
  }[event.key.toLowerCase()];
  const number = Number(event.key);
  if (run) {
    event.preventDefault();
    run();
  } else if (number >= 1 && number <= page.start.views.length) {
    page.history.turn((next) => { next.view = page.start.views[number - 1]; });
  }
}

function changed(next, before) {
  if (!before || next.view !== before.view) {
    views();
    byId("view").replaceChildren();
    showView();
  }
  useUnits(next.units === "imperial" ? page.start.imperial : null);
  if (!before || next.units !== before.units || next.car !== before.car || next.circuit !== before.circuit || JSON.stringify(next.line) !== JSON.stringify(before.line)) {
    page.zoom = null;
    page.cursor = null;
    subject();
    fetchSheet();
    return;
  }
  subject();
  if (page.sheet) {
    knobs.show(next);
    tasks.words();
  }
  pins();
  question();
}

function gone(alive, ended = false) {
  const back = alive && !page.alive;
  page.alive = alive;
  page.ended = ended;
  notes();
  if (back) {
    page.waiting = false;
    if (page.sheet) {
      question();
    } else {
      fetchSheet();
    }
  }
}

function resized() {
  if (page.sheet && page.lap) {
    showView();
  }
}

async function begin() {
  if (frozen) {
    const { messages } = JSON.parse(byId("frozen").textContent);
    page.start = messages[0];
    useUnits(page.start.state.units === "imperial" ? page.start.imperial : null);
    page.history = new History(page.start.state, (next) => {
      views();
      byId("view").replaceChildren();
      showView();
    });
    views();
    messages.slice(1).forEach((message) => hear(message));
  } else {
    page.start = await once("start");
    page.history = new History(fromAddress(location.hash.slice(1)) ?? page.start.state, changed);
    document.querySelector("main").before(tasks.root);
    presence((news) => { page.news = news; notes(); }, gone);
    changed(page.history.state, null);
  }
  byId("foot").append(el("p", {}, `Lapwright ${page.start.version}. Tyre pressures, brakes, ride heights and speed can hurt people: the makers' limits, the rules of the event and practice under licence come first.`));
  addEventListener("keydown", key);
  addEventListener("resize", resized);
  matchMedia("(prefers-color-scheme: dark)").addEventListener("change", resized);
}

begin();
