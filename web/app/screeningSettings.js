/** What is done about each kind of misreading on one line and film; a change is a new version with a reason. */
import { getJson, postJson } from './api.js';
import { el, setText } from './elements.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('screening');
const TREATMENTS = ['hold-out', 'mark', 'off'].map((word) => [word, t(`treat.${word}`)]);

export function screeningSettings() {
  const body = el('div', {});
  const node = el('details', { class: 'screening-settings' }, el('summary', {}, t('whatIsDone')), body);
  let address = null;

  async function show(next) {
    address = next;
    if (!address) {
      body.replaceChildren(el('p', { class: 'soft' }, t('chooseLine')));
      return;
    }
    const found = await getJson(`/api/v1/lines/${encodeURIComponent(address.line)}/screening`, { structure: address.structure });
    body.replaceChildren(form(found), ...history(found.versions));
  }

  function form({ kinds, gaugeMhz, version }) {
    const said = el('p', { class: 'said', role: 'status' });
    const selects = kinds.map(({ kind, words, treatment }) => ({ kind, words, select: select(kind, treatment) }));
    const mhz = el('input', { id: 'gauge-mhz', type: 'number', min: 1, max: 1000, step: 'any', value: gaugeMhz ?? '', disabled: !may('decide') });
    const reason = el('input', { id: 'screening-why', type: 'text', maxlength: 400, autocomplete: 'off' });

    async function keep() {
      try {
        await postJson('/api/v1/screening/settings', {
          ...address,
          kinds: selects.map(({ kind, select: chosen }) => ({ kind, treatment: chosen.value })),
          gaugeMhz: mhz.value === '' ? null : Number(mhz.value),
          reason: reason.value.trim(),
        });
        await show(address);
      } catch (error) {
        setText(said, error.sentence);
      }
    }

    return el('div', { class: 'settings-form' },
      el('p', { class: 'soft' }, t(version === 0 ? 'asItComes' : 'asVersion', { ...address, version })),
      el('ul', { class: 'plain kinds' }, selects.map(({ kind, words, select: chosen }) => el('li', {}, el('label', { for: `kind-${kind}` }, t.maybe(`kind.${kind}`) ?? words), chosen))),
      el('p', {}, el('label', { for: 'gauge-mhz' }, t('frequency')), mhz, el('span', { class: 'soft' }, t('frequencyWhy'))),
      may('decide') ? el('p', { class: 'keep' }, el('label', { for: 'screening-why' }, `${t('reason')} `), reason, el('button', { type: 'button', on: { click: keep } }, t('keepVersion'))) : el('p', { class: 'soft' }, t('onlyDeciders')),
      said);
  }

  return { node, show };
}

function select(kind, treatment) {
  return el('select', { id: `kind-${kind}`, disabled: !may('decide') },
    TREATMENTS.map(([value, words]) => el('option', { value, selected: value === treatment }, words)));
}

function history(versions) {
  return versions.length === 0 ? [] : [el('ol', { class: 'plain soft' },
    versions.map((one) => el('li', {}, t('versionBy', { ...one, at: momentOf(one.at) }))))];
}
