/** All versions of a structure, newest first: who, when, why, what changed; the newest can be taken back for a day. */
import { careForm, textField } from './careForm.js';
import { el } from './elements.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';
import { changeWords, keepFile } from './structureWords.js';
import { room } from './text.js';

const t = await room('structures');
const LONGEST_REASON = 500;
const NOT_NAMED = 'not named';

/** `kept(answer, words)` is called after a version was taken back. */
export function structureVersions({ code, versions, takeBack }, kept) {
  const back = el('div', { class: 'structure-take-back' });
  const askBack = () => back.replaceChildren(backForm(code, takeBack, kept, () => back.replaceChildren()));
  const items = versions.map((version) => versionOf(code, version, version.version === takeBack && may('decide') ? askBack : null, back));
  return el('section', { class: 'structure-versions' }, el('h3', {}, t('versions')),
    el('ol', { class: 'plain' }, items),
    el('details', {}, el('summary', {}, t('whatHolds')), ['whatHolds1', 'whatHolds2', 'whatHolds3'].map((key) => el('p', {}, t(key)))));
}

function versionOf(code, { version, standing, by, at, holdsFrom, reason, file, takesBack, changes, yaml }, askBack, back) {
  const words = { by: by === NOT_NAMED ? t('notNamed') : by, at: momentOf(at), file };
  const changed = takesBack !== null ? [el('li', {}, t('takesBack', { version: takesBack })), ...listed(changes)] : listed(changes);
  return el('li', { class: 'structure-version', data: { standing } },
    el('div', { class: 'structure-version-head' },
      el('h4', {}, t('versionIs', { version })), el('span', { class: 'structure-standing' }, t(`standing.${standing}`, { from: momentOf(holdsFrom) })),
      el('button', { type: 'button', class: 'quiet', data: { action: 'download' }, 'aria-label': t('downloadOf', { version, code }), on: { click: () => keepFile(`${code}-${version}.yaml`, yaml) } }, t('download')),
      askBack ? el('button', { type: 'button', class: 'quiet', data: { action: 'take-back' }, on: { click: askBack } }, t('takeBack')) : null),
    askBack ? back : null,
    el('p', { class: 'soft' }, t('given', words)),
    reason ? el('p', {}, el('q', {}, reason)) : null,
    changed.length > 0 ? el('ul', { class: 'structure-changes' }, changed) : el('p', { class: 'soft' }, t(version === 1 ? 'first' : 'sameAgain')));
}

const listed = (changes) => changes.map((change) => el('li', {}, changeWords(change)));

function backForm(code, version, kept, leave) {
  const reason = textField('back-reason', t('backReason', { version, before: version - 1 }), { rows: 2, maxlength: LONGEST_REASON });
  const form = careForm({
    permission: 'decide', prefix: 'structure-back',
    fields: [el('p', {}, t('backMeans', { version, before: version - 1 })), reason.node, el('button', { type: 'button', class: 'quiet structure-leave', on: { click: leave } }, t('leaveForm'))],
    verb: t('takeBackNow', { version }),
    ask: () => (reason.value() ? { path: '/api/v1/structures/take-back', body: { code, version, reason: reason.value() } } : { wanting: t('writeReason'), focus: reason.input }),
    done: (answer) => kept(answer, t('tookBack', { code, version, before: version - 1 })),
  });
  queueMicrotask(() => reason.input.focus());
  return form.node;
}
