/**
 * Which samples a new baseline takes: the first, the last, or those between two times. The last ones are
 * pinned to their times when they are chosen, and a span ends with the newest sample known, so that what is
 * put in force is what was looked at, although new samples keep coming.
 */
import { chips } from './chips.js';
import { el } from './elements.js';
import { atWallTime, moment, wallTime } from './plantClock.js';
import { room } from './text.js';

const t = await room('limits');

const USUAL = 25;
const MINUTE_MS = 60_000;
const WHERE = ['first', 'last', 'between'].map((where) => [where, t(`where.${where}`)]);

/** `changed()` is called at each change; `stored()` gives {takenAt} of all samples, in ms. */
export function baselineChoice(stored, changed) {
  const samples = el('input', { id: 'baseline-samples', type: 'number', min: 1, step: 1, value: USUAL, inputmode: 'numeric' });
  const from = el('input', { id: 'baseline-from', type: 'datetime-local' });
  const to = el('input', { id: 'baseline-to', type: 'datetime-local' });
  const many = el('div', {}, el('label', { for: 'baseline-samples' }, t('howMany')), samples);
  const times = [
    el('div', {}, el('label', { for: 'baseline-from' }, t('from')), from),
    el('div', {}, el('label', { for: 'baseline-to' }, t('to')), to),
  ];
  const said = el('p', { class: 'soft', role: 'status' });
  const node = el('form', { class: 'baseline', novalidate: true, on: { input: take, submit: (event) => event.preventDefault() } },
    el('div', { class: 'baseline-fields' }, chips('baseline', t('computeFrom'), WHERE), many, times), said);

  const where = () => node.elements.baseline.value;

  function take(event) {
    if (event.target.name === 'baseline' && where() === 'between') {
      fillTimes();
    }
    show();
    changed();
  }

  function fillTimes() {
    const { takenAt } = stored();
    if (from.value === '' && takenAt.length > 0) {
      from.value = wallTime(takenAt.at(-Math.min(USUAL, takenAt.length)));
      to.value = wallTime(takenAt.at(-1) + MINUTE_MS);
    }
  }

  function show() {
    many.hidden = where() === 'between';
    times.forEach((field) => (field.hidden = where() !== 'between'));
    const span = spanNow();
    said.textContent = !span ? t('giveBeginning') : span.count > 0 ? t('spanIs', { n: span.count, from: moment(span.fromMs), to: moment(span.toMs) }) : t('noneThere');
  }

  /** {fromMs, toMs, count} of what is chosen, or null. */
  function spanNow() {
    const { takenAt } = stored();
    if (where() === 'between') {
      const [fromMs, toMs] = [atWallTime(from.value), Math.min(atWallTime(to.value), takenAt.at(-1) ?? 0)];
      return fromMs < toMs ? { fromMs, toMs, count: takenAt.filter((ms) => ms >= fromMs && ms <= toMs).length } : null;
    }
    const n = Number(samples.value);
    if (!Number.isInteger(n) || n < 1) {
      return null;
    }
    const taken = where() === 'first' ? takenAt.slice(0, n) : takenAt.slice(-n);
    return { fromMs: taken.at(0) ?? 0, toMs: taken.at(-1) ?? 0, count: taken.length };
  }

  /** What the server is asked, or null where nothing sensible is chosen. */
  function body() {
    const span = spanNow();
    if (!span || span.count === 0) {
      return null;
    }
    return where() === 'first'
      ? { baseline: 'first', subgroups: Number(samples.value) }
      : { baseline: 'between', from: iso(span.fromMs), to: iso(span.toMs + 1) };
  }

  /** Whether samples that come now belong to what is chosen. */
  function isOpenEnded() {
    return where() === 'last' || (where() === 'between' && atWallTime(to.value) > (stored().takenAt.at(-1) ?? 0));
  }

  function choose(name) {
    node.querySelector(`input[value="${name}"]`).checked = true;
    show();
  }
  return { node, body, choose, show, span: spanNow, isOpenEnded };
}

/** A millisecond is added at the end, because stored times are finer. */
function iso(ms) {
  return new Date(ms).toISOString();
}
