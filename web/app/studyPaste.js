/** Readings of a known piece, pasted or typed one after the other; they fill its next steps. */
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { may } from './person.js';

/** `keep(body, words)` keeps readings, gives whether they were. Gives {node, show(study)}. */
export function studyPaste(keep, said) {
  const piece = el('select', { id: 'paste-piece' });
  const operator = el('select', { id: 'paste-operator' });
  const readings = el('textarea', { id: 'paste-readings', rows: 3, inputmode: 'text' });
  const who = el('div', {}, el('label', { for: 'paste-operator' }, 'Operator'), operator);
  const which = el('div', {}, el('label', { for: 'paste-piece' }, 'Piece'), piece);
  const node = el('form', { class: 'study-paste', novalidate: true, on: { submit } }, which, who,
    el('div', { class: 'study-field' }, el('label', { for: 'paste-readings' }, 'Paste readings, µm, with spaces or line ends between'), readings),
    el('button', { type: 'submit', class: 'quiet', disabled: !may('send-files'), data: { action: 'paste-readings' } }, 'Keep them'));
  let study = null;

  function show(next) {
    study = next;
    node.hidden = study.kind === 'crossed' || study.entered === study.readings;
    fill(piece, study.parts);
    fill(operator, study.operators);
    which.hidden = study.parts.length === 1;
    who.hidden = study.operators.length === 1;
  }

  async function submit(event) {
    event.preventDefault();
    const typed = readings.value.split(/[\s;]+/).filter((word) => word !== '');
    const wrong = typed.find((word) => !(Number(word.replace(',', '.')) > 0));
    const open = study.steps.filter((step) => step.part === piece.value && step.operator === operator.value && step.um[0] === null).sort((a, b) => a.trial - b.trial);
    const fault = faultOf(typed, wrong, open.length);
    if (fault) {
      setText(said, fault);
      return readings.focus();
    }
    const body = { readings: typed.map((word, i) => ({ part: piece.value, operator: operator.value, trial: open[i].trial, layer: study.layers[0].name, um: Number(word.replace(',', '.')) })) };
    if (await keep(body, `${piece.value}: ${plural(typed.length, 'reading')} kept.`)) {
      readings.value = '';
    }
  }
  return { node, show };
}

function faultOf(typed, wrong, open) {
  if (typed.length === 0) {
    return 'Nothing is pasted yet.';
  }
  if (wrong !== undefined) {
    return `\u201c${wrong}\u201d is not a thickness in µm; write it like 14.2.`;
  }
  return typed.length > open ? `${plural(typed.length, 'reading')} pasted, but only ${plural(open, 'reading')} of this piece are still to come. Nothing was kept.` : null;
}

function fill(select, names) {
  const before = select.value;
  select.replaceChildren(...names.map((value) => el('option', { value }, value)));
  if (names.includes(before)) {
    select.value = before;
  }
}
