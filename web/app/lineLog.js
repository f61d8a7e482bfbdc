/** What happened at a line, as people wrote it down: resin lots, screen changes, work on the gauge. A diagnosis looks whether a change began there. */
import { getJson } from './api.js';
import { careForm, folded, textField } from './careForm.js';
import { chips } from './chips.js';
import { el } from './elements.js';
import { atWallTime, momentOf, nowMs, wallTime } from './plantClock.js';
import { may } from './person.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('change');
const KINDS = ['resin-lot', 'screen-change', 'calibration'].map((kind) => [kind, t(`log.${kind}`)]);
const LONGEST = 200;

export function lineLog(line, changed) {
  const path = `/api/v1/lines/${encodeURIComponent(line)}/log`;
  const trouble = troubleLine();
  const entries = el('ul', { class: 'plain line-log' });
  const node = el('div', {}, trouble.node, entries, may('tend-alarms') ? folded(t('log.write'), form()) : null);

  async function refresh() {
    try {
      show(await getJson(path));
    } catch (error) {
      trouble.show(error);
    }
  }

  function show({ entries: all }) {
    entries.replaceChildren(...(all.length > 0 ? all.map(item) : [el('li', { class: 'soft' }, t('log.nothing'))]));
  }

  function form() {
    const kind = chips('kind', t('log.what'), KINDS);
    const at = textField('log-at', t('log.when'), { type: 'datetime-local', value: wallTime(nowMs()) });
    const words = textField('log-words', t('log.which'), { maxlength: LONGEST });
    return careForm({
      prefix: 'line-log', fields: [kind, at.node, words.node], verb: t('log.writeDown'),
      ask: () => {
        const chosen = kind.querySelector('input:checked')?.value;
        const moment = atWallTime(at.value());
        return !chosen ? { wanting: t('log.sayWhat'), focus: kind.querySelector('input') }
          : !Number.isFinite(moment) ? { wanting: t('log.sayWhen'), focus: at.input }
          : { path, body: { kind: chosen, at: new Date(moment).toISOString(), words: words.value() } };
      },
      done: changed,
    }).node;
  }

  function item(entry) {
    const { kind, kindWords, words, at, by, withdrawn } = entry;
    return el('li', { data: { withdrawn: withdrawn !== null } },
      el('div', {}, el('strong', {}, momentOf(at)), t(words ? 'log.isWith' : 'log.is', { kind: t.maybe(`log.${kind}`) ?? kindWords, words }), el('span', { class: 'soft' }, t('log.by', { by }))),
      withdrawn ? el('p', { class: 'soft' }, t('log.withdrawn', { ...withdrawn, at: momentOf(withdrawn.at) }))
        : may('tend-alarms') ? folded(t('log.withdraw'), withdrawal(entry)) : null);
  }

  function withdrawal({ id }) {
    const reason = textField(`log-why-${id}`, t('log.why'), { maxlength: LONGEST });
    return careForm({
      prefix: `withdraw-${id}`, fields: [reason.node], verb: t('log.withdrawThis'),
      ask: () => (reason.value() ? { path: `/api/v1/line-log/${id}/withdraw`, body: { reason: reason.value() } } : { wanting: t('log.sayWhy'), focus: reason.input }),
      done: changed,
    }).node;
  }
  refresh();
  return { node };
}
