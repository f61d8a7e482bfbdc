/** The rolls made since the last good sample before an alarm, to the end of its excursion, and what becomes of them. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { count } from './format.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { rollPicker } from './rollList.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('alarms');

export function alarmRolls(alarm, hooks) {
  const trouble = troubleLine();
  const span = el('p', {});
  const all = { words: t('tickUndecided'), wanted: ({ state }) => state === null };
  const picker = rollPicker({ factsOf, alarmId: alarm.id, all, decided: () => refresh(), refused: () => (refresh(), hooks.refused()) });
  let seen = '';

  /** Asked again only when the alarm has changed, and not under somebody's hand. */
  function update(now) {
    const key = JSON.stringify([now.lastSignalAt, now.returnedAt, now.state, now.history.length]);
    if (key !== seen && !picker.isBusy()) {
      seen = key;
      refresh();
    }
  }

  async function refresh() {
    try {
      const found = await getJson(`/api/v1/alarms/${alarm.id}/rolls`);
      span.replaceChildren(...spanWords(found));
      picker.show(found.rolls);
      trouble.clear();
    } catch (error) {
      trouble.show(error, t('rollsNotListed'));
    }
  }
  update(alarm);
  return { node: el('div', { class: 'alarm-rolls' }, span, trouble.node, picker.node), update };
}

function spanWords({ lastGood, over, until }) {
  const from = lastGood
    ? t('lastGood', { sample: lastGood.sample, roll: lastGood.roll, at: momentOf(lastGood.takenAt) })
    : t('noGood');
  const to = over ? t('usualAgain', { at: momentOf(until) }) : t('goesOn');
  return [from + to];
}

function factsOf({ samples, readings, outOfSpec, averagesOutOfSpec, heldOut = 0, thinned }) {
  const made = samples > 0 ? t('samples', { n: samples }) : t('noSample');
  const parts = [
    outOfSpec > 0 ? t('readingsOut', { out: count(outOfSpec), n: readings }) : null,
    averagesOutOfSpec > 0 ? t('averagesOut', { n: averagesOutOfSpec }) : null,
  ].filter(Boolean);
  const quiet = readings > 0 ? t('noneOut', { n: readings }) : '';
  return [
    el('p', {}, parts.length > 0 ? `${made} ` : made + quiet, parts.length > 0 ? el('span', { class: 'reason' }, shape('spec'), el('span', {}, parts.join(', '))) : null),
    heldOut > 0 ? el('p', { class: 'soft' }, t('misread', { n: heldOut })) : null,
    thinned > 0 ? el('p', { class: 'soft' }, t('thinned', { n: thinned })) : null,
  ];
}
