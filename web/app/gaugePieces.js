/** Reference pieces with what the gauge read on them; one to start with, more for a zero offset. */
import { el } from './elements.js';
import { fromUnit, unit } from './format.js';
import { choice, field, figure, numberOf, text, umOf } from './gaugeParts.js';
import { room } from './text.js';

const t = await room('gauge');
const KINDS = ['thickness', 'time'].map((kind) => [kind, t(`kind.${kind}`)]);

/** `changed()` is called when something is typed; `read()` gives the pieces, or null where one is not filled in. */
export function gaugePieces(changed) {
  const list = el('ol', { class: 'plain gauge-pieces', on: { input: changed } });
  const more = el('button', { type: 'button', class: 'quiet', on: { click: () => (add(), changed()) } }, t('anotherPiece'));
  const rows = [];
  add();

  function add() {
    const inputs = { name: text(), thickness: figure(), expanded: figure(), k: figure({ value: '2' }), material: text(), how: text(), kind: choice(KINDS), readings: text({ maxlength: 1000, inputmode: 'text' }) };
    const row = { inputs };
    const away = el('button', { type: 'button', class: 'quiet', on: { click: () => remove(row) } }, t('takeAway'));
    row.node = el('li', {}, el('div', { class: 'gauge-row' },
      field(t('piece'), inputs.name), field(t('thickness'), inputs.thickness, unit()), field(t('expanded'), inputs.expanded, unit()), field(t('withK'), inputs.k),
      field(t('material'), inputs.material), field(t('howKnown'), inputs.how),
      field(t('readingsAre'), inputs.kind), field(t('readingsSpaced'), inputs.readings)), away);
    rows.push(row);
    list.append(row.node);
    only();
  }

  function remove(row) {
    rows.splice(rows.indexOf(row), 1);
    row.node.remove();
    only();
    changed();
  }

  function only() {
    rows.forEach(({ node }) => (node.lastChild.hidden = rows.length === 1));
  }

  function read() {
    const pieces = rows.map(({ inputs }) => ({
      name: inputs.name.value.trim(), thicknessUm: umOf(inputs.thickness), expandedUm: umOf(inputs.expanded) ?? 0, k: numberOf(inputs.k) ?? 2,
      material: inputs.material.value.trim(), howKnown: inputs.how.value.trim(), kind: inputs.kind.value, readings: numbersOf(inputs.readings.value).map((value) => (inputs.kind.value === 'thickness' ? fromUnit(value) : value)),
    }));
    const isWhole = ({ name, thicknessUm, readings }) => name !== '' && thicknessUm > 0 && readings.length > 0 && readings.every((value) => value > 0);
    return pieces.every(isWhole) ? pieces : null;
  }
  return { node: el('div', {}, list, more), read };
}

/** Spaces, semicolons and line ends part numbers; a comma is a decimal sign. */
function numbersOf(typed) {
  return typed.split(/[\s;]+/).filter((one) => one !== '').map((one) => Number(one.replace(',', '.')));
}
