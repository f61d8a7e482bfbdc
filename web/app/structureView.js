/** A structure as it is known: the film to scale beside its layers, what the gauge reports, the total. */
import { el } from './elements.js';
import { structureDrawing } from './structureDrawing.js';
import { evenly, exact, plainNumber } from './structureNumbers.js';
import { limitsWords, roleWord } from './structureWords.js';
import { unit } from './format.js';
import { room } from './text.js';

const t = await room('structures');
const DASH = '\u2013';
const FIGURES = ['target', 'lower', 'upper'];

export function structureView({ structure, samples, lines }) {
  const drawing = structureDrawing();
  const joined = new Set(joinedPlaces(structure));
  drawing.show({ layers: structure.layers.map((layer, i) => ({ ...layer, joined: joined.has(i) })) });
  return el('div', { class: 'structure-view' }, drawing.node,
    el('div', {},
      el('p', { class: 'structure-made' }, samples === 0 ? t('notMadeYet') : t('madeOn', { n: samples, lines: [...new Set(lines)].join(', ') })),
      tableOf(structure), reportedOf(structure)));
}

/** Places from 0 of layers that the gauge reports together with the one above. */
function joinedPlaces({ reported }) {
  const places = [];
  let at = 0;
  for (const { members } of reported) {
    members.forEach((member, i) => i > 0 && places.push(at + i));
    at += members.length;
  }
  return places;
}

function tableOf({ layers, total, totalAverage }) {
  const heads = [['place', t('head.place')], ['name', t('head.layer')], ['role', t('head.role')], ['resin', t('head.resin')],
    ...FIGURES.map((part) => [part, `${t(`field.${part}`)} ${unit()}`]), ['average', t('head.average')], ['density', t('head.density')], ['velocity', t('head.velocity')], ['greatest', `${t('head.greatest')} ${unit()}`], ['extruder', t('head.extruder')]];
  const used = heads.filter(([key]) => isUsed(key, layers, totalAverage));
  const cells = (row) => used.map(([key, words]) => (key === 'name' ? el('th', { scope: 'row', data: { place: row.place } }, row.name) : el('td', { class: NUMBERS.includes(key) ? 'figure' : '', data: { word: words, part: key } }, row[key])));
  const figures = Object.fromEntries(FIGURES.map((part) => [part, evenly([...layers.map(({ spec }) => spec[part]), total[part]])]));
  const figuresOf = (i) => Object.fromEntries(FIGURES.map((part) => [part, figures[part][i]]));
  const rows = layers.map((layer, i) => ({ ...wordsOf(layer), place: String(i + 1), ...figuresOf(i) }));
  const whole = { place: '', name: t('total'), role: '', resin: '', extruder: '', density: '', velocity: '', greatest: '', ...figuresOf(layers.length), average: limitsWords(totalAverage) || DASH };
  return el('div', { class: 'table-frame structure-table', tabindex: 0, role: 'region', 'aria-label': t('layers') },
    el('table', {}, el('caption', {}, t('tableCaption')),
      el('thead', {}, el('tr', {}, used.map(([key, words]) => el('th', { scope: 'col', class: NUMBERS.includes(key) ? 'figure' : '' }, words)))),
      el('tbody', {}, rows.map((row) => el('tr', {}, cells(row)))),
      el('tfoot', {}, el('tr', {}, cells(whole)))));
}

const NUMBERS = [...FIGURES, 'density', 'velocity', 'greatest'];
const ALWAYS = ['place', 'name', 'role', ...FIGURES];

/** A column in which nothing stands is left out. */
function isUsed(key, layers, totalAverage) {
  const has = (layer) => (key === 'average' ? limitsWords(layer.average) !== '' : layer[key] !== undefined && layer[key] !== null);
  return ALWAYS.includes(key) || layers.some(has) || (key === 'average' && limitsWords(totalAverage) !== '');
}

function wordsOf({ name, role, resin, extruder, average, density, velocity, greatest }) {
  return {
    name, role: roleWord(role), resin: resin ?? DASH, extruder: extruder ?? DASH, average: limitsWords(average) || DASH,
    density: numberOf(density), velocity: numberOf(velocity), greatest: exact(greatest) || DASH,
  };
}

const numberOf = (value) => (value === undefined ? DASH : plainNumber.write(value));

function reportedOf({ reported, layers }) {
  if (reported.length === layers.length) {
    return el('p', { class: 'soft' }, t('reportedEach'));
  }
  return el('div', {}, el('h3', {}, t('reported')), el('p', { class: 'soft' }, t('reportedView')),
    el('ol', {}, reported.map(({ name, spec }) => el('li', {}, el('b', {}, name), `: ${exact(spec.target) || DASH}\u202f${unit()}`, limitsWords(spec) ? `, ${limitsWords(spec)}` : ''))));
}
