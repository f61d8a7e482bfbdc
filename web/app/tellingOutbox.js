/** What was told, what waits, and what went wrong. */
import { el } from './elements.js';
import { messageState } from './tellingWords.js';
import { momentOf } from './plantClock.js';

const SHOWN = 30;

export function outboxTable(messages) {
  if (messages.length === 0) {
    return el('p', { class: 'soft' }, 'Nothing was told yet. The first message stands here as soon as an alarm opens that somebody is told of.');
  }
  const row = (message) => el('tr', { data: { state: message.state } },
    el('td', {}, momentOf(message.madeAt)),
    el('td', {}, message.name),
    el('td', { class: 'what' }, message.alarm ? el('a', { href: `/alarms.html#${message.alarm}` }, message.subject) : message.subject),
    el('td', { class: 'what' }, el('span', { class: 'message-state' }, messageState(message, momentOf)),
      message.lastError ? el('span', { class: 'soft' }, message.lastError) : null));
  const table = (rows) => el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Messages' }, el('table', { class: 'outbox' },
    el('thead', {}, el('tr', {}, ['Made', 'To', 'What', 'What became of it'].map((words) => el('th', { scope: 'col' }, words)))),
    el('tbody', {}, rows.map(row))));
  const stuck = messages.filter(({ state, attempts }) => state === 'given-up' || (state === 'waiting' && attempts > 0));
  return el('div', { class: 'outbox-place' },
    stuck.length > 0 ? el('p', { class: 'stuck' }, stuckWords(stuck)) : null,
    table(messages.slice(0, SHOWN)),
    messages.length > SHOWN ? el('details', {}, el('summary', {}, 'Earlier messages'), table(messages.slice(SHOWN))) : null);
}

function stuckWords(stuck) {
  const given = stuck.filter(({ state }) => state === 'given-up').length;
  const waiting = stuck.length - given;
  const parts = [
    waiting > 0 ? `${waiting === 1 ? 'One message could' : `${waiting} messages could`} not be sent yet and ${waiting === 1 ? 'is' : 'are'} tried again` : '',
    given > 0 ? `${given === 1 ? 'one was' : `${given} were`} given up after three days` : '',
  ].filter(Boolean);
  const words = parts.join('; ');
  return `${words.charAt(0).toUpperCase()}${words.slice(1)}. Send a test to see what the other side says.`;
}
