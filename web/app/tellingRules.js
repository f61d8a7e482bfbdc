/** Who is told, a sentence each, with a test, a change, and a way to turn it off. */
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { decision } from './tellingDecision.js';
import { quietSentence, ruleSentence } from './tellingWords.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('telling');

/** `hooks`: change(rule) opens its form, done(words) after something was kept. */
export function rulesList(rules, hooks) {
  return el('ul', { class: 'plain rules' }, rules.map((rule) => ruleItem(rule, hooks)));
}

function ruleItem(rule, hooks) {
  const said = el('p', { class: 'said', role: 'status' });
  const place = el('div', {});
  const isOn = rule.state === 'on';
  const move = (state, verb, words) => el('button', { type: 'button', class: 'quiet', data: { action: `rule-${state}` }, on: { click: () => ask(state, verb, words) } }, verb);

  function ask(state, verb, words) {
    const { decided, signed, version, ...kept } = rule;
    const deciding = decision('move', verb, async (by) => {
      await postJson('/api/v1/telling/rules', { ...kept, ...by, state });
      hooks.done(words);
    }, () => place.replaceChildren());
    place.replaceChildren(el('form', { class: 'telling-form', novalidate: true, on: { submit: deciding.submit } }, deciding.node));
    place.querySelector('input').focus();
  }
  return el('li', { data: { rule: rule.id, state: rule.state } },
    el('p', { class: 'rule-words' }, isOn ? null : el('strong', { class: 'rule-off' }, t('off')), ruleSentence(rule)),
    el('p', { class: 'soft' }, quietSentence(rule)),
    el('p', { class: 'soft rule-decided' }, t('decidedBy', { by: rule.decided.by, at: momentOf(rule.decided.at) }), el('q', {}, rule.decided.reason)),
    el('div', { class: 'telling-buttons' },
      testButton({ rule: rule.id }, said),
      el('button', { type: 'button', class: 'quiet', data: { action: 'change-rule' }, on: { click: () => hooks.change(rule) } }, t('change')),
      isOn ? move('off', t('turnOff'), t('turnedOff', rule)) : move('on', t('turnOn'), t('turnedOn', rule)),
      move('removed', t('remove'), t('removed', rule))),
    said, place);
}

/** Sends a test at once and says what the other side answered. `body()` may be given where it is not known yet. */
export function testButton(body, said) {
  const button = el('button', { type: 'button', class: 'quiet', data: { action: 'test' }, on: { click: test } }, t('sendTest'));

  async function test() {
    button.disabled = true;
    setText(said, t('onItsWay'));
    try {
      const asked = typeof body === 'function' ? body() : body;
      const { sent, words } = await postJson('/api/v1/telling/test', asked);
      setText(said, t(sent ? 'wentOut' : 'didNot', { words }));
      said.dataset.sent = sent;
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
    button.disabled = false;
  }
  return button;
}
