/** What happened at a line, as people wrote it down: resin lots, screen changes, work on the gauge. A diagnosis looks whether a change began there. */
import { getJson } from './api.js';
import { careForm, folded, textField } from './careForm.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';
import { may } from './person.js';
import { troubleLine } from './trouble.js';

const KINDS = [['resin-lot', 'New resin lot'], ['screen-change', 'Screen changed'], ['calibration', 'Work on the gauge']];
const LONGEST = 200;

export function lineLog(line, changed) {
  const path = `/api/v1/lines/${encodeURIComponent(line)}/log`;
  const trouble = troubleLine();
  const entries = el('ul', { class: 'plain line-log' });
  const node = el('div', {}, trouble.node, entries, may('tend-alarms') ? folded('Write down what happened', form()) : null);

  async function refresh() {
    try {
      show(await getJson(path));
    } catch (error) {
      trouble.show(error);
    }
  }

  function show({ entries: all }) {
    entries.replaceChildren(...(all.length > 0 ? all.map(item) : [el('li', { class: 'soft' }, 'Nothing was written down in the last 31 days.')]));
  }

  function form() {
    const kind = chips('kind', 'What happened', KINDS);
    const at = textField('log-at', 'When', { type: 'datetime-local', value: wallTime(nowMs()) });
    const words = textField('log-words', 'Which one (a lot, an extruder; may be left empty)', { maxlength: LONGEST });
    return careForm({
      prefix: 'line-log', fields: [kind, at.node, words.node], verb: 'Write it down',
      ask: () => {
        const chosen = kind.querySelector('input:checked')?.value;
        const moment = atWallTime(at.value());
        return !chosen ? { wanting: 'Say what happened.', focus: kind.querySelector('input') }
          : !Number.isFinite(moment) ? { wanting: 'Say when.', focus: at.input }
          : { path, body: { kind: chosen, at: new Date(moment).toISOString(), words: words.value() } };
      },
      done: changed,
    }).node;
  }

  function item(entry) {
    const { kindWords, words, at, by, withdrawn } = entry;
    return el('li', { data: { withdrawn: withdrawn !== null } },
      el('div', {}, el('strong', {}, momentOf(at)), ` ${kindWords}${words ? `: ${words}` : ''}`, el('span', { class: 'soft' }, `, ${by}`)),
      withdrawn ? el('p', { class: 'soft' }, `Withdrawn by ${withdrawn.by}, ${momentOf(withdrawn.at)}: ${withdrawn.why}`)
        : may('tend-alarms') ? folded('Withdraw', withdrawal(entry)) : null);
  }

  function withdrawal({ id }) {
    const reason = textField(`log-why-${id}`, 'Why', { maxlength: LONGEST });
    return careForm({
      prefix: `withdraw-${id}`, fields: [reason.node], verb: 'Withdraw this entry',
      ask: () => (reason.value() ? { path: `/api/v1/line-log/${id}/withdraw`, body: { reason: reason.value() } } : { wanting: 'Say why.', focus: reason.input }),
      done: changed,
    }).node;
  }
  refresh();
  return { node };
}
