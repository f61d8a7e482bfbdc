/** The newest sample of a line: the film in section, and beside each layer its mean, target, thinnest lane and share. */
import { drawSection } from './boardLine.js';
import { layerAddress } from './boardRow.js';
import { el, setText, svg } from './elements.js';
import { decimalsFor, number, um, umAligned, unit } from './format.js';
import { drawFilm } from './film.js';
import { drawnUm } from './filmScale.js';
import { mark, shape } from './marks.js';
import { needOfLayer, reasons } from './need.js';
import { fullShare, shareBar } from './shareBar.js';
import { room } from './text.js';
import { layerName, makeUp } from './words.js';

const t = await room('line');
const FIGURES = ['mean', 'target', 'off', 'offPercent', 'thinnest', 'share', 'shareTarget', 'points'];
const UNMARKED = new Set(['calm', 'note']);
const COLUMN_DECIMALS = 2;
const ALONE_PX = 300;
const NONE = '\u2013';
const NO_SHARES = { share: null, aim: null };

export function lineNow() {
  const film = svg('svg', { class: 'film', role: 'img' });
  const leaders = svg('svg', { class: 'leaders', 'aria-hidden': 'true' });
  const body = el('tbody', {});
  const table = el('table', { class: 'line-table' }, el('caption', { class: 'for-readers' }, t('now')),
    el('thead', {}, el('tr', {}, el('th', { scope: 'col' }, t('layer')), FIGURES.map((name) => el('th', { scope: 'col', class: 'figure' }, t(`head.${name}`))))), body);
  const section = el('div', { class: 'section' }, film, leaders);
  const meaning = el('p', { class: 'soft' });
  const node = el('section', { class: 'line line-now' }, el('div', { class: 'line-body' }, section,
    el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('now') }, table)), meaning);
  let shown = null;
  let rows = [];

  function show(line) {
    shown = line;
    node.dataset.stale = line.stale || line.state === 'not_running';
    const shares = new Map(line.layers.map((layer) => [layer, sharesOf(line, layer)]));
    const full = fullShare([...shares.values()].flatMap(({ share, aim }) => [share ?? 0, aim ?? 0]));
    setText(meaning, t('sharesMean', { full: percent(full, 0) }));
    rows = [...line.layers, line.total].map((layer) => ({ node: row(line, layer, figures(layer, shares.get(layer) ?? NO_SHARES, full)), need: () => needOfLayer(layer, line) }));
    body.replaceChildren(...rows.map((one) => one.node));
    film.setAttribute('aria-label', t('section', { name: line.structure.name, n: line.layers.length }));
    draw();
  }

  function draw() {
    if (shown !== null && section.clientWidth > 0) {
      section.style.setProperty('--head', `${table.tHead.getBoundingClientRect().height}px`);
      if (getComputedStyle(leaders).display === 'none') {
        drawAlone();
      } else {
        drawSection(film, leaders, rows.slice(0, -1), shown);
      }
    }
  }
  /** Above the table, on a narrow screen. */
  function drawAlone() {
    const { width } = film.getBoundingClientRect();
    film.setAttribute('height', ALONE_PX);
    drawFilm(film, shown.layers, { width, height: ALONE_PX, room: Math.round(width * 0.22) }, (layer) => needOfLayer(layer, shown));
  }
  return { node, show, draw };
}

function row(line, layer, shown) {
  const need = needOfLayer(layer, line);
  const said = reasons(layer, line).map((reason) => el('span', { class: `reason reason-${reason.mark}` }, shape(reason.mark), el('span', {}, reason.words)));
  return el('tr', { class: `layer-${layer.kind}`, data: { need, layer: layer.name } },
    el('th', { scope: 'row' }, el('a', { href: layerAddress(line, layer) }, layerName(layer)), ' ',
      UNMARKED.has(need) ? null : mark(need), el('span', { class: 'layer-why' }, said.length > 0 ? said : el('span', { class: 'make-up' }, makeUp(layer)))),
    shown.map((words, i) => el('td', { class: 'figure', data: { word: t(`head.${FIGURES[i]}`), figure: FIGURES[i] } }, words)));
}

function figures(layer, { share, aim }, full) {
  const target = layer.spec?.target ?? null;
  const decimals = decimalsFor(drawnUm(layer));
  const off = layer.mean === null || target === null ? null : layer.mean - target;
  return [
    el('b', {}, umAligned(layer.mean, decimals, COLUMN_DECIMALS)),
    um(target, decimals),
    off === null ? NONE : signed(off, (value) => um(value, decimals)),
    off === null ? NONE : signed(off / target, (value) => percent(value)),
    layer.thinnest ? t('inLane', { um: um(layer.thinnest.um), lane: layer.thinnest.lane }) : NONE,
    share === null ? NONE : [percent(share), shareBar(share, aim, full)],
    aim === null ? NONE : percent(aim),
    share === null || aim === null ? NONE : signed(100 * (share - aim), (value) => number(value, 1)),
  ];
}

const sharesOf = ({ total }, { mean, spec }) => ({ share: part(mean, total.mean), aim: part(spec?.target, total.spec?.target) });
const part = (um, whole) => (um === null || um === undefined || !whole ? null : um / whole);
const percent = (share, decimals = 1) => `${number(100 * share, decimals)}\u202f%`;

/** With its sign, so that thinner and thicker are told apart; what rounds to nothing has none. */
function signed(value, write) {
  const words = write(value);
  return value > 0 && /[1-9]/.test(words) ? `+${words}` : words;
}
