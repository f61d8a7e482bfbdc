/**
 * Something that may take long. After a moment it says what is done, how far it is and for how long, and can be cancelled; what
 * is cancelled ends at the server too, and leaves nothing half done.
 *
 *     const proposal = await longWork(place, t('reading'), (waiting) => getJson('/api/v1/reports/week', query, waiting));
 */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { age, number } from './format.js';
import { room } from './text.js';

const t = await room('frame');
const QUIET_MS = 700;
const ASKED_MS = 500;

/** `place` holds nothing else while this goes on, and nothing afterwards. Throws as `ask` does. */
export async function longWork(place, words, ask) {
  const leaving = new AbortController();
  const name = crypto.randomUUID ? crypto.randomUUID() : [...crypto.getRandomValues(new Uint8Array(16))].map((byte) => byte.toString(16).padStart(2, '0')).join('');
  const began = performance.now();
  let sentShare = null;
  let readShare = null;
  const said = el('span', { role: 'status' });
  const bar = el('progress', { max: 1, 'aria-label': words });
  const time = el('span', { class: 'soft' });
  const button = el('button', { type: 'button', class: 'quiet', data: { action: 'cancel-work' }, on: { click: cancel } }, t('work.cancel'));
  const node = el('span', { class: 'long-work' }, said, bar, time, button);
  const shown = setTimeout(() => place.replaceChildren(node), QUIET_MS);
  const asked = setInterval(look, ASKED_MS);
  draw();

  /** What is still being sent ends here; what is being done ends at the server, which answers then. */
  async function cancel() {
    button.disabled = true;
    setText(said, t('work.cancelling', { words }));
    const { running } = await postJson(`/api/v1/work/${name}/cancel`, {}).catch(() => ({ running: false }));
    if (!running || (sentShare !== null && sentShare < 1)) {
      leaving.abort();
    }
  }

  async function look() {
    const work = await getJson(`/api/v1/work/${name}`).catch(() => null);
    readShare = work?.share ?? readShare;
    draw();
  }

  function draw() {
    const share = readShare ?? sentShare;
    if (!button.disabled) {
      setText(said, share === null ? words : t(readShare === null ? 'work.sent' : 'work.done', { words, percent: number(100 * share, 0) }));
    }
    if (share === null) {
      bar.removeAttribute('value');
    } else {
      bar.value = share;
    }
    setText(time, t('work.since', { age: age((performance.now() - began) / 1000) }));
  }

  try {
    return await ask({ name, signal: leaving.signal, sent: (share) => ((sentShare = share), draw()) });
  } finally {
    clearTimeout(shown);
    clearInterval(asked);
    node.remove();
  }
}
