/**
 * The samples of a baseline that signal under its own limits, each with its tests, and the way to leave one
 * out: only with a cause. What is left out stays listed and can be taken back in.
 */
import { el, setText } from './elements.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { bySeverity, direction, explain, layerName, shortTest } from './words.js';
import { room } from './text.js';

const t = await room('limits');

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
      more.length > 0 ? el('details', { open: wasOpen }, el('summary', {}, t('moreToLookAt', { n: more.length })), el('ul', { class: 'plain' }, more.map(pointOf))) : '',
      excluded.length > 0 ? leftOut(excluded) : '');
    if (kept) {
      (node.querySelector('.leave-out input') ?? {}).value = kept;
    }
  }

  function pointOf(point) {
    const place = el('div', { class: 'leave-place' });
    const id = idOf(point);
    const button = el('button', { type: 'button', class: 'quiet', data: { exclude: id }, on: { click: () => (ask(), place.querySelector('input').focus()) } },
      t('leaveOut'), el('span', { class: 'for-readers' }, t('ofBaseline', { sample: point.sample })));
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
        el('p', {}, t.nodes('pointWhere', { sample: sampleIs(point), roll: point.roll, at: momentOf(point.takenAt) })),
        el('ul', { class: 'plain point-tests' }, point.tests.map(({ name, signal }) =>
          el('li', { title: explain(signal) }, t('pointTest', { name, direction: direction(signal), test: shortTest(signal) }))))),
      place);
  }

  function leftOut(excluded) {
    return el('div', { class: 'left-out' },
      el('h3', {}, t('areLeftOut', { n: excluded.length })),
      el('ul', { class: 'plain' }, excluded.map((sample) =>
        el('li', { class: 'point', data: { left: idOf(sample) } },
          shape('missing'),
          el('p', {}, t.nodes('leftCause', { sample: sampleIs(sample), roll: sample.roll, cause: el('q', {}, sample.cause) })),
          el('div', { class: 'leave-place' }, el('button', { type: 'button', class: 'quiet', data: { include: idOf(sample) }, on: { click: () => takeBack(sample) } },
            t('takeBackIn'), el('span', { class: 'for-readers' }, t('thatSample', { sample: sample.sample }))))))));
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
      setText(wanting, t('withoutCause'));
      return cause.focus();
    }
    leave({ roll: point.roll, sample: point.sample, takenAt: point.takenAt, cause: cause.value.trim() });
  };
  return el('form', { class: 'leave-out', novalidate: true, on: { submit, keydown: (event) => event.key === 'Escape' && cancel() } },
    el('label', { for: 'leave-cause' }, t('whatHappened', { sample: point.sample })),
    cause,
    el('div', { class: 'leave-buttons' },
      el('button', { type: 'submit', data: { action: 'leave-out' } }, t('leaveOut')),
      el('button', { type: 'button', class: 'quiet', on: { click: cancel } }, t('keepIt'))),
    wanting);
}

function sampleIs({ sample }) {
  return el('strong', {}, t('sampleIs', { sample }));
}

function advice(points) {
  return points.length === 0 ? t('noneUnusual') : t('someUnusual', { n: points.length });
}

function bySample({ characteristics }) {
  const samples = new Map();
  for (const { characteristic, pointsToLookAt: points } of characteristics) {
    for (const { roll, sample, takenAt, signals } of points) {
      const point = samples.get(idOf({ roll, sample })) ?? { roll, sample, takenAt, tests: [] };
      const [worst] = [...signals].sort(bySeverity);
      point.tests.push({ name: layerName(characteristic), signal: worst });
      samples.set(idOf(point), point);
    }
  }
  return [...samples.values()].sort((a, b) => Date.parse(a.takenAt) - Date.parse(b.takenAt));
}

function idOf({ roll, sample }) {
  return `${roll} ${sample}`;
}
