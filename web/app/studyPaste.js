/** Readings of a known piece, pasted or typed one after the other; they fill its next steps. */
import { el, setText } from './elements.js';
import { may } from './person.js';
import { lengthIn } from './structureNumbers.js';
import { room } from './text.js';

const t = await room('study');

/** `keep(body, words)` keeps readings, gives whether they were. Gives {node, show(study)}. */
export function studyPaste(keep, said) {
  const piece = el('select', { id: 'paste-piece' });
  const operator = el('select', { id: 'paste-operator' });
  const readings = el('textarea', { id: 'paste-readings', rows: 3, inputmode: 'text' });
  const who = el('div', {}, el('label', { for: 'paste-operator' }, t('col.operator')), operator);
  const which = el('div', {}, el('label', { for: 'paste-piece' }, t('col.piece')), piece);
  const node = el('form', { class: 'study-paste', novalidate: true, on: { submit } }, which, who,
    el('div', { class: 'study-field' }, el('label', { for: 'paste-readings' }, t('pasteReadings')), readings),
    el('button', { type: 'submit', class: 'quiet', disabled: !may('send-files'), data: { action: 'paste-readings' } }, t('keepThem')));
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
    const wrong = typed.find((word) => !lengthIn(word));
    const open = study.steps.filter((step) => step.part === piece.value && step.operator === operator.value && step.um[0] === null).sort((a, b) => a.trial - b.trial);
    const fault = faultOf(typed, wrong, open.length);
    if (fault) {
      setText(said, fault);
      return readings.focus();
    }
    const body = { readings: typed.map((word, i) => ({ part: piece.value, operator: operator.value, trial: open[i].trial, layer: study.layers[0].name, um: lengthIn(word) })) };
    if (await keep(body, t('pastedKept', { piece: piece.value, readings: t('readingsN', { n: typed.length }) }))) {
      readings.value = '';
    }
  }
  return { node, show };
}

function faultOf(typed, wrong, open) {
  if (typed.length === 0) {
    return t('nothingPasted');
  }
  if (wrong !== undefined) {
    return t('noThickness', { typed: wrong });
  }
  return typed.length > open ? t('tooMany', { typed: t('readingsN', { n: typed.length }), open: t('readingsN', { n: open }) }) : null;
}

function fill(select, names) {
  const before = select.value;
  select.replaceChildren(...names.map((value) => el('option', { value }, value)));
  if (names.includes(before)) {
    select.value = before;
  }
}
