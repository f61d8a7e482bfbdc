/** One alarm in the list. Kept for its life, so that an update never takes a question away under somebody's finger. */
import { el, setText } from './elements.js';
import { acknowledgeControl } from './acknowledge.js';
import { groupedSignals, isWaiting, layersInWords, markOf, stateInWords } from './alarmWords.js';
import { mark, priorityMark, shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms');

export function alarmCard(alarm, hooks) {
  const title = el('a', { href: `#${alarm.id}` });
  const marks = el('div', { class: 'alarm-marks' });
  const place = el('p', { class: 'soft' });
  const state = el('p', { class: 'alarm-state' });
  const why = el('p', { class: 'alarm-why' });
  const control = acknowledgeControl(alarm.id, hooks);
  const node = el('article', { class: 'alarm', data: { alarm: alarm.id } }, marks, el('h2', {}, title), place, why, state, control.node);

  function update(now, isSelected) {
    node.dataset.state = now.state;
    node.dataset.closed = now.closed;
    node.dataset.taken = now.acknowledged !== null;
    node.dataset.selected = isSelected;
    title.toggleAttribute('aria-current', isSelected);
    setText(title, say(now.title));
    marks.replaceChildren(...marksOf(now));
    setText(place, t('placeSince', { line: now.line, structure: now.structure, at: momentOf(now.openedAt) }));
    why.replaceChildren(...whyOf(now));
    setText(state, stateInWords(now));
    control.update(now);
  }
  return { node, update, focus: () => title.focus() };
}

export function marksOf(alarm) {
  return [
    markOf(alarm) === 'act' ? mark('act') : null,
    priorityMark(alarm.priority),
    alarm.escalatedAt && isWaiting(alarm) ? el('span', { class: 'escalated' }, t('escalated', { at: momentOf(alarm.escalatedAt) })) : null,
    alarm.historical ? el('span', { class: 'soft' }, t('historical')) : null,
  ].filter(Boolean);
}

function whyOf(alarm) {
  const [worst] = groupedSignals(alarm);
  const words = worst ? t('layersWhy', { layers: layersInWords(alarm), words: worst.words }) : layersInWords(alarm);
  return [
    reason('unusual', words),
    ...(alarm.outOfSpec ? [reason('spec', t('outOfSpec'))] : []),
  ];
}

function reason(name, words) {
  return el('span', { class: `reason reason-${name}` }, shape(name), el('span', {}, words));
}
