/** What a study came to: all layers beside each other, then one of them closely. */
import { el, svg } from './elements.js';
import { list, number } from './format.js';
import { mark } from './marks.js';
import { studyCharts } from './studyCharts.js';
import { varianceShares, worstOf } from './studyFigures.js';
import { percent, sentencesOf, VERDICTS } from './studyWords.js';

/** Colour only where somebody must do something. */
const MARKS = { acceptable: 'calm', conditional: 'calm', 'not-acceptable': 'gauge' };

/** Gives {node, show(study), destroy}. */
export function studyResult() {
  const node = el('section', { class: 'study-result', hidden: true });
  const charts = studyCharts();
  const close = el('div', { class: 'study-close' });
  let chosen = null;

  function show(study) {
    node.hidden = study.studies.length === 0;
    if (node.hidden) {
      return;
    }
    const worst = worstOf(study.studies);
    const layer = study.studies.find((one) => one.layer === chosen) ?? worst;
    node.replaceChildren(
      el('h2', {}, 'What it came to'),
      el('p', { class: 'study-verdict' }, verdictOf(study.studies, worst)),
      overview(study, layer, (name) => (chosen = name, show(study), close.querySelector('h2').focus())),
      el('p', { class: 'soft source' }, `Rules: ${worst.verdict.source} (from memory). Limits of confidence: Hamada and Weerahandi, Journal of Quality Technology 32 (2000) 241. The verdict is the worse one of both columns.`),
      close, charts.node);
    close.replaceChildren(el('h2', { tabindex: -1 }, layer.layer), ...sentencesOf(layer).map((words) => el('p', {}, words)), details(layer));
    charts.show(study, layer.layer);
  }
  return { node, show, destroy: charts.destroy };
}

function verdictOf(studies, worst) {
  const not = studies.filter(({ verdict }) => verdict.verdict === 'not-acceptable').map(({ layer }) => layer);
  if (studies.length === 1) {
    return `For ${worst.layer} the gauge is ${VERDICTS[worst.verdict.verdict]}.`;
  }
  return not.length === 0 ? `No layer is refused; the gauge is weakest on ${worst.layer}.` : `Not acceptable on ${list(not)}; worst on ${worst.layer}.`;
}

function overview({ studies }, open, choose) {
  const heads = [['Layer'], ['What the readings vary by'], ['Gauge in the spread', true], ['in the tolerance', true], ['Groups', true], ['So it is']];
  return el('div', { class: 'table-frame study-overview', role: 'region', 'aria-label': 'All layers', tabindex: 0 }, el('table', {},
    el('caption', {}, legend()),
    el('thead', {}, el('tr', {}, heads.map(([words, isFigure]) => el('th', { scope: 'col', class: isFigure ? 'figure' : null }, words)))),
    el('tbody', {}, studies.map((study) => el('tr', { 'aria-current': study === open ? 'true' : null },
      el('th', { scope: 'row' }, el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(study === open), data: { layer: study.layer }, on: { click: () => choose(study.layer) } }, study.layer)),
      el('td', {}, bars(study)),
      el('td', { class: 'figure' }, percent(study.percentStudyVariation), sureness(study)),
      el('td', { class: 'figure' }, percent(study.percentTolerance)),
      el('td', { class: 'figure' }, String(study.distinctCategories)),
      el('td', {}, mark(MARKS[study.verdict.verdict], VERDICTS[study.verdict.verdict])))))));
}

/** How sure that is: a study of few people is sure of little. */
function sureness({ confidence: { percentStudyVariation: { lower, upper } } }) {
  return el('span', { class: 'soft' }, `${number(lower, 0)} to ${number(upper, 0)}`);
}

function legend() {
  return ['repeatability', 'reproducibility', 'part'].map((name) =>
    el('span', { class: 'study-legend' }, svg('svg', { viewBox: '0 0 12 12', 'aria-hidden': 'true' }, svg('rect', { x: 0.5, y: 0.5, width: 11, height: 11, class: `share-${name}` })), name === 'part' ? 'the spots themselves' : name));
}

/** Shares of the variance, as bands of one bar. */
function bars(study) {
  let x = 0;
  const shares = varianceShares(study);
  const words = shares.map(({ name, share }) => `${name} ${percent(share * 100)}`).join(', ');
  return svg('svg', { class: 'study-bar', viewBox: '0 0 100 12', preserveAspectRatio: 'none', role: 'img', 'aria-label': `Of the variance: ${words}` }, shares.map(({ name, share }) => {
    const band = svg('rect', { x, y: 0, width: share * 100, height: 12, class: `share-${name}` });
    x += share * 100;
    return band;
  }));
}

function details(study) {
  const { anova, variance, percent: parts } = study;
  const figures = (value, decimals) => (value === null || value === undefined ? '\u2013' : Math.abs(value) >= 0.0001 || value === 0 ? number(value, decimals) : value.toExponential(1));
  const line = (name, row) => row && el('tr', {}, el('th', { scope: 'row' }, name), ...[[row.ss, 4], [row.ms, 5], [row.f, 2], [row.p, 4]].map(([value, decimals], i) => [el('td', { class: 'figure' }, figures(value, decimals)), i === 0 ? el('td', { class: 'figure' }, String(row.df)) : null]));
  const component = (name, key) => variance[key] === null ? null : el('tr', {}, el('th', { scope: 'row' }, name),
    el('td', { class: 'figure' }, figures(Math.sqrt(variance[key]), 3)), el('td', { class: 'figure' }, percent(parts[key].ofStudyVariation)), el('td', { class: 'figure' }, percent(parts[key].ofTolerance)));
  return el('details', { class: 'study-details' }, el('summary', {}, 'Analysis of variance and components'),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': 'Analysis of variance', tabindex: 0 }, el('table', {},
      el('thead', {}, el('tr', {}, ['Source', 'squares, µm²', 'df', 'mean square', 'F', 'p'].map((words, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, words)))),
      el('tbody', {}, line('spot', anova.part), line('operator', anova.operator), line('interaction', anova.interaction), line('repeatability', anova.repeatability), line('total', anova.total), anova.pooledError ? line('pooled error', anova.pooledError) : null))),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': 'Components', tabindex: 0 }, el('table', {},
      el('thead', {}, el('tr', {}, ['Component', 'sigma, µm', 'of the spread', 'of the tolerance'].map((words, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, words)))),
      el('tbody', {}, component('gauge', 'gauge'), component('repeatability', 'repeatability'), component('reproducibility', 'reproducibility'), component('operator', 'operator'), component('interaction', 'interaction'), component('spots', 'part')))),
    el('p', { class: 'soft' }, 'Percentages are of standard deviations, so they do not add up to 100.'));
}
