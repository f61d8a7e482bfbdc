/** The plan of first checks as a form: a field for each pattern and each cause, one check a line, in order. */
import { careForm, textField } from './careForm.js';
import { el } from './elements.js';

const LONGEST_REASON = 500;
const LONGEST_PLAN = 2_400;

const ABOUT = {
  'all-layers': 'All layers together, or the total',
  'some-layers': 'One layer, or those of one extruder',
  'across-the-web': 'Lanes that differ across the web',
};

/** `kept(words)` is called after success. */
export function checkPlan({ patterns, causes: planned, version }, causes, kept) {
  const byPattern = patterns.map(({ pattern, words, checks }) => ({ pattern, ...planField(`plan-${pattern}`, ABOUT[pattern] ?? words, checks) }));
  const byCause = causes
    .filter(({ code, standing }) => standing === 'active' || planned.some((one) => one.code === code))
    .map(({ code, words }) => ({ code, ...planField(`plan-cause-${code}`, words, planned.find((one) => one.code === code)?.checks ?? []) }));
  const reason = textField('checks-reason', 'Reason', { rows: 2, maxlength: LONGEST_REASON });
  const form = careForm({
    permission: 'decide',
    prefix: 'checks',
    fields: [
      el('p', {}, 'One check a line, the nearest and cheapest first. They stand at every alarm of that pattern, and whoever does one can say what it showed.'),
      el('div', { class: 'plan-fields' }, byPattern.map(({ node }) => node)),
      el('details', { open: planned.length > 0 }, el('summary', {}, 'For a suspected cause'),
        el('p', { class: 'soft' }, 'These stand folded away under the others. A cause without checks stays empty.'),
        el('div', { class: 'plan-fields' }, byCause.map(({ node }) => node))),
      reason.node,
    ],
    verb: 'Keep this plan',
    ask: () => {
      const empty = byPattern.find(({ checks }) => checks().length === 0);
      return empty ? { wanting: 'Each pattern needs at least one check.', focus: empty.input }
        : !reason.value() ? { wanting: 'Write the reason: whoever does the checks will ask.', focus: reason.input }
        : {
          path: '/api/v1/checks',
          body: {
            version, reason: reason.value(),
            patterns: byPattern.map(({ pattern, checks }) => ({ pattern, checks: checks() })),
            causes: byCause.map(({ code, checks }) => ({ code, checks: checks() })).filter(({ checks }) => checks.length > 0),
          },
        };
    },
    done: (answer) => kept(`Version ${answer.version} of the first checks holds now.`),
  });
  return form.node;
}

function planField(id, label, checks) {
  const field = textField(id, label, { rows: Math.max(3, checks.length + 1), maxlength: LONGEST_PLAN });
  field.input.value = checks.join('\n');
  return { node: field.node, input: field.input, checks: () => field.input.value.split('\n').map((line) => line.trim()).filter(Boolean) };
}
