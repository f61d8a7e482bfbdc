/** The rows of a file that could not be used, each with its place, reason and the line as it came; each opens to be mended. */
import { getJson } from './api.js';
import { byLine } from './cellText.js';
import { el } from './elements.js';
import { mendForm } from './mend.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('intake');
const say = await sayings('intake');

/** A part that fills itself with the quarantined rows of a file; `done` is told of the file that mended rows came as. */
export function quarantine(file, done) {
  const node = el('div', { class: 'quarantine', data: { quarantine: file.id } }, el('p', { class: 'soft' }, t('fetching')));
  fill(file, node, done);
  return node;
}

async function fill(file, node, done) {
  try {
    const held = await getJson(`/api/v1/files/${file.id}/quarantine`);
    node.replaceChildren(...(held.rows.length > 0 ? shown(file, held, done) : [el('p', {}, t('allUsed'))]));
  } catch (error) {
    node.replaceChildren(el('p', {}, error.sentence ?? error.message));
  }
}

function shown(file, held, done) {
  return [
    el('h2', {}, t('figure.quarantined')),
    el('p', {}, held.obstacle
      ? t('cannotMend', { obstacle: say(held.obstacle) })
      : t('canMend')),
    el('ol', { class: 'plain held-rows' }, byLine(held.rows).map((row) => heldRow(file, held, row, done))),
    ...(held.more > 0 ? [el('p', { class: 'soft' }, t('moreRows', { n: held.more }))] : []),
  ];
}

function heldRow(file, held, row, done) {
  const isOpen = row.state === 'open';
  const place = el('div', { class: 'mend-place' });
  const item = el('li', { class: 'held', data: { line: row.line, state: row.state } },
    el('div', { class: 'held-head' },
      el('h3', {}, t('lineIs', { n: row.line })),
      isOpen && !held.obstacle ? el('button', { type: 'button', class: 'quiet', 'aria-expanded': 'false', 'aria-label': t('mendLine', { line: String(row.line) }), data: { action: 'mend' }, on: { click: toggle } }, t('mend')) : null,
      isOpen ? null : el('p', { class: 'held-mended' }, mendedWords(row.mended))),
    el('ul', { class: 'plain' }, row.faults.map(faultWords)),
    el('p', { class: 'verbatim raw' }, row.raw),
    isOpen ? null : el('p', { class: 'verbatim' }, row.mended.text),
    place);

  function toggle(event) {
    const button = event.currentTarget;
    const opening = button.getAttribute('aria-expanded') === 'false';
    button.setAttribute('aria-expanded', String(opening));
    place.replaceChildren(...(opening ? [mendForm(file, held, row, mended)] : []));
    (place.querySelector('[data-fault] input') ?? place.querySelector('textarea, input'))?.focus();
  }

  function mended(entry, words) {
    item.dataset.state = 'mended';
    const said = el('p', { class: 'held-mended', tabindex: -1, role: 'status' }, words);
    item.querySelector('[data-action="mend"]').replaceWith(said);
    place.replaceChildren();
    said.focus();
    done(entry);
  }
  return item;
}

function faultWords({ column, value, reason }) {
  return el('li', { class: 'reason-text' }, column ? [el('strong', {}, column), value && !reason.includes(value) ? [' ', el('span', { class: 'verbatim' }, value)] : null, ': '] : null, say(reason));
}

function mendedWords({ by, at, file }) {
  return t('mendedBy', { by, at: momentOf(at), file });
}
