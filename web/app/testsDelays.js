/** How many samples in a row a test must speak before it opens an alarm, and be silent before that is over. */
import { el } from './elements.js';
import { allow } from './person.js';
import { nameOf, signalOf, testWord, TESTS } from './testsState.js';
import { room } from './text.js';

const t = await room('tests');

const MOST = 8;

/** `changed()` is called with each new choice; `chosen()` gives those that differ from what is in force. */
export function testsDelays(changed) {
  const rows = el('tbody', {});
  const node = el('details', { class: 'delays' },
    el('summary', {}, t('delays')),
    el('p', { class: 'soft' }, t('delaysMean')),
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('delaysTable') }, el('table', {},
      el('thead', {}, el('tr', {}, ['test', 'opens', 'over'].map((head) => el('th', { scope: 'col' }, t(`head.${head}`))))), rows)));
  let inForce = [];
  const selects = new Map();

  function show(delays) {
    inForce = delays;
    selects.clear();
    rows.replaceChildren(...TESTS.map((test) => row(test, delays.find((delay) => nameOf(delay) === test))));
  }

  function row(test, delay) {
    const word = testWord(signalOf(test));
    const opens = number(t('opensAfter', { test: word }), delay.opensAfter);
    const returns = number(t('overAfter', { test: word }), delay.returnsAfter);
    selects.set(test, { opens, returns });
    return el('tr', { data: { delay: test } },
      el('th', { scope: 'row' }, word), el('td', {}, opens), el('td', {}, returns));
  }

  function number(label, value) {
    const options = Array.from({ length: MOST }, (_, i) => el('option', { value: i + 1, selected: i + 1 === value }, t('samplesOf', { n: i + 1 })));
    return allow(el('select', { 'aria-label': label, on: { change: changed } }, options), 'decide');
  }

  function chosen() {
    return inForce
      .map((delay) => ({ ...delay, opensAfter: Number(selects.get(nameOf(delay)).opens.value), returnsAfter: Number(selects.get(nameOf(delay)).returns.value) }))
      .filter((delay, i) => delay.opensAfter !== inForce[i].opensAfter || delay.returnsAfter !== inForce[i].returnsAfter);
  }
  return { node, show, chosen };
}
