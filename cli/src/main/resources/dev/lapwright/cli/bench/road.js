// A circuit made on the page: of a file's points, or of clicks on an empty plane or over a picture. The server does the rest.

import { blocks } from "./blocks.js";
import { el, fixed } from "./dom.js";
import { colours, decimals, extent, polyline, scale, surface, ticks } from "./plot.js";
import { ask } from "./server.js";

const NEAR = 11;
const TIGHTEST_M = 3;
const GENTLEST_M = 400;

export class Road {
  /** State names the car on the sheet and the units, kept is told the file and title of a circuit to drive, close puts all away. */
  constructor(root, state, kept, close) {
    this.root = root;
    this.state = state;
    this.kept = kept;
    this.begin();
    this.lay(close);
    const again = () => { if (this.plane.isConnected) { this.shown(); } };
    addEventListener("resize", again);
    matchMedia("(prefers-color-scheme: dark)").addEventListener("change", again);
  }

  begin() {
    // Clicks lie on a plane of units, y downwards: metres where there is no picture, else its pixels.
    this.clicks = [];
    this.file = null;
    this.picture = null;
    this.unitM = 1;
    this.marks = null;
    this.edits = new Map();
    this.told = [];
    this.answer = null;
    this.hand = null;
  }

  lay(close) {
    const field = (label, input) => el("label", {}, `${label} `, input, " ");
    const number = (least, most, value, step = "any") => el("input", { type: "number", min: least, max: most, step, value, onchange: () => this.changed() });
    this.files = el("input", { type: "file", id: "road-file", accept: ".geojson,.json,.gpx,.csv,image/*", onchange: () => this.take(this.files.files[0]) });
    this.across = number(50, 100000, 1000);
    this.across.id = "road-across";
    this.closed = el("input", { type: "checkbox", checked: true, onchange: () => this.changed() });
    this.crosses = el("input", { type: "checkbox", onchange: () => this.changed() });
    this.width = number(1, 200, 10);
    this.count = number(0, 300, "", 1);
    this.count.id = "road-corners";
    this.error = number(0, 50, "");
    this.waves = number(0, 10000, "");
    this.name = el("input", { type: "text", id: "road-name", maxlength: "60", size: "14", value: "My circuit", autocomplete: "off", spellcheck: "false" });
    this.known = number(0.1, 100000, "");
    this.known.id = "road-known";
    this.scaling = el("p", { hidden: true }, "Scale: ",
      this.word("click two places whose distance you know", () => { this.marks = []; this.say("Click the first of two places."); }),
      field(" they are", this.known), "m apart");
    this.said = el("p", { role: "alert", id: "road-said" });
    this.plane = el("canvas", { class: "plot", id: "road-plane", tabindex: "0", role: "img",
      "aria-label": "The plane from above: click to set points, drag a point or a corner's radius. The table below sets radii and widths by the keyboard.",
      onpointerdown: (event) => this.down(event), onpointermove: (event) => this.move(event), onpointerup: () => this.up(),
      onkeydown: (event) => { if (event.key === "Backspace" || event.key === "Delete") { event.preventDefault(); this.back(); } },
      ondragover: (event) => event.preventDefault(),
      ondrop: (event) => { event.preventDefault(); this.take(event.dataTransfer.files[0]); } });
    this.plane.style.height = "400px";
    this.bend = el("canvas", { class: "plot", role: "img", "aria-label": "Curvature over distance, with its band; the table below has the corners." });
    this.bend.style.height = "130px";
    this.corners = el("div", {});
    this.report = el("div", {});
    this.root.replaceChildren(el("h2", {}, "A circuit"), this.word("put away", close),
      el("p", { class: "reading" }, "Drop a file of points (GeoJSON, GPX, CSV) or a picture on the plane, or click points along the middle of the road in the way driven, every 5 to 20 m in bends. "
        + "Drag a point to move it, a corner's ring to change its radius."),
      el("p", { class: "roadfields" }, field("A file or a picture", this.files), field("The plane is", this.across), "m across"),
      this.scaling,
      this.plane, this.bend, this.said,
      el("p", { class: "roadfields" }, this.word("take the last point back", () => this.back()), this.word("begin anew", () => { this.begin(); this.files.value = ""; this.changed(); }),
        field("closed", this.closed), field("meant to cross itself", this.crosses), field("width, m", this.width),
        field("corners a driver counts", this.count), field("points err by, m", this.error), field("smooth waves of, m", this.waves)),
      this.corners,
      el("p", { class: "roadfields" }, field("Its name", this.name), this.word("keep it and drive", () => this.keep())),
      this.report);
    this.changed();
    this.files.focus();
  }

  word(text, run) {
    return el("button", { type: "button", class: "word", onclick: run }, text);
  }

  say(text) {
    this.said.textContent = text;
    this.said.className = text ? "caution" : "";
  }

  // --- What it is made of --------------------------------------------------------------------------------------------

  async take(file) {
    if (!file) {
      return;
    }
    this.begin();
    if (file.type.startsWith("image/")) {
      try {
        this.picture = await createImageBitmap(file);
        this.unitM = 0;
      } catch {
        this.say("This picture cannot be read: take a PNG, JPEG or WebP.");
        return;
      }
    } else {
      this.file = { name: file.name, text: await file.text() };
      this.name.value = file.name.replace(/\.[A-Za-z]+$/, "");
    }
    this.changed();
  }

  changed() {
    this.scaling.hidden = this.picture === null;
    if (this.picture) {
      const known = Number(this.known.value);
      const [a, b] = this.marks ?? [];
      this.unitM = b && known > 0 ? known / Math.hypot(b[0] - a[0], b[1] - a[1]) : 0;
    }
    this.shown();
    this.fetch();
  }

  /** What the server is asked; null, with the reason said, where there is nothing to ask yet. */
  draft() {
    if (!this.file && this.picture && !(this.unitM > 0)) {
      this.say("The picture has no scale yet: click two places whose distance you know, and say how far they are apart.");
      return null;
    }
    if (!this.file && this.clicks.length < 8) {
      this.say(this.clicks.length > 0 ? `${this.clicks.length} points: a road is laid through 8 or more.` : "");
      return null;
    }
    const text = this.file?.text ?? "x,y\n" + this.clicks.map(([x, y]) => `${x * this.unitM},${-y * this.unitM}`).join("\n") + "\n";
    const draft = { name: this.name.value.trim(), file: this.file?.name ?? "clicks.csv", text, closed: Number(this.closed.checked), crosses: Number(this.crosses.checked),
      widthM: Number(this.width.value), accuracyM: Number(this.error.value) || 0, edits: [...this.edits].map(([corner, edit]) => ({ corner, ...edit })), told: this.told };
    return { ...draft, ...(this.count.value === "" ? {} : { corners: Number(this.count.value) }), ...(this.waves.value === "" ? {} : { smoothingM: Number(this.waves.value) }) };
  }

  /** Asks for the road; while one is on its way, only the newest is kept. */
  async fetch(more = {}) {
    const draft = this.draft();
    if (draft === null) {
      this.answer = null;
      this.shown();
      return;
    }
    if (this.waiting) {
      this.again = { ...this.again, ...more };
      return;
    }
    this.waiting = true;
    try {
      const { car, units } = this.state();
      await ask("circuit", { car, units, draft, ...more }, (message) => {
        if (message.type === "road") {
          this.before = null;
          this.answer = message;
          this.say("");
        } else if (message.type === "kept") {
          this.kept(message);
        } else if (message.type === "fault") {
          this.say(message.what);
          // What cannot be merged or split is not asked again.
          this.told = this.before ?? this.told;
        }
      });
    } catch (gone) {
      this.say(`The bench does not answer: ${gone.message}.`);
    }
    this.waiting = false;
    this.shown();
    if (this.again) {
      const next = this.again;
      this.again = null;
      this.fetch(next);
    }
  }

  keep() {
    this.fetch({ do: "keep" });
  }

  back() {
    if (this.clicks.pop()) {
      this.forget();
      this.changed();
    }
  }

  /** Corrections are of corners that may be none any more. */
  forget() {
    this.edits.clear();
    this.told = [];
  }

  /** Says that a corner and the next are one, or that one is two: numbers change, so corrections by number go first. */
  tell(what) {
    if (this.edits.size > 0) {
      this.say("Merge and split before radii and widths are set: corners get other numbers by it. Empty those fields first.");
      return;
    }
    this.told = what ? [...this.told, what] : this.told.slice(0, -1);
    this.before = what ? this.told.slice(0, -1) : null;
    this.fetch();
  }

  // --- What is shown of it -------------------------------------------------------------------------------------------

  shown() {
    this.draw();
    this.bent();
    const answer = this.answer;
    this.report.replaceChildren(...(answer ? blocks(answer.blocks) : []));
    if (this.hand === null || !answer) {
      this.table(answer?.corners ?? []);
    }
  }

  table(corners) {
    const focused = document.activeElement?.id;
    const set = (corner, key, value) => {
      const edit = { ...this.edits.get(corner.number) };
      delete edit[key];
      this.edits.set(corner.number, value > 0 ? { ...edit, [key]: value } : edit);
      if (Object.keys(this.edits.get(corner.number)).length === 0) {
        this.edits.delete(corner.number);
      }
      this.fetch();
    };
    const input = (corner, key, label, value, example) => el("td", {}, el("input", { type: "number", id: `${key}-${corner.number}`, "aria-label": `${label} of ${corner.label}, m`, step: "any", value,
      placeholder: example, onchange: (event) => set(corner, key, Number(event.target.value)) }));
    this.corners.replaceChildren(...(corners.length === 0 ? [] : [el("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": "Corners" }, el("table", {}, el("caption", {}, "Corners: type a radius or a width to correct it, or empty a field to let the points tell"),
      el("thead", {}, el("tr", {}, ["corner", "from, m", "to, m", "radius, m", "nine of ten, m", "width, m", "one or two?"].map((head) => el("th", { scope: "col" }, head)))),
      el("tbody", {}, corners.map((corner) => el("tr", {}, el("th", { scope: "row" }, corner.label), el("td", { class: "number" }, fixed(corner.entryM, 0)), el("td", { class: "number" }, fixed(corner.exitM, 0)),
        input(corner, "radiusM", "Radius", this.edits.get(corner.number)?.radiusM ?? "", fixed(corner.radiusM, 1)),
        el("td", {}, corner.leastM === undefined ? "–" : `${fixed(corner.leastM, 0)} to ${corner.greatestM === null ? "straight" : fixed(corner.greatestM, 0)}`),
        input(corner, "widthM", "Width", this.edits.get(corner.number)?.widthM ?? "", this.width.value),
        el("td", { class: "number" }, this.word("merge with the next", () => this.tell({ merge: corner.number })), this.splitting(corner))))))),
      this.told.length > 0 ? this.word("undo the last merge or split", () => this.tell(null)) : ""]));
    document.getElementById(focused)?.focus();
  }

  /** Where a corner is split: typed as a distance, its middle where nothing is. */
  splitting(corner) {
    const length = this.answer.lengthM;
    const middle = Math.round((corner.entryM + ((corner.exitM - corner.entryM + length) % length) / 2) % length);
    const at = el("input", { type: "number", id: `split-${corner.number}`, "aria-label": `Where ${corner.label} is split, m`, step: "any", placeholder: String(middle) });
    return [this.word("split at", () => this.tell({ split: corner.number, atM: Number(at.value) || middle })), at, " m"];
  }

  /** Lays the plane into its canvas: all of the picture, of the empty plane, or of the file's points. */
  fit(w, h) {
    let [left, top, wide, high] = [0, 0, Number(this.across.value) || 1000, 1];
    if (this.picture) {
      [wide, high] = [this.picture.width, this.picture.height];
    } else if (this.file && this.answer) {
      const all = [...this.answer.points, ...this.answer.road];
      const [x, y] = [extent([all.map((p) => p[0])]), extent([all.map((p) => -p[1])])];
      [left, top, wide, high] = [x[0], y[0], x[1] - x[0], y[1] - y[0]];
    }
    const size = Math.min(w / wide, h / high > 0 && (this.picture || this.file) ? h / high : Infinity);
    this.to = ([x, y]) => [(x - left) * size, (y - top) * size];
    this.from = ([x, y]) => [x / size + left, y / size + top];
    this.size = size;
  }

  /** A place in metres, y to the north, in pixels of the canvas. */
  place([x, y]) {
    const unit = this.unitM || 1;
    return this.to([x / unit, -y / unit]);
  }

  draw() {
    const { g, w, h } = surface(this.plane);
    const c = colours();
    this.fit(w, h);
    g.fillStyle = c.wash;
    g.fillRect(0, 0, w, h);
    if (this.picture) {
      g.drawImage(this.picture, ...this.to([0, 0]), this.picture.width * this.size, this.picture.height * this.size);
    }
    const line = (places, colour, width, dash = []) => polyline(g, places.map((p) => p[0]), places.map((p) => p[1]), (v) => v, (v) => v, { colour, width, dash });
    const dot = ([x, y], r, colour) => {
      g.fillStyle = colour;
      g.beginPath();
      g.arc(x, y, r, 0, 7);
      g.fill();
    };
    const clicks = this.clicks.map((p) => this.to(p));
    line(this.closed.checked && clicks.length > 2 ? [...clicks, clicks[0]] : clicks, c.muted, 1, [4, 4]);
    if (this.answer) {
      line(this.answer.road.map((p) => this.place(p)), c.now, 3);
      (this.file ? this.answer.points.map((p) => this.place(p)) : []).forEach((p) => dot(p, 1.5, c.ink));
    }
    clicks.forEach((p, i) => dot(p, i === 0 ? 5 : 3.5, c.ink));
    (this.marks ?? []).forEach((p) => dot(this.to(p), 5, c.pin));
    for (const corner of this.answer?.corners ?? []) {
      const [x, y] = this.place(corner.at);
      g.strokeStyle = c.pin;
      g.lineWidth = 2;
      g.beginPath();
      g.arc(x, y, 7, 0, 7);
      g.stroke();
      const radius = this.hand?.corner === corner.number ? this.hand.radiusM : corner.radiusM;
      g.fillStyle = c.ink;
      g.textAlign = "center";
      g.textBaseline = "middle";
      g.fillText(`T${corner.number} ${fixed(radius, 0)} m`, x - corner.inwards[0] * 32, y + corner.inwards[1] * 22);
    }
    const metre = this.size / (this.unitM || 1);
    if (this.unitM > 0) {
      const power = 10 ** Math.floor(Math.log10(w / metre / 4));
      const step = [5, 2, 1].map((n) => n * power).find((n) => n * metre <= w / 4);
      g.fillStyle = c.ink;
      g.fillRect(12, h - 14, step * metre, 2);
      g.textAlign = "left";
      g.textBaseline = "bottom";
      g.fillText(`${step} m`, 12, h - 16);
    }
  }

  bent() {
    const { g, w, h } = surface(this.bend);
    this.bend.hidden = !this.answer;
    if (!this.answer) {
      return;
    }
    const c = colours();
    const { curvature, band, lengthM } = this.answer;
    const x = scale(0, lengthM, 40, w - 8);
    const range = extent([curvature.map((p) => p[1]), band.map((p) => p[1]), band.map((p) => p[2])], 1);
    const y = scale(...range, h - 18, 16);
    g.fillStyle = c.wash;
    g.beginPath();
    band.forEach((p) => g.lineTo(x(p[0]), y(p[2])));
    [...band].reverse().forEach((p) => g.lineTo(x(p[0]), y(p[1])));
    g.fill();
    polyline(g, [0, lengthM], [0, 0], x, y, { colour: c.rule, width: 1 });
    polyline(g, curvature.map((p) => p[0]), curvature.map((p) => p[1]), x, y, { colour: c.now, width: 1.5 });
    g.fillStyle = c.muted;
    g.textBaseline = "middle";
    g.textAlign = "right";
    {
      const marks = ticks(...range, 6);
      const places = decimals(marks);
      marks.forEach((tick) => g.fillText(fixed(tick, places), 34, y(tick)));
    }
    g.textAlign = "center";
    ticks(0, 0.97 * lengthM, 6).forEach((tick) => g.fillText(fixed(tick, 0), x(tick), h - 7));
    g.textAlign = "left";
    g.fillText("curvature, per km, left is up, with the band of nine in ten; distance, m", 40, 7);
  }

  // --- The hand ------------------------------------------------------------------------------------------------------

  down(event) {
    const box = this.plane.getBoundingClientRect();
    const at = [event.clientX - box.left, event.clientY - box.top];
    const near = (place) => Math.hypot(place[0] - at[0], place[1] - at[1]) < NEAR;
    if (this.marks && this.marks.length < 2) {
      this.marks.push(this.from(at));
      this.say(this.marks.length < 2 ? "Click the second place." : "");
      this.known.focus();
      this.changed();
      return;
    }
    const point = this.clicks.findIndex((p) => near(this.to(p)));
    const corner = (this.answer?.corners ?? []).find((one) => near(this.place(one.at)));
    if (corner) {
      this.hand = { corner: corner.number, radiusM: corner.radiusM, grip: corner };
    } else if (point >= 0) {
      this.hand = { point };
    } else if (!this.file) {
      this.clicks.push(this.from(at));
      this.forget();
      this.changed();
    }
    if (this.hand !== null) {
      this.plane.setPointerCapture(event.pointerId);
    }
  }

  move(event) {
    if (this.hand === null) {
      return;
    }
    const box = this.plane.getBoundingClientRect();
    const at = this.from([event.clientX - box.left, event.clientY - box.top]);
    if (this.hand.point !== undefined) {
      this.clicks[this.hand.point] = at;
      this.forget();
      this.draw();
      this.fetch();
      return;
    }
    // The apex goes with the hand along the line to the middle of its circle, which stays: away from it the radius grows.
    const { grip } = this.hand;
    const unit = this.unitM || 1;
    const inwards = (at[0] * unit - grip.at[0]) * grip.inwards[0] + (-at[1] * unit - grip.at[1]) * grip.inwards[1];
    this.hand.radiusM = Math.max(TIGHTEST_M, Math.min(GENTLEST_M, Math.round(grip.radiusM - inwards)));
    this.edits.set(grip.number, { ...this.edits.get(grip.number), radiusM: this.hand.radiusM });
    this.draw();
    this.fetch();
  }

  up() {
    if (this.hand !== null) {
      this.hand = null;
      this.fetch();
    }
  }
}
