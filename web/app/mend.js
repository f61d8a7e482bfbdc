/** Mending one row: its cells beside their headings, the faulty ones marked, submitted again under the name of whoever is signed in. */
import { postJson } from './api.js';
import { rowText } from './cellText.js';
import { el, setText } from './elements.js';
import { allow, signature, who } from './person.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake');
const LONGEST = 65_536;

/** `mended(file, words)` is called when the row was taken. */
export function mendForm(file, held, row, mended) {
  const isSplit = row.cells.length === held.headings.length;
  const fields = isSplit ? cellFields(held, row) : wholeRow(held, row);
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'mend', novalidate: true, 'aria-label': t('mendLine', { line: String(row.line) }), data: { action: 'mend-form' }, on: { submit } },
    fields.node,
    el('div', { class: 'mend-end' },
      signature('send-files'),
      allow(el('button', { type: 'submit' }, t('submitAgain')), 'send-files')),
    said);

  async function submit(event) {
    event.preventDefault();
    setText(said, t('beingRead'));
    try {
      const answer = await postJson(`/api/v1/files/${file.id}/quarantine/mend`, { rows: [{ row: row.id, text: fields.text() }] });
      if (answer.still.length > 0) {
        setText(said, t('stillHeld', { reason: say(answer.still[0].reason) }));
        form.querySelector('[data-fault] input, textarea')?.focus();
      } else {
        mended(answer.file, taken(answer.file, who().name));
      }
    } catch (error) {
      setText(said, t('notTaken', { error: error.sentence ?? error.message }));
    }
  }
  return form;
}

function taken({ id, readings, missing, new: fresh, known, corrected }, name) {
  const parts = [['someNew', fresh], ['someKnown', known], ['someCorrected', corrected]].filter(([, n]) => n > 0).map(([key, n]) => t(key, { n }));
  const measured = readings > 0 ? t('readingsAre', { n: readings, parts: parts.join(', ') }) : t('noReading');
  return t(missing > 0 ? 'mendedGaveMissing' : 'mendedGave', { name, id, measured, missing });
}

/** A field for each cell; a faulty one names its reason. */
function cellFields(held, row) {
  const reasons = new Map(row.faults.map(({ column, reason }) => [column, reason]));
  const inputs = row.cells.map((cell, i) => el('input', { id: `cell-${row.id}-${i}`, value: cell, maxlength: LONGEST, autocomplete: 'off', spellcheck: 'false' }));
  const cells = held.headings.map((heading, i) => {
    const reason = reasons.get(heading);
    const words = reason ? el('p', { class: 'cell-fault', id: `fault-${row.id}-${i}` }, t('notUsable', { reason: say(reason) })) : null;
    if (reason) {
      inputs[i].setAttribute('aria-describedby', words.id);
    }
    return el('div', { class: 'cell', data: reason ? { fault: 'true' } : {} }, el('label', { for: inputs[i].id }, heading || t('columnIs', { number: i + 1 })), inputs[i], words);
  });
  const text = () => {
    const now = inputs.map((input) => input.value);
    return now.every((cell, i) => cell === row.cells[i]) ? row.raw : rowText(now, held.separator);
  };
  return { node: el('div', { class: 'cells' }, cells), text };
}

/** A row that cannot be split is mended as a whole, below its headings. */
function wholeRow(held, row) {
  const area = el('textarea', { id: `row-${row.id}`, rows: 3, maxlength: LONGEST, spellcheck: 'false', class: 'verbatim' });
  area.value = row.raw;
  const node = el('div', { class: 'whole-row' },
    el('label', { for: area.id }, t('wholeRow')),
    el('p', { class: 'verbatim soft' }, held.headings.join(held.separator)),
    area);
  return { node, text: () => area.value };
}
