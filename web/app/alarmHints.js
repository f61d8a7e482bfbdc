/** At an alarm: the first hints at its cause, and the way to the evidence. Asked again when the alarm has changed. */
import { getJson } from './api.js';
import { el } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms', 'diagnosis');
const MOST_SHOWN = 3;
const FITS_WELL = 0.85;

export function alarmHints(alarm) {
  const place = el('div', {});
  let seen = '';

  function update(now) {
    const key = JSON.stringify([now.lastSignalAt, now.returnedAt]);
    if (key !== seen) {
      seen = key;
      refresh();
    }
  }

  async function refresh() {
    try {
      show(await getJson(`/api/v1/alarms/${alarm.id}/diagnosis`));
    } catch (error) {
      place.replaceChildren(el('p', { class: 'soft' }, t('noHints', { error: error.sentence ?? error.message })));
    }
  }

  function show({ candidates, ambiguous, changed }) {
    const items = candidates.slice(0, MOST_SHOWN).map(({ name, score, kind }, i) =>
      el('li', {}, el('strong', {}, String(i + 1)), el('span', {}, say(name), kind === 'measurement' ? el('span', { class: 'soft' }, t('readingsNotFilm')) : null), el('span', { class: 'soft' }, score >= FITS_WELL ? t('fitsWell') : t('fits'))));
    const isUnclear = ambiguous.length > 0 && items.length > 1;
    place.replaceChildren(
      ...(items.length > 0 ? [el('ol', { class: 'plain hints' }, items)] : [el('p', {}, changed.length > 0 ? t('noSignature') : t('noNoise'))]),
      ...(isUnclear ? [el('p', { class: 'soft' }, t('ambiguous'))] : []),
      el('p', {}, el('a', { href: `/change.html?alarm=${alarm.id}` }, t('whatChanged'))));
  }
  update(alarm);
  return { node: place, update };
}
