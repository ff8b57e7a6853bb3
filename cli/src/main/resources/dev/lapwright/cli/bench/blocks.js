// Reports of the commands, laid out as text and tables.

import { el, strong } from "./dom.js";

/** A table; rows may be chosen. */
export function table(block, chosen, mark) {
  // A column of marks has no title, and heads nothing.
  const head = el("tr", {}, block.columns.map((column) =>
    el(column.title ? "th" : "td", { scope: column.title ? "col" : null, class: (column.words ? "words" : "number") + (column.lesser ? " lesser" : "") },
      column.title, column.unit ? el("span", { class: "unit" }, column.unit) : null)));
  const first = block.columns.findIndex((column) => column.words && column.title);
  const rows = block.rows.map((row, r) =>
    el("tr", { class: [block.marked[r] ? "marked" : "", mark === r ? "chosen" : ""].join(" ").trim() || null },
      row.map((cell, i) => {
        const column = block.columns[i];
        const kind = (column.words ? "words" : "number") + (column.lesser ? " lesser" : "");
        const text = chosen && i === first
          ? el("button", { type: "button", class: "word", onclick: () => chosen(r) }, strong(cell))
          : strong(cell);
        return i === first ? el("th", { scope: "row", class: kind }, text) : el("td", { class: kind }, text);
      })));
  return el("div", { class: "scroll", role: "region", tabindex: "0", "aria-label": block.caption },
    el("table", {}, el("caption", {}, block.caption), el("thead", {}, head), el("tbody", {}, rows)));
}

/** Everything a report says. */
export function blocks(list) {
  const out = [];
  let items = null;
  for (const block of list) {
    if (block.kind === "item") {
      items = items || out[out.push(el("dl", { class: "items" })) - 1];
      items.append(el("div", {}, el("dt", {}, block.name), el("dd", {}, strong(block.text))));
      continue;
    }
    items = null;
    if (block.kind === "heading") {
      out.push(el("h3", {}, strong(block.text)));
    } else if (block.kind === "table") {
      out.push(table(block));
    } else if (block.kind === "caution") {
      out.push(el("p", { class: "caution" }, el("strong", {}, block.name + " "), strong(block.text)));
    } else {
      out.push(el("p", {}, strong(block.text)));
    }
  }
  return out;
}
