/**
 * Sends a file as `fetch` does, and tells how much of it is sent: `sent(share)`, from 0 to 1. Gives what of an answer `api.js`
 * reads.
 */
export function sendBlob(path, { method, headers, body, signal }, sent) {
  return new Promise((resolve, reject) => {
    const request = new XMLHttpRequest();
    request.open(method, path);
    Object.entries(headers).forEach(([name, value]) => request.setRequestHeader(name, value));
    request.upload.addEventListener('progress', ({ loaded, total }) => sent(total > 0 ? loaded / total : 0));
    request.addEventListener('load', () => resolve({ ok: request.status >= 200 && request.status < 300, status: request.status, json: async () => JSON.parse(request.responseText) }));
    ['error', 'abort'].forEach((event) => request.addEventListener(event, () => reject(new Error(event))));
    signal?.addEventListener('abort', () => request.abort());
    request.send(body);
  });
}
