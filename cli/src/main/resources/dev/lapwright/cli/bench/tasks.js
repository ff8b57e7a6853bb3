// What takes longer, with progress and a way to stop it; what is found can be taken over. And what is saved.

import { blocks } from "./blocks.js";
import { CarDesk } from "./car.js";
import { el } from "./dom.js";
import { form } from "./forms.js";
import { Notebook } from "./notebook.js";
import { Road } from "./road.js";
import { ask, once } from "./server.js";

const PHASES = ["entry", "lift-off", "middle", "exit"];

export class Tasks {
  /** State gives the question, take is told what to take over, set changes the state, laid is told the documents of an event begun. */
  constructor(root, state, take, set, laid) {
    this.root = root;
    this.set = set;
    this.state = state;
    this.take = take;
    this.running = null;
    this.out = el("div", { class: "found", "aria-live": "polite" });
    this.notebook = new Notebook(this, laid);
  }

  /** Stops what was under way, for something new that can be stopped. */
  begin() {
    this.running?.abort();
    this.running = new AbortController();
    return this.running;
  }

  /** A word that puts away what is shown. */
  close() {
    return el("button", { type: "button", class: "word", onclick: () => { this.running?.abort(); this.out.replaceChildren(); } }, "put away");
  }

  build(sheet, { folder, notebook, questions }) {
    const button = (text, kind) => el("button", { type: "button", class: "word", onclick: () => this.run(kind, {}, text) }, text);
    const tendency = el("select", { "aria-label": "The car" }, ["understeer", "oversteer"].map((w) => el("option", {}, w)));
    const phase = el("select", { "aria-label": "In which phase" }, PHASES.map((w) => el("option", {}, w)));
    const corner = el("select", { "aria-label": "In which corner" }, el("option", { value: "" }, "every corner"),
      sheet.corners.map((c) => el("option", { value: `:T${c.number}` }, c.label)));
    const phrases = ["pushes on entry", "pushes in long corners", "pushes on power", "loose under braking", "snaps when I lift",
      "loose in fast corners", "loose on power", "will not take the kerb", ...sheet.corners.map((c) => `loose on power out of T${c.number}`),
      ...sheet.corners.map((c) => `pushes in T${c.number}`)];
    const words = el("input", { type: "text", id: "driver-words", "aria-label": "Or in the driver's words", list: "driver-phrases", maxlength: "200", size: "19",
      autocomplete: "off", spellcheck: "false", placeholder: "loose on power out of T3", onkeydown: (e) => { if (e.key === "Enter") helps(); } });
    const helps = () => this.run("complaint", { complaint: words.value.trim() || `${tendency.value}:${phase.value}${corner.value}` }, "what helps");
    const number = (label, key, least, most, step) => {
      const input = el("input", { type: "number", "aria-label": label, min: least, max: most, step, value: this.state()[key], onchange: () => {
        const value = Math.max(least, Math.min(most, Number(input.value) || this.state()[key]));
        input.value = value;
        this.set((next) => { next[key] = value; });
      } });
      return input;
    };
    const name = el("input", { type: "text", id: "save-name", maxlength: "60", value: "my-setup", size: "14", autocomplete: "off", spellcheck: "false" });
    const said = el("span", { role: "status" });
    const save = (text, kind) => el("button", { type: "button", class: "word", onclick: async () => {
      said.textContent = "…";
      try {
        said.textContent = "Wrote " + (await once("save", { ...this.state(), kind, name: name.value })).saved;
      } catch (fault) {
        said.textContent = fault.message;
      }
    } }, text);
    this.root.replaceChildren(
      el("p", { class: "ask" }, el("strong", {}, "Ask "),
        button("what each knob is worth", "sensitivity"), button("for the best setup", "optimise"),
        button("for the fastest line", "line"),
        el("span", { class: "complaint" }, "what helps against ", tendency, " at ", phase, " of ", corner, " or: ", words, " ",
          el("datalist", { id: "driver-phrases" }, phrases.map((phrase) => el("option", { value: phrase }))),
          el("button", { type: "button", class: "word", onclick: helps }, "what helps?")),
        this.heard(sheet),
        el("span", { class: "complaint" }, "with ", number("Laps there are to try something", "laps", 4, 1000, 1), " laps that scatter by ",
          el("span", { class: "figure" }, number("How much the driver's laps scatter, in seconds", "scatterS", 0.01, 10, 0.05), " s"))),
      el("p", { class: "ask" }, el("strong", {}, "Keep "), el("label", { for: "save-name" }, "as "), name, " ",
        save("the setup", "setup"), save("this state", "state"), save("a page to send", "page"),
        el("button", { type: "button", class: "word", onclick: () => this.run("brief", { name: name.value }, "the brief") }, "the brief"),
        el("span", { class: "where", title: folder }, `in ${folder.split(/[\\/]/).filter(Boolean).at(-1) ?? folder} `), said),
      el("p", { class: "ask" }, el("strong", {}, "Make "),
        el("button", { type: "button", class: "word", onclick: () => this.makeCar(questions) }, "a car of ten answers"),
        el("button", { type: "button", class: "word", onclick: () => this.editCar() }, "this car, field by field"),
        el("button", { type: "button", class: "word", onclick: () => this.makeCircuit() }, "a circuit")),
      this.notebook.lay(notebook),
      this.out);
  }

  /** What the driver says of the setup pinned first, as a measurement: words are added and taken off. */
  heard(sheet) {
    const first = sheet.corners[0] ? `T${sheet.corners[0].number}` : "T1";
    const words = [...sheet.corners.flatMap((c) => ["front", "rear", "neutral"].map((end) => `T${c.number}=${end}`)), "front", "rear", "neutral", "top=250km/h", "lap=1:36.4"];
    const input = el("input", { type: "text", id: "driver-said", "aria-label": "What the driver says of the setup pinned first", list: "driver-readings", maxlength: "60", size: "20",
      autocomplete: "off", spellcheck: "false", placeholder: `${first}=rear, ${first}=92km/h`, onkeydown: (e) => { if (e.key === "Enter") add(); } });
    const add = () => {
      const word = input.value.trim();
      if (word) {
        input.value = "";
        this.set((next) => { next.said = [...(next.said ?? []), word].slice(-12); });
      }
    };
    this.chips = el("span", {});
    const part = el("span", { class: "complaint" }, "the driver says of A: ", input, " ",
      el("datalist", { id: "driver-readings" }, words.map((word) => el("option", { value: word }))),
      el("button", { type: "button", class: "word", onclick: add }, "count it"), this.chips);
    this.words();
    return part;
  }

  /** Shows the words that count. */
  words() {
    this.chips?.replaceChildren(...(this.state().said ?? []).flatMap((word, i) => [" ", el("button", { type: "button", class: "word", "aria-label": `No longer count ${word}`,
      onclick: () => this.set((next) => { next.said.splice(i, 1); }) }, `${word} ×`)]));
  }

  /** Every field of the car on the sheet. */
  editCar() {
    this.running?.abort();
    new CarDesk(this.out, () => this.state(), (one) => this.take(one), this.close());
  }

  /** A plane for a circuit. */
  makeCircuit() {
    this.running?.abort();
    new Road(this.out, () => this.state(), (one) => this.take(one), () => this.out.replaceChildren());
  }

  /** A form for a whole car. */
  makeCar(questions) {
    const name = el("input", { type: "text", id: "car-name", maxlength: "60", value: "My car", autocomplete: "off", spellcheck: "false" });
    this.fill("A car of ten answers", "the car",
      "What is not answered is guessed by classes, and stands with a doubt; answers that contradict each other are refused. The document is written where setups are kept.",
      questions.map(({ name: key, asking }, i) => [key, `${i + 1} ${asking}`, ""]), "draft it",
      (answers) => ({ study: "draft", name: name.value.trim(), answers }),
      el("div", { class: "field" }, el("label", { for: "car-name" }, "Its name"), name));
  }

  /** A form whose answer is shown like that of a study. */
  fill(title, found, reading, fields, action, question, first, then) {
    const stop = this.begin();
    const close = this.close();
    const send = async (texts, progress) => {
      let fault = null;
      try {
        await ask("study", { ...this.state(), ...question(texts) }, (message) => {
          if (message.type === "progress") {
            progress(`${message.done} of ${message.total}`);
          } else if (message.type === "result") {
            this.show(message, found, close);
            then?.(message);
          } else if (message.type === "fault") {
            fault = message;
          }
        }, stop.signal);
      } catch (gone) {
        fault = { what: stop.signal.aborted ? "Stopped." : `The bench does not answer: ${gone.message}.` };
      }
      return fault;
    };
    this.out.replaceChildren(el("h2", {}, title), close, el("p", { class: "reading" }, reading), form(fields, action, send, first));
    this.out.querySelector("input").focus();
  }

  async run(study, more, title) {
    const stop = this.begin();
    const bar = el("progress", { "aria-label": "How far it has come" });
    const text = el("span", {}, "begun");
    this.out.replaceChildren(el("p", { class: "running" }, `${title}: `, bar, " ", text, " ",
      el("button", { type: "button", class: "word", onclick: () => stop.abort() }, "stop")));
    const close = this.close();
    try {
      await ask("study", { ...this.state(), study, ...more }, (message) => {
        if (message.type === "progress") {
          if (message.total > 0) {
            bar.max = message.total;
            bar.value = message.done;
            text.textContent = `${message.done} of ${message.total}`;
          } else {
            text.textContent = `step ${message.done}`;
          }
        } else if (message.type === "result") {
          this.show(message, title, close);
        } else if (message.type === "fault") {
          this.out.replaceChildren(el("p", { class: "caution" }, message.what, " ", close));
        }
      }, stop.signal);
    } catch (fault) {
      this.out.replaceChildren(el("p", {}, stop.signal.aborted ? "Stopped. " : `The bench does not answer: ${fault.message}. `, close));
    }
    if (this.running === stop) {
      this.running = null;
    }
  }

  show(message, title, close) {
    const parts = [el("h2", {}, title[0].toUpperCase() + title.slice(1)), close];
    if (message.take.length > 0) {
      parts.push(el("ul", { class: "take" }, message.take.map((one) =>
        el("li", {}, el("button", { type: "button", class: "word", onclick: () => this.take(one) }, `take over ${one.label}`), ` ${one.words}`))));
    }
    if (message.saved) {
      parts.push(el("p", {}, `Wrote ${message.saved}. `, message.page ? el("a", { href: message.page, target: "_blank", rel: "noopener" }, "Look at it") : null));
    }
    parts.push(...blocks(message.blocks));
    this.out.replaceChildren(...parts);
    this.out.querySelector("button").focus();
  }
}
