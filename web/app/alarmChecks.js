/** The plan of first checks at an alarm: each can be ticked as done, by whom, with what was seen. */
import { careForm, textField } from './careForm.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms', 'diagnosis');
const LONGEST = 500;

export function alarmChecks(alarm, { changed, refused }) {
  const general = el('ol', { class: 'checks' });
  const byCause = el('div', { class: 'cause-checks' });
  const kept = new Map();
  let shape = '';
  let number = 0;

  function itemOf(check) {
    const item = kept.get(check.words) ?? checkItem(alarm.id, check.words, (number += 1), { changed, refused });
    kept.set(check.words, item);
    item.update(check);
    return item.node;
  }

  /** Nodes stay while the plan is the same, so that a form which is being filled in stays too. */
  function update(now) {
    const all = [now.checks, now.causeChecks.map(({ code, checks }) => [code, checks]), now.formerChecks];
    const plan = JSON.stringify(all, (key, value) => (key === 'done' ? undefined : value));
    if (plan === shape) {
      [...now.checks, ...now.causeChecks.flatMap(({ checks }) => checks), ...now.formerChecks].forEach(itemOf);
      return;
    }
    shape = plan;
    general.replaceChildren(...now.checks.map(itemOf));
    byCause.replaceChildren(
      ...now.causeChecks.map(({ cause, checks }) => topic(t('ifSuspect', { cause: say(cause) }), checks.map(itemOf))),
      ...(now.formerChecks.length > 0 ? [topic(t('doneBefore'), now.formerChecks.map(itemOf))] : []));
  }
  update(alarm);
  return { node: el('div', {}, general, byCause), update };
}

function topic(words, items) {
  return el('details', {}, el('summary', {}, words), el('ol', { class: 'checks' }, items));
}

function checkItem(id, words, number, { changed, refused }) {
  const done = el('ul', { class: 'plain done' });
  const place = el('div', {});
  const button = el('button', { type: 'button', class: 'quiet', 'aria-expanded': 'false', 'aria-label': t('doneIs', { words: say(words) }), data: { action: 'check' }, on: { click: toggle } }, t('done'));
  const node = el('li', { class: 'check' }, el('div', { class: 'check-line' }, el('span', {}, say(words)), button), done, place);

  function toggle() {
    const opening = place.children.length === 0;
    button.setAttribute('aria-expanded', String(opening));
    place.replaceChildren(...(opening ? [form()] : []));
    place.querySelector('input')?.focus();
  }

  function form() {
    const outcome = chips('outcome', t('whatShowed'), [['found', t('thisIsIt')], ['not-found', t('notThis')]]);
    const note = textField(`check-note-${number}`, t('whatSeen'), { maxlength: LONGEST });
    return careForm({
      prefix: `check-${number}`, fields: [outcome, note.node], verb: t('keep'),
      ask: () => {
        const chosen = outcome.querySelector('input:checked')?.value;
        return chosen
          ? { path: `/api/v1/alarms/${id}/checks`, body: { check: words, outcome: chosen, note: note.value() } }
          : { wanting: t('sayWhat'), focus: outcome.querySelector('input') };
      },
      done: (answer) => (toggle(), button.focus(), changed(answer)),
      refused,
    }).node;
  }

  function update(check) {
    node.dataset.done = check.done.length > 0;
    done.replaceChildren(...check.done.map(({ outcome, note, by, at }) =>
      el('li', { data: { outcome } }, el('strong', {}, t(`outcome.${outcome}`)), note ? t('doneByNote', { by, at: momentOf(at), note }) : t('doneBy', { by, at: momentOf(at) }))));
  }
  return { node, update };
}
