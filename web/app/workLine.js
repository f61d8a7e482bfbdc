/** One line about something that takes long: what it is, how far, for how long, and the way out of it. */
import { el, setText } from './elements.js';
import { age, number } from './format.js';
import { room } from './text.js';

const t = await room('frame');

export function workLine(cancel) {
  const said = el('span', { role: 'status' });
  const bar = el('progress', { max: 1 });
  const time = el('span', { class: 'soft' });
  const button = el('button', { type: 'button', class: 'quiet', data: { action: 'cancel-work' }, on: { click: cancel } }, t('work.cancel'));
  const node = el('div', { class: 'long-work' }, said, bar, time, button);

  /** `one` is of `waiting.js`. */
  function draw(one, words) {
    const share = one.share();
    const told = share === null ? words : t(one.isBeingSent() ? 'work.sent' : 'work.done', { words, percent: number(100 * share, 0) });
    setText(said, one.isCancelled() ? t('work.cancelling', { words }) : told);
    button.disabled = one.isCancelled();
    bar.setAttribute('aria-label', words);
    if (share === null) {
      bar.removeAttribute('value');
    } else {
      bar.value = share;
    }
    setText(time, t('work.since', { age: age(one.seconds()) }));
  }
  return { node, draw };
}
