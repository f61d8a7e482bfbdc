/** The rolls made since the last good sample before an alarm, to the end of its excursion, and what becomes of them. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { count, plural } from './format.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { rollPicker } from './rollList.js';
import { troubleLine } from './trouble.js';

export function alarmRolls(alarm, hooks) {
  const trouble = troubleLine();
  const span = el('p', {});
  const all = { words: 'Tick all that nobody has decided about', wanted: ({ state }) => state === null };
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
      trouble.show(error, 'The rolls cannot be listed.');
    }
  }
  update(alarm);
  return { node: el('div', { class: 'alarm-rolls' }, span, trouble.node, picker.node), update };
}

function spanWords({ lastGood, over, until }) {
  const from = lastGood
    ? `The last good sample before it was ${lastGood.sample} on roll ${lastGood.roll}, ${momentOf(lastGood.takenAt)}: nothing signalled there and nothing was out of spec.`
    : 'No sample before it was good, so every roll since the first sample is here.';
  const to = over ? ` It was usual again at ${momentOf(until)}.` : ' It goes on, so the list goes to the newest sample.';
  return [from + to];
}

function factsOf({ samples, readings, outOfSpec, averagesOutOfSpec, heldOut = 0, thinned }) {
  const made = samples > 0 ? plural(samples, 'sample') : 'no sample after the good one';
  const parts = [
    outOfSpec > 0 ? `${count(outOfSpec)} of ${plural(readings, 'reading')} out of spec` : null,
    averagesOutOfSpec > 0 ? `${plural(averagesOutOfSpec, 'average')} out of spec` : null,
  ].filter(Boolean);
  const quiet = readings > 0 ? `, none of ${plural(readings, 'reading')} out of spec` : '';
  return [
    el('p', {}, parts.length > 0 ? `${made} ` : made + quiet, parts.length > 0 ? el('span', { class: 'reason' }, shape('spec'), el('span', {}, parts.join(', '))) : null),
    heldOut > 0 ? el('p', { class: 'soft' }, `${plural(heldOut, 'sample')} misread, not counted`) : null,
    thinned > 0 ? el('p', { class: 'soft' }, `${plural(thinned, 'sample')} without readings, thinned`) : null,
  ];
}
