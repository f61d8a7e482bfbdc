/** What one shift tells the next: for the shift that ends, for all lines or one; signed by both leads; made to be printed. */
import { getJson, postJson } from './api.js';
import { askSheet } from './askSheet.js';
import { el, setText } from './elements.js';
import { handoverNotes } from './handoverNotes.js';
import { changesOf, handoverSections } from './handoverSections.js';
import { handoverSign } from './handoverSign.js';
import * as live from './live.js';
import { datedOf, day, synchronise, timeOfDay } from './plantClock.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';

const LEAST_BETWEEN_MS = 15_000;

export function mount(root, params) {
  const line = params.get('line') ?? '';
  const trouble = troubleLine();
  const said = el('p', { class: 'handover-said', role: 'status', tabindex: -1, hidden: true });
  const head = el('div', { class: 'handover-head' });
  const standing = el('div', { class: 'standing' });
  const parts = el('div', { class: 'parts' });
  const signing = el('div', {});
  const notes = handoverNotes(refresh);
  let page = null;
  let anew = false;

  root.replaceChildren(head, said, trouble.node, standing, parts, el('div', { class: 'handover-end' }, signing, el('div', { class: 'writing' }, notes.nodes)));

  async function refresh() {
    try {
      page = await getJson('/api/v1/handover', { line, shift: params.get('shift') });
      params.set('shift', page.handover.shift.shift);
      synchronise(page.now, page.zone);
      trouble.clear();
      draw();
    } catch (error) {
      trouble.show(error, 'This page is not fresh.');
    }
    document.documentElement.dataset.ready = 'true';
  }

  function draw() {
    const isSigned = page.signed !== null && !anew;
    const shown = isSigned ? page.signed.handover : page.handover;
    document.title = `Handover, ${shown.shift.shift} \u00b7 Filmward`;
    head.replaceChildren(...headOf(page, line, shown));
    standing.replaceChildren(...standingOf(isSigned));
    parts.replaceChildren(...handoverSections(shown, isSigned ? null : settle));
    signing.replaceChildren(handoverSign(page, { sign, mayHandOver: !isSigned }));
    notes.lines(page.lines, line);
  }

  function standingOf(isSigned) {
    if (page.signed === null) {
      return [el('p', { class: 'soft' }, 'Nobody has signed yet. What stands here goes on changing until somebody does.')];
    }
    const taken = page.signed.signatures.some(({ side }) => side === 'incoming');
    const words = isSigned ? 'This is what was signed.' : 'This is how things stand now. Signing hands it over anew.';
    const other = isSigned ? 'Look at it as it is now, to hand over anew' : 'Back to what was signed';
    return [el('p', {}, el('strong', {}, words)), isSigned ? changesOf(page.signed.changes) : null,
      taken ? null : el('button', { type: 'button', class: 'quiet', on: { click: () => ((anew = !anew), draw()) } }, other)].filter(Boolean);
  }

  async function sign(side, meaning) {
    const { digest } = side === 'incoming' ? page.signed : page;
    const by = await askSheet(side === 'incoming' ? 'Who takes over?' : 'Who hands over?', meaning, 'Sign');
    if (by === null) {
      return;
    }
    try {
      await postJson('/api/v1/handover/sign', { line, shift: page.handover.shift.shift, side, digest });
      anew = false;
      say(side === 'incoming' ? `${by} has taken over.` : `${by} has handed over. The other lead signs next.`);
    } catch (error) {
      say(`Not signed. ${error.sentence ?? error.message}`);
    }
    refresh();
  }

  async function settle(item) {
    const outcome = el('textarea', { rows: 2, id: 'outcome', maxlength: 1000 });
    const by = await askSheet('How did it come out?', item.title, 'Settled', {
      fields: [el('label', { for: 'outcome' }, 'What was done'), outcome],
      wanting: () => (outcome.value.trim() ? '' : 'Write what was done: whoever wrote it down wants to know.'),
    });
    if (by === null) {
      return;
    }
    try {
      await postJson(`/api/v1/handover/notes/${item.key.split(' ')[1]}/settle`, { outcome: outcome.value.trim() });
    } catch (error) {
      say(`Not settled. ${error.sentence ?? error.message}`);
    }
    refresh();
  }

  function say(words) {
    said.hidden = false;
    setText(said, words);
    said.focus();
  }

  const unsigned = () => (page === null || page.signed === null) && document.querySelector('dialog[open]') === null;
  const refreshing = throttled(refresh, LEAST_BETWEEN_MS);
  const wish = () => unsigned() && refreshing.ask();
  refreshing.ask();
  const stops = [live.on('alarm', wish), live.on('file', wish), live.on('limits', wish), live.on('reload', wish), refreshing.stop];
  return () => stops.forEach((stop) => stop());
}

function headOf({ previous, next, lines }, line, { shift, asOf, zone }) {
  const to = (query, words, current = null) => el('a', { href: `/handover.html?${new URLSearchParams(query)}`, 'aria-current': current ? 'page' : null }, words);
  const step = (other, words) => to({ line, shift: other.shift }, words);
  const hours = shift.hours === Math.round(shift.hours) ? `${shift.hours} h` : `${shift.hours.toFixed(1)} h`;
  return [
    el('div', {}, el('h1', {}, `Handover, ${line || 'all lines'}`),
      el('p', { class: 'handover-shift' }, el('strong', {}, shift.name), ` of ${day(Date.parse(`${shift.day}T12:00:00Z`))}, ${timeOfDay(Date.parse(shift.from))} to ${timeOfDay(Date.parse(shift.to))}, ${hours}${shift.crew ? `, crew ${shift.crew}` : ''}`),
      el('p', { class: 'soft' }, `Put together ${datedOf(asOf)}; times of ${zone}. `, el('a', { href: '/shifts.html' }, 'When shifts begin'))),
    el('nav', { class: 'ranges', 'aria-label': 'Which shift' }, step(previous, `\u2190 ${previous.name}`), step(next, `${next.name} \u2192`),
      el('button', { type: 'button', class: 'quiet', data: { action: 'print' }, on: { click: () => print() } }, 'Print')),
    el('nav', { class: 'ranges', 'aria-label': 'Which line' }, to({ shift: shift.shift }, 'All lines', line === ''), lines.map((name) => to({ line: name, shift: shift.shift }, name, name === line))),
  ];
}
