/** One signature as a form that folds: name, kind, conditions, causes, checks and what tells it apart. */
import { textField } from './careForm.js';
import { decimalSign } from './choices.js';
import { el } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('signatures');
const say = await sayings('alarms', 'diagnosis');

const KINDS = ['process', 'measurement'].map((kind) => [kind, t(`kind.${kind}`)]);
const COMPARISONS = ['at-least', 'at-most', 'size-at-least', 'size-at-most'].map((one) => [one, t(`compare.${one}`)]);
const ROLES = ['needed', 'supports'].map((role) => [role, t(`condition.${role}`)]);
let number = 0;

export function signatureForm(signature, { statistics, causes, removed }) {
  const id = `signature-${(number += 1)}`;
  const name = textField(`${id}-name`, t('name'), { maxlength: 80 });
  const code = textField(`${id}-code`, t('code'), { maxlength: 40, readonly: signature.code !== '' });
  const kind = choice(`${id}-kind`, t('whatOtherwise'), KINDS, signature.kind);
  const suspects = textField(`${id}-causes`, t('causes'), { rows: 3, list: null });
  const checks = textField(`${id}-checks`, t('checks'), { rows: 4 });
  const apart = textField(`${id}-apart`, t('apart'), { rows: 2, maxlength: 300 });
  const rows = el('div', { class: 'conditions' });
  let conditions = signature.conditions.map((one) => conditionRow(one, statistics, drop));
  name.input.value = signature.name;
  code.input.value = signature.code;
  suspects.input.value = signature.causes.map(({ code: cause, words }) => `${cause}: ${words}`).join('\n');
  checks.input.value = signature.checks.join('\n');
  apart.input.value = signature.tellsApart;

  const title = el('span', {}, say(signature.name) || t('newOne'));
  const node = el('details', { class: 'signature', data: { signature: signature.code } },
    el('summary', {}, title, el('span', { class: 'soft' }, t(`short.${signature.kind === 'measurement' ? 'measurement' : 'process'}`))),
    el('div', { class: 'signature-form' }, name.node, code.node, kind.node,
      el('h3', {}, t('conditions')), rows,
      el('div', { class: 'limits-moves' }, el('button', { type: 'button', class: 'quiet', on: { click: addRow } }, t('addCondition'))),
      suspects.node, el('p', { class: 'soft' }, t('causeCodes', { codes: causes.map((one) => one.code).join(', ') })),
      checks.node, apart.node,
      el('div', { class: 'limits-moves' }, el('button', { type: 'button', class: 'quiet', on: { click: () => removed(self) } }, t('remove')))));
  name.input.addEventListener('input', () => (title.textContent = name.value() || t('newOne')));

  function addRow() {
    const row = conditionRow({ statistic: statistics[0].word, comparison: 'at-least', threshold: 0, weight: 1, role: 'supports' }, statistics, drop);
    conditions = [...conditions, row];
    draw();
    row.focus();
  }

  function drop(row) {
    conditions = conditions.filter((other) => other !== row);
    draw();
  }

  function draw() {
    rows.replaceChildren(...conditions.map((row) => row.node));
  }

  const self = {
    node,
    open: () => ((node.open = true), name.input.focus()),
    value: () => ({
      code: code.value(), name: name.value(), kind: kind.value(),
      conditions: conditions.map((row) => row.value()),
      causes: lines(suspects).map(suspect),
      checks: lines(checks),
      tellsApart: apart.value(),
    }),
  };
  draw();
  return self;
}

const lines = (field) => field.value().split('\n').map((line) => line.trim()).filter(Boolean);

function suspect(line) {
  const colon = line.indexOf(':');
  return colon < 0 ? { code: line, words: '' } : { code: line.slice(0, colon).trim(), words: line.slice(colon + 1).trim() };
}

function choice(id, label, options, chosen) {
  const select = el('select', { id }, options.map(([value, words]) => el('option', { value, selected: value === chosen }, words)));
  return { node: el('div', {}, el('label', { for: id }, label), select), value: () => select.value, select };
}

function conditionRow(condition, statistics, drop) {
  const id = `condition-${(number += 1)}`;
  const statistic = choice(`${id}-statistic`, t('head.statistic'), statistics.map(({ word }) => [word, word]), condition.statistic);
  const comparison = choice(`${id}-comparison`, t('is'), COMPARISONS, condition.comparison);
  const threshold = textField(`${id}-threshold`, t('threshold'), { inputmode: 'decimal' });
  const weight = textField(`${id}-weight`, t('weight'), { inputmode: 'decimal' });
  const role = choice(`${id}-role`, t('andIt'), ROLES, condition.role);
  const meaning = el('p', { class: 'soft' });
  threshold.input.value = shown(condition.threshold);
  weight.input.value = shown(condition.weight);
  const remove = el('button', { type: 'button', class: 'quiet', 'aria-label': t('removeCondition'), on: { click: () => drop(row) } }, t('removeIt'));
  const node = el('div', { class: 'condition-row' }, statistic.node, comparison.node, threshold.node, weight.node, role.node, remove, meaning);
  statistic.select.addEventListener('change', explain);
  explain();

  function explain() {
    const { meaning: words, unit } = statistics.find(({ word }) => word === statistic.value());
    meaning.textContent = unit ? t('meaningIn', { meaning: say(words), of: say(unit) }) : say(words);
  }

  const row = {
    node,
    focus: () => statistic.select.focus(),
    value: () => ({ statistic: statistic.value(), comparison: comparison.value(), threshold: figure(threshold), weight: figure(weight), role: role.value() }),
  };
  return row;
}

/** A figure of any size, to be written over. */
const shown = (value) => String(value).replace('.', decimalSign());

/** A number with a point or a comma; what is none goes as text, so that the server says what is wrong. */
function figure(field) {
  const text = field.value().replace(',', '.');
  return text !== '' && Number.isFinite(Number(text)) ? Number(text) : field.value();
}
