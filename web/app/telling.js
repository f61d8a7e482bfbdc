/** The page of who is told of alarms: sentences first, forms where somebody asks for them, then what became of the messages. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { outboxTable } from './tellingOutbox.js';
import { ruleForm } from './tellingRuleForm.js';
import { rulesList } from './tellingRules.js';
import { settingsForm, settingsWords } from './tellingSettings.js';
import { troubleLine } from './trouble.js';

const LEAST_BETWEEN_MS = 2_000;
const OUTBOX_EVERY_MS = 10_000;

export function mount(root) {
  const trouble = troubleLine();
  const lead = el('p', { class: 'telling-lead' });
  const said = el('p', { class: 'telling-said', role: 'status', tabindex: -1, hidden: true });
  const who = el('div', {});
  const how = el('div', {});
  const messages = el('div', {});
  const body = el('div', { class: 'telling-body', hidden: true },
    part('Who is told', who), part('How messages go out', how), part('Messages', messages));
  root.replaceChildren(el('div', { class: 'telling-head' }, el('h1', {}, 'Telling people'), lead), trouble.node, said, body);
  let lines = [];

  async function refresh() {
    try {
      const [board, { rules }, settings] = await Promise.all([getJson('/api/v1/board'), getJson('/api/v1/telling/rules'), getJson('/api/v1/telling/settings')]);
      synchronise(board.now, board.zone);
      lines = [...new Set(board.lines.map(({ line }) => line))];
      trouble.clear();
      body.hidden = false;
      setText(lead, leadOf(rules, settings));
      showRules(rules, settings);
      showSettings(settings);
      await showMessages();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function showRules(rules, settings) {
    const open = (rule) => edit(who, ruleForm(rule, lines, done, () => showRules(rules, settings)));
    const add = el('button', { type: 'button', class: rules.length > 0 ? 'quiet' : null, data: { action: 'add-rule' }, on: { click: () => open(null) } }, rules.length > 0 ? 'Tell somebody else' : 'Name who is told');
    who.replaceChildren(
      rules.length > 0
        ? rulesList(rules, { change: open, done })
        : el('p', { class: 'nothing' }, 'Nobody is told of alarms yet: whoever looks at the board sees them, and nobody else does. Name the first one who is to be told; a shift lead for what opens, somebody else for what nobody takes.'),
      el('div', { class: 'telling-buttons' }, add));
  }

  function showSettings(settings) {
    how.replaceChildren(settingsWords(settings, () => edit(how, settingsForm(settings, done, () => showSettings(settings)))));
  }

  async function showMessages() {
    messages.replaceChildren(outboxTable((await getJson('/api/v1/telling/outbox')).messages));
  }

  function edit(place, form) {
    place.replaceChildren(form);
    form.querySelector('h3').focus();
  }

  function done(words) {
    said.hidden = false;
    setText(said, words);
    said.focus();
    refresh();
  }

  const again = throttled(() => showMessages().catch((error) => trouble.show(error)), LEAST_BETWEEN_MS);
  const timer = setInterval(again.ask, OUTBOX_EVERY_MS);
  refresh();
  const stops = [live.on('alarm', again.ask), live.on('reload', again.ask), again.stop, () => clearInterval(timer)];
  return () => stops.forEach((stop) => stop());
}

function leadOf(rules, { mail }) {
  const on = rules.filter(({ state }) => state === 'on');
  if (on.length === 0) {
    return 'An alarm that nobody looks at helps nobody.';
  }
  const byMail = on.filter(({ channel }) => channel === 'email').length;
  const wanting = byMail > 0 && !mail ? ' E-mail waits until a mail server is set up below.' : '';
  const escalated = on.some(({ events }) => events.includes('escalated')) ? '' : ' Nobody is told when an alarm is not taken.';
  return `${plural(on.length, 'rule')} ${on.length === 1 ? 'says' : 'say'} who is told.${wanting}${escalated}`.replace(/^o/, 'O');
}

function part(title, ...content) {
  return el('section', { class: 'telling-part' }, el('h2', {}, title), content);
}
