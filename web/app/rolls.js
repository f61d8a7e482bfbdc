/** The page of the rolls that somebody decided about: held ones first, since they wait. Stays live. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import * as live from './live.js';
import { throttled } from './refresh.js';
import { rollPicker } from './rollList.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('rolls');
const LEAST_BETWEEN_MS = 2_000;
const TABS = ['held', 'released', 'scrapped', 'rework', 'all'];

export function mount(root, params) {
  const wanted = params.get('state');
  const state = TABS.includes(wanted) ? wanted : 'held';
  const heading = el('h1', {});
  const nothing = el('p', { class: 'nothing', hidden: true });
  const trouble = troubleLine();
  const all = { words: t('tickAll'), wanted: () => true };
  const picker = rollPicker({ factsOf, alarmId: null, all, decided: () => refresh(), refused: () => refresh() });
  root.replaceChildren(el('div', { class: 'alarms-head' }, heading, tabs(state)),
    el('p', { class: 'soft rolls-lead' }, t('lead')),
    trouble.node, nothing, picker.node);

  async function refresh() {
    try {
      const { rolls } = await getJson('/api/v1/rolls', { state });
      setText(heading, headingOf(rolls.length, state));
      nothing.hidden = rolls.length > 0;
      setText(nothing, t(state === 'held' ? 'noneWaits' : 'none'));
      picker.show(rolls);
      trouble.clear();
    } catch (error) {
      trouble.show(error, t('notFresh'));
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
  return n === 0 ? t(`no.${state}`) : t(`heading.${state}`, { n });
}

function tabs(state) {
  return el('nav', { class: 'ranges', 'aria-label': t('whichRolls') },
    TABS.map((name) => el('a', { href: `/rolls.html?state=${name}`, 'aria-current': name === state ? 'page' : null }, t(`tab.${name}`))),
    el('a', { href: '/alarms.html' }, t('toAlarms')));
}

function factsOf({ line, structure, decisions }) {
  const alarm = decisions[0]?.alarm ?? null;
  return [el('p', {}, t('place', { line, structure })), alarm === null ? null : el('p', {}, el('a', { href: `/alarms.html?state=all#${alarm}` }, t('alarm', { alarm })))];
}
