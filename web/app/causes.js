/** The page where engineers keep the causes to choose from and the plan of first checks, each with reason and name. */
import { getJson } from './api.js';
import { cautions } from './cautions.js';
import { causeList } from './causeList.js';
import { checkPlan } from './checkPlan.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { momentOf } from './plantClock.js';
import { troubleLine } from './trouble.js';

export function mount(root) {
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1, hidden: true });
  const causesPlace = el('section', { class: 'care-part' });
  const checksPlace = el('section', { class: 'care-part' });
  root.replaceChildren(el('div', { class: 'alarms-head care-head' }, el('h1', {}, 'Causes and checks'), el('nav', { class: 'ranges', 'aria-label': 'Where from' }, el('a', { href: '/alarms.html' }, 'To the alarms'))),
    said, trouble.node, causesPlace, checksPlace);

  async function refresh() {
    try {
      const [causes, checks] = await Promise.all([getJson('/api/v1/causes'), getJson('/api/v1/checks')]);
      causesPlace.replaceChildren(el('h2', {}, 'Causes to choose from'), causeList(causes, kept), versions(causes.versions));
      checksPlace.replaceChildren(el('h2', {}, 'First checks'), cautions(), checkPlan(checks, causes.causes, kept), versions(checks.versions));
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }

  async function kept(words) {
    await refresh();
    said.hidden = false;
    setText(said, words);
    said.focus();
  }
  refresh();
  return () => {};
}

function versions(all) {
  if (all.length === 0) {
    return el('p', { class: 'soft' }, 'Nobody has changed it yet: this is what Filmward brings along.');
  }
  const words = ({ version, by, reason, at }) => el('li', {}, `Version ${version} by ${by}, ${momentOf(at)}: `, el('q', {}, reason));
  const [newest, ...older] = all;
  return el('div', { class: 'care-versions' }, el('ol', { class: 'plain' }, words(newest)),
    older.length > 0 ? el('details', {}, el('summary', {}, `Earlier: ${plural(older.length, 'version')}`), el('ol', { class: 'plain' }, older.map(words))) : null);
}
