/** What one shift tells the next: for the shift that ends, for all lines or one; signed by both leads; made to be printed. */
import { getJson, postJson } from './api.js';
import { askSheet } from './askSheet.js';
import { el, setText } from './elements.js';
import { handoverNotes } from './handoverNotes.js';
import { changesOf, handoverSections } from './handoverSections.js';
import { handoverSign } from './handoverSign.js';
import * as live from './live.js';
import { number } from './format.js';
import { datedOf, day, synchronise, timeOfDay } from './plantClock.js';
import { throttled } from './refresh.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('handover');
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
      trouble.show(error, t('notFresh'));
    }
    document.documentElement.dataset.ready = 'true';
  }

  function draw() {
    const isSigned = page.signed !== null && !anew;
    const shown = isSigned ? page.signed.handover : page.handover;
    document.title = t('docTitle', { shift: shown.shift.shift });
    head.replaceChildren(...headOf(page, line, shown));
    standing.replaceChildren(...standingOf(isSigned));
    parts.replaceChildren(...handoverSections(shown, isSigned ? null : settle));
    signing.replaceChildren(handoverSign(page, { sign, mayHandOver: !isSigned }));
    notes.lines(page.lines, line);
  }

  function standingOf(isSigned) {
    if (page.signed === null) {
      return [el('p', { class: 'soft' }, t('nobodySigned'))];
    }
    const taken = page.signed.signatures.some(({ side }) => side === 'incoming');
    const words = isSigned ? t('isSigned') : t('isNow');
    const other = isSigned ? t('lookNow') : t('backToSigned');
    return [el('p', {}, el('strong', {}, words)), isSigned ? changesOf(page.signed.changes) : null,
      taken ? null : el('button', { type: 'button', class: 'quiet', on: { click: () => ((anew = !anew), draw()) } }, other)].filter(Boolean);
  }

  async function sign(side, meaning) {
    const { digest } = side === 'incoming' ? page.signed : page;
    const by = await askSheet(side === 'incoming' ? t('whoTakes') : t('whoHands'), meaning, t('sign'));
    if (by === null) {
      return;
    }
    try {
      await postJson('/api/v1/handover/sign', { line, shift: page.handover.shift.shift, side, digest });
      anew = false;
      say(side === 'incoming' ? t('hasTaken', { by }) : t('hasHanded', { by }));
    } catch (error) {
      say(t('notSigned', { error: error.sentence ?? error.message }));
    }
    refresh();
  }

  async function settle(item) {
    const outcome = el('textarea', { rows: 2, id: 'outcome', maxlength: 1000 });
    const by = await askSheet(t('howOut'), item.title, t('settled'), {
      fields: [el('label', { for: 'outcome' }, t('whatDone')), outcome],
      wanting: () => (outcome.value.trim() ? '' : t('writeDone')),
    });
    if (by === null) {
      return;
    }
    try {
      await postJson(`/api/v1/handover/notes/${item.key.split(' ')[1]}/settle`, { outcome: outcome.value.trim() });
    } catch (error) {
      say(t('notSettled', { error: error.sentence ?? error.message }));
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
  const hours = number(shift.hours, shift.hours === Math.round(shift.hours) ? 0 : 1);
  const when = { name: el('strong', {}, shift.name), day: day(Date.parse(`${shift.day}T12:00:00Z`)), from: timeOfDay(Date.parse(shift.from)), to: timeOfDay(Date.parse(shift.to)), hours, crew: shift.crew };
  return [
    el('div', {}, el('h1', {}, t('title', { line: line || t('allLinesSmall') })),
      el('p', { class: 'handover-shift' }, shift.crew ? t.nodes('shiftOfCrew', when) : t.nodes('shiftOf', when)),
      el('p', { class: 'soft' }, t.nodes('together', { at: datedOf(asOf), zone, link: el('a', { href: '/shifts.html' }, t('whenShifts')) }))),
    el('nav', { class: 'ranges', 'aria-label': t('whichShift') }, step(previous, `\u2190 ${previous.name}`), step(next, `${next.name} \u2192`),
      el('button', { type: 'button', class: 'quiet', data: { action: 'print' }, on: { click: () => print() } }, t('print'))),
    el('nav', { class: 'ranges', 'aria-label': t('whichLine') }, to({ shift: shift.shift }, t('allLines'), line === ''), lines.map((name) => to({ line: name, shift: shift.shift }, name, name === line))),
  ];
}
