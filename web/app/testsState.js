/**
 * The choice of tests that a person is making: for each characteristic which tests are shown and which
 * raise alarms. Pure. A test is named "chart/test".
 */
import { room } from './text.js';
import { layerName, shortTest } from './words.js';

const t = await room('tests');

export const TESTS = [
  'xbar/beyond-limit', 'ewma/beyond-limit', 'xbar/two-of-three', 'xbar/four-of-five', 'xbar/eight-in-a-row',
  'xbar/trend', 'xbar/stratification', 'xbar/mixture', 'xbar/alternation', 'range/beyond-limit',
];

/** Usual choices to begin from. */
export const USUAL = {
  standard: ['xbar/beyond-limit', 'xbar/two-of-three', 'xbar/four-of-five', 'xbar/eight-in-a-row', 'range/beyond-limit'],
  average: ['xbar/beyond-limit', 'ewma/beyond-limit', 'range/beyond-limit'],
};

export function nameOf({ chart, test }) {
  return `${chart}/${test}`;
}

export function signalOf(name) {
  const [chart, test] = name.split('/');
  return { chart, test, side: 'high' };
}

/** What a test is called beside those of the other chart. */
export function testWord(signal) {
  return signal.chart === 'range' ? t('rangeTest', { test: shortTest(signal) }) : shortTest(signal);
}

/** Of the answer of the server: [{position, name, kind, shown: Set, alarming: Set}]. */
export function stateOf({ characteristics }) {
  return characteristics.map(({ characteristic: { position, name, kind }, shown, alarming }) => (
    { position, name: layerName({ name, position }), kind, shown: new Set(shown.map(nameOf)), alarming: new Set(alarming.map(nameOf)) }));
}

/** 'all', 'some' or 'none' of those at `positions` (null: every one) have the test in `use`. */
export function extent(state, positions, use, test) {
  const asked = state.filter(({ position }) => positions === null || positions.includes(position));
  const having = asked.filter((one) => one[use].has(test)).length;
  return having === 0 ? 'none' : having === asked.length ? 'all' : 'some';
}

/** A test that raises alarms is shown; one that is not shown raises none. */
export function turned(state, positions, use, test, isOn) {
  return state.map((one) => {
    if (positions !== null && !positions.includes(one.position)) {
      return one;
    }
    const [shown, alarming] = [new Set(one.shown), new Set(one.alarming)];
    const change = (set) => (isOn ? set.add(test) : set.delete(test));
    change(use === 'shown' ? shown : alarming);
    if (use === 'alarming' && isOn) {
      shown.add(test);
    }
    if (use === 'shown' && !isOn) {
      alarming.delete(test);
    }
    return { ...one, shown, alarming };
  });
}

/** Those of a usual choice raise alarms and nothing else does; what is shown stays shown. */
export function taken(state, positions, tests) {
  return state.map((one) => (positions === null || positions.includes(one.position)
    ? { ...one, shown: new Set([...one.shown, ...tests]), alarming: new Set(tests) }
    : one));
}

export function isSame(a, b) {
  const words = (state) => JSON.stringify(state.map(({ position, shown, alarming }) => [position, [...shown].sort(), [...alarming].sort()]));
  return words(a) === words(b);
}

/** As the server is asked. */
export function bodyOf(state) {
  const tests = (set) => TESTS.filter((name) => set.has(name)).map((name) => ({ chart: signalOf(name).chart, test: signalOf(name).test }));
  return { characteristics: state.map(({ position, shown, alarming }) => ({ position, shown: tests(shown), alarming: tests(alarming) })) };
}
