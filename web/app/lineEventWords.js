/** What happened at a line, in words and as a small shape. */
import { el, svg } from './elements.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('line');
const say = await sayings('alarms');
const SHAPES = { alarm: 'act', rescaled: 'gauge', mode: 'not_running', limits: 'collecting' };
const DRAWN = {
  taken: 'M2 8.5 6.5 13 14 3',
  roll: 'M8 1a7 7 0 1 0 .01 0M8 5.5a2.5 2.5 0 1 0 .01 0',
  film: 'M1 4H15M1 8H15M1 12H15',
  note: 'M3 15V1L14 4.5 3 8',
  log: 'M3 2H13V14H3ZM6 5.5H10M6 8.5H10',
};

export function eventMark({ kind }) {
  return kind in SHAPES ? shape(SHAPES[kind]) : svg('svg', { class: 'shape', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, svg('path', { class: 'line', d: DRAWN[kind] ?? DRAWN.log }));
}

/** With the time in front. */
export function eventInWords(event) {
  return t('at', { at: momentOf(event.at), what: whatHappened(event) });
}

/** In a sentence without the time. */
export function whatHappened(event) {
  const { kind, mode, state, what, reason } = event;
  const params = { ...event, mode: mode ? t(`mode.${mode}`) : '', state: state ? t(`state.${state}`) : '', title: say(event.title), what: what ? t.maybe(`what.${what}`) ?? what : '' };
  const words = t(kind === 'log' && !event.words ? 'kind.logPlain' : `kind.${kind}`, params);
  return reason ? t('because', { words, reason }) : words;
}

/** The same with the alarm as a link. */
export function happeningNode(event) {
  const words = whatHappened(event);
  return event.alarm === undefined ? words : el('a', { href: `/alarms.html#${event.alarm}` }, words);
}
