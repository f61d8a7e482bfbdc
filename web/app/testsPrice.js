/** The price of a choice of tests: false alarms a shift, how long a shift of the mean goes unseen, and what that counts. */
import { el } from './elements.js';
import { age, number, plural } from './format.js';
import { momentOf } from './plantClock.js';

const SHOWN = 6;

/** 0.52 false alarms a shift, one in 12 samples; in the words of a line. */
export function aShift({ falseAlarmsPerShift, samplesToFalseAlarm }) {
  if (samplesToFalseAlarm === null) {
    return 'no false alarms';
  }
  return falseAlarmsPerShift === null ? `a false alarm every ${samples(samplesToFalseAlarm)}` : `${figure(falseAlarmsPerShift)} false alarms a shift`;
}

export function seenAfter({ samplesToSeeOneSigma, secondsToSeeOneSigma }) {
  if (samplesToSeeOneSigma === null) {
    return 'a shift is never seen';
  }
  return `one sigma seen after ${samples(samplesToSeeOneSigma)}${secondsToSeeOneSigma === null ? '' : ` (${age(secondsToSeeOneSigma)})`}`;
}

/** `now` is the price of the choice in force, `asked` that of the choice being made. */
export function testsPrice(now, asked, isSame) {
  return el('div', { class: 'price', data: { falseAlarms: asked.price.falseAlarmsPerShift } },
    el('p', { class: 'price-figure' }, asked.exact ? '' : el('span', { class: 'at-most' }, 'at most '), el('b', {}, headline(asked.price)), ` ${unit(asked.price)}`),
    el('p', {}, asked.price.samplesToFalseAlarm === null ? 'No test raises alarms: nothing is ever seen.' : `One in ${samples(asked.price.samplesToFalseAlarm)}, while nothing has changed.`),
    el('p', {}, asked.exact ? '' : 'At the latest: ', `A shift of the mean by one sigma is seen on the slowest chart after ${later(asked.price)}.`),
    isSame ? null : el('p', { class: 'price-now' }, `In force now: ${aShift(now.price)}, ${seenAfter(now.price)}.`),
    table(asked),
    past(now, asked, isSame),
    el('details', {}, el('summary', {}, 'What is counted'), counted(asked)));
}

/** The same in one line, to be seen beside the boxes. */
export function priceInShort(now, asked, isSame) {
  const words = `${asked.exact ? '' : 'At most '}${aShift(asked.price)}, ${seenAfter(asked.price)}`;
  return isSame ? `In force: ${words}.` : `${words}. In force: ${aShift(now.price)}.`;
}

function headline({ falseAlarmsPerShift }) {
  return falseAlarmsPerShift === null ? '\u2013' : figure(falseAlarmsPerShift);
}

function unit({ falseAlarmsPerShift, samplesToFalseAlarm }) {
  return falseAlarmsPerShift === null && samplesToFalseAlarm !== null ? 'false alarms a shift: too few samples to know the pace' : 'false alarms a shift of 8 hours';
}

function later({ samplesToSeeOneSigma, secondsToSeeOneSigma }) {
  return samplesToSeeOneSigma === null ? 'no number of samples: some layer has no test of its mean' : `${samples(samplesToSeeOneSigma)}${secondsToSeeOneSigma === null ? '' : `, about ${age(secondsToSeeOneSigma)}`}`;
}

function table({ characteristics }) {
  const heads = ['Layer', 'False alarms a shift', 'One sigma seen after'];
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Price by layer' }, el('table', {},
    el('thead', {}, el('tr', {}, heads.map((word, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, word)))),
    el('tbody', {}, characteristics.map(({ characteristic: { name, position }, price }) => el('tr', {},
      el('th', { scope: 'row' }, name || `layer ${position}`),
      el('td', { class: 'figure' }, price.falseAlarmsPerShift === null ? '\u2013' : figure(price.falseAlarmsPerShift)),
      el('td', { class: 'figure' }, price.samplesToSeeOneSigma === null ? 'never' : samples(price.samplesToSeeOneSigma)))))));
}

function past(now, asked, isSame) {
  const count = plural(asked.alarms.length, 'alarm').replace(/^0/, 'no');
  const beside = isSame ? '' : `; the choice in force ${plural(now.alarms.length, 'alarm').replace(/^0/, 'none')}`;
  return el('details', { class: 'tests-past', data: { count: asked.alarms.length } },
    el('summary', {}, `On all samples stored it would have raised ${count}${beside}`),
    el('ul', { class: 'plain' }, [...asked.alarms].reverse().slice(0, SHOWN).map(({ title, openedAt, sample }) =>
      el('li', {}, title, el('span', { class: 'soft' }, ` ${momentOf(openedAt)}, sample ${sample}`)))));
}

function counted({ characteristics, size, intervalSeconds, withShares, family, exact }) {
  const pace = intervalSeconds === null ? '' : ` A sample comes every ${age(intervalSeconds)}.`;
  return [
    el('p', {}, `The first signal of any test that raises alarms, on the ${plural(2 * characteristics.length, 'chart')} of mean and range of ${plural(characteristics.length, 'characteristic')} with ${plural(size, 'reading')} a sample.${pace} An alarm on the screen waits for a second signal in a row unless the mean is more than four sigma off or out of specification, so there are fewer of those, and they come a sample later.`),
    el('p', {}, 'Samples are taken to be independent and the limits to be right. Layers that move together make it a little less; neighbouring samples that are alike, and limits from few samples, can make it many times more.'),
    el('p', {}, `With the share of each layer charted too it would be ${aShift(withShares)}. So that all ${family.charts} mean charts together have the false alarms of one, their limits would lie at ${number(family.reachOfMeans, 2)} sigma instead of 3, and those of moving averages at ${number(family.reachOfAverages, 2)} instead of 2.86.`),
    exact ? null : el('p', {}, 'A moving average together with tests of runs has no exact figure: these are bounds, for charts taken as independent of each other.'),
  ];
}

function samples(n) {
  return n < 10 ? `${number(n, 1)} samples` : plural(Math.round(n), 'sample');
}

function figure(value) {
  return number(value, value < 0.995 ? 2 : value < 99.5 ? 1 : 0);
}
