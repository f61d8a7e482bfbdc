/** A structures file that is there already: chosen from the disk, or pasted. */
import { el, setText } from './elements.js';
import { may, whyNot } from './person.js';
import { room } from './text.js';

const t = await room('structures');

/** `look(name, text, {asItIs})` is given what is to be looked at; `touched()` is told when it changes; `leave()` when nobody wants it. */
export function structureFile({ look, touched, leave }) {
  const chosen = el('input', { id: 'structure-file', type: 'file', accept: '.yaml,.yml,.txt,application/yaml', disabled: !may('decide'), on: { change: take } });
  const text = el('textarea', { id: 'structure-yaml', rows: 12, class: 'verbatim', spellcheck: 'false', on: { input: touched } });
  const said = el('p', { class: 'said', role: 'status' });
  let name = t('pasted');
  const node = el('form', { class: 'structure-file', novalidate: true, on: { submit } },
    el('h3', {}, t('fromFile')), el('p', { class: 'soft' }, t('fromFileLead')), whyNot('decide'),
    el('div', {}, el('label', { for: chosen.id }, t('chooseFile')), chosen),
    el('div', {}, el('label', { for: text.id }, t('orPaste')), text),
    el('div', { class: 'structure-ends' },
      el('button', { type: 'submit', data: { action: 'look' }, disabled: !may('decide') }, t('seeChanges')),
      el('button', { type: 'button', class: 'quiet', data: { action: 'leave' }, on: { click: leave } }, t('leaveForm'))), said);

  async function take() {
    const [file] = chosen.files;
    if (file) {
      name = file.name;
      text.value = await file.text();
      touched();
      submit();
    }
  }

  function submit(event) {
    event?.preventDefault();
    const isEmpty = text.value.trim() === '';
    setText(said, isEmpty ? t('nothingPasted') : '');
    return isEmpty ? text.focus() : look(name, text.value, { asItIs: true });
  }
  return { node, focus: () => chosen.focus() };
}
