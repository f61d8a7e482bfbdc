/** Writes a note, pinned to a line and a time, and finds earlier ones. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { allow, signature } from './person.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';
import { room } from './text.js';

const t = await room('handover');

const LONGEST = 2000;
const SEARCH_AFTER_MS = 250;

/** `written()` is called after a note was kept. */
export function handoverNotes(written) {
  const text = el('textarea', { id: 'note-text', rows: 3, maxlength: LONGEST });
  const line = el('select', { id: 'note-line' });
  const roll = el('input', { id: 'note-roll', maxlength: 80, autocomplete: 'off' });
  const at = el('input', { id: 'note-at', type: 'datetime-local' });
  const todo = el('input', { id: 'note-todo', type: 'checkbox' });
  const said = el('p', { class: 'said', role: 'status' });
  const form = el('form', { class: 'note-form', novalidate: true, on: { submit } },
    el('h2', {}, t('writeDown')),
    field('note-text', t('nextShould'), text),
    el('div', { class: 'note-pins' }, field('note-line', t('line'), line), field('note-roll', t('rollIfAny'), roll), field('note-at', t('whenWas'), at)),
    el('label', { class: 'tick', for: 'note-todo' }, todo, t('toDoStays')),
    signature('tend-alarms'),
    allow(el('button', { type: 'submit', data: { action: 'write-note' } }, t('writeIt')), 'tend-alarms'), said);

  async function submit(event) {
    event.preventDefault();
    const words = text.value.trim();
    if (words === '') {
      setText(said, t('writeWhat'));
      return text.focus();
    }
    setText(said, t('beingKept'));
    try {
      const ms = at.value ? Math.min(atWallTime(at.value), nowMs()) : NaN;
      await postJson('/api/v1/handover/notes', {
        text: words, line: line.value, roll: roll.value.trim(), kind: todo.checked ? 'follow-up' : 'note',
        at: Number.isFinite(ms) && at.value !== wallTime(nowMs()) ? new Date(ms).toISOString() : '',
      });
      text.value = '';
      roll.value = '';
      at.value = '';
      todo.checked = false;
      setText(said, t('written'));
      written();
    } catch (error) {
      setText(said, t('notKept', { error: error.sentence ?? error.message }));
    }
  }

  function lines(all, chosen) {
    const kept = line.value || chosen;
    line.replaceChildren(el('option', { value: '' }, t('thePlant')), ...all.map((name) => el('option', { value: name }, name)));
    line.value = all.includes(kept) ? kept : '';
  }
  return { nodes: [form, searchOf()], lines };
}

function searchOf() {
  const words = el('input', { id: 'note-search', type: 'search', maxlength: 200, autocomplete: 'off', on: { input: later } });
  const said = el('p', { class: 'soft', role: 'status' });
  const list = el('ul', { class: 'plain found-notes' });
  let timer = null;

  function later() {
    clearTimeout(timer);
    timer = setTimeout(look, SEARCH_AFTER_MS);
  }

  async function look() {
    try {
      const { notes } = await getJson('/api/v1/handover/notes', { text: words.value });
      setText(said, words.value.trim() === '' ? t('newest') : t('notesFound', { n: notes.length }));
      list.replaceChildren(...notes.map((note) => el('li', {},
        el('strong', {}, note.text),
        el('span', { class: 'soft' }, [note.line, note.roll && t('rollIs', { roll: note.roll }), note.by, momentOf(note.at), note.settled ? t('settledAs', { outcome: note.settled.outcome }) : note.kind === 'follow-up' ? t('toDo') : ''].filter(Boolean).join(' \u00b7 ')))));
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
  }
  const node = el('details', { class: 'note-search', on: { toggle: () => node.open && look() } }, el('summary', {}, t('findEarlier')),
    field('note-search', t('searchIn'), words), said, list);
  return node;
}

const field = (id, words, input) => el('div', { class: 'note-field' }, el('label', { for: id }, words), input);
