/** The page where engineers keep the causes to choose from and the plan of first checks, each with reason and name. */
import { getJson } from './api.js';
import { cautions } from './cautions.js';
import { causeList } from './causeList.js';
import { checkPlan } from './checkPlan.js';
import { el, setText } from './elements.js';
import { momentOf } from './plantClock.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('causes');

export function mount(root) {
  const trouble = troubleLine();
  const said = el('p', { class: 'limits-said', role: 'status', tabindex: -1, hidden: true });
  const causesPlace = el('section', { class: 'care-part' });
  const checksPlace = el('section', { class: 'care-part' });
  root.replaceChildren(el('div', { class: 'alarms-head care-head' }, el('h1', {}, t('title')), el('nav', { class: 'ranges', 'aria-label': t('whereFrom') }, el('a', { href: '/alarms.html' }, t('toAlarms')))),
    said, trouble.node, causesPlace, checksPlace);

  async function refresh() {
    try {
      const [causes, checks] = await Promise.all([getJson('/api/v1/causes'), getJson('/api/v1/checks')]);
      causesPlace.replaceChildren(el('h2', {}, t('toChoose')), causeList(causes, kept), versions(causes.versions));
      checksPlace.replaceChildren(el('h2', {}, t('firstChecks')), cautions(), checkPlan(checks, causes.causes, kept), versions(checks.versions));
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
    return el('p', { class: 'soft' }, t('nobodyYet'));
  }
  const words = ({ version, by, reason, at }) => el('li', {}, t.nodes('versionBy', { version, by, at: momentOf(at), reason: el('q', {}, reason) }));
  const [newest, ...older] = all;
  return el('div', { class: 'care-versions' }, el('ol', { class: 'plain' }, words(newest)),
    older.length > 0 ? el('details', {}, el('summary', {}, t('earlier', { n: older.length })), el('ol', { class: 'plain' }, older.map(words))) : null);
}
