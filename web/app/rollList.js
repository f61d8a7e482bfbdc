/** Rolls, each with what was counted on it and what was decided, and the form that decides about those ticked. */
import { careForm, textField } from './careForm.js';
import { CAUTIONS } from './cautions.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('alarms');
const LONGEST = 500;
const CHOICES = [['held', t('hold')], ['released', t('release')], ['scrapped', t('scrap')], ['rework', t('rework')]];
const STATES = Object.fromEntries(['held', 'released', 'scrapped', 'rework'].map((state) => [state, t(`roll.${state}`)]));

/**
 * `factsOf(roll)` are nodes beside the roll's name. `alarmId` goes with a decision; null leaves that of the one before.
 * `all` is {words, wanted(roll)}: which rolls one button ticks together.
 */
export function rollPicker({ factsOf, alarmId, all, decided, refused }) {
  const list = el('ul', { class: 'plain rolls' });
  const reason = textField('roll-reason', t('reason'), { rows: 2, maxlength: LONGEST });
  const choice = chips('roll-state', t('whatBecomes'), CHOICES.filter(([state]) => state === 'held' || may('dispose')));
  const chosen = new Set();
  let rolls = [];
  const form = careForm({
    prefix: 'roll', fields: [choice, reason.node], verb: t('decide'),
    ask, done: (answer) => (chosen.clear(), (reason.input.value = ''), decided(answer)), refused,
  });
  const every = el('button', { type: 'button', class: 'quiet', hidden: true, data: { action: 'tick-all' }, on: { click: tickAll } }, all.words);
  const deciding = el('div', { class: 'roll-deciding', hidden: true }, cautions(), form.node);

  function ask() {
    const state = choice.querySelector('input:checked')?.value;
    if (!state) {
      return { wanting: t('chooseBecomes'), focus: choice.querySelector('input') };
    }
    if (!reason.value()) {
      return { wanting: t('writeReason'), focus: reason.input };
    }
    const named = rolls.filter((roll) => chosen.has(keyOf(roll))).map(({ line, structure, roll, version }) => ({ line, structure, roll, version }));
    const body = { rolls: named, reason: reason.value(), ...(alarmId === null ? {} : { alarm: alarmId }) };
    return state === 'held' ? { path: '/api/v1/rolls/hold', body } : { path: '/api/v1/rolls/disposition', body: { ...body, state } };
  }

  function tick(key, input) {
    if (input.checked) {
      chosen.add(key);
    } else {
      chosen.delete(key);
    }
    showForm();
  }

  function tickAll() {
    rolls.filter(all.wanted).forEach((roll) => chosen.add(keyOf(roll)));
    show(rolls);
    choice.querySelector('input').focus();
  }

  function showForm() {
    every.hidden = rolls.filter(all.wanted).length < 2;
    deciding.hidden = chosen.size === 0;
    setText(form.button, t('decideAbout', { n: chosen.size }));
  }

  function show(now) {
    rolls = now;
    const there = new Set(rolls.map(keyOf));
    [...chosen].filter((key) => !there.has(key)).forEach((key) => chosen.delete(key));
    list.replaceChildren(...rolls.map((roll, i) => itemOf(roll, i)));
    showForm();
  }

  function itemOf(roll, i) {
    const key = keyOf(roll);
    const input = el('input', { type: 'checkbox', id: `roll-${i}`, checked: chosen.has(key), on: { change: (event) => tick(key, event.target) } });
    return el('li', { class: 'roll', data: { state: roll.state ?? 'none' } },
      el('label', { class: 'tick', for: input.id }, input, el('span', {}, t('rollIs', { roll: roll.roll }))),
      el('div', { class: 'roll-facts' }, factsOf(roll)),
      el('div', { class: 'roll-decisions' }, decisionsOf(roll)));
  }
  return { node: el('div', {}, every, list, deciding), show, isBusy: () => deciding.contains(document.activeElement) };
}

function keyOf({ line, structure, roll }) {
  return JSON.stringify([line, structure, roll]);
}

/** What holds first; earlier decisions are folded away. */
function decisionsOf({ decisions }) {
  const [now, ...before] = decisions.map((one) => el('p', {}, el('strong', {}, STATES[one.state]), t('decidedBy', { by: one.by, at: momentOf(one.at) }), one.reason));
  return now === undefined
    ? [el('p', { class: 'soft' }, t('notDecided'))]
    : [now, before.length > 0 ? el('details', {}, el('summary', {}, t('before', { n: before.length })), before) : null];
}

/** A chart releases nothing; a person does. */
function cautions() {
  return el('ul', { class: 'cautions', 'aria-label': t('cautions') }, [CAUTIONS[0], CAUTIONS[2]].map((text) => el('li', {}, text)));
}
