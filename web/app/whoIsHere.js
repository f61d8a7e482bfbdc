/** In the head of a page: who is signed in, with the ways to sign out, to change the password and to a second factor; else the way in. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { inWords, PERSON_CHANGED, signInAddress, who } from './person.js';
import { lastSignIn } from './signInNotice.js';
import { room } from './text.js';

const t = await room('person');

export function whoIsHere() {
  const node = el('div', { class: 'who-is-here' });
  const draw = () => node.replaceChildren(...parts(who()));
  document.addEventListener(PERSON_CHANGED, draw);
  draw();
  return node;
}

function parts(me) {
  if (me.name === null) {
    return document.documentElement.dataset.view === 'signin' ? [] : [el('a', { class: 'button quiet', href: signInAddress(), data: { action: 'sign-in' } }, t('signIn'))];
  }
  const dialog = el('dialog', { class: 'sheet', 'aria-labelledby': 'who-title' },
    el('h2', { id: 'who-title' }, t('title', { name: me.name, role: inWords(me.role ?? 'machine') })),
    me.role ? el('p', { class: 'soft', data: { earlier: 'true' } }, lastSignIn(me)) : null,
    el('p', {}, t('keptHere')),
    el('div', { class: 'who-ways' },
      el('button', { type: 'button', data: { action: 'sign-out' }, on: { click: () => leave('/api/v1/session/end') } }, t('signOut')),
      el('a', { class: 'button quiet', href: `${signInAddress()}&change` }, t('changePassword')),
      el('a', { class: 'button quiet', href: `${signInAddress()}&second-factor`, data: { action: 'second-factor' } }, me.secondFactor ? t('secondFactorOn') : t('secondFactor')),
      el('button', { type: 'button', class: 'quiet', on: { click: () => leave('/api/v1/session/end-everywhere') } }, t('signOutEverywhere'))),
    el('form', { method: 'dialog' }, el('button', { class: 'quiet' }, t('close'))));
  const button = el('button', { type: 'button', class: 'who-am-i', 'aria-haspopup': 'dialog', on: { click: () => dialog.showModal() } },
    el('span', {}, me.name), el('span', { class: 'soft' }, inWords(me.role ?? '')));
  return [button, dialog];
}

/** Whoever came last is gone; the page starts anew for whoever comes. */
async function leave(path) {
  await postJson(path, {}).catch(() => {});
  location.reload();
}
