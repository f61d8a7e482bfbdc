/**
 * The stream of what happens in the plant. The browser itself reconnects with the last event's id and
 * the server replays what was missed; where that is not possible listeners get `reload` and fetch anew.
 *
 * A page that nobody sees lets its connection go and fetches anew when it is seen again: a browser has
 * six connections to a server for all its tabs, and would hold those of pages that it left behind.
 *
 * Topics: sample, alarm, limits, file, reload (all with the event's data) and state ('live' | 'lost').
 */
import { synchronise } from './plantClock.js';

const TOPICS = ['line', 'sample', 'alarm', 'limits', 'file', 'reload'];
const FIRST_RETRY_MS = 2_000;
const LAST_RETRY_MS = 30_000;

const hearers = new Map();
let source = null;
let retryMs = FIRST_RETRY_MS;
let retry = null;
let missed = false;

/** Calls `hearer` for each event of a topic; returns the way to stop. */
export function on(topic, hearer) {
  if (!hearers.has(topic)) {
    hearers.set(topic, new Set());
  }
  hearers.get(topic).add(hearer);
  return () => hearers.get(topic).delete(hearer);
}

document.addEventListener('visibilitychange', connect);
window.addEventListener('pagehide', letGo);
window.addEventListener('pageshow', (event) => event.persisted && connect());

export function connect() {
  if (document.hidden) {
    letGo();
  } else if (source === null) {
    open();
  }
}

function open() {
  source = new EventSource('/api/v1/events');
  source.addEventListener('hello', hello);
  source.addEventListener('error', failed);
  for (const topic of TOPICS) {
    source.addEventListener(topic, (event) => tell(topic, parsed(event.data)));
  }
}

function letGo() {
  clearTimeout(retry);
  source?.close();
  source = null;
  missed = true;
}

function hello(event) {
  retryMs = FIRST_RETRY_MS;
  synchronise(parsed(event.data)?.now);
  tell('state', 'live');
  if (missed) {
    missed = false;
    tell('reload', null);
  }
}

function failed() {
  tell('state', 'lost');
  if (source.readyState === EventSource.CLOSED) {
    letGo();
    retry = setTimeout(connect, retryMs);
    retryMs = Math.min(retryMs * 2, LAST_RETRY_MS);
  }
}

function tell(topic, data) {
  for (const hearer of hearers.get(topic) ?? []) {
    hearer(data);
  }
}

function parsed(text) {
  try {
    return JSON.parse(text);
  } catch {
    return null;
  }
}
