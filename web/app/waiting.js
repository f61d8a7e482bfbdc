/** Something that the server is asked for and may take long at: under its name it can be asked how far it is, and cancelled. */

/** `api.js` sends the name along, ends with the signal, and tells how much of a file is `sent`. */
export function waiting() {
  const leaving = new AbortController();
  const name = newName();
  const began = performance.now();
  let sentShare = null;
  let readShare = null;
  let isCancelled = false;

  /** Asks how far it is; where nothing is heard, what was known stays. */
  async function look() {
    readShare = (await work('', {}))?.share ?? readShare;
  }

  /** What is only looked at or still being sent ends here too; what is being changed, when the server says what became of it. */
  async function cancel() {
    isCancelled = true;
    const told = await work('/cancel', { method: 'POST', headers: { 'content-type': 'application/json', 'x-filmward': '1' }, body: '{}', keepalive: true });
    if (one.isLook || !told?.running || (sentShare !== null && sentShare < 1)) {
      leaving.abort();
    }
  }

  const work = (what, options) => fetch(`/api/v1/work/${name}${what}`, { cache: 'no-store', ...options }).then((response) => response.json()).catch(() => null);
  const one = {
    isLook: false,
    name,
    signal: leaving.signal,
    sent: (share) => (sentShare = share),
    look,
    cancel,
    isCancelled: () => isCancelled,
    seconds: () => (performance.now() - began) / 1000,
    share: () => readShare ?? sentShare,
    isBeingSent: () => readShare === null && sentShare !== null,
  };
  return one;
}

function newName() {
  return crypto.randomUUID ? crypto.randomUUID() : [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
}
