/** What a study came to: all layers beside each other, then one of them closely. */
import { el, svg } from './elements.js';
import { inUnit, list, number, um } from './format.js';
import { mark } from './marks.js';
import { studyCharts } from './studyCharts.js';
import { varianceShares, worstOf } from './studyFigures.js';
import { layerWord, percent, sentencesOf, VERDICTS } from './studyWords.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('study');
const say = await sayings('gauge');

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
      el('h2', {}, t('cameTo')),
      el('p', { class: 'study-verdict' }, verdictOf(study.studies, worst)),
      overview(study, layer, (name) => (chosen = name, show(study), close.querySelector('h2').focus())),
      el('p', { class: 'soft source' }, t('rulesOf', { source: say(worst.verdict.source) })),
      close, charts.node);
    close.replaceChildren(el('h2', { tabindex: -1 }, layerWord(layer.layer)), ...sentencesOf(layer).map((words) => el('p', {}, words)), details(layer));
    charts.show(study, layer.layer);
  }
  return { node, show, destroy: charts.destroy };
}

function verdictOf(studies, worst) {
  const not = studies.filter(({ verdict }) => verdict.verdict === 'not-acceptable').map(({ layer }) => layerWord(layer));
  if (studies.length === 1) {
    return t('forLayer', { layer: layerWord(worst.layer), verdict: VERDICTS[worst.verdict.verdict] });
  }
  return t(not.length === 0 ? 'noneRefused' : 'refusedOn', { layers: list(not), layer: layerWord(worst.layer) });
}

function overview({ studies }, open, choose) {
  const heads = [['layer'], ['vary'], ['spread', true], ['tolerance', true], ['groups', true], ['so']].map(([name, isFigure]) => [t(`over.${name}`), isFigure]);
  return el('div', { class: 'table-frame study-overview', role: 'region', 'aria-label': t('allLayers'), tabindex: 0 }, el('table', {},
    el('caption', {}, legend()),
    el('thead', {}, el('tr', {}, heads.map(([words, isFigure]) => el('th', { scope: 'col', class: isFigure ? 'figure' : null }, words)))),
    el('tbody', {}, studies.map((study) => el('tr', { 'aria-current': study === open ? 'true' : null },
      el('th', { scope: 'row' }, el('button', { type: 'button', class: 'quiet', 'aria-pressed': String(study === open), data: { layer: study.layer }, on: { click: () => choose(study.layer) } }, layerWord(study.layer))),
      el('td', {}, bars(study)),
      el('td', { class: 'figure', data: { word: t('over.spread') } }, percent(study.percentStudyVariation), sureness(study)),
      el('td', { class: 'figure', data: { word: t('over.tolerance') } }, percent(study.percentTolerance)),
      el('td', { class: 'figure', data: { word: t('over.groups') } }, String(study.distinctCategories)),
      el('td', {}, mark(MARKS[study.verdict.verdict], VERDICTS[study.verdict.verdict])))))));
}

/** How sure that is: a study of few people is sure of little. */
function sureness({ confidence: { percentStudyVariation: { lower, upper } } }) {
  return el('span', { class: 'soft' }, t('fromTo', { from: number(lower, 0), to: number(upper, 0) }));
}

function legend() {
  return ['repeatability', 'reproducibility', 'part'].map((name) =>
    el('span', { class: 'study-legend' }, svg('svg', { viewBox: '0 0 12 12', 'aria-hidden': 'true' }, svg('rect', { x: 0.5, y: 0.5, width: 11, height: 11, class: `share-${name}` })), t(`share.${name}`)));
}

/** Shares of the variance, as bands of one bar. */
function bars(study) {
  let x = 0;
  const shares = varianceShares(study);
  const words = shares.map(({ name, share }) => t('shareIs', { name: t(`share.${name}`), percent: percent(share * 100) })).join(', ');
  return svg('svg', { class: 'study-bar', viewBox: '0 0 100 12', preserveAspectRatio: 'none', role: 'img', 'aria-label': t('ofVariance', { words }) }, shares.map(({ name, share }) => {
    const band = svg('rect', { x, y: 0, width: share * 100, height: 12, class: `share-${name}` });
    x += share * 100;
    return band;
  }));
}

/** Of a square of lengths in um, in the unit that was chosen. */
const squared = (value) => (value === null || value === undefined ? value : inUnit(inUnit(value)));

function details(study) {
  const { anova, variance, percent: parts } = study;
  const figures = (value, decimals) => (value === null || value === undefined ? '\u2013' : Math.abs(value) >= 0.0001 || value === 0 ? number(value, decimals) : value.toExponential(1));
  const line = (name, row) => row && el('tr', {}, el('th', { scope: 'row' }, name), ...[[squared(row.ss), 4], [squared(row.ms), 5], [row.f, 2], [row.p, 4]].map(([value, decimals], i) => [el('td', { class: 'figure' }, figures(value, decimals)), i === 0 ? el('td', { class: 'figure' }, String(row.df)) : null]));
  const component = (name, key = name) => variance[key] === null ? null : el('tr', {}, el('th', { scope: 'row' }, t(`row.${name}`)),
    el('td', { class: 'figure' }, um(Math.sqrt(variance[key]), 3)), el('td', { class: 'figure' }, percent(parts[key].ofStudyVariation)), el('td', { class: 'figure' }, percent(parts[key].ofTolerance)));
  return el('details', { class: 'study-details' }, el('summary', {}, t('analysis')),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': t('anova'), tabindex: 0 }, el('table', {},
      el('thead', {}, el('tr', {}, ['source', 'squares', 'df', 'ms', 'f', 'p'].map((name, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, t(`anova.${name}`))))),
      el('tbody', {}, line(t('row.spot'), anova.part), line(t('row.operator'), anova.operator), line(t('row.interaction'), anova.interaction), line(t('row.repeatability'), anova.repeatability), line(t('row.total'), anova.total), anova.pooledError ? line(t('row.pooled'), anova.pooledError) : null))),
    el('div', { class: 'table-frame', role: 'region', 'aria-label': t('components'), tabindex: 0 }, el('table', {},
      el('thead', {}, el('tr', {}, ['component', 'sigma', 'spread', 'tolerance'].map((name, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, t(`comp.${name}`))))),
      el('tbody', {}, component('gauge'), component('repeatability'), component('reproducibility'), component('operator'), component('interaction'), component('spots', 'part')))),
    el('p', { class: 'soft' }, t('notAddUp')));
}
