// The car on the sheet, field by field: what each means, may be, how well it is known, and what it is worth at this circuit.

import { el } from "./dom.js";
import { ask } from "./server.js";

const DOUBT = "doubt.";
const WAIT_MS = 250;

export class CarDesk {
  /** Question gives the state, kept is told the car's file and title, close puts all away. */
  constructor(root, question, kept, close) {
    this.root = root;
    this.question = question;
    this.kept = kept;
    this.rows = new Map();
    this.turn = 0;
    this.said = el("p", { role: "status", id: "desksaid" }, "…");
    root.replaceChildren(el("h2", {}, "The car, field by field"), close, this.said);
    this.close = close;
    this.show();
  }

  /** Lays out the car that is on the sheet now. */
  show(said = "") {
    this.car = this.question().car;
    this.rows.clear();
    return this.fetch({}, (message) => {
      this.lay(message, this.close);
      this.say(said);
    });
  }

  async fetch(more, heard) {
    if (this.question().car !== this.car) {
      this.say("Another car lies on the sheet now: put this away, and open it for that one.", true);
      return;
    }
    // What was asked before is no answer any more: a lap that was still driven must not take the place of what is said last.
    this.turn += 1;
    const turn = this.turn;
    try {
      await ask("car", { ...this.question(), ...more }, (message) => {
        if (turn !== this.turn) {
          return;
        }
        if (message.type === "fault") {
          this.say(message.what, true);
        } else {
          heard(message);
        }
      });
    } catch (gone) {
      this.say(`The bench does not answer: ${gone.message}.`, true);
    }
  }

  say(text, wrong = false) {
    this.said.textContent = text;
    this.said.className = wrong ? "caution" : "";
  }

  // --- Laid out ------------------------------------------------------------------------------------------------------

  lay({ name, fields, worths }, close) {
    const doubts = new Map(fields.filter((field) => field.path.startsWith(DOUBT)).map((field) => [field.path.slice(DOUBT.length), field]));
    const sections = new Map();
    for (const field of fields.filter((one) => !one.path.startsWith(DOUBT))) {
      const row = this.row(field, doubts.get(field.quantity));
      if (!sections.has(field.section)) {
        sections.set(field.section, []);
      }
      sections.get(field.section).push(row);
    }
    this.sections = sections;
    this.find = el("input", { type: "search", id: "deskfind", size: "14", autocomplete: "off", spellcheck: "false", oninput: () => this.sort() });
    this.byWorth = el("input", { type: "checkbox", id: "deskworth", onchange: () => this.sort() });
    this.name = el("input", { type: "text", id: "deskfile", maxlength: "60", size: "16", value: `${name} edited`, autocomplete: "off", spellcheck: "false" });
    this.list = el("div", { class: "desk" });
    this.root.replaceChildren(el("h2", {}, "The car, field by field"), close,
      el("p", { class: "reading" }, "Empty is what stands in grey. A number may have another unit behind it, as 2304 lb. Worth is by the lap's own derivatives, in the car's standard settings at this circuit: "
        + "what one percent more of the number does to the lap, and what its doubt (one standard deviation) leaves open; a large step wants a lap of its own, which stands here once it is typed."),
      el("p", { class: "roadfields" }, el("label", {}, "find ", this.find), el("label", {}, this.byWorth, " those whose doubt is worth most first")),
      this.said,
      this.list,
      el("p", { class: "roadfields" }, el("label", {}, "Its file ", this.name),
        el("button", { type: "button", class: "word", onclick: () => this.keep() }, "keep it and drive")));
    this.worth(worths);
    this.say("");
    this.sort();
    this.find.focus();
  }

  row(field, doubt) {
    const id = `desk-${field.path}`;
    const wrong = el("span", { class: "wrong", id: `${id}-wrong`, role: "alert" });
    const changed = () => this.changed();
    const input = field.words.length > 0
      ? el("select", { id, onchange: changed }, [field.absent === null ? null : el("option", { value: "" }, `(${field.absent})`), ...field.words.map((word) => el("option", { value: word, selected: word === field.text }, word))].filter(Boolean))
      : el("input", { type: "text", id, maxlength: "4000", value: field.text, placeholder: field.absent ?? "", autocomplete: "off", spellcheck: "false", onchange: changed });
    const off = el("input", { type: "text", id: `desk-${DOUBT}${field.quantity}`, maxlength: "60", value: doubt?.text ?? "", autocomplete: "off", spellcheck: "false", onchange: changed,
      "aria-label": `Doubt of: ${field.meaning}`, title: doubt?.meaning ?? null });
    const percent = el("span", { class: "figure" });
    const left = el("span", { class: "figure" });
    const node = el("div", { class: "deskrow" },
      el("label", { for: id }, field.meaning, el("span", { class: "unit" }, field.path)),
      el("span", { class: "deskvalue" }, input, field.unit ? ` ${field.unit}` : ""),
      el("span", { class: "reading" }, field.range),
      doubt ? off : el("span", {}),
      percent, left, wrong);
    this.rows.set(field.path, { field, input, wrong, was: field.text });
    if (doubt) {
      this.rows.set(doubt.path, { field: doubt, input: off, wrong, was: doubt.text });
    }
    return { node, field, off, percent, left, size: 0 };
  }

  /** What each is worth, and how far it is off where the document does not say. */
  worth(worths) {
    for (const rows of this.sections.values()) {
      for (const row of rows) {
        const worth = worths[row.field.quantity];
        row.percent.textContent = worth?.percent ?? "";
        row.left.textContent = worth?.doubt ?? "";
        row.size = worth?.size ?? 0;
        row.off.placeholder = worth?.off ? `usual: ${worth.off}` : "none";
      }
    }
  }

  /** By sections, or all by what their doubt is worth; only those that hold what is looked for. */
  sort() {
    const wanted = this.find.value.trim().toLowerCase();
    const fits = ({ field }) => `${field.meaning} ${field.path} ${field.section}`.toLowerCase().includes(wanted);
    const head = () => el("div", { class: "deskrow deskhead", "aria-hidden": "true" }, el("span", {}, ""), el("span", {}, "value"), el("span", {}, "range"), el("span", {}, "off by"),
      el("span", { class: "figure" }, "1 % more, s"), el("span", { class: "figure" }, "its doubt, s"));
    if (this.byWorth.checked) {
      const all = [...this.sections.values()].flat().filter(fits).filter((row) => row.size > 0).sort((a, b) => b.size - a.size);
      this.list.replaceChildren(head(), ...all.map((row) => row.node));
      return;
    }
    this.list.replaceChildren(...[...this.sections].map(([section, rows]) => {
      const shown = rows.filter(fits);
      const wrong = rows.some((row) => row.node.querySelector("[aria-invalid]"));
      return shown.length === 0 ? null : el("details", { open: wanted !== "" || wrong || section === "chassis" || this.opened?.has(section), ontoggle: (event) => {
        this.opened = this.opened ?? new Set();
        this.opened[event.target.open ? "add" : "delete"](section);
      } }, el("summary", {}, `${section[0].toUpperCase()}${section.slice(1)} `, el("span", { class: "reading" }, `${shown.length}`)), head(), ...shown.map((row) => row.node));
    }).filter(Boolean));
  }

  // --- Filled in -----------------------------------------------------------------------------------------------------

  texts() {
    return Object.fromEntries([...this.rows].filter(([, { input, was }]) => input.value.trim() !== was).map(([path, { input }]) => [path, input.value]));
  }

  changed() {
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.attempt(), WAIT_MS);
  }

  /** Asks what it does to the lap; while that is on its way, only the newest is kept. */
  async attempt() {
    if (this.waiting) {
      this.again = true;
      return;
    }
    this.waiting = true;
    this.say("…");
    await this.fetch({ do: "try", fields: this.texts() }, (message) => this.hear(message));
    this.waiting = false;
    if (this.again) {
      this.again = false;
      this.attempt();
    }
  }

  hear(message) {
    for (const { input, wrong } of this.rows.values()) {
      wrong.textContent = "";
      input.removeAttribute("aria-invalid");
      input.removeAttribute("aria-describedby");
    }
    if (message.type === "faults") {
      const rest = [];
      for (const { path, what } of message.faults) {
        const row = this.rows.get(path);
        if (row) {
          row.input.setAttribute("aria-invalid", "true");
          row.input.setAttribute("aria-describedby", row.wrong.id);
          row.wrong.textContent = [row.wrong.textContent, what].filter(Boolean).join("\n");
        } else {
          rest.push(`${path ? `${path}: ` : ""}${what}`);
        }
      }
      this.say(rest.length > 0 ? rest.join(" ") : `${message.faults.length === 1 ? "A field is" : `${message.faults.length} fields are`} not right yet; nothing is driven until then.`, true);
      this.sort();
    } else if (message.type === "tried") {
      this.say(message.said);
      this.worth(message.worths);
      if (this.byWorth.checked) {
        this.sort();
      }
    }
    return message.type;
  }

  keep() {
    clearTimeout(this.timer);
    this.again = false;
    this.fetch({ do: "keep", fields: this.texts(), name: this.name.value.trim() }, (message) => {
      if (message.type === "kept") {
        this.kept(message.take);
        this.show(`Wrote ${message.saved}.`);
      } else {
        this.hear(message);
      }
    });
  }
}
