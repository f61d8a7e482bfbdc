/** The forms of the report as files, the signature that freezes it, and what a revision changed. */
import { getFile, postJson } from './api.js';
import { language } from './choices.js';
import { el, setText } from './elements.js';
import { keepFile } from './keepFile.js';
import { longWork } from './longWork.js';
import { allow, signature } from './person.js';
import { room } from './text.js';

const t = await room('report');
const FORMS = ['pdf', 'html', 'xlsx', 'json'];

export function reportIssue({ standing, seen }, query, list, done) {
  const paper = el('select', { id: 'report-paper' }, ['a4', 'letter'].map((name) => el('option', { value: name }, t(`paper.${name}`))));
  const tongue = el('select', { id: 'report-language' }, ['en', 'de'].map((code) => el('option', { value: code, selected: code === language() }, t(`language.${code}`))));
  const links = el('div', { class: 'report-forms' });
  const said = el('div', { class: 'said', role: 'status' });
  const draw = () => links.replaceChildren(...FORMS.map((form) => el('a', { class: 'button quiet', download: '', href: fileAddress(query, { form, paper: paper.value, language: tongue.value }), data: { form }, on: { click: make } }, t(`form.${form}`))));
  [paper, tongue].forEach((select) => select.addEventListener('change', draw));
  draw();
  return el('section', { class: 'report-issue' },
    el('h2', {}, t('asFile')),
    el('div', { class: 'report-choice' }, el('div', {}, el('label', { for: 'report-language' }, t('language')), tongue), el('div', {}, el('label', { for: 'report-paper' }, t('paper')), paper)), links, said,
    standing.changes.length > 0 ? changes(standing.changes) : null,
    query.id ? null : sign(query, seen, done));

  /** The browser alone would say neither how long it takes nor what went wrong. */
  async function make(event) {
    event.preventDefault();
    const { href, dataset } = event.currentTarget;
    try {
      keepFile(`filmward-${query.week}.${dataset.form}`, await longWork(said, t('beingMade'), (one) => getFile(href, one)));
      setText(said, '');
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
  }
}

function fileAddress({ id, week, line, structure, edition }, how) {
  const given = Object.entries({ ...(id ? { id } : { week, line, structure }), edition, ...how }).filter(([, value]) => value);
  return `/api/v1/reports/file?${new URLSearchParams(given)}`;
}

/** @param seen tells the server what the person looked at; it refuses where something else is known by now */
function sign({ week, line, structure }, seen, done) {
  const reason = el('textarea', { id: 'report-reason', rows: 2, maxlength: 500 });
  const said = el('p', { class: 'said', role: 'status' });
  return el('form', { class: 'report-sign', novalidate: true, on: { submit } },
    el('h2', {}, t('issue')), el('p', {}, t('issueMeans')),
    el('label', { for: 'report-reason' }, t('remark')), reason, signature('dispose'), allow(el('button', { type: 'submit', data: { action: 'issue' } }, t('issueNow', { week })), 'dispose'), said);

  async function submit(event) {
    event.preventDefault();
    if (reason.value.trim() === '') {
      setText(said, t('needsRemark'));
      reason.focus();
      return;
    }
    setText(said, t('beingIssued'));
    try {
      const order = { week, line: line ?? '', structure: structure ?? '', seen, reason: reason.value.trim() };
      const { revision } = await longWork(said, t('beingIssued'), (one) => postJson('/api/v1/reports/issue', order, one));
      setText(said, t('issued', { revision }));
      done();
    } catch (error) {
      setText(said, error.sentence ?? error.message);
    }
  }
}

function changes(all) {
  return el('details', { open: true }, el('summary', {}, t('changes', { n: all.length })), el('div', { class: 'table-frame', tabindex: 0, role: 'region', 'aria-label': t('changes', { n: all.length }) },
    el('table', { class: 'report-table' }, el('thead', {}, el('tr', {}, ['film', 'line', 'layer', 'figure', 'was', 'is'].map((key) => el('th', { scope: 'col' }, t(key))))),
      el('tbody', {}, all.map(({ line, structure, characteristic, figure, before, after }) => el('tr', {}, [structure, line, characteristic, figure, before || '\u2013', after || '\u2013'].map((words) => el('td', {}, words))))))));
}
