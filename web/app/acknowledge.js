/**
 * "Seen, mine", then the button with the name: two taps. Only one such question is open at a time. The screen says at once
 * that it is being kept, and says honestly when somebody else was first or nothing was kept.
 */
import { isWaiting } from './alarmWords.js';
import { postJson } from './api.js';
import { el, setText } from './elements.js';
import { askWho } from './person.js';
import { room } from './text.js';

const t = await room('alarms');

let closeOther = () => {};

/** `changed(alarm)` gets the server's answer; `refused()` is told when the alarm must be looked at anew. */
export function acknowledgeControl(id, { changed, refused }) {
  const place = el('div', { class: 'acknowledge' });
  const said = el('p', { class: 'said', role: 'status', tabindex: -1 });
  const button = el('button', { type: 'button', data: { action: 'acknowledge' }, on: { click: ask } }, t('seenMine'));
  const node = el('div', {}, place, said);

  function rest() {
    place.replaceChildren(button);
  }

  function ask() {
    closeOther();
    closeOther = rest;
    setText(said, '');
    const cancel = el('button', { type: 'button', class: 'quiet', on: { click: () => (rest(), button.focus()) } }, t('notNow'));
    place.replaceChildren(askWho(t('whoTakes'), t('takeIt'), take), cancel);
    place.querySelector('button, a').focus();
  }

  async function take(by) {
    closeOther = () => {};
    place.replaceChildren();
    setText(said, t('beingTaken', { by }));
    said.focus();
    try {
      changed(await postJson(`/api/v1/alarms/${id}/acknowledge`, {}));
      setText(said, t('keptHas', { by }));
    } catch (error) {
      setText(said, error.status === 409 ? t('notYours', { error: error.sentence }) : t('notKept', { error: error.sentence ?? error.message }));
      if (error.status === 409) {
        refused();
      } else {
        rest();
      }
    }
  }
  /** Asked for while it waits; what was said of an earlier taking goes when it comes back. */
  function update(now) {
    const waits = isWaiting(now) && !now.closed;
    if (waits && place.hidden) {
      setText(said, '');
      rest();
    }
    place.hidden = !waits;
  }
  rest();
  return { node, update };
}
