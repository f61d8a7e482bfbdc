/** After a sign-in, once: when and from where the same person signed in before. Whoever did not is warned. */
import { el } from './elements.js';
import { signInAddress } from './person.js';
import { room } from './text.js';

const t = await room('person');
const FRESH = 'filmward-just-signed-in';

/** The next page says it. */
export function tellOnNextPage() {
  sessionStorage.setItem(FRESH, '1');
}

/** By the plant's clock, as the server tells it. */
export function lastSignIn({ earlier }) {
  return earlier === null ? t('firstSignIn') : t('lastSignIn', { day: earlier.at.slice(0, 10), time: earlier.at.slice(11, 16), from: earlier.from });
}

/** A line for the head of the page, or null where nothing is to be said. */
export function signInNotice(me) {
  if (sessionStorage.getItem(FRESH) === null || me.name === null) {
    return null;
  }
  sessionStorage.removeItem(FRESH);
  const node = el('p', { class: 'signin-notice', role: 'status' }, `${lastSignIn(me)} `,
    me.earlier ? el('a', { href: `${signInAddress()}&change` }, t('notYou')) : null, ' ',
    el('button', { type: 'button', class: 'quiet', on: { click: () => node.remove() } }, t('close')));
  return node;
}
