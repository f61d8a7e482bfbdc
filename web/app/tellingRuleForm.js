/** Asks who is to be told of what; for a new rule and for one that is there. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { decision, field, select, text, tick } from './tellingDecision.js';
import { EVENTS, ROLES } from './tellingWords.js';
import { room } from './text.js';

const t = await room('telling');
const NEW = {
  id: 0, state: 'on', name: '', role: '', channel: 'email', address: '', lines: [], priority: 'medium', events: ['opened'],
  quiet: { from: null, to: null, highGoesThrough: true, mostAnHour: 12, sameAgainAfterMinutes: 60 },
};

/** `done(words)` after it is kept, `leave()` where it is not. */
export function ruleForm(rule, lines, done, leave) {
  const was = rule ?? NEW;
  const name = text('rule-name', was.name, { maxlength: 80 });
  const role = select('rule-role', ROLES, was.role ?? '');
  const channel = select('rule-channel', ['email', 'webhook'].map((word) => [word, t(`channel.${word}`)]), was.channel);
  const address = text('rule-address', was.address, { maxlength: 2000, spellcheck: 'false' });
  const secret = text('rule-secret', '', { type: 'password', maxlength: 500, autocomplete: 'new-password', placeholder: was.signed ? t('keptSecret') : '' });
  const secretField = field('rule-secret', t('sharedSecret'), secret, t('secretHelp'));
  const priority = select('rule-priority', ['low', 'medium', 'high'].map((word) => [word, t(`of.${word}`)]), was.priority);
  const known = [...new Set([...lines, ...was.lines])];
  const lineTicks = known.map((line) => [line, tick(line, was.lines.includes(line))]);
  const eventTicks = EVENTS.map(([event, words]) => [event, tick(words, was.events.includes(event), { 'data-event': event })]);
  const from = text('rule-from', was.quiet.from, { type: 'time' });
  const to = text('rule-to', was.quiet.to, { type: 'time' });
  const through = tick(t('highThrough'), was.quiet.highGoesThrough);
  const most = text('rule-most', was.quiet.mostAnHour, { type: 'number', min: 0, max: 1000 });
  const again = text('rule-again', was.quiet.sameAgainAfterMinutes, { type: 'number', min: 0, max: 10080 });

  const body = () => ({
    id: was.id, state: was.state, name: name.value, role: role.value, channel: channel.value, address: address.value.trim(),
    lines: lineTicks.filter(([, each]) => each.input.checked).map(([line]) => line),
    priority: priority.value,
    events: eventTicks.filter(([, each]) => each.input.checked).map(([event]) => event),
    quiet: {
      from: from.value || null, to: to.value || null, highGoesThrough: through.input.checked,
      mostAnHour: Number(most.value || 0), sameAgainAfterMinutes: Number(again.value || 0),
    },
    ...(secret.value ? { secret: secret.value } : {}),
  });
  const keep = async (decided) => {
    const kept = await postJson('/api/v1/telling/rules', { ...body(), ...decided });
    done(t('toldSo', kept));
  };
  const deciding = decision('rule', t(rule ? 'keepChange' : 'tellFromNow'), keep, leave);
  const showSecret = () => (secretField.hidden = channel.value !== 'webhook');
  channel.addEventListener('change', showSecret);
  showSecret();

  return el('form', { class: 'telling-form', novalidate: true, data: { rule: was.id }, on: { submit: deciding.submit } },
    el('h3', { tabindex: -1 }, t(rule ? 'howTold' : 'whoElse', was)),
    el('div', { class: 'fields' },
      field('rule-name', t('name'), name), field('rule-role', t('whatTheyDo'), role),
      field('rule-channel', t('by'), channel), field('rule-address', t('address'), address, t('addressHelp')), secretField,
      field('rule-priority', t('of'), priority)),
    el('fieldset', {}, el('legend', {}, t('when')), el('div', { class: 'ticks' }, eventTicks.map(([, each]) => each.node))),
    known.length > 0 ? el('fieldset', {}, el('legend', {}, t('onLines')), el('div', { class: 'ticks' }, lineTicks.map(([, each]) => each.node))) : null,
    el('fieldset', {}, el('legend', {}, t('leftAlone')),
      el('div', { class: 'fields' },
        field('rule-from', t('from'), from), field('rule-to', t('to'), to, t('toHelp')),
        field('rule-most', t('most'), most, t('mostHelp')),
        field('rule-again', t('again'), again, t('againHelp'))),
      through.node),
    deciding.node);
}
