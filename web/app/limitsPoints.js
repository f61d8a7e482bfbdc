/**
 * The samples of a baseline that signal under its own limits, each with its tests, and the way to leave one
 * out: only with a cause. What is left out stays listed and can be taken back in.
 */
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { bySeverity, direction, explain, shortTest } from './words.js';

const LONGEST = 300;
const SHOWN = 8;

/** `leave(sample)` gets {roll, sample, takenAt, cause}; `takeBack(sample)` one that was left out. */
export function pointsToLookAt(leave, takeBack) {
  const node = el('div', { class: 'points' });
  let openFor = null;

  function show(proposal, excluded) {
    const kept = node.querySelector('.leave-out input')?.value ?? '';
    const points = bySample(proposal);
    const [first, more] = [points.slice(0, SHOWN), points.slice(SHOWN)];
    const wasOpen = node.querySelector('details')?.open ?? false;
    node.replaceChildren(
      el('p', { class: 'soft' }, advice(points)),
      el('ul', { class: 'plain' }, first.map(pointOf)),
      more.length > 0 ? el('details', { open: wasOpen }, el('summary', {}, `${plural(more.length, 'more sample')} to look at`), el('ul', { class: 'plain' }, more.map(pointOf))) : '',
      excluded.length > 0 ? leftOut(excluded) : '');
    if (kept) {
      (node.querySelector('.leave-out input') ?? {}).value = kept;
    }
  }

  function pointOf(point) {
    const place = el('div', { class: 'leave-place' });
    const id = idOf(point);
    const button = el('button', { type: 'button', class: 'quiet', data: { exclude: id }, on: { click: () => (ask(), place.querySelector('input').focus()) } },
      'Leave it out', el('span', { class: 'for-readers' }, ` of the baseline: sample ${point.sample}`));
    const rest = () => {
      openFor = null;
      place.replaceChildren(button);
    };
    const ask = () => {
      openFor = id;
      place.replaceChildren(causeForm(point, leave, () => (rest(), button.focus())));
    };
    if (openFor === id) {
      ask();
    } else {
      place.replaceChildren(button);
    }
    return el('li', { class: 'point', data: { point: id } },
      shape('unusual'),
      el('div', {},
        el('p', {}, el('strong', {}, `Sample ${point.sample}`), `, roll ${point.roll}, ${momentOf(point.takenAt)}`),
        el('ul', { class: 'plain point-tests' }, point.tests.map(({ name, signal }) =>
          el('li', { title: explain(signal) }, `${name}: ${direction(signal)}, ${shortTest(signal)}`)))),
      place);
  }

  function leftOut(excluded) {
    return el('div', { class: 'left-out' },
      el('h3', {}, `Left out: ${plural(excluded.length, 'sample')}`),
      el('ul', { class: 'plain' }, excluded.map((sample) =>
        el('li', { class: 'point', data: { left: idOf(sample) } },
          shape('missing'),
          el('p', {}, el('strong', {}, `Sample ${sample.sample}`), `, roll ${sample.roll}: `, el('q', {}, sample.cause)),
          el('div', { class: 'leave-place' }, el('button', { type: 'button', class: 'quiet', data: { include: idOf(sample) }, on: { click: () => takeBack(sample) } },
            'Take it back in', el('span', { class: 'for-readers' }, `: sample ${sample.sample}`)))))));
  }

  function close() {
    openFor = null;
  }
  return { node, show, close };
}

function causeForm(point, leave, cancel) {
  const cause = el('input', { id: 'leave-cause', maxlength: LONGEST, autocomplete: 'off', required: true });
  const wanting = el('p', { class: 'said', role: 'alert' });
  const submit = (event) => {
    event.preventDefault();
    if (cause.value.trim() === '') {
      setText(wanting, 'Without a cause it stays in.');
      return cause.focus();
    }
    leave({ roll: point.roll, sample: point.sample, takenAt: point.takenAt, cause: cause.value.trim() });
  };
  return el('form', { class: 'leave-out', novalidate: true, on: { submit, keydown: (event) => event.key === 'Escape' && cancel() } },
    el('label', { for: 'leave-cause' }, `What happened at sample ${point.sample}?`),
    cause,
    el('div', { class: 'leave-buttons' },
      el('button', { type: 'submit', data: { action: 'leave-out' } }, 'Leave it out'),
      el('button', { type: 'button', class: 'quiet', on: { click: cancel } }, 'Keep it')),
    wanting);
}

function advice(points) {
  return points.length === 0
    ? 'No sample of this baseline is unusual under its own limits.'
    : `${points.length === 1 ? 'One sample is' : `${points.length} samples are`} unusual under the proposed limits themselves. Leave one out only where you know what happened to it; what is merely odd belongs to the process.`;
}

function bySample({ characteristics }) {
  const samples = new Map();
  for (const { characteristic, pointsToLookAt: points } of characteristics) {
    for (const { roll, sample, takenAt, signals } of points) {
      const point = samples.get(idOf({ roll, sample })) ?? { roll, sample, takenAt, tests: [] };
      const [worst] = [...signals].sort(bySeverity);
      point.tests.push({ name: characteristic.name || `layer ${characteristic.position}`, signal: worst });
      samples.set(idOf(point), point);
    }
  }
  return [...samples.values()].sort((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt));
}

function idOf({ roll, sample }) {
  return `${roll} ${sample}`;
}
