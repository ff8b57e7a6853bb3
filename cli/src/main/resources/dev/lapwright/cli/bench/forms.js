// Forms whose faults the server finds: each is said at its field, in the server's words.

import { el } from "./dom.js";

/**
 * A form of texts.
 *
 * @param fields [name, label, example] each
 * @param action what its button says
 * @param send told the texts by name; gives a promise of null, or of a fault with its place and what is wrong
 */
export function form(fields, action, send, ...more) {
  const inputs = new Map();
  const rows = fields.map(([name, label, example, value]) => {
    const id = `field-${name}`;
    const wrong = el("span", { class: "wrong", id: `${id}-wrong`, role: "alert" });
    const input = el("input", { type: "text", id, maxlength: "4000", autocomplete: "off", spellcheck: "false", placeholder: example, value: value ?? "" });
    inputs.set(name, { input, wrong });
    return el("div", { class: "field" }, el("label", { for: id }, label), input, wrong);
  });
  const said = el("span", { class: "reading", role: "status" });
  const button = el("button", { type: "submit", class: "word" }, action);
  const root = el("form", {
    class: "entry",
    onsubmit: async (event) => {
      event.preventDefault();
      for (const { input, wrong } of inputs.values()) {
        wrong.textContent = "";
        input.removeAttribute("aria-invalid");
        input.removeAttribute("aria-describedby");
      }
      said.textContent = "…";
      button.disabled = true;
      const texts = Object.fromEntries([...inputs].map(([name, { input }]) => [name, input.value]));
      const fault = await send(texts, (text) => { said.textContent = text; });
      button.disabled = false;
      said.textContent = "";
      if (fault) {
        // Two answers that contradict each other are marked both; the words stand at the first.
        const meant = [...inputs].filter(([name]) => (fault.places ?? [fault.place]).includes(name));
        for (const [name, { input }] of meant) {
          input.setAttribute("aria-invalid", "true");
          input.setAttribute("aria-describedby", `field-${meant[0][0]}-wrong`);
          inputs.get(name).wrong.textContent = name === meant[0][0] ? fault.what : "";
        }
        if (meant.length > 0) {
          meant[0][1].input.focus();
        } else {
          said.textContent = fault.what;
        }
      }
    },
  }, ...more.filter(Boolean), rows, el("p", {}, button, " ", said));
  return root;
}

/** What is noted of a run, as the command takes it. */
export const RUN = [
  ["laps", "Laps", "1:45.103, 1:44.9, 2:01.5 out"],
  ["driver", "The driver's words", ""],
  ["fuel", "Fuel at its beginning", "38 l"],
  ["cold", "Pressures as set", "FL 24psi, FR 24psi, RL 23psi, RR 23psi"],
  ["hot", "Pressures after it", "FL 27psi, FR 27psi, RL 26psi, RR 26psi"],
  ["tread", "Across the treads, °C, inner edge first", "FL 92/86/80, FR 90/85/80"],
  ["tyres", "Which tyres", ""],
  ["remark", "Anything else", ""],
];
