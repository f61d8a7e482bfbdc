/** Puts an alarm aside: on the shelf for a while, or out of service; and takes it back. */
import { postJson } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { askWho } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('alarms');
const MINUTES = [['15', '15 min'], ['30', '30 min'], ['60', '1 h'], ['120', '2 h'], ['240', '4 h'], ['480', '8 h']];

const NEEDS = { 'take-out': 'decide', 'put-back': 'decide' };

/** Shows what can be done in the alarm's state; what somebody is filling in stays until the state changes. */
export function holdControl(alarm, { refused }) {
  const node = el('section', { class: 'holds' });
  let drawnFor;

  function update(now) {
    const key = JSON.stringify([now.id, now.state, now.closed, now.hold?.id]);
    if (key !== drawnFor) {
      drawnFor = key;
      node.replaceChildren(...parts(now));
    }
  }

  function parts(now) {
    if (now.hold && now.state === 'shelved') {
      return [ending('end-hold', `/api/v1/shelves/${now.hold.id}/end`, t('takeOffShelf'), t('onShelfUntil', { at: momentOf(now.hold.until) }))];
    }
    if (now.hold && now.state === 'out-of-service') {
      return [ending('put-back', `/api/v1/out-of-service/${now.hold.id}/end`, t('putBack'), t('outUntil'))];
    }
    const canShelve = ['unacknowledged', 'acknowledged', 'returned-unacknowledged'].includes(now.state);
    return now.closed || !canShelve ? [] : [shelving(now), takingOut(now)];
  }

  function shelving(now) {
    const time = chips('minutes', t('howLong'), MINUTES);
    time.querySelector('input[value="60"]').checked = true;
    return question('shelve', t('shelveIt'), t('shelveMeans'), time,
      (form) => postJson(`/api/v1/alarms/${now.id}/shelve`, { minutes: Number(form.elements.minutes.value), ...said(form) }));
  }

  function takingOut(now) {
    const body = { line: now.line, structure: now.structure, positions: now.characteristics.map(({ position }) => position) };
    return question('take-out', t('takeOut'), t('takeOutMeans'), null,
      (form) => postJson('/api/v1/out-of-service', { ...body, ...said(form) }));
  }

  function ending(action, path, verb, words) {
    return question(action, verb, words, null, (form) => postJson(path, said(form)));
  }

  function question(action, verb, words, extra, act) {
    const told = el('p', { class: 'said', role: 'status' });
    const reason = el('textarea', { id: `${action}-reason`, name: 'reason', rows: 2, maxlength: 500 });
    const form = el('form', { class: 'hold-form', novalidate: true, on: { submit: (event) => event.preventDefault() } },
      el('p', { class: 'soft' }, words), extra,
      el('div', {}, el('label', { for: `${action}-reason` }, t('why')), reason),
      askWho(t('whoDoes'), verb, send, NEEDS[action] ?? 'tend-alarms'), told);

    async function send() {
      if (reason.value.trim() === '') {
        setText(told, t('nextShiftAsks'));
        return reason.focus();
      }
      setText(told, t('beingKept'));
      try {
        await act(form);
        refused();
      } catch (error) {
        setText(told, t('notKept', { error: error.sentence ?? error.message }));
      }
    }
    return el('details', { data: { action } }, el('summary', {}, verb), form);
  }

  const said = (form) => ({ reason: form.elements.reason.value.trim() });
  update(alarm);
  return { node, update };
}
