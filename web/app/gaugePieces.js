/** Reference pieces with what the gauge read on them; one to start with, more for a zero offset. */
import { el } from './elements.js';
import { choice, field, figure, numberOf, text } from './gaugeParts.js';

const KINDS = [['thickness', 'Thickness shown, µm'], ['time', 'Time of flight, ns']];

/** `changed()` is called when something is typed; `read()` gives the pieces, or null where one is not filled in. */
export function gaugePieces(changed) {
  const list = el('ol', { class: 'plain gauge-pieces', on: { input: changed } });
  const more = el('button', { type: 'button', class: 'quiet', on: { click: () => (add(), changed()) } }, 'Another piece');
  const rows = [];
  add();

  function add() {
    const inputs = { name: text(), thickness: figure(), expanded: figure(), k: figure({ value: '2' }), material: text(), how: text(), kind: choice(KINDS), readings: text({ maxlength: 1000, inputmode: 'text' }) };
    const row = { inputs };
    const away = el('button', { type: 'button', class: 'quiet', on: { click: () => remove(row) } }, 'Take away');
    row.node = el('li', {}, el('div', { class: 'gauge-row' },
      field('Piece', inputs.name), field('Thickness', inputs.thickness, 'µm'), field('Expanded uncertainty U', inputs.expanded, 'µm'), field('with k', inputs.k),
      field('Material', inputs.material), field('How it is known', inputs.how),
      field('Readings are', inputs.kind), field('Readings, with spaces between', inputs.readings)), away);
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
      name: inputs.name.value.trim(), thicknessUm: numberOf(inputs.thickness), expandedUm: numberOf(inputs.expanded) ?? 0, k: numberOf(inputs.k) ?? 2,
      material: inputs.material.value.trim(), howKnown: inputs.how.value.trim(), kind: inputs.kind.value, readings: numbersOf(inputs.readings.value),
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
