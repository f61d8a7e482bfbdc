/** Talks to the server. Every refusal becomes an ApiError that says what is wrong and what to do instead. */
import { sayings } from './said.js';
import { sendBlob } from './sendBlob.js';
import { room } from './text.js';

const t = await room('frame');
const REFUSALS = ['refusals', 'alarms', 'diagnosis', 'gauge', 'intake', 'charts'];

/** Sent on the document when the server knows nobody here (any more). */
export const SIGNED_OUT = 'filmward-signed-out';

export class ApiError extends Error {
  /** `asks` is what the person must be asked for, in a word; often nothing. */
  constructor(status, what, instead, asks = '') {
    super(what);
    this.status = status;
    this.instead = instead;
    this.asks = asks;
  }

  /** One sentence for the person. */
  get sentence() {
    return this.instead ? `${this.message}. ${this.instead[0].toUpperCase()}${this.instead.slice(1)}` : this.message;
  }
}

/** `waiting` is of `longWork.js`, where somebody waits for the answer and may leave it. */
export function getJson(path, query = {}, waiting = undefined) {
  const given = Object.entries(query).filter(([, value]) => value !== null && value !== undefined);
  const search = new URLSearchParams(given).toString();
  return exchange(watched(search ? `${path}?${search}` : path, waiting), { headers: { accept: 'application/json' }, signal: waiting?.signal });
}

export function postJson(path, body, waiting = undefined) {
  return post(path, 'application/json', JSON.stringify(body), waiting);
}

export function postCsv(path, file, waiting = undefined) {
  return post(path, 'text/csv', file, waiting);
}

/** Under the name of what is waited for the server can be asked how far it is. */
const watched = (path, waiting) => (waiting ? `${path}${path.includes('?') ? '&' : '?'}work=${waiting.name}` : path);

export function postYaml(path, text) {
  return post(path, 'application/yaml', text);
}

/** Sends JSON, gives the file that is made of it. */
export async function postForFile(path, body) {
  const response = await fetch(path, { method: 'POST', headers: { 'content-type': 'application/json', 'x-filmward': '1' }, body: JSON.stringify(body) });
  if (response.ok) {
    return response.blob();
  }
  const { error = {} } = await response.json().catch(() => ({}));
  throw await refusal(response.status, error);
}

/** What the server refused, in the language of the person; its forms are read when they are first needed. */
async function refusal(status, { what, instead = '', asks = '' }) {
  const said = await sayings(...REFUSALS).catch(() => (text) => text);
  return new ApiError(status, said(what) ?? t('answered', { status: String(status) }), said(instead), asks);
}

/** What wants the password once more is done again when it was given. */
async function post(path, contentType, body, waiting) {
  const request = { method: 'POST', headers: { 'content-type': contentType, 'x-filmward': '1' }, body, signal: waiting?.signal };
  const send = () => exchange(watched(path, waiting), request, waiting && body instanceof Blob ? (address, options) => sendBlob(address, options, waiting.sent) : fetch);
  try {
    return await send();
  } catch (error) {
    if (error.asks !== 'confirm') {
      throw error;
    }
    const { confirmPerson } = await import('./confirmPerson.js');
    if (!(await confirmPerson())) {
      throw new ApiError(error.status, t('noPassword'), t('nothingChanged'));
    }
    return send();
  }
}

async function exchange(path, options, ask = fetch) {
  let response;
  try {
    response = await ask(path, { cache: 'no-store', ...options });
  } catch (error) {
    throw options.signal?.aborted ? new ApiError(0, t('work.cancelled'), '') : new ApiError(0, t('noConnection'), t('tryAgain'));
  }
  const body = await response.json().catch(() => null);
  if (response.ok && body !== null) {
    return body;
  }
  if (response.status === 401) {
    document.dispatchEvent(new Event(SIGNED_OUT));
  }
  throw await refusal(response.status, body?.error ?? {});
}
