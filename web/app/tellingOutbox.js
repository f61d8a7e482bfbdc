/** What was told, what waits, and what went wrong. */
import { el } from './elements.js';
import { messageState } from './tellingWords.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('telling');
const SHOWN = 30;

export function outboxTable(messages) {
  if (messages.length === 0) {
    return el('p', { class: 'soft' }, t('nothingTold'));
  }
  const row = (message) => el('tr', { data: { state: message.state } },
    el('td', {}, momentOf(message.madeAt)),
    el('td', {}, message.name),
    el('td', { class: 'what' }, message.alarm ? el('a', { href: `/alarms.html#${message.alarm}` }, message.subject) : message.subject),
    el('td', { class: 'what' }, el('span', { class: 'message-state' }, messageState(message, momentOf)),
      message.lastError ? el('span', { class: 'soft' }, message.lastError) : null));
  const table = (rows) => el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('messages') }, el('table', { class: 'outbox' },
    el('thead', {}, el('tr', {}, ['made', 'to', 'what', 'became'].map((name) => el('th', { scope: 'col' }, t(`col.${name}`))))),
    el('tbody', {}, rows.map(row))));
  const stuck = messages.filter(({ state, attempts }) => state === 'given-up' || (state === 'waiting' && attempts > 0));
  return el('div', { class: 'outbox-place' },
    stuck.length > 0 ? el('p', { class: 'stuck' }, stuckWords(stuck)) : null,
    table(messages.slice(0, SHOWN)),
    messages.length > SHOWN ? el('details', {}, el('summary', {}, t('earlier')), table(messages.slice(SHOWN))) : null);
}

function stuckWords(stuck) {
  const given = stuck.filter(({ state }) => state === 'given-up').length;
  const parts = { waiting: t('waitingN', { n: stuck.length - given }), given: t('givenN', { n: given }) };
  const what = given === 0 ? parts.waiting : given === stuck.length ? parts.given : t('bothStuck', parts);
  return t('stuckTest', { what });
}
