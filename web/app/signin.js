/** Signing in, and choosing an own password where the one in use was made by somebody else. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { inWords, who } from './person.js';
import { passwordForm, shown } from './password.js';

export function mount(root, params) {
  const target = sameOrigin(params.get('to'));
  const go = () => location.replace(target);
  let typed = '';

  function draw(me) {
    const choosing = me.name !== null && (me.mustChange || params.has('change'));
    root.replaceChildren(el('div', { class: 'signin' },
      ...(choosing ? [passwordForm(me, typed, go)] : [signInForm(entered), guests(me.guests, go)])));
    root.querySelector('input')?.focus();
    document.documentElement.dataset.ready = 'true';
  }

  /** What was typed is needed once more where it must be changed at once. */
  function entered(me, password) {
    typed = password;
    return me.mustChange ? draw({ ...me, guests: [] }) : go();
  }
  draw(who());
  return () => {};
}

function signInForm(entered) {
  const name = el('input', { id: 'signin-name', name: 'username', autocomplete: 'username', autocapitalize: 'none', spellcheck: 'false', required: true });
  const password = el('input', { id: 'signin-password', name: 'password', type: 'password', autocomplete: 'current-password', required: true });
  const said = el('p', { class: 'said', role: 'alert' });
  const button = el('button', { type: 'submit' }, 'Sign in');
  const form = el('form', { class: 'signin-form', novalidate: true, data: { action: 'sign-in' }, on: { submit } },
    el('h1', {}, 'Sign in'),
    el('div', {}, el('label', { for: 'signin-name' }, 'Name'), name),
    el('div', {}, el('label', { for: 'signin-password' }, 'Password'), password, shown(password)),
    button, said,
    el('p', { class: 'soft' }, 'Forgotten? An administrator of Filmward gives you a new one.'));

  async function submit(event) {
    event.preventDefault();
    if (!name.value.trim() || !password.value) {
      setText(said, 'Both are needed: name and password.');
      return (name.value.trim() ? password : name).focus();
    }
    button.disabled = true;
    try {
      const given = password.value;
      entered(await postJson('/api/v1/session', { name: name.value.trim(), password: given }), given);
    } catch (error) {
      setText(said, `${error.sentence ?? error.message}.`);
      password.select();
    }
    button.disabled = false;
  }
  return form;
}

/** In a demonstration anybody may be one of its invented people. */
function guests(people, go) {
  if (people.length === 0) {
    return null;
  }
  const said = el('p', { class: 'said', role: 'alert' });
  const be = (name) => postJson('/api/v1/session/guest', { name }).then(go, (error) => setText(said, error.sentence ?? error.message));
  return el('section', { class: 'guests', 'aria-labelledby': 'guests-title' },
    el('h2', { id: 'guests-title' }, 'This is a demonstration'),
    el('p', { class: 'soft' }, 'Its people are invented, and on this machine you may be any of them.'),
    el('div', { class: 'names' }, people.map(({ name, role }) =>
      el('button', { type: 'button', class: 'quiet name', data: { guest: name }, on: { click: () => be(name) } }, `Be ${name}, ${inWords(role)}`))),
    said);
}

/** Only a place of our own; anything else leads to the board. */
function sameOrigin(to) {
  try {
    const url = new URL(to ?? '/', location.origin);
    const isOurs = url.origin === location.origin && (to ?? '/').startsWith('/');
    return isOurs && url.pathname !== '/signin.html' ? url.pathname + url.search + url.hash : '/';
  } catch {
    return '/';
  }
}
