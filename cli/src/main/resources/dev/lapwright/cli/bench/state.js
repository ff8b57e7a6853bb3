// State of the page: a small value that the address holds, with its past and its future.

const SAME_HAND_MS = 700;
const MOST_STEPS = 200;

const copy = (value) => JSON.parse(JSON.stringify(value));

/** State as text for the address, and back. */
export function toAddress(state) {
  const bytes = new TextEncoder().encode(JSON.stringify(state));
  return btoa(String.fromCharCode(...bytes)).replaceAll("+", "-").replaceAll("/", "_").replace(/=+$/, "");
}

export function fromAddress(text) {
  try {
    const binary = atob(text.replaceAll("-", "+").replaceAll("_", "/"));
    const state = JSON.parse(new TextDecoder().decode(Uint8Array.from(binary, (c) => c.charCodeAt(0))));
    return state && state.lapwright === "bench/1" && state.now && Array.isArray(state.pins) ? state : null;
  } catch {
    return null;
  }
}

export class History {
  constructor(state, told) {
    this.state = state;
    this.past = [];
    this.future = [];
    this.told = told;
    this.hand = "";
    this.at = 0;
  }

  /** Changes a copy of the state; turns of one knob in a row are one step back. */
  change(edit, hand = "") {
    const before = this.state;
    const next = copy(before);
    edit(next);
    const now = Date.now();
    const same = hand !== "" && hand === this.hand && now - this.at < SAME_HAND_MS;
    if (!same) {
      this.past.push(before);
      this.past.splice(0, this.past.length - MOST_STEPS);
    }
    this.hand = hand;
    this.at = now;
    this.future = [];
    this.go(next);
  }

  /** Changes what is no step of its own, such as the view. */
  turn(edit) {
    const next = copy(this.state);
    edit(next);
    this.go(next);
    // No hand turns these on and on, so nothing is waited for: the page may be loaded again at once.
    this.keep();
  }

  undo() {
    this.step(this.past, this.future);
  }

  redo() {
    this.step(this.future, this.past);
  }

  step(from, to) {
    if (from.length > 0) {
      to.push(this.state);
      this.hand = "";
      this.go(from.pop());
    }
  }

  go(next) {
    const before = this.state;
    this.state = next;
    clearTimeout(this.timer);
    this.timer = setTimeout(() => this.keep(), 200);
    this.told(next, before);
  }

  /** Writes the state into the address. */
  keep() {
    try {
      history.replaceState(null, "", "#" + toAddress(this.state));
    } catch {
      // A frozen page has no address of its own.
    }
  }
}
