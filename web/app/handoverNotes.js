/** Writes a note, pinned to a line and a time, and finds earlier ones. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { allow, signature } from './person.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';

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
    el('h2', {}, 'Write something down'),
    field('note-text', 'What the next shift should know', text),
    el('div', { class: 'note-pins' }, field('note-line', 'Line', line), field('note-roll', 'Roll, if it is about one', roll), field('note-at', 'When it was', at)),
    el('label', { class: 'tick', for: 'note-todo' }, todo, 'To do: stays on every handover until somebody settles it'),
    signature('tend-alarms'),
    allow(el('button', { type: 'submit', data: { action: 'write-note' } }, 'Write it down'), 'tend-alarms'), said);

  async function submit(event) {
    event.preventDefault();
    const words = text.value.trim();
    if (words === '') {
      setText(said, 'Write what happened.');
      return text.focus();
    }
    setText(said, 'Being kept\u2026');
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
      setText(said, 'Written down.');
      written();
    } catch (error) {
      setText(said, `Not kept. ${error.sentence ?? error.message}`);
    }
  }

  function lines(all, chosen) {
    const kept = line.value || chosen;
    line.replaceChildren(el('option', { value: '' }, 'The plant'), ...all.map((name) => el('option', { value: name }, name)));
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
      setText(said, words.value.trim() === '' ? 'The newest:' : plural(notes.length, 'note'));
      list.replaceChildren(...notes.map((note) => el('li', {},
        el('strong', {}, note.text),
        el('span', { class: 'soft' }, [note.line, note.roll && `roll ${note.roll}`, note.by, momentOf(note.at), note.settled ? `settled: ${note.settled.outcome}` : note.kind === 'follow-up' ? 'to do' : ''].filter(Boolean).join(' \u00b7 ')))));
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
  }
  const node = el('details', { class: 'note-search', on: { toggle: () => node.open && look() } }, el('summary', {}, 'Find earlier notes'),
    field('note-search', 'Words, line, roll or name', words), said, list);
  return node;
}

const field = (id, words, input) => el('div', { class: 'note-field' }, el('label', { for: id }, words), input);
