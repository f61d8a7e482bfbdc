/** The reference pieces of a study that is planned: taken from those that the gauge room knows, or written down. */
import { el } from './elements.js';
import { unit } from './format.js';
import { choice, field, figure, numberOf, text } from './gaugeParts.js';
import { exact, lengthIn } from './structureNumbers.js';
import { pieceWords } from './studyKinds.js';
import { room } from './text.js';

const t = await room('study');
const FIRST = 5;

/** 0 where none is stated; NaN where it is no length. */
const uncertaintyIn = (typed) => (/^0*[.,]?0*$/.test(typed) ? 0 : lengthIn(typed) ?? NaN);

/** `known`: pieces of calibrations and checks. Gives {node, read(), show(kind)}. */
export function studyPieces(known) {
  const rows = [];
  const list = el('ol', { class: 'plain study-pieces' });
  const more = el('button', { type: 'button', class: 'quiet', on: { click: () => add() } }, t('anotherPiece'));
  const node = el('fieldset', { class: 'study-piece-set' }, el('legend', {}, t('referencePieces')),
    el('p', { class: 'soft' }, t('certificate')), list, more);

  function add() {
    const inputs = { name: text({ maxlength: 60 }), thickness: figure(), expanded: figure(), k: figure({ value: '2' }) };
    const from = choice([['', t('writtenBelow')], ...known.map((piece, at) => [String(at), pieceWords(piece)])], { data: { choose: 'piece' } });
    const row = { inputs, from, node: null };
    from.addEventListener('change', () => fill(row));
    const away = el('button', { type: 'button', class: 'quiet', on: { click: () => remove(row) } }, t('takeAway'));
    row.node = el('li', {}, known.length > 0 ? field(t('fromRoom'), from) : null,
      el('div', { class: 'study-piece' }, field(t('pieceName'), inputs.name), field(t('thickness'), inputs.thickness, unit()), field(t('uncertaintyU'), inputs.expanded, unit()), field(t('withK'), inputs.k)), away);
    rows.push(row);
    list.append(row.node);
    only();
  }

  function fill({ from, inputs }) {
    const piece = known[Number(from.value)];
    if (from.value !== '' && piece) {
      inputs.name.value = piece.name;
      inputs.thickness.value = exact(piece.thicknessUm);
      inputs.expanded.value = exact(piece.expandedUm);
      inputs.k.value = String(piece.k);
    }
  }

  function remove(row) {
    rows.splice(rows.indexOf(row), 1);
    row.node.remove();
    only();
  }

  function only() {
    rows.forEach((row) => (row.node.lastChild.hidden = rows.length === 1));
  }

  /** One piece but for linearity. */
  function show(kind) {
    node.hidden = kind === 'crossed';
    more.hidden = kind !== 'linearity';
    const wanted = kind === 'linearity' ? Math.max(rows.length, FIRST) : 1;
    while (rows.length < wanted) {
      add();
    }
    while (kind !== 'linearity' && rows.length > 1) {
      remove(rows.at(-1));
    }
  }

  function read() {
    return rows.map(({ from, inputs }) => {
      const source = from.value === '' ? {} : known[Number(from.value)];
      return { name: inputs.name.value.trim(), thicknessUm: lengthIn(inputs.thickness.value.trim()) ?? null, expandedUm: uncertaintyIn(inputs.expanded.value.trim()), k: numberOf(inputs.k) ?? 2, material: source.material ?? '', howKnown: source.howKnown ?? '' };
    }).filter(({ name, thicknessUm }) => name !== '' || thicknessUm !== null);
  }
  return { node, read, show };
}
