/** What a study of known pieces came to: verdict with its source, figures, a drawing. */
import { el } from './elements.js';
import { number, um as written, unit } from './format.js';
import { mark } from './marks.js';
import { biasDrawing, linearityDrawing, timeDrawing } from './studyDrawings.js';
import { linearitySentences, pieceSentences, stabilitySentences, VERDICTS_OF_BIAS } from './studyPieceWords.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('study');
const say = await sayings('gauge');

/** Gives {node, show(study)}; nothing is shown of a crossed study. */
export function studyPieceResult() {
  const node = el('section', { class: 'study-result', hidden: true });
  function show(study) {
    const parts = study.judged === null ? [] : PARTS[study.kind](study);
    node.hidden = parts.length === 0;
    node.replaceChildren(el('h2', {}, t('cameTo')), ...parts);
  }
  return { node, show };
}

const PARTS = {
  bias(study) {
    const [bias] = biasesOf(study);
    return bias ? [...said(pieceSentences(bias, study.pieces[0])), drawn(biasDrawing(aboutReference(study, bias)), t('biasCaption')), table([bias], study), sources(bias.judged.source, bias.judged.repeats?.source)] : [];
  },
  linearity(study) {
    const line = study.references[0]?.linearity;
    const { judged } = study;
    if (!line || !judged.linearity) {
      return [];
    }
    const known = new Map(study.pieces.map(({ name, thicknessUm }) => [name, thicknessUm]));
    const points = study.steps.filter(({ um }) => um[0] !== null).map(({ part, um }) => [known.get(part), um[0] - known.get(part)]);
    const means = study.pieces.map(({ thicknessUm }) => [thicknessUm, mean(points.filter(([x]) => x === thicknessUm).map(([, y]) => y))]);
    return [...said(linearitySentences(judged.linearity, line)), drawn(linearityDrawing({ points, means, band: judged.linearity.band }), t('linearityCaption')), table(biasesOf(study), study), lineTable(line), sources(judged.linearity.source, judged.bias[0]?.source)];
  },
  stability(study) {
    const { stability } = study.judged;
    if (stability.points.length === 0) {
      return [];
    }
    const { points, limits, basis } = stability;
    const beyond = limits?.beyond ?? [];
    const isMeans = basis === 'means';
    const [bias] = biasesOf(study);
    return [...said(stabilitySentences(stability, study)),
      el('h3', {}, t(isMeans ? 'meansWord' : 'readingsWord'), el('span', { class: 'unit' }, ` ${unit()}`)), drawn(timeDrawing({ points, band: limits?.level ?? null, key: 'mean', words: t('overTime'), reference: study.pieces[0].thicknessUm, beyond }), t('stabilityCaption')),
      el('h3', {}, t(isMeans ? 'rangesWord' : 'movingWord'), el('span', { class: 'unit' }, ` ${unit()}`)), drawn(timeDrawing({ points, band: limits?.spread ?? null, key: 'range', words: t('rangesTime'), reference: null, beyond }), ''),
      limits ? limitsTable(limits, isMeans) : null, bias ? table([bias], study) : null, sources(stability.source, bias?.judged.source)].filter(Boolean);
  },
};

/** Figures of each piece beside what they amount to. */
function biasesOf({ references, judged }) {
  return (references[0]?.bias ?? []).filter(({ bias }) => bias !== undefined).map((bias) => ({ ...bias, judged: judged.bias.find(({ part }) => part === bias.part) }));
}

function aboutReference(study, { bias, lower, upper, referenceUm }) {
  const readings = study.steps.filter(({ um }) => um[0] !== null).map(({ um }) => um[0]);
  return { readings, referenceUm, expandedUm: study.pieces[0].expandedUm, mean: referenceUm + bias, lower: referenceUm + lower, upper: referenceUm + upper };
}

const said = ([verdict, ...more]) => [el('p', { class: 'study-verdict' }, verdict), ...more.map((words) => el('p', {}, words))];
const mean = (values) => values.reduce((a, b) => a + b, 0) / values.length;
const small = (p) => (p < 0.0001 ? '< 0.0001' : number(p, 4));
const drawn = (drawing, words) => el('figure', { class: 'study-figure' }, drawing, words === '' ? null : el('figcaption', { class: 'soft' }, words));
const sources = (...all) => el('p', { class: 'soft source' }, t('rules', { source: [...new Set(all.filter(Boolean))].map(say).join('. ') }));

function table(biases, { pieces }) {
  const known = new Map(pieces.map((piece) => [piece.name, piece]));
  const heads = ['piece', 'reference', 'u', 'readings', 'bias', 'limits', 'sigma', 'p', 'so'].map((name) => t(`bias.${name}`));
  return framed(t('biasOfEach'), heads, biases.map((one) => [one.part, written(one.referenceUm, 3), written(known.get(one.part).expandedUm, 3), String(one.readings), written(one.bias, 4), t('fromTo', { from: written(one.lower, 4), to: written(one.upper, 4) }), written(one.deviation, 4), small(one.p), mark(one.judged.verdict === 'real' ? 'gauge' : 'calm', VERDICTS_OF_BIAS[one.judged.verdict])]));
}

function lineTable({ slope, intercept, rSquared, s }) {
  const row = (name, { value, lower, upper, t: ratio, p }, write) => [name, write(value, 5), t('fromTo', { from: write(lower, 5), to: write(upper, 5) }), number(ratio, 2), small(p)];
  return el('details', { class: 'study-details' }, el('summary', {}, t('regression')),
    framed(t('regression'), ['', t('line.value'), t('line.limits'), 't', 'p'], [row(t('slope'), slope, number), row(t('intercept'), intercept, written)]), el('p', { class: 'soft' }, t('rSquared', { r: number(rSquared, 3), s: written(s, 4) })));
}

function limitsTable({ level, spread }, isMeans) {
  const row = (name, { lower, centre, upper }) => [name, written(lower, 4), written(centre, 4), written(upper, 4)];
  return framed(t('limits'), [unit(), ...['lower', 'centre', 'upper'].map((name) => t(`limit.${name}`))], [row(t(isMeans ? 'limit.means' : 'limit.readings'), level), row(t(isMeans ? 'limit.ranges' : 'limit.moving'), spread)]);
}

function framed(words, heads, rows) {
  return el('div', { class: 'table-frame', role: 'region', 'aria-label': t('rowsOf', { words, n: rows.length }), tabindex: 0 }, el('table', {},
    el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, head)))),
    el('tbody', {}, rows.map(([first, ...rest]) => el('tr', {}, el('th', { scope: 'row' }, first), rest.map((cell) => el('td', { class: 'figure' }, cell)))))));
}
