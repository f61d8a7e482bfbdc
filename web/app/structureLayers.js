/** The layers of the structure form, outer face first: added, moved, taken out and put back. */
import { el } from './elements.js';
import { layerRow } from './structureLayer.js';
import { blankLayer } from './structureModel.js';
import { room } from './text.js';

const t = await room('structures');

/** `changed(true)` is called when the list is another. */
export function layerRows(layers, changed) {
  const list = el('ol', { class: 'plain structure-layers' });
  const back = el('p', { class: 'structure-back', role: 'status' });
  const add = el('button', { type: 'button', class: 'quiet', data: { action: 'add-layer' }, on: { click: addRow } }, t('addLayer'));
  const node = el('div', {}, list, back, add);
  let rows = layers.map((layer) => layerRow(layer, act));

  function addRow() {
    const row = layerRow(blankLayer(rows.length === 0 ? 'skin' : 'core'), act);
    rows = [...rows, row];
    draw();
    row.focus();
    changed(true);
  }

  function act(row, what) {
    const from = rows.indexOf(row);
    const to = from + (what === 'up' ? -1 : what === 'down' ? 1 : 0);
    if (what === 'remove') {
      takeOut(row, from);
    } else if (to !== from && rows[to]) {
      [rows[from], rows[to]] = [rows[to], rows[from]];
      draw();
      row.focusMove(what);
    }
    changed(true);
  }

  /** One click, so it can be put back with one. */
  function takeOut(row, at) {
    rows = rows.filter((each) => each !== row);
    draw();
    const putBack = () => {
      rows = [...rows.slice(0, at), row, ...rows.slice(at)];
      back.replaceChildren();
      draw();
      row.focus();
      changed(true);
    };
    const button = el('button', { type: 'button', class: 'quiet', data: { action: 'put-back' }, on: { click: putBack } }, t('putBack'));
    back.replaceChildren(el('span', {}, t('takenOut', { position: at + 1, name: row.name.input.value.trim() })), ' ', button);
    button.focus();
  }

  function draw() {
    rows.forEach((row, i) => row.place(i, rows.length));
    if (rows.length !== list.children.length || rows.some((row, i) => row.node !== list.children[i])) {
      list.replaceChildren(...rows.map((row) => row.node));
    }
  }

  const fields = () => rows.flatMap((row) => row.fields);
  const read = () => rows.map((row) => row.read());

  /** The same without a word about what is wrong. */
  function typed() {
    const wrongBefore = new Set(fields().filter((field) => field.isWrong()));
    const all = read();
    fields().filter((field) => field.isWrong() && !wrongBefore.has(field)).forEach((field) => field.complain(''));
    return all;
  }
  draw();
  return { node, fields, read, typed, nameField: (at) => rows[at].name };
}
