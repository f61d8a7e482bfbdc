/** With whom an alarm is, and the two acts that move it: hand it on, and open it again. */
import { getJson } from './api.js';
import { careForm, folded, textField } from './careForm.js';
import { el, setText } from './elements.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('alarms');
const LONGEST_NAME = 80;
const LONGEST = 500;

/** Who has it, in words; '' while nobody has. */
function ownerInWords({ owner, acknowledged }) {
  if (!owner || (owner.by === owner.name && owner.name === acknowledged?.by)) {
    return '';
  }
  const handed = { name: owner.name, by: owner.by, at: momentOf(owner.at), why: owner.why };
  return t(owner.why ? 'handedOnWhy' : 'handedOn', handed);
}

export function ownerPart(alarm, { changed, refused }) {
  let now = alarm;
  const words = el('p', { class: 'owner' });
  const to = textField('hand-on-to', t('toWhom'), { maxlength: LONGEST_NAME, list: 'known-people' });
  const why = textField('hand-on-why', t('shouldKnow'), { maxlength: LONGEST });
  const known = el('datalist', { id: 'known-people' });
  if (may('tend-alarms')) {
    getJson('/api/v1/colleagues')
      .then(({ names }) => known.replaceChildren(...names.map((name) => el('option', { value: name }))))
      .catch(() => known.replaceChildren());
  }
  const handOn = careForm({
    prefix: 'hand-on', fields: [to.node, known, why.node], verb: t('handOn'),
    ask: () => (to.value()
      ? { path: `/api/v1/alarms/${now.id}/owner`, body: { to: to.value(), from: now.owner?.name ?? null, why: why.value() } }
      : { wanting: t('sayToWhom'), focus: to.input }),
    done: (answer) => ((to.input.value = ''), (why.input.value = ''), (handOnFold.open = false), changed(answer)),
    refused,
  });
  const reason = textField('reopen-reason', t('why'), { maxlength: LONGEST, rows: 2 });
  const reopen = careForm({
    prefix: 'reopen', fields: [reason.node], verb: t('openAgain'),
    ask: () => (reason.value()
      ? { path: `/api/v1/alarms/${now.id}/reopen`, body: { reason: reason.value() } }
      : { wanting: t('writeWhy'), focus: reason.input }),
    done: (answer) => ((reason.input.value = ''), (reopenFold.open = false), changed(answer)),
    refused,
  });
  const handOnFold = folded(t('handOn'), handOn.node, { fold: 'hand-on' });
  const reopenFold = folded(t('openAgain'), reopen.node, { fold: 'reopen' });

  function update(alarmNow) {
    now = alarmNow;
    const text = ownerInWords(now);
    words.hidden = text === '';
    setText(words, text);
    handOnFold.hidden = now.closed;
    reopenFold.hidden = !now.closed;
  }
  update(alarm);
  return { node: el('div', { class: 'owner-part' }, words, handOnFold, reopenFold), update };
}
