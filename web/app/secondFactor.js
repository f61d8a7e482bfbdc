/**
 * A second factor: the phone shows another code each 30 s, which a sign-in asks for besides the password. Set up in
 * three steps (password, key and code, recovery codes), or turned off.
 */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { field } from './password.js';

const ROUTE = '/api/v1/me/second-factor';

/** `typed` is the password that was just used to sign in, if it was; `done` is called when all is set. */
export function secondFactorForm(me, typed, done) {
  const node = el('div', { class: 'signin-form', data: { part: 'second-factor' } });
  const show = (...parts) => {
    node.replaceChildren(...parts.filter(Boolean));
    node.querySelector('input, button')?.focus();
  };
  show(...(me.secondFactor ? turnOff(me, done) : begin(me, typed, (key) => show(...confirm(me, key, (codes) => show(...recovery(codes, done)))))));
  return node;
}

function begin(me, typed, offered) {
  const current = field('factor-current', 'Your password', 'current-password');
  current.input.value = typed;
  current.node.hidden = typed !== '';
  return [
    el('h1', {}, me.mustSetUp ? `${me.name}, set up a second factor` : 'Set up a second factor'),
    me.mustSetUp ? el('p', {}, 'In your role nothing opens without one.') : null,
    el('p', { class: 'soft' }, 'An app for one-time codes on your phone shows six digits, others every 30 seconds. A sign-in asks for them besides your password, so that a password alone lets nobody in.'),
    step('Show me the key', [el('input', { type: 'hidden', name: 'username', autocomplete: 'username', value: me.name }), current.node], 'offer-factor',
      async () => offered(await postJson(ROUTE, { current: current.input.value })),
      (error) => (current.node.hidden = current.node.hidden && error.status !== 401)),
    me.mustSetUp ? null : backLink(),
  ];
}

function confirm(me, { key, address }, turnedOn) {
  const code = codeField('factor-code', 'Six digits that the phone shows now');
  return [
    el('h1', {}, 'Give the key to your phone'),
    el('p', {}, 'In the app, add an account by typing this key. It is shown this once.'),
    el('div', { class: 'people-secret' }, el('code', { data: { key: 'true' } }, key), el('p', { class: 'soft' }, 'By time, six digits, SHA-1, 30 seconds.')),
    el('p', {}, el('a', { href: address }, 'On the phone itself: open it in the app')),
    step('Turn it on', [code.node], 'turn-factor-on', async () => turnedOn((await postJson(`${ROUTE}/on`, { code: code.input.value })).recoveryCodes)),
  ];
}

function recovery(codes, done) {
  return [
    el('h1', {}, 'Keep these recovery codes'),
    el('p', {}, 'Each lets you in once when the phone is lost. Print them, or write them down; not on the phone.'),
    el('div', { class: 'people-secret' }, el('ol', { class: 'recovery', data: { recovery: 'true' } }, codes.map((code) => el('li', {}, el('code', {}, code)))),
      el('p', { class: 'soft' }, 'Shown this once. Nobody can look them up later.')),
    el('button', { type: 'button', class: 'quiet', on: { click: () => print() } }, 'Print'),
    el('button', { type: 'submit', data: { action: 'codes-kept' }, on: { click: done } }, 'I have kept them'),
  ];
}

function turnOff(me, done) {
  const current = field('factor-current', 'Your password', 'current-password');
  const left = me.recoveryCodesLeft;
  return [
    el('h1', {}, 'Your second factor is on'),
    el('p', {}, `${left === 0 ? 'No recovery code is' : left === 1 ? 'One recovery code is' : `${left} recovery codes are`} left.`),
    el('p', { class: 'soft' }, 'For another phone or new recovery codes, turn it off and set it up again. You are signed out everywhere else.'),
    step('Turn it off', [current.node], 'turn-factor-off', async () => {
      await postJson(`${ROUTE}/off`, { current: current.input.value });
      done();
    }),
    backLink(),
  ];
}

/** A form of one step; what goes wrong stands below its button. */
function step(verb, fields, action, act, failed = () => {}) {
  const said = el('p', { class: 'said', role: 'alert' });
  return el('form', { novalidate: true, data: { action }, on: { submit } }, fields, el('button', { type: 'submit' }, verb), said);

  async function submit(event) {
    event.preventDefault();
    try {
      await act();
    } catch (error) {
      setText(said, `${error.sentence ?? error.message}.`);
      failed(error);
    }
  }
}

/** For six digits, and for a recovery code where one is taken. */
export function codeField(id, label) {
  const input = el('input', { id, name: 'code', autocomplete: 'one-time-code', autocapitalize: 'none', spellcheck: 'false', maxlength: 60, required: true });
  return { input, node: el('div', {}, el('label', { for: id }, label), input) };
}

const backLink = () => el('p', {}, el('a', { href: '/' }, 'Back to the board'));
