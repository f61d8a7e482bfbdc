/**
 * Notes of people at the moments they are about: flags at the foot of the mean chart, their words on focus and tap, and a form for
 * the sample under the cursor. The notes are those of the handover.
 */
import { getJson, postJson } from './api.js';
import { DRAWN } from './chartPanel.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { moment } from './plantClock.js';
import { room } from './text.js';
import { troubleLine } from './trouble.js';

const t = await room('notes');

/** `panel` is the chart, `current()` the sample under its cursor. Gives {node, show(series), destroy}. */
export function momentNotes(panel, current) {
  const flags = el('div', { class: 'note-flags' });
  const said = el('p', { class: 'note-said', role: 'status' });
  const text = el('textarea', { id: 'note-text', rows: 2, maxlength: 2000, required: true });
  const trouble = troubleLine();
  const where = el('p', { class: 'soft' });
  const form = el('form', { class: 'note-form', hidden: true, on: { submit } },
    where, el('label', { for: 'note-text' }, t('words')), text, signature('tend-alarms'),
    el('div', { class: 'note-ways' }, allow(el('button', { type: 'submit' }, t('keep')), 'tend-alarms'), el('button', { type: 'button', class: 'quiet', on: { click: close } }, t('notNow'))), trouble.node);
  const open = el('button', { type: 'button', class: 'quiet', data: { action: 'note' }, on: { click: ask } }, t('write'));
  const node = el('div', { class: 'moment-notes' }, open, said, form);
  panel.node.append(flags);
  let notes = [];
  let line = null;
  let about = null;

  async function show(series) {
    const isOther = line !== series.line;
    line = series.line;
    if (isOther) {
      await read();
    }
    draw();
  }

  async function read() {
    notes = (await getJson('/api/v1/handover/notes', { line }).catch(() => ({ notes: [] }))).notes;
  }

  function draw() {
    const area = panel.areaOf();
    if (!area) {
      return;
    }
    const shown = notes.map((note) => ({ note, x: panel.pixelOf(Date.parse(note.at)) })).filter(({ x }) => x >= area.left && x <= area.right);
    flags.replaceChildren(...shown.map(({ note, x }) => {
      const flag = el('button', { type: 'button', class: 'note-flag', title: note.text, 'aria-label': inWords(note), on: { click: () => setText(said, inWords(note)), focus: () => setText(said, inWords(note)) } }, '\u2691');
      flag.style.left = `${x}px`;
      flag.style.top = `${area.top}px`;
      return flag;
    }));
  }

  function ask() {
    about = current();
    if (about !== null) {
      setText(where, t('about', { at: moment(about.at), roll: about.roll, sample: about.sample }));
      form.hidden = false;
      text.focus();
    }
  }

  function close() {
    form.hidden = true;
    open.focus();
  }

  async function submit(event) {
    event.preventDefault();
    try {
      const words = text.value.trim();
      await postJson('/api/v1/handover/notes', { text: words, line, roll: about.roll, at: new Date(about.at).toISOString(), kind: 'note' });
      text.value = '';
      trouble.say('');
      close();
      await read();
      draw();
      setText(said, t('kept', { words }));
    } catch (error) {
      trouble.show(error);
    }
  }

  panel.node.addEventListener(DRAWN, draw);
  return { node, show, destroy: () => panel.node.removeEventListener(DRAWN, draw) };
}

function inWords({ at, by, text }) {
  return t('said', { at: moment(Date.parse(at)), by, text });
}
