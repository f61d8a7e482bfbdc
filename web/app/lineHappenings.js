/**
 * The table behind the marks: what happened at the line, newest first. Like events near in time are one row with their count
 * and span, which opens. However much there is, only so many rows are drawn.
 */
import { el, setText } from './elements.js';
import { alikeNear, keyOf } from './lineEventGroups.js';
import { eventMark, happeningNode, kindInWords, whatHappened } from './lineEventWords.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('line');
const ROWS = 12;
const MOST_OF_A_ROW = 20;
/** Near in time: a sixteenth of what is shown, and not less than this. */
const [NEAR_SHARE, LEAST_NEAR_MS] = [1 / 16, 600_000];

export function lineHappenings() {
  const nothing = el('p', { class: 'soft' }, t('nothingHappened'));
  const body = el('tbody', {});
  const frame = el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('happened') },
    el('table', {}, el('thead', {}, el('tr', {}, ['when', 'what', 'words'].map((name) => el('th', { scope: 'col' }, t(`col.${name}`))))), body));
  const count = el('span', { class: 'soft', role: 'status' });
  const earlier = el('button', { type: 'button', class: 'quiet', data: { action: 'show-earlier' }, on: { click: () => ((most += ROWS), draw()) } }, t('showEarlier'));
  const node = el('div', { class: 'line-happenings' }, nothing, frame, el('p', { class: 'line-earlier' }, count, ' ', earlier));
  body.addEventListener('click', ({ target }) => toggle(target.closest('button[data-row]')));
  let shown = null;
  let drawn = '';
  let most = ROWS;
  /** Keys of events in rows that somebody opened. */
  let opened = new Set();

  /** `told` as the server tells it of a line, `span` the time of the samples. */
  function show(told, span) {
    const nearMs = Math.max(LEAST_NEAR_MS, span === null ? 0 : (span.to - span.from) * NEAR_SHARE);
    const keys = new Set(told.events.map(keyOf));
    opened = new Set([...opened].filter((key) => keys.has(key)));
    shown = { line: told.line, more: told.more, runs: alikeNear(told.events, nearMs) };
    draw();
  }

  function toggle(button) {
    if (button) {
      const run = shown.runs.find((one) => keyOf(one[0]) === button.dataset.row);
      const change = isOpen(run) ? 'delete' : 'add';
      run.forEach((event) => opened[change](keyOf(event)));
      draw();
    }
  }

  const isOpen = (run) => run.some((event) => opened.has(keyOf(event)));

  function draw() {
    const { line, more, runs } = shown;
    const [first, isAll] = [runs.slice(0, most), runs.length <= most];
    const now = JSON.stringify([line, first, first.map(isOpen)]);
    nothing.hidden = runs.length > 0;
    frame.hidden = runs.length === 0;
    setText(count, isAll ? (more ? t('more') : '') : t('rowsOf', { shown: first.length, n: runs.length }));
    earlier.hidden = isAll;
    if (now !== drawn) {
      drawn = now;
      keepFocus(body, () => body.replaceChildren(...first.flatMap((run) => rowsOf(run, isOpen(run), line))));
    }
  }
  return { node, show };
}

function rowsOf(run, open, line) {
  const event = run.at(-1);
  if (run.length === 1) {
    return [row(event, momentOf(event.at), happeningNode(event, line))];
  }
  const [from, to] = [momentOf(run[0].at), momentOf(event.at)];
  const button = el('button', { type: 'button', class: 'quiet small', 'aria-expanded': String(open), data: { row: keyOf(run[0]) } }, whatHappened(event, run.length));
  const within = [...run].reverse().slice(0, MOST_OF_A_ROW);
  const left = run.length - within.length;
  return [
    row(event, t('fromTo', { from, to }), button, { n: run.length }),
    ...(open ? within.map((one) => row(one, momentOf(one.at), happeningNode(one, line), { within: 'true' })) : []),
    ...(open && left > 0 ? [el('tr', { data: { within: 'true' } }, el('td', { colspan: 3, class: 'soft' }, t('moreBefore', { n: left, at: momentOf(within.at(-1).at) })))] : []),
  ];
}

function row(event, when, words, data = {}) {
  return el('tr', { data: { kind: event.kind, ...data } },
    el('th', { scope: 'row' }, when),
    el('td', {}, el('span', { class: 'event-kind' }, eventMark(event), kindInWords(event))),
    el('td', {}, words));
}

/** Somebody at the keyboard stays on the row where they are, also where others come before it. */
function keepFocus(body, redraw) {
  const on = body.contains(document.activeElement) ? document.activeElement : null;
  const same = (other) => other.textContent === on.textContent && other.getAttribute('href') === on.getAttribute('href');
  const row = on?.dataset.row;
  redraw();
  if (on) {
    const all = [...body.querySelectorAll('a, button')];
    (all.find((other) => row !== undefined && other.dataset.row === row) ?? all.find(same))?.focus({ preventScroll: true });
  }
}
