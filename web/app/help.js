/** Help: how to read the screens, what the words and marks mean, what to do when a layer calls. */
import { cautions } from './cautions.js';
import { el } from './elements.js';
import { helpChart, helpFilm, helpRibbon } from './helpDrawings.js';
import { MEANINGS } from './limitsWords.js';
import { mark, priorityMark } from './marks.js';
import { explain, shortTest } from './words.js';

const MARKS = [
  ['act', 'Somebody is needed now: an open alarm names this layer, or a reading is out of spec. Outlined instead of filled once somebody has taken it.'],
  ['watch', 'Worth a look: a test is fulfilled that raises no alarm by itself. Advice only.'],
  ['gauge', 'The reading looks misread. Measure again before anybody touches the line.'],
  ['stale', 'No fresh data. The line turns grey and says for how long.'],
  ['missing', 'This layer was not measured in the newest sample. Not zero, not bad: not measured.'],
  ['collecting', 'No limits are in force yet, so nothing raises an alarm.'],
];
const TESTS = ['beyond-limit', 'two-of-three', 'four-of-five', 'eight-in-a-row', 'trend', 'stratification', 'mixture', 'alternation'].map((test) => ({ chart: 'xbar', test, side: 'low' }));
const AVERAGE = { chart: 'ewma', test: 'beyond-limit', side: 'low' };
const RANGE = { chart: 'range', test: 'beyond-limit', side: 'high' };
const WORDS = [
  ['Structure, layer', 'The ordered stack a film is made of. Layer 1 is the outer face. What the gauge cannot tell apart is shown as one, with a dotted boundary between its roles.'],
  ['Sample, lane, reading', 'A sample is taken at one time across the web. A lane is a place across the web. A reading is one layer, one lane, one sample.'],
  ['Mean and range', 'Of the readings of one layer in one sample: their average, and the distance from the thinnest to the thickest.'],
  ['Control limits', 'Computed from the process itself: where means of an unchanged process lie. They say nothing about what the customer wants.'],
  ['Specification limits', 'What the customer allows. They say nothing about whether the process has changed.'],
  ['Baseline', 'The samples that control limits were computed from. A person chooses them; a sample is left out only with a cause, and the cause is kept.'],
  ['Cp, Cpk', 'How well the spread within samples fits the specification. Called capability only while the process is stable.'],
  ['Pp, Ppk', 'The same with the whole spread of what was made. A description, not a promise.'],
];
const STATES = ['collecting', 'trial', 'provisional', 'frozen', 'suspect', 'retired'];
const STEPS = [
  ['See', 'The top of the board names the line and the layer. Tap "See the alarm".'],
  ['Take it', 'Tap "Seen, mine", then your name. Everybody sees that somebody is on it.'],
  ['Check', 'Go through the first checks, with the cautions below in mind.'],
  ['Write down', 'Cause and action, now or later. "not found yet" is an honest answer. The alarm closes by itself when the film is back to usual and the cause is written.'],
];
const KEYS = [
  ['\u2190 \u2192', 'on a layer: the layer before, the layer after'],
  ['\u2190 \u2192 Home End', 'on a chart that has the focus: step through the samples and read each one'],
  ['Tab, Enter', 'reach and open everything'],
];

export function mount(root) {
  const film = helpFilm();
  const ribbon = helpRibbon();
  root.replaceChildren(el('div', { class: 'help' },
    el('h1', {}, 'How to read Filmward'),
    part('The film', el('div', { class: 'help-pair' }, film.node, el('ul', {},
      el('li', {}, 'Each band is a layer, the outer face on top. Heights are to scale; slanted strokes at the left mark a layer that is drawn taller than it is, because it would vanish.'),
      el('li', {}, 'The hatching is the role: skin leans right, seal leans left, core is dashed, a tie is crossed, a barrier is closed like a wall.'),
      el('li', {}, 'The cut end is the newest mean against the target line: left of it thinner, right of it thicker. The deviation is exaggerated by the factor that is written below the film.'),
      el('li', {}, 'No colour means that nobody is needed.'),
      el('li', {}, 'What a film is made of, and what its versions changed, stands under ', el('a', { href: '/structures.html' }, 'Structures'), '.')))),
    part('The ribbon', el('div', { class: 'help-pair' }, ribbon.node, el('p', {}, 'The last samples of one layer. The paper strip is what is usual; when the ink leaves it, something has changed. A gap is a sample in which the layer was not measured.'))),
    part('Two kinds of limits, two words', el('div', { class: 'help-pair' }, helpChart(), el('div', {},
      el('p', {}, mark('unusual'), ' The process does what it does not usually do, by its control limits (lines that end in UCL and LCL). The film may still be good.'),
      el('p', {}, mark('spec'), ' A reading lies where the customer does not want it: in the hatched land. The process may do that every day.'),
      el('p', {}, 'One can be true without the other, so they have two marks everywhere.')))),
    part('Marks', table(MARKS.map(([name, text]) => [mark(name), text])),
      el('p', { class: 'priorities' }, ['high', 'medium', 'low'].map((priority) => priorityMark(priority)))),
    part('Tests', table([...TESTS.map((test) => [shortTest(test), explain(test)]), [shortTest(AVERAGE), explain(AVERAGE)], ['range beyond limit', explain(RANGE)]])),
    part('When a layer calls', el('ol', {}, STEPS.map(([word, text]) => el('li', {}, el('strong', {}, `${word}. `), text)))),
    part('Cautions', cautions()),
    part('How far limits are to be relied on',
      el('p', { class: 'help-lead' }, 'Limits belong to one film on one line, all its layers and the total together. They never move by themselves: each step is a decision of a person, with a name and a reason. New limits hold from the next sample on; only the first ones hold from the beginning of their baseline. What was judged stays judged.'),
      table(STATES.map((state) => [state, MEANINGS[state]])),
      el('p', { class: 'help-lead' }, 'The ', el('a', { href: '/limits.html' }, 'limits of a line'), ' show what a new baseline would give, which of its samples need a look, and which alarms the old and the new limits would have raised, before anybody decides.')),
    part('Words', table(WORDS)),
    part('Keys', table(KEYS))));
  const draw = () => [film, ribbon].forEach((drawing) => drawing.draw());
  const observer = new ResizeObserver(draw);
  observer.observe(root);
  document.documentElement.dataset.ready = 'true';
  return () => observer.disconnect();
}

function part(title, ...body) {
  return el('section', {}, el('h2', {}, title), body);
}

function table(rows) {
  return el('dl', { class: 'help-table' }, rows.map(([term, text]) => el('div', {}, el('dt', {}, term), el('dd', {}, text))));
}
