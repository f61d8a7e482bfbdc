/** The tests with two boxes each, for one characteristic or for all at once, and what each does to the price of the line. */
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { extent, signalOf, testWord, TESTS, taken, turned, USUAL } from './testsState.js';
import { aShift, seenAfter } from './testsPrice.js';
import { rule } from './words.js';
import { room } from './text.js';

const t = await room('tests');

const USES = ['shown', 'alarming'];

/** `changed(state)` is called with each new choice. */
export function testsList(changed) {
  const whom = el('div', { on: { change: () => draw() } });
  const usual = el('div', { class: 'usual' },
    el('button', { type: 'button', class: 'quiet', data: { usual: 'average' }, on: { click: () => take('average') } }, t('usual.average')),
    el('button', { type: 'button', class: 'quiet', data: { usual: 'standard' }, on: { click: () => take('standard') } }, t('usual.standard')));
  const list = el('ul', { class: 'plain tests' });
  const rows = new Map(TESTS.map((test) => [test, row(test)]));
  list.append(...[...rows.values()].map(({ node }) => node));
  const node = el('div', { class: 'tests-choice' }, whom, el('p', { class: 'soft' }, t('letThese')), usual, list);
  let state = [];
  let changes = [];

  function row(test) {
    const signal = signalOf(test);
    const word = testWord(signal);
    const boxes = USES.map((use) => {
      const box = el('input', { type: 'checkbox', data: { use, test }, on: { change: () => changed(turned(state, positions(), use, test, box.checked)) } });
      return { use, box, label: el('label', { class: 'tick' }, box, el('span', {}, t(`use.${use}`), el('span', { class: 'for-readers' }, t('useOf', { test: word })))) };
    });
    const effect = el('p', { class: 'effect' });
    return { boxes, effect, node: el('li', { data: { test } },
      el('div', {}, el('strong', {}, word), el('p', { class: 'soft' }, rule(signal)), effect),
      el('div', { class: 'ticks' }, boxes.map(({ label }) => label))) };
  }

  function positions() {
    const chosen = whom.querySelector('input:checked')?.value ?? 'all';
    return chosen === 'all' ? null : [Number(chosen)];
  }

  function take(name) {
    changed(taken(state, positions(), USUAL[name]));
  }

  function show(next) {
    state = next;
    if (!whom.hasChildNodes()) {
      whom.append(chips('whom', t('testsOf'), [['all', t('allLayers')], ...state.map(({ position, name }) => [String(position), name])]));
      whom.querySelector('input').checked = true;
    }
    draw();
  }

  function draw() {
    for (const [test, { boxes }] of rows) {
      for (const { use, box } of boxes) {
        const much = extent(state, positions(), use, test);
        box.checked = much === 'all';
        box.indeterminate = much === 'some';
      }
    }
  }

  function price(asked) {
    changes = asked.changes;
    for (const { chart, test, turn, exact, price: then } of changes) {
      const how = `${turn === 'dropped' ? 'dropped' : 'added'}${exact ? '' : 'AtMost'}`;
      setText(rows.get(`${chart}/${test}`).effect, t(`effect.${how}`, { price: aShift(then), seen: seenAfter(then) }));
    }
  }
  return { node, show, price };
}
