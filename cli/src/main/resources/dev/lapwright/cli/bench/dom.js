// Elements of the page, made from data; text is never read as markup.

const SVG = "http://www.w3.org/2000/svg";

function fill(node, attributes, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === null || value === undefined || value === false) {
      continue;
    }
    if (name.startsWith("on")) {
      node.addEventListener(name.slice(2), value);
    } else {
      node.setAttribute(name, value === true ? "" : value);
    }
  }
  node.append(...children.flat().filter((child) => child !== null && child !== undefined));
  return node;
}

/** An element of HTML with its attributes, listeners ("onclick") and children. */
export function el(name, attributes = {}, ...children) {
  return fill(document.createElement(name), attributes, children);
}

/** An element of SVG. */
export function svg(name, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, name), attributes, children);
}

/** Text in which parts between two marks stand out. */
export function strong(text) {
  return text.split("\u0001").map((part, i) => (i % 2 === 1 ? el("strong", {}, part) : part));
}

/** A number in so many decimals, with a true minus sign. */
export function fixed(value, decimals) {
  return value === null || !Number.isFinite(value) ? "–" : value.toFixed(decimals).replace("-", "\u2212");
}

/** The same, always with a sign. */
export function signed(value, decimals) {
  const text = fixed(value, decimals);
  return value > 0 && Number(value.toFixed(decimals)) !== 0 ? "+" + text : text;
}

export const byId = (id) => document.getElementById(id);
