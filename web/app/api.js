/** Talks to the server. Every refusal becomes an ApiError that says what is wrong and what to do instead. */

/** Sent on the document when the server knows nobody here (any more). */
export const SIGNED_OUT = 'filmward-signed-out';

export class ApiError extends Error {
  constructor(status, what, instead) {
    super(what);
    this.status = status;
    this.instead = instead;
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

function post(path, contentType, body) {
  return exchange(path, {
    method: 'POST',
    headers: { 'content-type': contentType, 'x-filmward': '1' },
    body,
  });
}

async function exchange(path, options) {
  let response;
  try {
    response = await fetch(path, { cache: 'no-store', ...options });
  } catch {
    throw new ApiError(0, 'No connection to Filmward', 'Nothing was changed; try again.');
  }
  const body = await response.json().catch(() => null);
  if (response.ok && body !== null) {
    return body;
  }
  if (response.status === 401) {
    document.dispatchEvent(new Event(SIGNED_OUT));
  }
  const error = body?.error ?? {};
  throw new ApiError(response.status, error.what ?? `The server answered ${response.status}`, error.instead ?? '');
}
