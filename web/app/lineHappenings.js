/** The table behind the flags: what happened at the line, newest first. */
import { el } from './elements.js';
import { eventMark, happeningNode } from './lineEventWords.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('line');

export function lineHappenings() {
  const node = el('div', { class: 'line-happenings' });

  function show({ events, more }) {
    const rows = [...events].reverse().map((event) => el('tr', { data: { kind: event.kind } },
      el('th', { scope: 'row' }, momentOf(event.at)),
      el('td', {}, el('span', { class: 'event-kind' }, eventMark(event), t(`name.${event.kind}`))),
      el('td', {}, happeningNode(event))));
    node.replaceChildren(events.length === 0
      ? el('p', { class: 'soft' }, t('nothingHappened'))
      : el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('happened') },
        el('table', {}, el('thead', {}, el('tr', {}, ['when', 'what', 'words'].map((name) => el('th', { scope: 'col' }, t(`col.${name}`))))), el('tbody', {}, rows))),
      more ? el('p', { class: 'soft' }, t('more')) : '');
  }
  return { node, show };
}
