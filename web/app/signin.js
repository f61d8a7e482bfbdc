/** Signing in, and what a person must or may do about it: an own password, a second factor. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { ownAddress } from './ownAddress.js';
import { inWords, load, who } from './person.js';
import { passwordForm, shown } from './password.js';
import { codeField, secondFactorForm } from './secondFactor.js';
import { tellOnNextPage } from './signInNotice.js';
import { room } from './text.js';

const t = await room('signin');

export function mount(root, params) {
  const target = ownAddress(params.get('to'));
  const go = () => location.replace(target);
  let typed = '';

  function draw(me) {
    root.replaceChildren(el('div', { class: 'signin' }, ...parts(me)));
    root.querySelector('input:not([type="hidden"])')?.focus();
    document.documentElement.dataset.ready = 'true';
  }

  function parts(me) {
    const isKnown = me.name !== null;
    if (isKnown && (me.mustChange || params.has('change'))) {
      return [passwordForm(me, typed, passwordKept)];
    }
    if (isKnown && (me.mustSetUp || params.has('second-factor'))) {
      return [secondFactorForm(me, typed, go)];
    }
    return [signInForm(entered), guests(me.guests, go)].filter(Boolean);
  }

  /** What was typed is needed once more where it must be changed, or proven, at once. */
  function entered(me, password) {
    typed = password;
    tellOnNextPage();
    return me.mustChange || me.mustSetUp ? draw({ ...me, guests: [] }) : go();
  }

  async function passwordKept(chosen) {
    typed = chosen;
    const me = await load();
    return me.mustSetUp ? draw(me) : go();
  }
  draw(who());
  return () => {};
}

function signInForm(entered) {
  const name = el('input', { id: 'signin-name', name: 'username', autocomplete: 'username', autocapitalize: 'none', spellcheck: 'false', required: true });
  const password = el('input', { id: 'signin-password', name: 'password', type: 'password', autocomplete: 'current-password', required: true });
  const code = codeField('signin-code', t('codeOf'));
  const said = el('p', { class: 'said', role: 'alert' });
  const button = el('button', { type: 'submit' }, t('signIn'));
  const first = el('div', { class: 'signin-step' },
    el('div', {}, el('label', { for: 'signin-name' }, t('name')), name),
    el('div', {}, el('label', { for: 'signin-password' }, t('password')), password, shown(password)));
  const second = el('div', { class: 'signin-step', hidden: true },
    code.node, el('p', { class: 'soft' }, t('sixDigits')));
  const forgotten = el('p', { class: 'soft' }, t('forgotten'));
  const form = el('form', { class: 'signin-form', novalidate: true, data: { action: 'sign-in' }, on: { submit } },
    el('h1', {}, t('signIn')), first, second, button, said, forgotten);

  async function submit(event) {
    event.preventDefault();
    if (!name.value.trim() || !password.value) {
      setText(said, t('bothNeeded'));
      return (name.value.trim() ? password : name).focus();
    }
    button.disabled = true;
    const given = password.value;
    try {
      entered(await postJson('/api/v1/session', { name: name.value.trim(), password: given, code: code.input.value.trim() }), given);
    } catch (error) {
      refused(error);
    }
    button.disabled = false;
  }

  /** The code is asked for when name and password belong together, and not before. */
  function refused(error) {
    const isFirstTime = error.asks === 'code' && second.hidden;
    setText(said, isFirstTime ? '' : `${error.sentence ?? error.message}.`);
    if (error.asks === 'code' || error.status !== 401) {
      first.hidden ||= isFirstTime;
      second.hidden &&= !isFirstTime;
    } else {
      first.hidden = false;
      second.hidden = true;
      code.input.value = '';
    }
    forgotten.hidden = first.hidden;
    (second.hidden ? password : code.input).select();
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
    el('h2', { id: 'guests-title' }, t('demonstration')),
    el('p', { class: 'soft' }, t('invented')),
    el('div', { class: 'names' }, people.map(({ name, role }) =>
      el('button', { type: 'button', class: 'quiet name', data: { guest: name }, on: { click: () => be(name) } }, t('be', { name, role: inWords(role) })))),
    said);
}
