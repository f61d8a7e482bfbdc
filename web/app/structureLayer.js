/** One layer of the structure form: name, role, resin, target and limits; the rest folded away. */
import { el } from './elements.js';
import { choiceOf, limitsOf, numberOf, textOf, lengthOf } from './structureFields.js';
import { exactLength, toleranceIn } from './structureNumbers.js';
import { ROLES } from './structureWords.js';
import { room } from './text.js';

const t = await room('structures');
const LIMITS = { target: t('field.target'), lower: t('field.lower'), upper: t('field.upper') };
const AVERAGES = { lower: t('field.average.lower'), upper: t('field.average.upper') };

/** `act(row, what)` is told 'up', 'down', 'remove' and 'joined'. */
export function layerRow(layer, act) {
  const name = textOf(t('field.name'), layer.name, { needed: t('needsName'), tag: 'name' });
  const role = choiceOf(t('field.role'), ROLES, layer.role, 'role');
  const resin = textOf(t('field.resin'), layer.resin, { tag: 'resin' });
  const limits = limitsOf(LIMITS, layer.spec);
  const around = toleranceOf(limits);
  const averages = limitsOf(AVERAGES, layer.average, 'average.');
  const more = moreOf(layer);
  const given = [...more.all, ...averages.all].filter(({ input }) => input.value !== '').length;
  const joined = el('input', { type: 'checkbox', checked: layer.joined, on: { change: () => act(row, 'joined') } });
  const join = el('label', { class: 'tick structure-join' }, joined, el('span', {}, t('joined')));
  const title = el('h4', { class: 'structure-place' });
  const moves = ['up', 'down', 'remove'].map((what) => el('button', { type: 'button', class: 'quiet', data: { move: what }, on: { click: () => act(row, what) } }, what === 'remove' ? t('remove') : what === 'up' ? '\u2191' : '\u2193'));
  const node = el('li', { class: 'structure-layer' },
    el('div', { class: 'structure-layer-head' }, title, join, el('div', { class: 'structure-moves' }, moves)),
    el('div', { class: 'structure-layer-names' }, name.node, role.node, resin.node),
    el('div', { class: 'structure-layer-limits' }, limits.nodes[0], around.node, limits.nodes[1], limits.nodes[2]),
    el('details', { class: 'structure-more' }, el('summary', {}, t('more'), given > 0 ? el('span', { class: 'structure-given' }, t('given.more', { n: given })) : null),
      el('div', { class: 'structure-layer-more' }, more.nodes, averages.nodes)));
  const fields = [name, role, resin, ...limits.all, around, ...more.all, ...averages.all];

  /** Its place from 0 among `n` layers, in words for every button. */
  function place(at, n) {
    title.textContent = t('layerAt', { position: at + 1 });
    join.hidden = at === 0;
    moves.forEach((button) => button.setAttribute('aria-label', t(`move.${button.dataset.move}`, { position: at + 1, name: name.input.value.trim() })));
    moves[0].disabled = at === 0;
    moves[1].disabled = at === n - 1;
    moves[2].disabled = n === 1;
  }

  const row = {
    node, name, place, fields,
    focus: () => name.input.focus(),
    focusMove: (what) => moves.find((button) => button.dataset.move === what && !button.disabled)?.focus(),
    read: () => ({ name: name.read() ?? '', role: role.read(), resin: resin.read(), ...more.read(), spec: limits.read(), average: averages.read(), joined: joined.checked }),
  };
  return row;
}

/** Type ± once, get both limits; they can be changed one by one afterwards. */
function toleranceOf(limits) {
  const { target, lower, upper } = limits.by;
  const around = textOf(t('field.tolerance'), '', { tag: 'tolerance', maxlength: 20, sign: t('toleranceUnit') });
  const fill = () => {
    const text = around.input.value.trim();
    const um = target.read();
    if (text === '') {
      return;
    }
    if (typeof um !== 'number') {
      around.complain(t('targetFirst'));
      return;
    }
    const half = toleranceIn(text, um);
    if (half === null || !(half < um)) {
      around.complain(t('notATolerance', { text, example: exactLength(0.1 * um) }));
      return;
    }
    lower.show(round(um - half));
    upper.show(round(um + half));
  };
  around.input.addEventListener('input', fill);
  target.input.addEventListener('input', fill);
  [lower, upper].forEach(({ input }) => input.addEventListener('input', () => { around.input.value = ''; around.complain(''); }));
  return around;
}

const round = (um) => Number(um.toPrecision(12));

function moreOf(layer) {
  const density = numberOf(t('field.density'), layer.density, { sign: 'g/cm³', example: 0.92, tag: 'density' });
  const velocity = numberOf(t('field.velocity'), layer.velocity, { sign: 'm/s', example: 1950, tag: 'velocity' });
  const greatest = lengthOf(t('field.greatest'), layer.greatest, 'greatest');
  const extruder = textOf(t('field.extruder'), layer.extruder, { tag: 'extruder' });
  const all = [density, velocity, greatest, extruder];
  const read = () => ({ density: density.read(), velocity: velocity.read(), greatest: greatest.read(), extruder: extruder.read() });
  return { all, nodes: all.map(({ node }) => node), read };
}
