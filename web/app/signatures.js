/** The page where engineers keep the signatures: what a cause looks like in the readings, made of statistics, with causes and checks. */
import { getJson } from './api.js';
import { careForm, textField } from './careForm.js';
import { cautions } from './cautions.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { momentOf } from './plantClock.js';
import { signatureForm } from './signatureForm.js';
import { troubleLine } from './trouble.js';

const LONGEST_REASON = 500;
const EMPTY = { code: '', name: '', kind: 'process', conditions: [{ statistic: 'level-z', comparison: 'at-least', threshold: 4, weight: 1, role: 'needed' }], causes: [], checks: [], tellsApart: '' };

export function mount(root) {
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1, hidden: true });
  const place = el('section', { class: 'care-part' });
  const hits = el('section', { class: 'care-part' });
  const words = el('section', { class: 'care-part' });
  root.replaceChildren(
    el('div', { class: 'alarms-head care-head' }, el('h1', {}, 'Signatures'), el('nav', { class: 'ranges', 'aria-label': 'Where from' }, el('a', { href: '/causes.html' }, 'To causes and checks'))),
    said, trouble.node, place, hits, words);

  async function refresh() {
    try {
      const [answer, rate, causes] = await Promise.all([getJson('/api/v1/signatures'), getJson('/api/v1/diagnosis/hit-rate'), getJson('/api/v1/causes')]);
      place.replaceChildren(...editor(answer, causes.causes, kept));
      hits.replaceChildren(el('h2', {}, 'How often the true cause was named'), rateTable(rate));
      words.replaceChildren(el('h2', {}, 'What signatures are made of'), statisticsTable(answer.statistics));
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function kept(text) {
    await refresh();
    said.hidden = false;
    setText(said, text);
    said.focus();
  }
  refresh();
  return () => {};
}

function editor({ signatures, statistics, version, versions }, causes, kept) {
  const list = el('div', { class: 'signature-list' });
  let forms = signatures.map((one) => signatureForm(one, { statistics, causes, removed }));
  const add = el('button', { type: 'button', class: 'quiet', data: { action: 'add-signature' }, on: { click: addOne } }, 'Add a signature');
  const reason = textField('signatures-reason', 'Reason', { rows: 2, maxlength: LONGEST_REASON });
  const form = careForm({
    permission: 'decide', prefix: 'signatures', fields: [list, add, reason.node], verb: 'Keep these signatures',
    ask: () => (reason.value()
      ? { path: '/api/v1/signatures', body: { version, reason: reason.value(), signatures: forms.map((one) => one.value()) } }
      : { wanting: 'Write the reason: whoever reads a diagnosis will ask.', focus: reason.input }),
    done: (answer) => kept(`Version ${answer.version} of the signatures holds now.`),
  });

  function addOne() {
    const one = signatureForm(EMPTY, { statistics, causes, removed });
    forms = [...forms, one];
    draw();
    one.open();
  }

  function removed(one) {
    forms = forms.filter((other) => other !== one);
    draw();
    add.focus();
  }

  function draw() {
    list.replaceChildren(...forms.map(({ node }) => node));
  }
  draw();
  return [
    el('h2', {}, 'What is looked for'),
    el('p', {}, 'A diagnosis computes the statistics below around an alarm and compares them with each signature. A needed condition must be met; one that supports raises the score by its weight. The first condition says what a signature is about.'),
    cautions(), form.node, versionList(versions),
  ];
}

function versionList(versions) {
  return versions.length === 0
    ? el('p', { class: 'soft' }, 'Nobody has changed them yet: these are what Filmward brings along.')
    : el('ol', { class: 'plain care-versions' }, versions.map(({ version, by, reason, at }) => el('li', {}, `Version ${version} by ${by}, ${momentOf(at)}: `, el('q', {}, reason))));
}

function rateTable({ all, byCause }) {
  if (all.alarms === 0) {
    return el('p', {}, 'Nobody has named the true cause of an alarm yet. Each one that is named at its alarm counts here.');
  }
  const row = (name, { alarms, first, shown, silent }) => el('tr', {}, el('th', { scope: 'row' }, name), [alarms, first, shown, silent].map((n) => el('td', { class: 'figure' }, String(n))));
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'How often the true cause was named' }, el('table', {},
    el('caption', {}, `${plural(all.alarms, 'alarm')} whose true cause was named`),
    el('thead', {}, el('tr', {}, ['Cause', 'Alarms', 'First hint right', 'In the first three', 'Nothing named'].map((word, i) => el('th', { scope: 'col', class: i === 0 ? null : 'figure' }, word)))),
    el('tbody', {}, row('all', all), byCause.map((one) => row(one.cause, one)))));
}

function statisticsTable(statistics) {
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': 'Statistics' }, el('table', { class: 'statistics' },
    el('thead', {}, el('tr', {}, ['Statistic', 'Side', 'Unit', 'Meaning'].map((word) => el('th', { scope: 'col' }, word)))),
    el('tbody', {}, statistics.map(({ word, facet, unit, meaning }) => el('tr', {}, el('th', { scope: 'row' }, word), el('td', {}, facet), el('td', {}, unit || '\u2013'), el('td', {}, meaning))))));
}
