/** What a study of known pieces came to: verdict with its source, figures, a drawing. */
import { el } from './elements.js';
import { number, plural } from './format.js';
import { mark } from './marks.js';
import { biasDrawing, linearityDrawing, timeDrawing } from './studyDrawings.js';
import { linearitySentences, pieceSentences, stabilitySentences, VERDICTS_OF_BIAS } from './studyPieceWords.js';

/** Gives {node, show(study)}; nothing is shown of a crossed study. */
export function studyPieceResult() {
  const node = el('section', { class: 'study-result', hidden: true });
  function show(study) {
    const parts = study.judged === null ? [] : PARTS[study.kind](study);
    node.hidden = parts.length === 0;
    node.replaceChildren(el('h2', {}, 'What it came to'), ...parts);
  }
  return { node, show };
}

const PARTS = {
  bias(study) {
    const [bias] = biasesOf(study);
    return bias ? [...said(pieceSentences(bias, study.pieces[0])), drawn(biasDrawing(aboutReference(study, bias)), 'Line: the reference, shaded by its uncertainty. Broken line: the mean of the readings with its 95\u202f% interval. µm, in the order of measurement.'), table([bias], study), sources(bias.judged.source, bias.judged.repeats?.source)] : [];
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
    return [...said(linearitySentences(judged.linearity, line)), drawn(linearityDrawing({ points, means, band: judged.linearity.band }), 'Bias in µm against the reference in µm: small dots single readings, large ones their means; the line of the regression with its 95\u202f% band; the level line is no bias.'), table(biasesOf(study), study), lineTable(line), sources(judged.linearity.source, judged.bias[0]?.source)];
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
      el('h3', {}, isMeans ? 'Means' : 'Readings', el('span', { class: 'unit' }, ' µm')), drawn(timeDrawing({ points, band: limits?.level ?? null, key: 'mean', words: 'Over time, with limits', reference: study.pieces[0].thicknessUm, beyond }), 'Broken line: the mean; dashes: limits; full line: the reference.'),
      el('h3', {}, isMeans ? 'Ranges' : 'Moving ranges', el('span', { class: 'unit' }, ' µm')), drawn(timeDrawing({ points, band: limits?.spread ?? null, key: 'range', words: 'Ranges over time, with limits', reference: null, beyond }), ''),
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
const sources = (...all) => el('p', { class: 'soft source' }, `Rules: ${[...new Set(all.filter(Boolean))].join('. ')} (from memory).`);

function table(biases, { pieces }) {
  const known = new Map(pieces.map((piece) => [piece.name, piece]));
  const heads = ['Piece', 'reference µm', 'U µm', 'readings', 'bias µm', '95\u202f% limits µm', 'sigma µm', 'p', 'so it is'];
  return framed('Bias of each piece', heads, biases.map((one) => [one.part, number(one.referenceUm, 3), number(known.get(one.part).expandedUm, 3), String(one.readings), number(one.bias, 4), `${number(one.lower, 4)} to ${number(one.upper, 4)}`, number(one.deviation, 4), small(one.p), mark(one.judged.verdict === 'real' ? 'gauge' : 'calm', VERDICTS_OF_BIAS[one.judged.verdict])]));
}

function lineTable({ slope, intercept, rSquared, s }) {
  const row = (name, { value, lower, upper, t, p }) => [name, number(value, 5), `${number(lower, 5)} to ${number(upper, 5)}`, number(t, 2), small(p)];
  return el('details', { class: 'study-details' }, el('summary', {}, 'The regression'),
    framed('The regression', ['', 'value', '95\u202f% limits', 't', 'p'], [row('slope, µm for a µm', slope), row('intercept, µm', intercept)]), el('p', { class: 'soft' }, `R² ${number(rSquared, 3)}, deviation about the line ${number(s, 4)} µm.`));
}

function limitsTable({ level, spread }, isMeans) {
  const row = (name, { lower, centre, upper }) => [name, number(lower, 4), number(centre, 4), number(upper, 4)];
  return framed('Limits', ['µm', 'lower', 'centre', 'upper'], [row(isMeans ? 'means' : 'readings', level), row(isMeans ? 'ranges' : 'moving ranges', spread)]);
}

function framed(words, heads, rows) {
  return el('div', { class: 'table-frame', role: 'region', 'aria-label': `${words}, ${plural(rows.length, 'row')}`, tabindex: 0 }, el('table', {},
    el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 0 ? 'figure' : null }, head)))),
    el('tbody', {}, rows.map(([first, ...rest]) => el('tr', {}, el('th', { scope: 'row' }, first), rest.map((cell) => el('td', { class: 'figure' }, cell)))))));
}
