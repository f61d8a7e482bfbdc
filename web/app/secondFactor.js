/**
 * A second factor: the phone shows another code each 30 s, which a sign-in asks for besides the password. Set up in
 * three steps (password, key and code, recovery codes), or turned off.
 */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { field } from './password.js';
import { room } from './text.js';

const t = await room('signin');
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
  const current = field('factor-current', t('yourPassword'), 'current-password');
  current.input.value = typed;
  current.node.hidden = typed !== '';
  return [
    el('h1', {}, me.mustSetUp ? t('setUpFor', { name: me.name }) : t('setUp')),
    me.mustSetUp ? el('p', {}, t('nothingOpens')) : null,
    el('p', { class: 'soft' }, t('whatIsIt')),
    step(t('showKey'), [el('input', { type: 'hidden', name: 'username', autocomplete: 'username', value: me.name }), current.node], 'offer-factor',
      async () => offered(await postJson(ROUTE, { current: current.input.value })),
      (error) => (current.node.hidden = current.node.hidden && error.status !== 401)),
    me.mustSetUp ? null : backLink(),
  ];
}

function confirm(me, { key, address }, turnedOn) {
  const code = codeField('factor-code', t('shownNow'));
  return [
    el('h1', {}, t('giveKey')),
    el('p', {}, t('typeKey')),
    el('div', { class: 'people-secret' }, el('code', { data: { key: 'true' } }, key), el('p', { class: 'soft' }, t('byTime'))),
    el('p', {}, el('a', { href: address }, t('onPhone'))),
    step(t('turnOn'), [code.node], 'turn-factor-on', async () => turnedOn((await postJson(`${ROUTE}/on`, { code: code.input.value })).recoveryCodes)),
  ];
}

function recovery(codes, done) {
  return [
    el('h1', {}, t('keepCodes')),
    el('p', {}, t('eachOnce')),
    el('div', { class: 'people-secret' }, el('ol', { class: 'recovery', data: { recovery: 'true' } }, codes.map((code) => el('li', {}, el('code', {}, code)))),
      el('p', { class: 'soft' }, t('shownOnce'))),
    el('button', { type: 'button', class: 'quiet', on: { click: () => print() } }, t('print')),
    el('button', { type: 'submit', data: { action: 'codes-kept' }, on: { click: done } }, t('haveKept')),
  ];
}

function turnOff(me, done) {
  const current = field('factor-current', t('yourPassword'), 'current-password');
  const left = me.recoveryCodesLeft;
  return [
    el('h1', {}, t('isOn')),
    el('p', {}, left === 0 ? t('noneLeft') : t('codesLeft', { n: left })),
    el('p', { class: 'soft' }, t('anotherPhone')),
    step(t('turnOff'), [current.node], 'turn-factor-off', async () => {
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

const backLink = () => el('p', {}, el('a', { href: '/' }, t('backToBoard')));
