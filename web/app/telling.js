/** The page of who is told of alarms: sentences first, forms where somebody asks for them, then what became of the messages. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import * as live from './live.js';
import { synchronise } from './plantClock.js';
import { throttled } from './refresh.js';
import { outboxTable } from './tellingOutbox.js';
import { ruleForm } from './tellingRuleForm.js';
import { rulesList } from './tellingRules.js';
import { settingsForm, settingsWords } from './tellingSettings.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('telling');
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
    part(t('whoIsTold'), who), part(t('howOut'), how), part(t('messages'), messages));
  root.replaceChildren(el('div', { class: 'telling-head' }, el('h1', {}, t('title')), lead), trouble.node, said, body);
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
    const add = el('button', { type: 'button', class: rules.length > 0 ? 'quiet' : null, data: { action: 'add-rule' }, on: { click: () => open(null) } }, t(rules.length > 0 ? 'tellElse' : 'nameWho'));
    who.replaceChildren(
      rules.length > 0
        ? rulesList(rules, { change: open, done })
        : el('p', { class: 'nothing' }, t('nobodyYet')),
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
    return t('leadNone');
  }
  const byMail = on.filter(({ channel }) => channel === 'email').length;
  const wanting = byMail > 0 && !mail ? t('mailWaits') : '';
  const escalated = on.some(({ events }) => events.includes('escalated')) ? '' : t('nobodyEscalated');
  return [t('rules', { n: on.length }), wanting, escalated].filter(Boolean).join(' ');
}

function part(title, ...content) {
  return el('section', { class: 'telling-part' }, el('h2', {}, title), content);
}
