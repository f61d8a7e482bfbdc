/** Talks to the server. Every refusal becomes an ApiError that says what is wrong and what to do instead. */
import { sayings } from './said.js';
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
    return this.instead ? `${this.message}. ${this.instead}` : this.message;
  }
}

export function getJson(path, query = {}) {
  const given = Object.entries(query).filter(([, value]) => value !== null && value !== undefined);
  const search = new URLSearchParams(given).toString();
  return exchange(search ? `${path}?${search}` : path, { headers: { accept: 'application/json' } });
}

export function postJson(path, body) {
  return post(path, 'application/json', JSON.stringify(body));
}

export function postCsv(path, file) {
  return post(path, 'text/csv', file);
}

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
async function post(path, contentType, body) {
  const request = { method: 'POST', headers: { 'content-type': contentType, 'x-filmward': '1' }, body };
  try {
    return await exchange(path, request);
  } catch (error) {
    if (error.asks !== 'confirm') {
      throw error;
    }
    const { confirmPerson } = await import('./confirmPerson.js');
    if (!(await confirmPerson())) {
      throw new ApiError(error.status, t('noPassword'), t('nothingChanged'));
    }
    return exchange(path, request);
  }
}

async function exchange(path, options) {
  let response;
  try {
    response = await fetch(path, { cache: 'no-store', ...options });
  } catch {
    throw new ApiError(0, t('noConnection'), t('tryAgain'));
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
