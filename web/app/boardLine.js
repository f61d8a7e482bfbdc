/** One line on the board: the film's section, its layers in words, and the last shift beside them. */
import { el, setText, svg } from './elements.js';
import { age } from './format.js';
import { boardRow } from './boardRow.js';
import { drawFilm } from './film.js';
import { limitsAddress } from './limitsOverview.js';
import { lineMode, modeInWords } from './lineMode.js';
import { mark } from './marks.js';
import { needOfLayer } from './need.js';
import { moment, nowMs, timeOfDay } from './plantClock.js';
import { spanOf } from './ribbon.js';
import { limitsInWords } from './words.js';
import { room } from './text.js';

const t = await room('board');

/** What must stay the same for a line's elements to be kept at an update. */
export function identityOf(line) {
  return JSON.stringify([line.line, line.structure.code, line.layers.map((layer) => layer.name)]);
}

export function boardLine(line) {
  const head = headOf(line);
  const film = svg('svg', { class: 'film', role: 'img' });
  const leaders = svg('svg', { class: 'leaders', 'aria-hidden': 'true' });
  const rows = [...line.layers, line.total].map((layer) => boardRow(line, layer));
  const from = el('span', { class: 'ribbon-from' });
  const to = el('span', { class: 'ribbon-to' });
  const captions = el('div', { class: 'layer-captions', 'aria-hidden': 'true' }, el('span', { class: 'caption-mean' }, t('mean')), from, to);
  const section = el('div', { class: 'section' }, film, leaders);
  const layers = el('ol', { class: 'layers' }, rows.map((row) => row.node));
  const node = el('section', { class: 'line', data: { line: line.line } },
    head.node, el('div', { class: 'line-body' }, section, el('div', {}, captions, layers)));
  let shown = line;

  function update(now) {
    shown = now;
    node.dataset.state = now.state;
    node.dataset.stale = now.stale || now.state === 'not_running';
    head.update(now);
    [...now.layers, now.total].forEach((layer, i) => rows[i].update(now, layer));
    film.setAttribute('aria-label', t('section', { name: now.structure.name, n: now.layers.length }));
    draw();
  }

  function draw() {
    if (section.clientWidth === 0) {
      return;
    }
    const span = spanOf([...shown.layers, shown.total]);
    if (span) {
      rows.forEach((row) => row.drawStrip(span));
      setText(from, moment(span.from));
      setText(to, timeOfDay(span.to));
    }
    drawSection(film, leaders, rows.slice(0, -1), shown);
  }
  update(line);
  return { node, update, draw, tick: () => head.tick(shown), identity: identityOf(line) };
}

/** Draws the section as high as the rows of its layers, each led to its band. */
export function drawSection(film, leaders, rows, line) {
  const first = rows[0].node.getBoundingClientRect();
  const middles = rows.map((row) => row.node.getBoundingClientRect()).map((box) => box.top - first.top + box.height / 2);
  const height = rows.at(-1).node.getBoundingClientRect().bottom - first.top;
  const { width } = film.getBoundingClientRect();
  film.setAttribute('height', height);
  const size = { width, height, room: Math.round(width * 0.22) };
  const drawn = drawFilm(film, line.layers, size, (layer) => needOfLayer(layer, line));
  const across = leaders.getBoundingClientRect().width;
  leaders.setAttribute('height', height);
  leaders.replaceChildren(...rows.map((row, i) =>
    svg('path', { class: 'leader', 'data-need': row.need(), d: `M0 ${drawn.middles[i]}h3L${across - 6} ${middles[i]}h6` })));
}

/** Name, state, film, what it is doing, how old its newest sample is, limits and alarms of a line. */
export function headOf(line) {
  const name = el('h2', {});
  const structure = el('span', { class: 'structure' });
  const state = el('span', { class: 'line-state' });
  const last = el('span', { class: 'last' });
  const limits = el('span', { class: 'limits' });
  const alarms = el('span', { class: 'line-alarms' });
  const mode = lineMode(line);
  const node = el('header', { class: 'line-head' }, name, state, structure, mode.node, el('span', { class: 'line-facts' }, last, limits, alarms));
  let receivedMs = nowMs();

  const tick = (line) => setText(last, lastSample(line, line.ageSeconds + (nowMs() - receivedMs) / 1000));
  function update(line) {
    receivedMs = nowMs();
    name.replaceChildren(el('a', { href: `/line.html?${new URLSearchParams({ line: line.line })}` }, line.line));
    setText(structure, `${line.structure.code}: ${line.structure.name}`);
    state.dataset.taken = line.openAlarms > 0 && line.unacknowledged === 0;
    const quietly = ['stale', 'not_running'].includes(line.state);
    state.replaceChildren(stateMark(line), ...(line.stale && !quietly ? [mark('stale')] : []));
    limits.replaceChildren(...limitsOf(line));
    alarms.replaceChildren(...alarmsOf(line));
    mode.update(line);
    tick(line);
  }
  return { node, update, tick };
}

function stateMark({ state, limits, mode }) {
  if (state === 'not_running') {
    return mark(state, modeInWords(mode));
  }
  return state === 'collecting' && limits.state === 'trial' ? mark(state, t('trialLimits')) : mark(state);
}

function lastSample({ stale, lastSample: last, expectedEverySeconds }, seconds) {
  if (!last) {
    return t('noSample');
  }
  if (stale) {
    return expectedEverySeconds ? t('noneForUsually', { age: age(seconds), usual: age(expectedEverySeconds) }) : t('noneFor', { age: age(seconds) });
  }
  return t('last', { age: age(seconds), roll: last.roll, sample: last.sample });
}

function limitsOf(line) {
  const href = limitsAddress(line.line, line.structure.code);
  const isOpen = ['collecting', 'trial', 'retired'].includes(line.limits.state);
  return isOpen
    ? [limitsInWords(line.limits), ' ', el('a', { href, data: { action: 'limits' } }, line.limits.state === 'trial' ? t('putInForce') : t('seeThem'))]
    : [el('a', { href, data: { action: 'limits' } }, limitsInWords(line.limits))];
}

function alarmsOf({ openAlarms, unacknowledged, held }) {
  if (openAlarms === 0) {
    return [];
  }
  const said = [
    unacknowledged > 0 ? t('notTaken', { n: unacknowledged }) : held === openAlarms ? '' : t('allTaken'),
    held > 0 ? t('heldBack', { n: held }) : '',
  ].filter(Boolean);
  return [el('a', { href: '/alarms.html' }, [t('openAlarms', { n: openAlarms }), ...said].join(', '))];
}
