// What is asked of the bench's server: answers come message by message, a line of JSON each.

import { stream } from "./presence.js";

async function* lines(body) {
  const reader = body.pipeThrough(new TextDecoderStream()).getReader();
  let rest = "";
  for (;;) {
    const { done, value } = await reader.read();
    if (done) {
      return;
    }
    const parts = (rest + value).split("\n");
    rest = parts.pop();
    // An empty line is a sign of life.
    for (const part of parts.filter((line) => line !== "")) {
      yield JSON.parse(part);
    }
  }
}

function send(path, body, signal) {
  return fetch(path, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(body),
    signal,
  });
}

/** Asks, and hears each message; the promise ends with the answer. */
export async function ask(path, body, heard, signal) {
  const response = await send(path, body, signal);
  if (!response.ok) {
    heard({ type: "fault", what: (await response.json()).what });
    return;
  }
  for await (const message of lines(response.body)) {
    heard(message);
  }
}

/** Asks for one thing; refuses with the server's own words. */
export async function once(path, body) {
  const response = await (body === undefined ? fetch(path) : send(path, body));
  const answer = await response.json();
  if (!response.ok) {
    throw new Error(answer.what);
  }
  return answer;
}

/** Keeps word with the server while the window is open. */
export function presence(news, alive) {
  const heard = (message) => {
    if (message.news) {
      news(message.news);
    }
    if (message.alive !== undefined) {
      alive(message.alive, message.ended);
    }
  };
  if (globalThis.SharedWorker === undefined) {
    stream(heard);
    return;
  }
  const { port } = new SharedWorker("presence.js", { type: "module" });
  port.onmessage = ({ data }) => heard(data);
}
