/** The head of a line's page: which line, what it is doing, how old its data are, its open alarms, the other lines. */
import { headOf } from './boardLine.js';
import { el, setText } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('line');
const say = await sayings('alarms');
const MOST_ALARMS = 5;

export function lineHeading() {
  const title = el('h1', { class: 'for-readers' });
  const place = el('div', { class: 'line-heading' });
  const alarms = el('ul', { class: 'plain line-open' });
  const others = el('nav', { class: 'ranges line-others', 'aria-label': t('otherLines') });
  const node = el('div', { class: 'line-top' }, title, others, place, alarms);
  let head = null;
  let shown = null;

  function show(line, names, wanted) {
    document.title = t('titleOf', { line: wanted ?? '' });
    setText(title, t('heading', { line: wanted ?? '' }));
    others.replaceChildren(...names.map((name) => el('a', { href: `/line.html?${new URLSearchParams({ line: name })}`, 'aria-current': name === wanted ? 'page' : null }, name)));
    shown = line;
    if (line === null) {
      head = null;
      place.replaceChildren(el('p', {}, names.length === 0 ? t('noLineYet') : t('noSuchLine', { line: wanted ?? '' })), names.length === 0 ? el('a', { class: 'button', href: '/intake.html' }, t('toIntake')) : '');
      alarms.replaceChildren();
      return;
    }
    if (head === null) {
      head = headOf(line);
      place.replaceChildren(head.node);
    }
    head.update(line);
    place.dataset.stale = line.stale || line.state === 'not_running';
    const left = line.alarms.length - MOST_ALARMS;
    alarms.replaceChildren(...line.alarms.slice(0, MOST_ALARMS).map(alarmItem),
      left > 0 ? el('li', {}, el('a', { href: '/alarms.html' }, t('moreAlarms', { n: left }))) : '');
  }
  return { node, show, tick: () => head?.tick(shown) };
}

function alarmItem({ id, title, acknowledged }) {
  return el('li', {}, el('a', { href: `/alarms.html#${id}` }, say(title)), ' ',
    el('span', { class: 'soft' }, acknowledged ? t('takenBy', { by: acknowledged.by }) : t('notTaken')));
}
