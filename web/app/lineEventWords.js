/** What happened at a line, in words, as a small shape, and where it is decided. */
import { el, svg } from './elements.js';
import { list } from './format.js';
import { calibrationPlace, readingsPlace } from './gaugePlaces.js';
import { limitsAddress } from './limitsOverview.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('line');
const say = await sayings('alarms');
const SHAPES = { alarm: 'act', mode: 'not_running' };
const DRAWN = {
  taken: 'M2 8.5 6.5 13 14 3',
  returned: 'M13 14V8a4 4 0 0 0-4-4H3M6.5 1 3 4l3.5 3',
  roll: 'M8 1a7 7 0 1 0 .01 0M8 5.5a2.5 2.5 0 1 0 .01 0',
  film: 'M1 4H15M1 8H15M1 12H15',
  shift: 'M1 12H15M4 12a4 4 0 0 1 8 0M8 2V5M2 5.5 4 7.5M14 5.5 12 7.5',
  limits: 'M1 7H8V3H15M1 13H8V9H15',
  structure: 'M2 2H14V14H2ZM2 6H14M2 10H14',
  calibrated: 'M2 13a7 7 0 1 1 12 0M8 10.5 11 5.5',
  rescaled: 'M1 4.5H15V11.5H1ZM4.5 4.5V8M8 4.5V9M11.5 4.5V8',
  note: 'M3 15V1L14 4.5 3 8',
  log: 'M3 2H13V14H3ZM6 5.5H10M6 8.5H10',
};

export function eventMark({ kind }) {
  return kind in SHAPES ? shape(SHAPES[kind]) : svg('svg', { class: 'shape', viewBox: '0 0 16 16', 'aria-hidden': 'true' }, svg('path', { class: 'line', d: DRAWN[kind] ?? DRAWN.log }));
}

/** The word beside the shape. */
export const kindInWords = ({ kind }) => t(`name.${kind}`);

/** With the time in front. */
function eventInWords(event) {
  return t('at', { at: momentOf(event.at), what: whatHappened(event) });
}

/** Events that stand together: each in words while they are few, else which kinds there are of. */
export function togetherInWords(events) {
  const [first, last] = [events[0], events.at(-1)];
  if (events.length <= 2) {
    return events.map(eventInWords).join(' \u00b7 ');
  }
  const counts = new Map();
  events.forEach((event) => counts.set(kindInWords(event), (counts.get(kindInWords(event)) ?? 0) + 1));
  const kinds = [...counts].map(([kind, n]) => (n === 1 ? kind : t('times', { n, kind })));
  return t('together', { n: events.length, from: momentOf(first.at), to: momentOf(last.at), kinds: list(kinds) });
}

/** In a sentence without the time; of events that are alike, how many. */
export function whatHappened(event, alike = 1) {
  const params = said(event);
  if (alike > 1) {
    return t(`many.${event.kind}`, { ...params, n: alike });
  }
  const words = t(`kind.${variant(event)}`, params);
  return isGiven(event.reason) ? t('because', { words, reason: event.reason }) : words;
}

/** The server says so where nobody gave one. */
const isGiven = (reason) => Boolean(reason) && reason !== 'not given';

function said(event) {
  const { mode, state, what, title, by } = event;
  return {
    ...event,
    title: say(title),
    by: by === 'not named' ? t('notNamed') : by,
    mode: mode ? t(`mode.${mode}`) : '',
    state: state ? t(`state.${state}`) : '',
    what: what ? t.maybe(`what.${what}`) ?? what : '',
  };
}

function variant({ kind, words, crew, takesBack }) {
  return kind === 'log' && !words ? 'logPlain' : kind === 'shift' && crew ? 'shiftCrew' : kind === 'rescaled' && takesBack ? 'rescaledBack' : kind;
}

/** The same as a link to where it is decided, where there is such a page. */
export function happeningNode(event, line) {
  const words = whatHappened(event);
  const href = addressOf(event, line);
  return href === null ? words : el('a', { href }, words);
}

function addressOf({ kind, alarm, structure, shift, calibration, position, version }, line) {
  switch (kind) {
    case 'alarm':
    case 'taken':
    case 'returned':
      return `/alarms.html#${alarm}`;
    case 'limits':
      return limitsAddress(line, structure);
    case 'film':
    case 'structure':
      return `/structures.html?${new URLSearchParams({ structure })}`;
    case 'calibrated':
      return `/gauge.html#${encodeURIComponent(calibrationPlace(calibration))}`;
    case 'rescaled':
      return `/gauge.html#${encodeURIComponent(readingsPlace({ line, structure, position, version }))}`;
    case 'roll':
      return null;
    default:
      return shift === undefined ? null : `/handover.html?${new URLSearchParams({ line, shift })}`;
  }
}
