/** The proposal for all layers and the total: now above proposed, aligned on the decimal, drawn on one scale, the change in words. */
import { el, svg } from './elements.js';
import { list, um } from './format.js';
import { momentOf } from './plantClock.js';
import { changeOf, limitsOfMean } from './limitsWords.js';
import { layerName } from './words.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('limits');
const say = await sayings('charts');

const UM_DECIMALS = 2;
const SIGMA_DECIMALS = 3;
const WIDTH = 240;
const EDGE = 6;
const ROWS = { now: 14, proposed: 42 };
const HEIGHT = 56;
const ALONE = 28;

/**
 * `size` is the usual count of readings in a sample: limits of the mean depend on it. `now` says what the
 * limits of the newest version are, now or before; before there are any, their rows are left out.
 */
export function proposalTable({ characteristics }, size, now) {
  const hasCurrent = characteristics.some(({ current }) => current);
  const heads = ['layer', 'which', 'centre', 'sigma', 'lower', 'upper'].map((head, i) =>
    el('th', { scope: 'col', class: i > 1 ? 'figure' : null }, head === 'which' ? el('span', { class: 'for-readers' }, t('head.which')) : t(`head.${head}`)));
  return el('table', { class: 'proposal' },
    el('caption', {}, t('tableIs', { size })),
    el('thead', {}, el('tr', {}, heads, el('th', { scope: 'col', class: 'drawn' }, t('head.drawn')), el('th', { scope: 'col' }, t('head.change')))),
    characteristics.map((one) => rowsOf(one, size, hasCurrent ? t(`row.${now}`) : null)));
}

function rowsOf(one, size, nowWord) {
  const { characteristic: { kind, position, name }, current, proposed, subgroups, excluded } = one;
  const change = changeOf(current, proposed, size);
  const word = layerName({ name, position });
  const rowspan = nowWord ? 2 : 1;
  const next = figures(t('row.proposed'), proposed, size);
  return el('tbody', { class: `proposal-${kind}`, data: { proposalRow: word, far: change.isFar } },
    el('tr', { class: nowWord ? null : 'proposed' },
      el('th', { scope: 'rowgroup', class: 'name', rowspan }, el('b', {}, word), el('span', { class: 'soft' }, samplesOf(subgroups, excluded))),
      nowWord ? figures(nowWord, current, size) : next,
      el('td', { rowspan, class: 'drawn' }, drawing(current, proposed, size)),
      el('td', { rowspan, class: 'change' }, change.words)),
    nowWord ? el('tr', { class: 'proposed' }, next) : null);
}

function samplesOf(subgroups, excluded) {
  return t(excluded > 0 ? 'samplesOfLeft' : 'samplesOf', { n: subgroups, excluded });
}

function figures(word, limits, size) {
  const { lower, upper } = limits ? limitsOfMean(limits, size) : {};
  const cells = [[limits?.centre, UM_DECIMALS], [limits?.sigma, SIGMA_DECIMALS], [lower, UM_DECIMALS], [upper, UM_DECIMALS]];
  return [el('th', { scope: 'row', class: 'which' }, word), cells.map(([value, decimals]) => el('td', { class: 'figure' }, um(value, decimals)))];
}

/** Two brackets on one scale: the limits of now above, the proposed ones below, hairlines between them. */
function drawing(current, proposed, size) {
  const [now, next] = [current, proposed].map((limits) => limits && { ...limitsOfMean(limits, size), centre: limits.centre });
  const ends = [now, next].filter(Boolean).flatMap(({ lower, upper }) => [lower, upper]);
  if (ends.length === 0) {
    return null;
  }
  const [min, max] = [Math.min(...ends), Math.max(...ends)];
  const x = (value) => EDGE + ((value - min) / (max - min || 1)) * (WIDTH - 2 * EDGE);
  const top = now ? 0 : ALONE;
  return svg('svg', { viewBox: `0 ${top} ${WIDTH} ${HEIGHT - top}`, class: now ? null : 'alone', preserveAspectRatio: 'none', 'aria-hidden': 'true' },
    now && next ? svg('path', { class: 'guide', d: [now.lower, now.centre, now.upper].map((value) => `M${x(value)} ${ROWS.now}V${ROWS.proposed}`).join('') }) : null,
    now ? bracket('now', now, x) : null,
    next ? bracket('proposed', next, x) : null);
}

function bracket(name, { lower, centre, upper }, x) {
  const y = ROWS[name];
  return svg('g', { class: `bracket-${name}` },
    svg('rect', { x: x(lower), y: y - 6, width: Math.max(0, x(upper) - x(lower)), height: 12 }),
    svg('path', { d: `M${x(lower)} ${y - 6}v12M${x(upper)} ${y - 6}v12M${x(centre)} ${y - 9}v18` }));
}

/** What speaks against the baseline: alarms that were active in it, then warnings, the same words said once with their layers. */
export function doubtsList(proposal, alarms) {
  const doubts = [...alarms.map(alarmDoubt), ...warnings(proposal)];
  return doubts.length > 0 ? doubts : [el('li', {}, t('nothingAgainst'))];
}

function alarmDoubt({ id, title, openedAt }) {
  const alarm = el('a', { href: `/alarms.html#${id}` }, el('strong', {}, title));
  return el('li', { data: { doubt: 'alarm' } }, t.nodes('activeAlarm', { alarm, at: momentOf(openedAt) }));
}

function warnings({ characteristics }) {
  const byWords = new Map();
  for (const { characteristic, warnings } of characteristics) {
    warnings.forEach((words) => byWords.set(words, [...(byWords.get(words) ?? []), layerName(characteristic)]));
  }
  return [...byWords].map(([words, names]) =>
    el('li', {}, t.nodes('warning', { names: el('strong', {}, names.length === characteristics.length ? t('allLayers') : list(names)), words: say(words) })));
}
