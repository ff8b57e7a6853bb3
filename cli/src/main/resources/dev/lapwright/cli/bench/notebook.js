// The notebook of an event on the page: its line, its form, and the logs that are dropped on the page.

import { el } from "./dom.js";
import { RUN } from "./forms.js";
import { ask } from "./server.js";

export class Notebook {
  /** Tasks show what is answered; laid is told the documents of an event that was begun. */
  constructor(tasks, laid) {
    this.tasks = tasks;
    this.laid = laid;
    this.known = null;
    this.waiting = [];
    this.queue = [];
    this.taking = false;
    this.root = el("p", { class: "ask", id: "notebook" });
    addEventListener("dragover", (event) => { if (this.isMeant(event)) { event.preventDefault(); } });
    addEventListener("drop", (event) => {
      if (this.isMeant(event)) {
        event.preventDefault();
        this.take([...event.dataTransfer.files]);
      }
    });
  }

  /** Files dropped anywhere but on the plane of a circuit. */
  isMeant(event) {
    return !event.defaultPrevented && [...(event.dataTransfer?.types ?? [])].includes("Files");
  }

  isHere() {
    const { car, circuit } = this.tasks.state();
    return this.known && this.known.car === car && this.known.circuit === circuit;
  }

  /** Lays its line anew: of the event known, if the sheet is of its car and circuit. */
  lay(known) {
    this.known = this.known ?? known ?? null;
    const word = (text, run, title) => el("button", { type: "button", class: "word", title: title ?? null, onclick: run }, text);
    if (!this.isHere()) {
      this.root.replaceChildren(el("strong", {}, "Notebook "), word("begin one for this car and circuit", () => this.begin()));
      return this.root;
    }
    const files = el("input", { type: "file", id: "logs", multiple: true, accept: ".csv,.txt", onchange: () => { this.take([...files.files]); files.value = ""; } });
    this.root.replaceChildren(el("strong", {}, "Notebook "), el("span", { class: "where" }, `${this.known.name} `),
      word("note a run", () => this.note()),
      el("label", { class: "word filing" }, "take logs", files), el("span", { class: "complaint" }, "or drop them on the page "),
      word("what the runs show", () => this.tasks.run("notebook", {}, "what the runs show")),
      word("the next card", () => this.tasks.run("card", { name: this.cardName() }, "the next card"),
        "The brief after all runs so far: what they proved, the car fitted, the plan and the card for the next runs"));
    return this.root;
  }

  cardName() {
    return `card ${new Date().toISOString().slice(0, 19).replaceAll(":", "-").replace("T", " ")}`;
  }

  /** A form for a run: a new one with the setup in hand, or more of one that there is. */
  note() {
    const number = el("input", { type: "number", id: "run-number", min: "0", max: "999999", step: "1", placeholder: "new" });
    this.tasks.fill("A run", "the notebook",
      "A new run is noted with the setup in hand, and with what the model expects of its change. Laps may be given at once, or added when it has been driven.",
      RUN, "write it down", (run) => ({ study: "run", run, runNumber: Number(number.value) || 0 }),
      el("div", { class: "field" }, el("label", { for: "run-number" }, "Add to run"), number));
  }

  /** An event of what lies on the sheet. */
  begin() {
    this.tasks.fill("A notebook", "the notebook",
      "A folder beside the setups that are kept, with copies of this car, circuit and day, and the setup in hand as the one it begins with. Each run becomes a text file in it; 'lapwright event' goes on with it.",
      [["name", "Its name", "Test day"]], "begin it", ({ name }) => ({ study: "begin", name: name.trim() }), null, (message) => {
        this.known = message.notebook;
        this.laid(message.lay);
        const waiting = this.waiting.splice(0);
        if (waiting.length > 0) {
          this.take(waiting);
        }
      });
  }

  /** Logs become runs, one file after the other; what is wrong with one is said and leaves the others alone. */
  async take(files) {
    if (!this.isHere()) {
      this.waiting = files;
      this.begin();
      this.tasks.out.prepend(el("p", { class: "caution" }, "Logs become runs of a notebook: begin one, and they are taken into it."));
      return;
    }
    // What is dropped while others are read waits for its turn.
    this.queue.push(...files);
    if (this.queue.length > files.length || this.taking) {
      return;
    }
    this.taking = true;
    const out = this.tasks.out;
    const stop = this.tasks.begin();
    const said = [];
    let shown = null;
    for (let file = this.queue.shift(); file && !stop.signal.aborted; file = this.queue.shift()) {
      const text = el("span", {}, "…");
      out.replaceChildren(el("p", { class: "running" }, `${file.name}: `, text, " ",
        el("button", { type: "button", class: "word", onclick: () => stop.abort() }, "stop")));
      try {
        await ask("log", { ...this.tasks.state(), study: "log", logName: file.name, log: await file.text() }, (message) => {
          if (message.type === "progress") {
            text.textContent = `what is expected of it: ${message.done} of ${message.total}`;
          } else if (message.type === "result") {
            shown = message;
            said.push(el("p", {}, `${file.name}: ${message.saved}.`));
          } else if (message.type === "fault") {
            said.push(el("p", { class: "caution" }, message.what.includes(file.name) ? message.what : `${file.name}: ${message.what}`));
          }
        }, stop.signal);
      } catch (gone) {
        said.push(el("p", { class: "caution" }, stop.signal.aborted ? `${file.name}: stopped.` : `The bench does not answer: ${gone.message}.`));
        break;
      }
    }
    this.taking = false;
    this.queue = [];
    if (shown) {
      this.tasks.show({ ...shown, saved: null }, "the notebook", this.tasks.close());
      out.querySelector("h2").after(...said);
    } else {
      out.replaceChildren(...said, this.tasks.close());
    }
  }
}
