/** The parts of a handover, as lists; the same on the screen and on paper. */
import { el } from './elements.js';
import { age } from './format.js';
import { linkOf, markOf, nothingIn, stateWords, titleOf } from './handoverWords.js';
import { mark } from './marks.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('handover');
const say = await sayings('alarms', 'gauge');
const PEOPLES = ['notes', 'carried-over'];

/** `settle(item)` is offered for what is still to do; null where nothing can be changed. */
export function handoverSections({ sections, asOf, line }, settle) {
  const filled = sections.filter(({ items }) => items.length > 0);
  const empty = sections.filter(({ items }) => items.length === 0);
  return [
    ...filled.map((section) => sectionOf(section, { asOf, line, settle })),
    el('section', { class: 'part part-nothing', data: { part: 'nothing' } }, el('h2', {}, t('nothingToTell')),
      el('dl', {}, empty.map((section) => el('div', { data: { part: section.part } }, el('dt', {}, titleOf(section.part)), el('dd', {}, nothingIn(section)))))),
  ];
}

function sectionOf({ part, items }, about) {
  return el('section', { class: 'part', data: { part } },
    el('h2', {}, titleOf(part), el('span', { class: 'part-count' }, String(items.length))),
    el('ul', { class: 'plain' }, items.map((item) => itemOf(item, part, about))));
}

function itemOf(item, part, { asOf, line, settle }) {
  const link = linkOf(item);
  const isOpen = item.state === 'to do';
  return el('li', { data: { key: item.key } },
    el('p', { class: 'item-head' },
      stateOf(item.state),
      item.line && line === '' ? el('span', { class: 'item-line' }, item.line) : null,
      link ? el('a', { class: 'item-title', href: link }, titleOfItem(item, part)) : el('strong', { class: 'item-title' }, titleOfItem(item, part))),
    el('p', { class: 'item-rest' }, [say(item.detail), timeOf(item, part, asOf)].filter(Boolean).join(' \u00b7 ')),
    isOpen && settle ? el('button', { type: 'button', class: 'quiet', data: { action: 'settle' }, on: { click: () => settle(item) } }, t('settled')) : null);
}

/** What people wrote down for others stays as they wrote it. */
const titleOfItem = (item, part) => (PEOPLES.includes(part) ? item.title : say(item.title));

function stateOf(state) {
  const name = markOf(state);
  return name ? mark(name, stateWords(state)) : el('span', { class: 'item-state' }, stateWords(state));
}

function timeOf({ at }, part, asOf) {
  if (!at) {
    return '';
  }
  const old = age((Date.parse(asOf) - Date.parse(at)) / 1000);
  const words = { lines: t('lastSample', { at: momentOf(at), age: old }), 'open-alarms': t('sinceOld', { at: momentOf(at), age: old }), 'no-cause': t('sinceOld', { at: momentOf(at), age: old }), gaps: t('from', { at: momentOf(at) }) };
  return words[part] ?? momentOf(at);
}

export function changesOf(changes) {
  if (changes.length === 0) {
    return el('p', { class: 'soft' }, t('nothingChanged'));
  }
  return el('div', { class: 'changed' }, el('h2', {}, t('changedSince', { n: changes.length })),
    el('ul', { class: 'plain' }, changes.map(({ part, how, line, title }) =>
      el('li', {}, el('strong', {}, say(how)), t('changeIs', { part: titleOf(part), what: [line, say(title)].filter(Boolean).join(', ') })))));
}
