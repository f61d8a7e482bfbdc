/**
 * Who is signed in here and what that person may do. The server decides each time; pages only show it, and
 * say why something is not for this person.
 */
import { getJson, SIGNED_OUT } from './api.js';
import { el } from './elements.js';
import { room } from './text.js';

const t = await room('person');

/** Sent on the document when somebody else, or nobody, is signed in. */
export const PERSON_CHANGED = 'filmward-person';

const TOLD_EVERY_MS = 5 * 60_000;
const NOBODY = { name: null, role: null, may: ['anybody'], mustChange: false, mustSetUp: false, secondFactor: false, earlier: null, guests: [] };
let me = NOBODY;
let toldAt = 0;

/** Asks the server who is here, which also tells it that a person is at the screen. */
export async function load() {
  toldAt = Date.now();
  const before = me.name;
  me = await getJson('/api/v1/me');
  if (before !== me.name) {
    document.dispatchEvent(new Event(PERSON_CHANGED));
  }
  return me;
}

/** From now on a touch, a key and a page seen again tell the server that somebody is there, now and then. */
export function watch() {
  const tell = () => Date.now() - toldAt > TOLD_EVERY_MS && load().catch(() => {});
  document.addEventListener('pointerdown', tell);
  document.addEventListener('keydown', tell);
  document.addEventListener('visibilitychange', () => document.hidden || load().catch(() => {}));
  document.addEventListener(SIGNED_OUT, () => load().catch(() => {}));
}

export const who = () => me;

export function may(permission) {
  return me.may.includes(permission);
}

/** A role or permission as people say it. */
export function inWords(word) {
  return t.maybe(`role.${word}`) ?? word.replaceAll('-', ' ');
}

/** The way to sign in and come back to this page. */
export function signInAddress() {
  return `/signin.html?${new URLSearchParams({ to: location.pathname + location.search + location.hash })}`;
}

/** Why this person may not do something; null where nothing stands against it. */
export function whyNot(permission) {
  if (may(permission)) {
    return null;
  }
  return me.name === null
    ? el('p', { class: 'why-not' }, t.nodes('signInFor', { link: el('a', { href: signInAddress() }, t('signIn')), whom: t(`forWhom.${permission}`) }))
    : el('p', { class: 'why-not' }, t('notForYou', { whom: t(`forWhom.${permission}`), name: me.name, role: me.role === null ? t('aMachine') : inWords(me.role) }));
}

/** Under whose name something will be kept, or why it will not be. */
export function signature(permission) {
  return whyNot(permission) ?? el('p', { class: 'signature' }, t.nodes('keptUnder', { name: el('strong', {}, me.name) }));
}

/** A button that this person may not use is shown, but cannot be pressed. */
export function allow(button, permission) {
  button.disabled = !may(permission);
  return button;
}

/**
 * Asks for a last word by the person who is signed in; `chosen` is called with the name. `verb` is what happens
 * then.
 */
export function askWho(question, verb, chosen, permission = 'tend-alarms') {
  return el('div', { class: 'who', role: 'group', 'aria-label': question },
    may(permission) ? el('p', { class: 'who-question' }, question) : null,
    lastWord(verb, chosen, permission));
}

/** The button of the last word. A screen on a shop floor is shared, so the name stands on it. */
export function lastWord(verb, chosen, permission) {
  return whyNot(permission) ?? [
    el('button', { type: 'button', class: 'name', data: { action: 'confirm-person', person: me.name }, on: { click: () => chosen(me.name) } }, t('verbAs', { verb, name: me.name })),
    el('p', { class: 'soft' }, t.nodes('somebodyElse', { link: el('a', { href: signInAddress() }, t('asYourself')) })),
  ];
}
