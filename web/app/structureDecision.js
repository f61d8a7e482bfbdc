/** Before a structures file is kept: what it changes, in words; from when on; why; one button. */
import { postYaml } from './api.js';
import { chips } from './chips.js';
import { el, setText } from './elements.js';
import { may, signature } from './person.js';
import { atWallTime, nowMs, wallTime } from './plantClock.js';
import { changeWords } from './structureWords.js';
import { room } from './text.js';

const t = await room('structures');
const LONGEST_REASON = 500;
const HOUR_MS = 3_600_000;

/** `seen()` is the newest file that is known here; `kept(codes, words)` is called after success. */
export function structureDecision(seen, kept) {
  const node = el('section', { class: 'structure-decision', hidden: true, tabindex: -1, 'aria-label': t('preview') });

  function clear() {
    node.hidden = true;
    node.replaceChildren();
  }

  /** With `asItIs` the text is kept as it came, with its comments; else as the server writes it. */
  async function look(name, text, { asItIs = false } = {}) {
    node.hidden = false;
    node.replaceChildren(el('p', { role: 'status' }, t('looking')));
    try {
      const preview = await postYaml(`/api/v1/structures/preview?${new URLSearchParams({ name })}`, text);
      node.replaceChildren(...shown(preview, { name, text: asItIs ? text : preview.yaml }));
    } catch (error) {
      node.replaceChildren(el('p', { class: 'trouble', role: 'alert' }, t('cannotBeKept')), faultsOf(error));
    }
    node.focus();
    node.scrollIntoView({ block: 'nearest' });
  }

  function shown({ structures }, file) {
    const changing = structures.filter(({ state }) => state !== 'same');
    const isRefused = structures.some(({ otherLayers }) => otherLayers);
    const parts = [el('h3', {}, t('preview')), ...structures.map(entry)];
    return isRefused || changing.length === 0 ? parts : [...parts, decide(changing, file)];
  }

  function decide(changing, file) {
    const reason = el('textarea', { id: 'structure-reason', rows: 2, maxlength: LONGEST_REASON });
    const from = el('input', { id: 'structure-from', type: 'datetime-local', value: wallTime(nowMs() + HOUR_MS) });
    const fromPlace = el('div', { hidden: true }, el('label', { for: 'structure-from' }, t('fromWhen')), from);
    const said = el('p', { class: 'said', role: 'status' });
    const button = el('button', { type: 'submit', class: 'decide', data: { action: 'keep-structure' }, disabled: !may('decide') }, t('keep', { n: changing.length }));
    const form = el('form', { class: 'structure-decide', novalidate: true, on: { submit, change: () => { fromPlace.hidden = form.elements.when.value === 'now'; } } },
      chips('when', t('when'), [['now', t('when.now')], ['later', t('when.later')]]), fromPlace,
      el('p', { class: 'caution' }, t('bearsUpon')),
      el('div', {}, el('label', { for: reason.id }, t('reason')), reason), signature('decide'), button, said);
    form.elements.when.value = 'now';

    async function submit(event) {
      event.preventDefault();
      const isLater = form.elements.when.value === 'later';
      const moment = isLater ? atWallTime(from.value) : null;
      const wanting = isLater && !(moment > nowMs()) ? t('laterOnly') : reason.value.trim() === '' ? t('writeReason') : '';
      setText(said, wanting || t('beingKept'));
      if (wanting) {
        return (isLater && !(moment > nowMs()) ? from : reason).focus();
      }
      button.disabled = true;
      const query = { name: file.name, why: reason.value.trim(), seen: seen(), ...(isLater ? { holdsFrom: new Date(moment).toISOString() } : {}) };
      try {
        await postYaml(`/api/v1/structures?${new URLSearchParams(query)}`, file.text);
        clear();
        kept(changing.map(({ code }) => code), isLater);
      } catch (error) {
        setText(said, t('notKept', { error: error.sentence ?? error.message }));
        button.disabled = false;
      }
    }
    return form;
  }
  return { node, look, clear };
}

function entry({ code, state, structure, changes, samples, otherLayers }) {
  const words = { code, n: structure.layers.length };
  return el('div', { class: 'structure-preview', data: { state } },
    el('h4', {}, t(`state.${state}`, words)),
    otherLayers ? el('p', { class: 'trouble', role: 'alert' }, t('otherLayers', { n: samples, code })) : null,
    changes.length > 0 ? el('ul', { class: 'structure-changes' }, changes.map((change) => el('li', {}, changeWords(change)))) : null,
    samples > 0 && changes.some(({ part, what }) => what === 'moved' || (part === 'layer' && what === 'name')) ? el('p', { class: 'caution' }, t('placesStay', { n: samples })) : null);
}

/** The server says all that is wrong with a file, one a line. */
function faultsOf({ message }) {
  return el('ul', { class: 'structure-faults' }, message.split('\n').map((line) => el('li', {}, line)));
}
