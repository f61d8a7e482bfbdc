/** Set-up of structures: the films that are known, a form for a new one or a new version, and all versions of each. */
import { getJson } from './api.js';
import { el, setText } from './elements.js';
import { may, whyNot } from './person.js';
import { synchronise } from './plantClock.js';
import { structureDecision } from './structureDecision.js';
import { structureFile } from './structureFile.js';
import { structureForm } from './structureForm.js';
import { blank, formOf } from './structureModel.js';
import { nextSteps } from './structureSteps.js';
import { structureVersions } from './structureVersions.js';
import { structureView } from './structureView.js';
import { room } from './text.js';
import { troubleLine } from './trouble.js';

const t = await room('structures');

export function mount(root, params) {
  const trouble = troubleLine();
  const said = el('p', { class: 'structure-said', role: 'status', tabindex: -1, hidden: true });
  const steps = el('div', {});
  const list = el('nav', { class: 'ranges', 'aria-label': t('known') });
  const place = el('div', { class: 'structure-place-here' });
  const decision = structureDecision(() => told.newest, kept);
  let told = { newest: 0, structures: [] };
  let chosen = params.get('structure');
  let left = () => {};
  root.replaceChildren(el('div', { class: 'structures-head' }, el('h1', {}, t('title')), el('p', { class: 'soft' }, t('lead'))),
    said, trouble.node, steps, list, place, decision.node);

  async function refresh() {
    try {
      take(await getJson('/api/v1/structures'));
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  function take(answer) {
    told = answer;
    synchronise(told.now, told.zone);
    decision.clear();
    showOne();
  }

  const one = () => told.structures.find(({ code }) => code === chosen) ?? told.structures[0];

  function showList(current) {
    list.hidden = false;
    const addressOf = (code) => `/structures.html?${new URLSearchParams({ structure: code })}`;
    const links = told.structures.map(({ code, structure }) => el('a', { href: addressOf(code), 'aria-current': code === current ? 'page' : null }, code, el('span', { class: 'for-readers' }, ` ${structure.name}`)));
    list.replaceChildren(...links,
      links.length === 0 ? '' : el('button', { type: 'button', class: 'quiet', data: { action: 'new-structure' }, disabled: !may('decide'), on: { click: () => edit(blank(), true) } }, t('newStructure')),
      el('button', { type: 'button', class: 'quiet', data: { action: 'from-file' }, disabled: !may('decide'), on: { click: fromFile } }, t('fromFile')));
  }

  function showOne() {
    const known = one();
    steps.replaceChildren(nextSteps(told.structures));
    if (!known) {
      showList(null);
      return edit(blank(), true, null);
    }
    showList(known.code);
    place.replaceChildren(
      el('div', { class: 'structure-head' }, el('h2', {}, known.code), el('p', {}, known.structure.name), el('p', { class: 'soft' }, t(`standing.${known.standing}.version`, { version: known.version })),
        el('button', { type: 'button', data: { action: 'edit-structure' }, disabled: !may('decide'), on: { click: () => edit(formOf(known.structure), false) } }, t('edit'))),
      ...[whyNot('decide')].filter(Boolean), structureView(known), structureVersions(known, tookBack));
  }

  function edit(form, isNew, leave = back) {
    const made = structureForm(form, isNew, { look: decision.look, touched: decision.clear, leave });
    open(made, isNew ? (leave === null ? t('firstFilm') : t('newStructure')) : t('editOf', { code: form.code }));
    made.draw();
    if (leave === null) {
      made.node.before(...[whyNot('decide')].filter(Boolean));
    } else {
      made.focus();
    }
  }

  function fromFile() {
    const made = structureFile({ look: decision.look, touched: decision.clear, leave: back });
    open(made, null);
    made.focus();
  }

  /** While a film is described, the ways to others are out of reach, so that nothing typed is lost by a tap beside. */
  function open(made, title) {
    decision.clear();
    said.hidden = true;
    list.hidden = told.structures.length > 0;
    left = () => open(made, title);
    place.replaceChildren(...[title ? el('h2', {}, title) : null, made.node].filter(Boolean));
  }

  /** What was typed stays until another form is opened, so leaving by mistake costs nothing. */
  function back() {
    const again = left;
    decision.clear();
    showOne();
    said.hidden = false;
    said.replaceChildren(t('leftForm'), ' ', el('button', { type: 'button', class: 'quiet', data: { action: 'back-to-form' }, on: { click: again } }, t('backToForm')));
    said.focus();
  }

  async function kept(codes, isLater) {
    chosen = codes[0];
    await refresh();
    say(t(isLater ? 'keptLater' : 'kept', { codes: codes.join(', ') }));
  }

  function tookBack(answer, words) {
    take(answer);
    say(words);
  }

  function say(words) {
    said.hidden = false;
    setText(said, words);
    said.focus();
    said.scrollIntoView({ block: 'nearest' });
  }
  refresh();
  return () => {};
}
