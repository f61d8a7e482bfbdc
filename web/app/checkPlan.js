/** The plan of first checks as a form: a field for each pattern and each cause, one check a line, in order. */
import { careForm, textField } from './careForm.js';
import { el } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('causes');
const say = await sayings('alarms');

const LONGEST_REASON = 500;
const LONGEST_PLAN = 2_400;

/** `kept(words)` is called after success. */
export function checkPlan({ patterns, causes: planned, version }, causes, kept) {
  const byPattern = patterns.map(({ pattern, words, checks }) => ({ pattern, ...planField(`plan-${pattern}`, t.maybe(`pattern.${pattern}`) ?? words, checks) }));
  const byCause = causes
    .filter(({ code, standing }) => standing === 'active' || planned.some((one) => one.code === code))
    .map(({ code, words }) => ({ code, ...planField(`plan-cause-${code}`, say(words), planned.find((one) => one.code === code)?.checks ?? []) }));
  const reason = textField('checks-reason', t('reason'), { rows: 2, maxlength: LONGEST_REASON });
  const form = careForm({
    permission: 'decide',
    prefix: 'checks',
    fields: [
      el('p', {}, t('oneALine')),
      el('div', { class: 'plan-fields' }, byPattern.map(({ node }) => node)),
      el('details', { open: planned.length > 0 }, el('summary', {}, t('forSuspected')),
        el('p', { class: 'soft' }, t('foldedAway')),
        el('div', { class: 'plan-fields' }, byCause.map(({ node }) => node))),
      reason.node,
    ],
    verb: t('keepPlan'),
    ask: () => {
      const empty = byPattern.find(({ checks }) => checks().length === 0);
      return empty ? { wanting: t('needsCheck'), focus: empty.input }
        : !reason.value() ? { wanting: t('writeReasonPlan'), focus: reason.input }
        : {
          path: '/api/v1/checks',
          body: {
            version, reason: reason.value(),
            patterns: byPattern.map(({ pattern, checks }) => ({ pattern, checks: checks() })),
            causes: byCause.map(({ code, checks }) => ({ code, checks: checks() })).filter(({ checks }) => checks.length > 0),
          },
        };
    },
    done: (answer) => kept(t('planKept', { version: answer.version })),
  });
  return form.node;
}

function planField(id, label, checks) {
  const field = textField(id, label, { rows: Math.max(3, checks.length + 1), maxlength: LONGEST_PLAN });
  field.input.value = checks.join('\n');
  return { node: field.node, input: field.input, checks: () => field.input.value.split('\n').map((line) => line.trim()).filter(Boolean) };
}
