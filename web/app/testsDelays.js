/** How many samples in a row a test must speak before it opens an alarm, and be silent before that is over. */
import { el } from './elements.js';
import { allow } from './person.js';
import { nameOf, signalOf, TESTS } from './testsState.js';
import { shortTest } from './words.js';

const MOST = 8;

/** `changed()` is called with each new choice; `chosen()` gives those that differ from what is in force. */
export function testsDelays(changed) {
  const rows = el('tbody', {});
  const node = el('details', { class: 'delays' },
    el('summary', {}, 'How soon an alarm opens, and when it is over'),
    el('p', { class: 'soft' }, 'An alarm opens when so many samples in a row say the same of a layer, the last by this test; a mean beyond four sigma, or out of specification as well, opens one at once. It is back to normal when no test has spoken for so many samples. For all layers of this film.'),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Delays of tests' }, el('table', {},
      el('thead', {}, el('tr', {}, ['Test', 'Opens after', 'Over after'].map((word) => el('th', { scope: 'col' }, word)))), rows)));
  let inForce = [];
  const selects = new Map();

  function show(delays) {
    inForce = delays;
    selects.clear();
    rows.replaceChildren(...TESTS.map((test) => row(test, delays.find((delay) => nameOf(delay) === test))));
  }

  function row(test, delay) {
    const opens = number(`${test} opens after`, delay.opensAfter);
    const returns = number(`${test} over after`, delay.returnsAfter);
    selects.set(test, { opens, returns });
    const signal = signalOf(test);
    return el('tr', { data: { delay: test } },
      el('th', { scope: 'row' }, `${signal.chart === 'range' ? 'Range ' : ''}${shortTest(signal)}`), el('td', {}, opens), el('td', {}, returns));
  }

  function number(label, value) {
    const options = Array.from({ length: MOST }, (_, i) => el('option', { value: i + 1, selected: i + 1 === value }, i === 0 ? '1 sample' : `${i + 1} samples`));
    return allow(el('select', { 'aria-label': label, on: { change: changed } }, options), 'decide');
  }

  function chosen() {
    return inForce
      .map((delay) => ({ ...delay, opensAfter: Number(selects.get(nameOf(delay)).opens.value), returnsAfter: Number(selects.get(nameOf(delay)).returns.value) }))
      .filter((delay, i) => delay.opensAfter !== inForce[i].opensAfter || delay.returnsAfter !== inForce[i].returnsAfter);
  }
  return { node, show, chosen };
}
