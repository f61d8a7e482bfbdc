/** The page of the rolls that somebody decided about: held ones first, since they wait. Stays live. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import * as live from './live.js';
import { throttled } from './refresh.js';
import { rollPicker, STATES } from './rollList.js';
import { troubleLine } from './trouble.js';

const LEAST_BETWEEN_MS = 2_000;
const TABS = [['held', 'Held'], ['released', 'Released'], ['scrapped', 'Scrapped'], ['rework', 'For rework'], ['all', 'All']];

export function mount(root, params) {
  const wanted = params.get('state');
  const state = TABS.some(([name]) => name === wanted) ? wanted : 'held';
  const heading = el('h1', {});
  const nothing = el('p', { class: 'nothing', hidden: true });
  const trouble = troubleLine();
  const all = { words: 'Tick all of them', wanted: () => true };
  const picker = rollPicker({ factsOf, alarmId: null, all, decided: () => refresh(), refused: () => refresh() });
  root.replaceChildren(el('div', { class: 'alarms-head' }, heading, tabs(state)),
    el('p', { class: 'soft rolls-lead' }, 'Rolls come here from an alarm, where those made since the last good sample are listed.'),
    trouble.node, nothing, picker.node);

  async function refresh() {
    try {
      const { rolls } = await getJson('/api/v1/rolls', { state });
      setText(heading, headingOf(rolls.length, state));
      nothing.hidden = rolls.length > 0;
      setText(nothing, state === 'held' ? 'No roll waits for a decision.' : 'There is none.');
      picker.show(rolls);
      trouble.clear();
    } catch (error) {
      trouble.show(error, 'This list is not fresh.');
    }
    document.documentElement.dataset.ready = 'true';
  }

  const calm = async () => (picker.isBusy() ? undefined : refresh());
  const refreshing = throttled(calm, LEAST_BETWEEN_MS);
  const stops = [live.on('alarm', refreshing.ask), live.on('reload', refreshing.ask), refreshing.stop];
  refresh();
  return () => stops.forEach((stop) => stop());
}

function headingOf(n, state) {
  const words = state === 'all' ? 'decided about' : STATES[state];
  return n === 0 ? `No rolls ${words}` : `${plural(n, 'roll')} ${words}`.replace(/^o/, 'O');
}

function tabs(state) {
  return el('nav', { class: 'ranges', 'aria-label': 'Which rolls' },
    TABS.map(([name, words]) => el('a', { href: `/rolls.html?state=${name}`, 'aria-current': name === state ? 'page' : null }, words)),
    el('a', { href: '/alarms.html' }, 'To the alarms'));
}

function factsOf({ line, structure, decisions }) {
  const alarm = decisions[0]?.alarm ?? null;
  return [el('p', {}, `${line}, ${structure}`), alarm === null ? null : el('p', {}, el('a', { href: `/alarms.html?state=all#${alarm}` }, `Alarm ${alarm}`))];
}
