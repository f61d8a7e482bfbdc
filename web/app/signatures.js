/** The page where engineers keep the signatures: what a cause looks like in the readings, made of statistics, with causes and checks. */
import { getJson } from './api.js';
import { careForm, textField } from './careForm.js';
import { cautions } from './cautions.js';
import { el, setText } from './elements.js';
import { momentOf } from './plantClock.js';
import { signatureForm } from './signatureForm.js';
import { troubleLine } from './trouble.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('signatures');
const say = await sayings('alarms', 'diagnosis');

const LONGEST_REASON = 500;
const EMPTY = { code: '', name: '', kind: 'process', conditions: [{ statistic: 'level-z', comparison: 'at-least', threshold: 4, weight: 1, role: 'needed' }], causes: [], checks: [], tellsApart: '' };

export function mount(root) {
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1, hidden: true });
  const place = el('section', { class: 'care-part' });
  const hits = el('section', { class: 'care-part' });
  const words = el('section', { class: 'care-part' });
  root.replaceChildren(
    el('div', { class: 'alarms-head care-head' }, el('h1', {}, t('title')), el('nav', { class: 'ranges', 'aria-label': t('whereFrom') }, el('a', { href: '/causes.html' }, t('toCauses')))),
    said, trouble.node, place, hits, words);

  async function refresh() {
    try {
      const [answer, rate, causes] = await Promise.all([getJson('/api/v1/signatures'), getJson('/api/v1/diagnosis/hit-rate'), getJson('/api/v1/causes')]);
      place.replaceChildren(...editor(answer, causes.causes, kept));
      hits.replaceChildren(el('h2', {}, t('howOften')), rateTable(rate));
      words.replaceChildren(el('h2', {}, t('madeOf')), statisticsTable(answer.statistics));
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
  const add = el('button', { type: 'button', class: 'quiet', data: { action: 'add-signature' }, on: { click: addOne } }, t('add'));
  const reason = textField('signatures-reason', t('reason'), { rows: 2, maxlength: LONGEST_REASON });
  const form = careForm({
    permission: 'decide', prefix: 'signatures', fields: [list, add, reason.node], verb: t('keep'),
    ask: () => (reason.value()
      ? { path: '/api/v1/signatures', body: { version, reason: reason.value(), signatures: forms.map((one) => one.value()) } }
      : { wanting: t('writeReason'), focus: reason.input }),
    done: (answer) => kept(t('kept', { version: answer.version })),
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
    el('h2', {}, t('lookedFor')),
    el('p', {}, t('howItWorks')),
    cautions(), form.node, versionList(versions),
  ];
}

function versionList(versions) {
  return versions.length === 0
    ? el('p', { class: 'soft' }, t('nobodyYet'))
    : el('ol', { class: 'plain care-versions' }, versions.map(({ version, by, reason, at }) => el('li', {}, t.nodes('versionBy', { version, by, at: momentOf(at), reason: el('q', {}, reason) }))));
}

function rateTable({ all, byCause }) {
  if (all.alarms === 0) {
    return el('p', {}, t('noRate'));
  }
  const row = (name, { alarms, first, shown, silent }) => el('tr', {}, el('th', { scope: 'row' }, name), [alarms, first, shown, silent].map((n) => el('td', { class: 'figure' }, String(n))));
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('howOften') }, el('table', {},
    el('caption', {}, t('rateOf', { n: all.alarms })),
    el('thead', {}, el('tr', {}, ['cause', 'alarms', 'first', 'shown', 'silent'].map((head, i) => el('th', { scope: 'col', class: i === 0 ? null : 'figure' }, t(`rate.${head}`))))),
    el('tbody', {}, row(t('all'), all), byCause.map((one) => row(say(one.cause), one)))));
}

function statisticsTable(statistics) {
  return el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('statistics') }, el('table', { class: 'statistics' },
    el('thead', {}, el('tr', {}, ['statistic', 'side', 'unit', 'meaning'].map((head) => el('th', { scope: 'col' }, t(`head.${head}`))))),
    el('tbody', {}, statistics.map(({ word, facet, unit, meaning }) => el('tr', {}, el('th', { scope: 'row' }, word), el('td', {}, say(facet)), el('td', {}, say(unit) || '\u2013'), el('td', {}, say(meaning)))))));
}
