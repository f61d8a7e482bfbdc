/** All figures behind the drawing: what each layer is taken for, and the echo of each boundary. Built when opened. */
import { el } from './elements.js';
import { number, um } from './format.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('film-check');
const say = await sayings('gauge');
const heads = (...names) => names.map((name) => t.maybe(`head.${name}`) ?? name);
const LAYER_HEADS = heads('layer', 'resin', 'unit', 'm/s', 'whichIs', 'kg/m³', 'whichIs', 'MRayl', 'ns', 'wave', 'pulse', 'cycle', 'resolved', 'fitted', 'greatest');
const ECHO_HEADS = heads('from', 'into', 'R', 'dB', 'T', 'receiver', 'dB', 'sign', 'seen');

export function checkFigures(plan) {
  const body = el('div', {});
  const node = el('details', { class: 'check-figures', on: { toggle: () => node.open && body.replaceChildren(...tables(plan)) } },
    el('summary', {}, t('allFigures')), body);
  return node;
}

function tables({ layers, echoes }) {
  const sources = new Map(layers.flatMap(({ members }) => members).filter(({ source }) => source !== null).map(({ resin, source }) => [resin, source]));
  return [
    table(t('layersMet'), LAYER_HEADS, layers.flatMap(layerRows)),
    table(t('echoOf'), ECHO_HEADS, echoes.map(echoRow)),
    sources.size === 0 ? '' : el('p', { class: 'soft' }, t('families', { all: [...sources].map(([resin, source]) => t('family', { resin, source: say(source) })).join('. ') })),
    el('p', { class: 'soft' }, t('formulas')),
  ];
}

function table(words, heads, rows) {
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': words },
    el('table', {}, el('caption', {}, words), el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 1 ? 'figure' : null }, head)))), el('tbody', {}, rows)));
}

const figure = (text) => el('td', { class: 'figure' }, text);

function layerRows({ name, members, flightNs, wavelengthUm, pulseUm, oneCycleUm, resolvedFromUm, leastUm, greatestUm, velocityMps, nominalUm }) {
  const one = members.length === 1;
  const times = [number(flightNs, 1), ...[wavelengthUm, pulseUm, oneCycleUm, resolvedFromUm, leastUm, greatestUm].map((value) => um(value, 1))].map(figure);
  const own = (member) => [
    el('td', {}, member.resin ?? '\u2013'), figure(um(member.nominalUm)), figure(number(member.velocityMps, 0)), el('td', { class: 'soft' }, say(member.velocityOrigin)),
    figure(number(member.densityKgm3, 0)), el('td', { class: 'soft' }, say(member.densityOrigin)), figure(number(member.impedanceMrayl, 2))];
  const head = (words) => el('th', { scope: 'row' }, words);
  if (one) {
    return [el('tr', {}, head(name), own(members[0]), times)];
  }
  return [
    el('tr', {}, head(name), el('td', { class: 'soft' }, t('asOne')), figure(um(nominalUm)), figure(number(velocityMps, 0)), el('td', { class: 'soft' }, t('ofMembers')), figure(''), el('td', {}), figure(''), times),
    ...members.map((member) => el('tr', { class: 'member' }, head(member.name), own(member), times.map(() => figure('')))),
  ];
}

function echoRow({ before, behind, reflection, decibels, transmission, strength, strengthDb, polarity, sight }) {
  return el('tr', {}, el('th', { scope: 'row' }, before), el('td', {}, behind), figure(number(reflection, 3)), figure(number(decibels, 1)), figure(number(transmission, 3)),
    figure(number(strength, 3)), figure(number(strengthDb, 1)), figure(polarity.replace('-', '\u2212')), figure(t.maybe(`sight.${sight}`) ?? sight));
}
