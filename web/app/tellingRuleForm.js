/** Asks who is to be told of what; for a new rule and for one that is there. */
import { postJson } from './api.js';
import { el } from './elements.js';
import { decision, field, select, text, tick } from './tellingDecision.js';
import { EVENTS, ROLES } from './tellingWords.js';

const NEW = {
  id: 0, state: 'on', name: '', role: '', channel: 'email', address: '', lines: [], priority: 'medium', events: ['opened'],
  quiet: { from: null, to: null, highGoesThrough: true, mostAnHour: 12, sameAgainAfterMinutes: 60 },
};

/** `done(words)` after it is kept, `leave()` where it is not. */
export function ruleForm(rule, lines, done, leave) {
  const was = rule ?? NEW;
  const name = text('rule-name', was.name, { maxlength: 80 });
  const role = select('rule-role', ROLES, was.role ?? '');
  const channel = select('rule-channel', [['email', 'e-mail'], ['webhook', 'a webhook: JSON to a web address']], was.channel);
  const address = text('rule-address', was.address, { maxlength: 2000, spellcheck: 'false' });
  const secret = text('rule-secret', '', { type: 'password', maxlength: 500, autocomplete: 'new-password', placeholder: was.signed ? 'kept; write another one to change it' : '' });
  const secretField = field('rule-secret', 'Shared secret', secret, 'Each message is signed with it, so that the receiver knows it is from here. It cannot be read again.');
  const priority = select('rule-priority', [['low', 'every alarm'], ['medium', 'medium and high priority'], ['high', 'high priority only']], was.priority);
  const known = [...new Set([...lines, ...was.lines])];
  const lineTicks = known.map((line) => [line, tick(line, was.lines.includes(line))]);
  const eventTicks = EVENTS.map(([event, words]) => [event, tick(words, was.events.includes(event), { 'data-event': event })]);
  const from = text('rule-from', was.quiet.from, { type: 'time' });
  const to = text('rule-to', was.quiet.to, { type: 'time' });
  const through = tick('High priority comes through all the same', was.quiet.highGoesThrough);
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
    done(`${kept.name} is told so from now on.`);
  };
  const deciding = decision('rule', rule ? 'Keep the change' : 'Tell them from now on', keep, leave);
  const showSecret = () => (secretField.hidden = channel.value !== 'webhook');
  channel.addEventListener('change', showSecret);
  showSecret();

  return el('form', { class: 'telling-form', novalidate: true, data: { rule: was.id }, on: { submit: deciding.submit } },
    el('h3', { tabindex: -1 }, rule ? `How ${was.name} is told` : 'Who else is told?'),
    el('div', { class: 'fields' },
      field('rule-name', 'Name', name), field('rule-role', 'What they do here', role),
      field('rule-channel', 'By', channel), field('rule-address', 'Address', address, 'An e-mail address, or https://\u2026 for a webhook'), secretField,
      field('rule-priority', 'Of', priority)),
    el('fieldset', {}, el('legend', {}, 'When'), el('div', { class: 'ticks' }, eventTicks.map(([, each]) => each.node))),
    known.length > 0 ? el('fieldset', {}, el('legend', {}, 'On these lines; on all of them where none is ticked'), el('div', { class: 'ticks' }, lineTicks.map(([, each]) => each.node))) : null,
    el('fieldset', {}, el('legend', {}, 'Left alone'),
      el('div', { class: 'fields' },
        field('rule-from', 'From', from), field('rule-to', 'To', to, 'By the clock of the plant; empty for never'),
        field('rule-most', 'Messages an hour at most', most, '0 for no bound; the rest becomes one summary'),
        field('rule-again', 'The same again after, in minutes', again, '0 tells it each time')),
      through.node),
    deciding.node);
}
