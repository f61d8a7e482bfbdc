/** All figures behind the drawing: what each layer is taken for, and the echo of each boundary. Built when opened. */
import { el } from './elements.js';
import { number, micrometres as um } from './format.js';

const LAYER_HEADS = ['Layer', 'Resin', 'µm', 'm/s', 'which is', 'kg/m³', 'which is', 'MRayl', 'ns', 'Wave µm', 'c/2B µm', 'One cycle µm', 'Resolved from µm', 'Fitted from µm', 'Greatest µm'];
const ECHO_HEADS = ['From', 'Into', 'R', 'dB', 'T', 'At the receiver', 'dB', 'Sign', 'Seen'];

export function checkFigures(plan) {
  const body = el('div', {});
  const node = el('details', { class: 'check-figures', on: { toggle: () => node.open && body.replaceChildren(...tables(plan)) } },
    el('summary', {}, 'All figures, and where they come from'), body);
  return node;
}

function tables({ layers, echoes }) {
  const sources = new Map(layers.flatMap(({ members }) => members).filter(({ source }) => source !== null).map(({ resin, source }) => [resin, source]));
  return [
    table('Layers as the gauge meets them', LAYER_HEADS, layers.flatMap(layerRows)),
    table('Echo of each boundary: pressure against what came to it, and against what came to the film', ECHO_HEADS, echoes.map(echoRow)),
    sources.size === 0 ? '' : el('p', { class: 'soft' }, 'Families: ', [...sources].map(([resin, source]) => `${resin}: ${source}`).join('. '), '.'),
    el('p', { class: 'soft' }, 'Reflection R = (Z2 \u2212 Z1) / (Z2 + Z1) with Z = density × velocity, T = 1 + R: L. E. Kinsler and others, Fundamentals of Acoustics. Time 2d/v; of a group the velocity is \u03a3d / \u03a3(d/v). Resolved from c/2B and 1.5 cycles on (common practice, no source); fitted down to an eighth of the wavelength (M. B. Widess, Geophysics 38 (1973) 1176). All from memory.'),
  ];
}

function table(words, heads, rows) {
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': words },
    el('table', {}, el('caption', {}, words), el('thead', {}, el('tr', {}, heads.map((head, i) => el('th', { scope: 'col', class: i > 1 ? 'figure' : null }, head)))), el('tbody', {}, rows)));
}

const figure = (text) => el('td', { class: 'figure' }, text);

function layerRows({ name, members, flightNs, wavelengthUm, pulseUm, oneCycleUm, resolvedFromUm, leastUm, greatestUm, velocityMps, nominalUm }) {
  const one = members.length === 1;
  const times = [number(flightNs, 1), ...[wavelengthUm, pulseUm, oneCycleUm, resolvedFromUm, leastUm, greatestUm].map((value) => number(value, 1))].map(figure);
  const own = (member) => [
    el('td', {}, member.resin ?? '\u2013'), figure(um(member.nominalUm)), figure(number(member.velocityMps, 0)), el('td', { class: 'soft' }, member.velocityOrigin),
    figure(number(member.densityKgm3, 0)), el('td', { class: 'soft' }, member.densityOrigin), figure(number(member.impedanceMrayl, 2))];
  const head = (words) => el('th', { scope: 'row' }, words);
  if (one) {
    return [el('tr', {}, head(name), own(members[0]), times)];
  }
  return [
    el('tr', {}, head(name), el('td', { class: 'soft' }, 'as one'), figure(um(nominalUm)), figure(number(velocityMps, 0)), el('td', { class: 'soft' }, 'of its members'), figure(''), el('td', {}), figure(''), times),
    ...members.map((member) => el('tr', { class: 'member' }, head(member.name), own(member), times.map(() => figure('')))),
  ];
}

function echoRow({ before, behind, reflection, decibels, transmission, strength, strengthDb, polarity, sight }) {
  return el('tr', {}, el('th', { scope: 'row' }, before), el('td', {}, behind), figure(number(reflection, 3)), figure(number(decibels, 1)), figure(number(transmission, 3)),
    figure(number(strength, 3)), figure(number(strengthDb, 1)), figure(polarity.replace('-', '\u2212')), figure(sight));
}
