// The column of knobs: each with its value, its clicks, its landscape, and what is to be said of it.

import { el, fixed } from "./dom.js";
import { settingAt, strip } from "./strip.js";

/** So long drawings of landscapes are gathered: one by one they would take the cores from the laps that are still driven. */
const TOGETHER_MS = 60;

const key = (knob) => (knob.day ? knob.name.slice("conditions.".length) : knob.name);

/** Where a knob stands in a setup on a day. */
export function standing(knob, stand) {
  return (knob.day ? stand.day : stand.set)[key(knob)] ?? knob.standard;
}

/** Sets a knob in a setup on a day. */
export function turn(knob, stand, value) {
  const part = knob.day ? stand.day : stand.set;
  if (value === knob.standard) {
    delete part[key(knob)];
  } else {
    part[key(knob)] = value;
  }
}

/** A setting with its unit. */
export function told(knob, value) {
  const i = knob.settings.indexOf(value);
  const plain = String(Number(value.toPrecision(9))).replace("-", "\u2212");
  return i >= 0 ? knob.told[i].replace("-", "\u2212") : plain + (knob.unit ? " " + knob.unit : "");
}

/** What drawn cars say of a landscape; nothing while they are of another. */
function bandWords(found) {
  return found?.band && !found.band.old ? found.band.words : "";
}

export class Knobs {
  /** Turned is told a knob and the value it was turned to. */
  constructor(root, turned, frozen) {
    this.root = root;
    this.turned = turned;
    this.frozen = frozen;
    this.rows = new Map();
    this.found = new Map();
    this.visible = 0.3;
    this.byWorth = false;
    this.hand = "";
    this.due = new Set();
    this.timer = null;
  }

  build(sheet) {
    this.sheet = sheet;
    this.found.clear();
    this.lay();
  }

  lay() {
    const focused = document.activeElement?.dataset?.knob;
    this.rows.clear();
    this.root.replaceChildren(el("div", { class: "knobhead" },
      el("h2", {}, "Knobs"),
      el("button", { type: "button", class: "word", "aria-pressed": String(this.byWorth), onclick: () => {
        this.byWorth = !this.byWorth;
        this.lay();
        this.show(this.state);
      } }, this.byWorth ? "in groups" : "most worth first")));
    const worth = (knob) => this.found.get(knob.name)?.rangeS ?? -1;
    const groups = new Map();
    const knobs = this.byWorth ? [...this.sheet.knobs].sort((a, b) => worth(b) - worth(a)) : this.sheet.knobs;
    for (const knob of knobs) {
      const name = this.byWorth ? "By what they are worth here" : knob.group;
      if (!groups.has(name)) {
        groups.set(name, el("ul", { class: "group" }));
        this.root.append(el("h3", {}, name), groups.get(name));
      }
      groups.get(name).append(this.row(knob));
    }
    if (focused) {
      this.rows.get(focused)?.slider.focus();
    }
  }

  row(knob) {
    const note = el("p", { class: "note" });
    const slider = el("span", {
      class: "value", role: "slider", tabindex: "0", "data-knob": knob.name, "aria-label": knob.label,
      "aria-valuemin": knob.settings[0], "aria-valuemax": knob.settings.at(-1),
      "aria-disabled": this.frozen ? "true" : null,
      onkeydown: (event) => this.key(knob, event),
      onfocus: () => this.hold(knob.name),
    });
    const back = el("button", { type: "button", class: "was", title: "Turn it back to where it was pinned", onclick: () => this.turned(knob, this.pinned(knob)) });
    const well = el("div", { class: "well" });
    const row = { knob, slider, note, back, well };
    well.addEventListener("pointerdown", (event) => {
      if (this.frozen || !knob.seen) {
        return;
      }
      slider.focus({ preventScroll: true });
      well.setPointerCapture(event.pointerId);
      this.drag(knob, well, event);
    });
    well.addEventListener("pointermove", (event) => {
      if (well.hasPointerCapture(event.pointerId)) {
        this.drag(knob, well, event);
      }
    });
    const step = (by, text, name) => el("button", {
      type: "button", class: "step", tabindex: "-1", "aria-label": `${knob.label}: one click ${name}`, disabled: this.frozen,
      onclick: () => {
        this.hold(knob.name);
        this.click(knob, by);
      },
    }, text);
    this.rows.set(knob.name, row);
    row.item = el("li", { class: "knob", "data-name": knob.name },
      el("span", { class: "label" }, knob.label),
      el("span", { class: "set" }, step(-1, "‹", "down"), slider, step(1, "›", "up")),
      well,
      el("span", { class: "worth" }),
      back,
      note);
    return row.item;
  }

  hold(name) {
    if (this.hand !== name) {
      this.rows.get(this.hand)?.item.classList.remove("inhand");
      this.hand = name;
      this.rows.get(name)?.item.classList.add("inhand");
      this.say(this.rows.get(name));
    }
  }

  pinned(knob) {
    return standing(knob, this.state.pins[0] ?? this.state.now);
  }

  drag(knob, well, event) {
    const box = well.firstChild.getBoundingClientRect();
    const value = settingAt(knob, (event.clientX - box.left) / box.width);
    if (value !== standing(knob, this.state.now)) {
      this.turned(knob, value);
    }
  }

  click(knob, by) {
    const here = standing(knob, this.state.now);
    const slack = 1e-9 * Math.max(1, Math.abs(here));
    const next = by > 0
      ? knob.settings.find((s) => s > here + slack)
      : knob.settings.findLast((s) => s < here - slack);
    if (next !== undefined) {
      this.turned(knob, next);
    } else {
      this.end(knob, by);
    }
  }

  /** Says that there is no further click. */
  end(knob, by) {
    this.ended = { name: knob.name, at: standing(knob, this.state.now), text: `${told(knob, by > 0 ? knob.settings.at(-1) : knob.settings[0])} is its last click` };
    this.say(this.rows.get(knob.name));
  }

  key(knob, event) {
    if (this.frozen) {
      return;
    }
    const far = Math.max(2, Math.round(knob.settings.length / 6));
    const clicks = { ArrowRight: 1, ArrowUp: 1, ArrowLeft: -1, ArrowDown: -1 };
    if (event.key in clicks && !event.ctrlKey && !event.metaKey && !event.altKey) {
      event.preventDefault();
      this.click(knob, clicks[event.key]);
    } else if (event.key === "PageUp" || event.key === "PageDown") {
      event.preventDefault();
      const here = knob.settings.reduce((best, s, i) => (Math.abs(s - standing(knob, this.state.now)) < Math.abs(knob.settings[best] - standing(knob, this.state.now)) ? i : best), 0);
      const i = Math.max(0, Math.min(knob.settings.length - 1, here + (event.key === "PageUp" ? far : -far)));
      this.turned(knob, knob.settings[i]);
    } else if (event.key === "Home" || event.key === "End") {
      event.preventDefault();
      this.turned(knob, event.key === "Home" ? knob.settings[0] : knob.settings.at(-1));
    } else if (event.key === "Backspace" || event.key === "Delete") {
      event.preventDefault();
      this.turned(knob, this.pinned(knob));
    }
  }

  /** Shows where all knobs stand; their landscapes are old until new ones come. */
  show(state) {
    this.state = state;
    for (const row of this.rows.values()) {
      // Most rows stay as they are when one knob turns.
      if (row.shown !== this.look(row.knob)) {
        this.draw(row);
      }
    }
  }

  /** All that the look of a row depends on, but its landscape. */
  look(knob) {
    return [standing(knob, this.state.now), this.pinned(knob), this.state.pins.length > 0, this.visible].join();
  }

  draw(row) {
    const { knob } = row;
    row.shown = this.look(knob);
    const value = standing(knob, this.state.now);
    const was = this.pinned(knob);
    const text = told(knob, value);
    row.slider.textContent = text;
    row.slider.setAttribute("aria-valuenow", value);
    const found = this.found.get(knob.name);
    const said = !knob.seen ? "not in this model" : (bandWords(found) || found?.words) ?? "";
    row.slider.setAttribute("aria-valuetext", said ? `${text}; ${said}` : text);
    row.back.textContent = value === was ? "" : `was ${told(knob, was)}`;
    row.back.hidden = value === was || this.frozen;
    row.well.replaceChildren(strip(knob, value, this.state.pins.length > 0 ? was : null, found, this.visible));
    const verdict = !knob.seen ? "not in this model" : found?.verdict;
    if (verdict) {
      row.well.append(el("span", { class: "verdict" }, verdict));
    }
    row.item.querySelector(".worth").replaceChildren(...(knob.seen && found && !found.verdict
      ? [found.band?.counts === false ? "" : fixed(found.rangeS, 2) + " s", found.band?.verdict ? el("span", { class: "standing" }, found.band.verdict) : ""] : []));
    row.item.classList.toggle("turned", value !== was);
    if (knob.name === this.hand) {
      this.say(row);
    }
  }

  say(row) {
    if (!row) {
      return;
    }
    const { knob } = row;
    const found = this.found.get(knob.name);
    const parts = [];
    if (!knob.seen) {
      parts.push(found?.words ?? "not in this model");
    } else if (found) {
      parts.push(bandWords(found) || found.words);
      if (found.band?.old) {
        parts.push("Blue band and word: still those of the setup before");
      }
    }
    if (this.fault && this.fault.name === knob.name) {
      parts.unshift(this.fault.what);
    } else if (found?.failure) {
      parts.push(found.failure);
    }
    if (this.ended?.name === knob.name && this.ended.at === standing(knob, this.state.now)) {
      parts.unshift(this.ended.text);
    }
    const moved = standing(knob, this.state.now) !== this.pinned(knob);
    row.note.replaceChildren(...parts.filter(Boolean).map((part) => el("span", {}, part + ". ")));
    if (knob.caution && moved) {
      row.note.append(el("span", { class: "caution" }, "Caution: " + knob.caution));
    }
  }

  /** Says at the knob in hand why there is no lap; null once there is one. */
  refuse(what) {
    const before = this.fault?.name;
    this.fault = what && this.hand ? { name: this.hand, what } : null;
    for (const name of [before, this.hand]) {
      const row = this.rows.get(name);
      if (row) {
        row.item.classList.toggle("refused", this.fault?.name === name);
        this.say(row);
      }
    }
  }

  /** How sure a knob's landscape is. */
  band(message) {
    const found = this.found.get(message.name);
    if (found) {
      found.band = message;
      this.drawSoon(message.name);
    }
  }

  fresh(found, sure) {
    // While the hand moves on, the band before stands until the new one is there.
    const before = this.found.get(found.name)?.band;
    found.band = before && { ...before, old: before.old || !sure };
    this.found.set(found.name, found);
    this.drawSoon(found.name);
  }

  /** Draws a knob: the one in hand at once, others together. */
  drawSoon(name) {
    this.due.add(name);
    if (name === this.hand) {
      this.drawDue();
    }
    this.timer ??= setTimeout(() => this.drawDue(), TOGETHER_MS);
  }

  /** Draws what is still to be drawn. */
  drawDue() {
    clearTimeout(this.timer);
    this.timer = null;
    for (const name of this.due) {
      const row = this.rows.get(name);
      if (row) {
        row.item.classList.remove("old");
        this.draw(row);
      }
    }
    this.due.clear();
  }

  old() {
    this.due.clear();
    for (const row of this.rows.values()) {
      row.item.classList.add("old");
    }
  }
}
