/** Talks to the server. Every refusal becomes an ApiError that says what is wrong and what to do instead. */
import { pageWork } from './pageWork.js';
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

/** `one` is of `longWork.js`, where a place of the page waits for the answer. */
export function getJson(path, query = {}, one = undefined) {
  const given = Object.entries(query).filter(([, value]) => value !== null && value !== undefined);
  const search = new URLSearchParams(given).toString();
  const look = (waiting) => exchange(search ? `${path}?${search}` : path, { headers: { accept: 'application/json' } }, asLook(waiting));
  return one ? look(one) : pageWork(look);
}

export function postJson(path, body, one = undefined) {
  return post(path, { 'content-type': 'application/json' }, JSON.stringify(body), one);
}

export function postCsv(path, file, one = undefined) {
  return post(path, { 'content-type': 'text/csv' }, file, one);
}

export function postYaml(path, text) {
  return post(path, { 'content-type': 'application/yaml' }, text);
}

/** A file that the server makes. */
export function getFile(path, one) {
  return exchange(path, {}, asLook(one), (response) => response.blob());
}

/** Sends JSON, gives the file that is made of it. */
export function postForFile(path, body) {
  const request = { method: 'POST', headers: { 'content-type': 'application/json', 'x-filmward': '1' }, body: JSON.stringify(body) };
  return pageWork((one) => exchange(path, request, asLook(one), (response) => response.blob()));
}

/** It changes nothing, so that nobody wants it any more who left the page. */
function asLook(one) {
  one.isLook = true;
  return one;
}

/** What the server refused, in the language of the person; its forms are read when they are first needed. */
async function refusal(status, { what, instead = '', asks = '' }) {
  const said = await sayings(...REFUSALS).catch(() => (text) => text);
  return new ApiError(status, said(what) ?? t('answered', { status: String(status) }), said(instead), asks);
}

/** What wants the password once more is done again when it was given. */
async function post(path, headers, body, one) {
  const request = { method: 'POST', headers: { ...headers, 'x-filmward': '1' }, body };
  const send = () => (one ? exchange(path, request, one) : pageWork((waiting) => exchange(path, request, waiting)));
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

/** Under the name of what is waited for the server can be asked how far it is. */
async function exchange(path, options, one, read = (response) => response.json()) {
  const request = { cache: 'no-store', ...options, headers: { ...options.headers, 'x-filmward-work': one.name }, signal: one.signal };
  let response;
  try {
    response = await (options.body instanceof Blob ? sendBlob(path, request, one.sent) : fetch(path, request));
  } catch (error) {
    throw one.signal.aborted ? new ApiError(0, t('work.cancelled'), '') : new ApiError(0, t('noConnection'), t('tryAgain'));
  }
  const body = await (response.ok ? read(response) : response.json()).catch(() => null);
  if (response.ok && body !== null) {
    return body;
  }
  if (one.signal.aborted) {
    throw new ApiError(0, t('work.cancelled'), '');
  }
  if (response.status === 401) {
    document.dispatchEvent(new Event(SIGNED_OUT));
  }
  throw await refusal(response.status, body?.error ?? {});
}
