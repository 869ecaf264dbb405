// What was changed, and back again. A state is {changes, variant}: what the address holds and undo keeps.
const History = {
  past: [],
  present: {changes: {}, variant: 0},
  future: [],
  to(state) {
    this.past.push(this.present);
    this.present = state;
    this.future = [];
    this.show();
  },
  // The state before, or after; undefined if there is none.
  undo() {
    return this.step(this.past, this.future);
  },
  redo() {
    return this.step(this.future, this.past);
  },
  step(from, onto) {
    if (from.length === 0) return undefined;
    onto.push(this.present);
    this.present = from.pop();
    this.show();
    return this.present;
  },
  isEntered() {
    return Object.keys(this.present.changes).length === 0 && this.present.variant === 0;
  },
  show() {
    byId("undo").disabled = this.past.length === 0;
    byId("redo").disabled = this.future.length === 0;
    byId("as-entered").disabled = this.isEntered();
    try {
      window.history.replaceState(null, "", linkOf(this.present));
    } catch {
      // a page of a file may not change its address in some browsers: "Copy a link" gives it all the same
    }
  },
};

function linkOf(state) {
  if (Object.keys(state.changes).length === 0 && state.variant === 0) return "#";
  const bytes = new TextEncoder().encode(JSON.stringify(state));
  const text = btoa(Array.from(bytes, (byte) => String.fromCharCode(byte)).join(""));
  return `#s=${text.replaceAll("+", "-").replaceAll("/", "_").replaceAll("=", "")}`;
}

// The state that an address holds; undefined for none, or for one that is no state.
function stateOf(hash) {
  if (!hash.startsWith("#s=")) return undefined;
  try {
    const text = atob(hash.slice(3).replaceAll("-", "+").replaceAll("_", "/"));
    const state = JSON.parse(new TextDecoder().decode(Uint8Array.from(text, (letter) => letter.charCodeAt(0))));
    const good = state && typeof state.changes === "object" && state.changes !== null &&
        !Array.isArray(state.changes) && Number.isInteger(state.variant) && state.variant >= 0;
    return good ? {changes: state.changes, variant: state.variant} : undefined;
  } catch {
    return undefined;
  }
}
