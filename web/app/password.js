/** Choosing an own password: long is all that is asked; signs and digits are not. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { room } from './text.js';

const t = await room('signin');
const SHORTEST = 12;

/** `typed` is the password that was just used to sign in, if it was. */
export function passwordForm(me, typed, done) {
  const current = field('password-current', me.mustChange ? t('oneTime') : t('soFar'), 'current-password');
  const chosen = field('password-new', t('newPassword'), 'new-password');
  const length = el('p', { class: 'soft', role: 'status' });
  const said = el('p', { class: 'said', role: 'alert' });
  current.input.value = typed;
  current.node.hidden = typed !== '';
  chosen.input.addEventListener('input', measure);
  const form = el('form', { class: 'signin-form', novalidate: true, data: { action: 'choose-password' }, on: { submit } },
    el('h1', {}, me.mustChange ? t('welcome', { name: me.name }) : t('chooseNew')),
    me.mustChange ? el('p', {}, t('madeOnce')) : null,
    el('p', { class: 'soft' }, t('atLeast', { shortest: SHORTEST })),
    el('input', { type: 'hidden', name: 'username', autocomplete: 'username', value: me.name }),
    current.node, chosen.node, length,
    el('button', { type: 'submit' }, t('keepPassword')), said);
  measure();

  function measure() {
    const count = [...chosen.input.value].length;
    setText(length, count === 0 ? '' : count < SHORTEST ? t('soMany', { count, shortest: SHORTEST }) : count < SHORTEST + 6 ? t('longEnough') : t('strong'));
  }

  async function submit(event) {
    event.preventDefault();
    if ([...chosen.input.value].length < SHORTEST) {
      setText(said, t('tooShort', { shortest: SHORTEST }));
      return chosen.input.focus();
    }
    try {
      await postJson('/api/v1/me/password', { current: current.input.value, new: chosen.input.value });
      done(chosen.input.value);
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
      current.node.hidden = current.node.hidden && error.status !== 401;
    }
  }
  return form;
}

export function field(id, label, autocomplete) {
  const input = el('input', { id, type: 'password', autocomplete, required: true });
  return { input, node: el('div', {}, el('label', { for: id }, label), input, shown(input)) };
}

/** Lets the person look at what was typed. */
export function shown(password) {
  const id = `${password.id}-shown`;
  const box = el('input', { type: 'checkbox', id, on: { change: () => (password.type = box.checked ? 'text' : 'password') } });
  return el('div', { class: 'shown' }, box, el('label', { for: id }, t('showIt')));
}
