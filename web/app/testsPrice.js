/** The price of a choice of tests: false alarms a shift, how long a shift of the mean goes unseen, and what that counts. */
import { el } from './elements.js';
import { age, count, number } from './format.js';
import { momentOf } from './plantClock.js';
import { layerName } from './words.js';
import { room } from './text.js';

const t = await room('tests');

const SHOWN = 6;

/** 0.52 false alarms a shift, one in 12 samples; in the words of a line. */
export function aShift({ falseAlarmsPerShift, samplesToFalseAlarm }) {
  if (samplesToFalseAlarm === null) {
    return t('noFalse');
  }
  return falseAlarmsPerShift === null ? t('falseEvery', { samples: samples(samplesToFalseAlarm) }) : t('falseAShift', { figure: figure(falseAlarmsPerShift) });
}

export function seenAfter({ samplesToSeeOneSigma: n, secondsToSeeOneSigma: seconds }) {
  if (n === null) {
    return t('neverSeen');
  }
  return seconds === null ? t('seenAfter', { samples: samples(n) }) : t('seenAfterTime', { samples: samples(n), age: age(seconds) });
}

/** `now` is the price of the choice in force, `asked` that of the choice being made. */
export function testsPrice(now, asked, isSame) {
  const { price, exact } = asked;
  return el('div', { class: 'price', data: { falseAlarms: price.falseAlarmsPerShift } },
    el('p', { class: 'price-figure' }, t.nodes(exact ? 'figureIs' : 'figureAtMost', { figure: el('b', {}, headline(price)), unitWords: unitWords(price) })),
    el('p', {}, price.samplesToFalseAlarm === null ? t('noneAlarming') : t('oneIn', { samples: samples(price.samplesToFalseAlarm) })),
    el('p', {}, exact ? slowest(price) : t('atLatest', { seen: slowest(price) })),
    isSame ? null : el('p', { class: 'price-now' }, t('inForceNow', { price: aShift(now.price), seen: seenAfter(now.price) })),
    table(asked),
    past(now, asked, isSame),
    el('details', {}, el('summary', {}, t('whatCounted')), counted(asked)));
}

/** The same in one line, to be seen beside the boxes. */
export function priceInShort(now, asked, isSame) {
  const words = t(asked.exact ? 'shortIs' : 'shortAtMost', { price: aShift(asked.price), seen: seenAfter(asked.price) });
  return isSame ? t('shortInForce', { words }) : t('shortAgainst', { words, now: aShift(now.price) });
}

function headline({ falseAlarmsPerShift }) {
  return falseAlarmsPerShift === null ? '\u2013' : figure(falseAlarmsPerShift);
}

function unitWords({ falseAlarmsPerShift, samplesToFalseAlarm }) {
  return t(falseAlarmsPerShift === null && samplesToFalseAlarm !== null ? 'unitNoPace' : 'unitPace');
}

function slowest({ samplesToSeeOneSigma: n, secondsToSeeOneSigma: seconds }) {
  if (n === null) {
    return t('slowestNever');
  }
  return seconds === null ? t('slowest', { samples: samples(n) }) : t('slowestTime', { samples: samples(n), age: age(seconds) });
}

function table({ characteristics }) {
  const heads = ['layer', 'false', 'seen'];
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('priceByLayer') }, el('table', {},
    el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, t(`head.${head}`))))),
    el('tbody', {}, characteristics.map(({ characteristic: { name, position }, price }) => el('tr', {},
      el('th', { scope: 'row' }, layerName({ name, position })),
      el('td', { class: 'figure' }, price.falseAlarmsPerShift === null ? '\u2013' : figure(price.falseAlarmsPerShift)),
      el('td', { class: 'figure' }, price.samplesToSeeOneSigma === null ? t('never') : samples(price.samplesToSeeOneSigma)))))));
}

function past(now, asked, isSame) {
  const alarms = (n, none) => (n === 0 ? t(none) : t('alarms', { n }));
  const total = alarms(asked.alarms.length, 'noAlarms');
  return el('details', { class: 'tests-past', data: { count: asked.alarms.length } },
    el('summary', {}, isSame ? t('wouldHave', { count: total }) : t('wouldHaveBeside', { count: total, beside: alarms(now.alarms.length, 'none') })),
    el('ul', { class: 'plain' }, [...asked.alarms].reverse().slice(0, SHOWN).map(({ title, openedAt, sample }) =>
      el('li', {}, title, el('span', { class: 'soft' }, t('alarmAt', { at: momentOf(openedAt), sample }))))));
}

function counted({ characteristics, size, intervalSeconds, withShares, family, exact }) {
  return [
    t('counted', {
      charts: 2 * characteristics.length,
      characteristics: t('characteristics', { n: characteristics.length }),
      readings: t('readings', { n: size }),
      pace: intervalSeconds === null ? '' : t('pace', { age: age(intervalSeconds) }),
    }),
    t('assumed'),
    t('withShares', { price: aShift(withShares), charts: family.charts, means: number(family.reachOfMeans, 2), averages: number(family.reachOfAverages, 2) }),
    ...(exact ? [] : [t('bounds')]),
  ].map((words) => el('p', {}, words));
}

function samples(n) {
  return t('samples', { figure: n < 10 ? number(n, 1) : count(Math.round(n)) });
}

function figure(value) {
  return number(value, value < 0.995 ? 2 : value < 99.5 ? 1 : 0);
}
