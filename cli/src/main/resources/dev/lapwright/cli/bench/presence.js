// The stream by which the server knows that a window is open. As a shared worker it is one for all windows of a browser, which
// has six connections to a server and no more.

/** Tells what comes of it: whether the server is alive or has ended, and news. */
export function stream(tell) {
  const events = new EventSource("presence");
  events.addEventListener("open", () => tell({ alive: true }));
  events.addEventListener("error", () => tell({ alive: false }));
  events.addEventListener("news", (event) => tell({ alive: true, news: JSON.parse(event.data).edited }));
  events.addEventListener("bye", () => {
    events.close();
    tell({ alive: false, ended: true });
  });
}

if ("onconnect" in globalThis) {
  const windows = [];
  // Windows that are opened later are told what the others know.
  let known = {};
  globalThis.onconnect = ({ ports: [port] }) => {
    windows.push(port);
    port.postMessage(known);
  };
  stream((message) => {
    known = { ...known, ...message };
    windows.forEach((port) => port.postMessage(message));
  });
}
