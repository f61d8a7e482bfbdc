/** Bringing a file in: chosen or dropped, sent one after the other, each with its own line of what became of it. */
import { postCsv } from './api.js';
import { el, setText } from './elements.js';
import { wayToChart } from './firstSteps.js';
import { longWork } from './longWork.js';
import { mappingFor, propose } from './mapping.js';
import { may, whyNot } from './person.js';
import { room } from './text.js';

const t = await room('intake');

export function uploadPlace(done) {
  const input = el('input', { id: 'upload-file', type: 'file', accept: '.csv,.txt,.tsv,text/csv', multiple: true, disabled: !may('send-files'), on: { change: chosen } });
  const why = el('input', { id: 'upload-why', maxlength: 500, autocomplete: 'off' });
  const said = el('ul', { class: 'plain uploads', 'aria-live': 'polite' });
  const node = el('div', { class: 'upload', data: { action: 'upload' }, on: { dragover: over, dragleave: leave, drop: dropped } },
    el('label', { for: 'upload-file' }, t('bringIn')),
    el('p', { class: 'soft' }, t('dropHere')),
    input, whyNot('send-files') ?? reason(why), said);
  const asked = el('div', { class: 'mapping-place' });
  let line = Promise.resolve();

  function over(event) {
    event.preventDefault();
    node.dataset.over = 'true';
  }

  function leave() {
    node.dataset.over = 'false';
  }

  function dropped(event) {
    event.preventDefault();
    leave();
    if (!may('send-files')) {
      return;
    }
    sendAll([...event.dataTransfer.files]);
  }

  function chosen() {
    sendAll([...input.files]);
    input.value = '';
  }

  function sendAll(files) {
    for (const file of files) {
      const item = el('li', {}, t('fileWaiting', { name: file.name }));
      said.prepend(item);
      line = line.then(() => send(file, item));
    }
  }

  async function send(file, item) {
    setText(item, t('fileBeingRead', { name: file.name }));
    try {
      const proposal = await propose(file);
      if (proposal.needs !== 'nothing') {
        setText(item, t('fileHeadings', { name: file.name }));
        if (!(await mappingFor(file, proposal, asked))) {
          setText(item, t('fileLeft', { name: file.name }));
          return;
        }
      }
      const address = `/api/v1/files?${new URLSearchParams({ name: file.name, why: why.value.trim() })}`;
      const entry = await longWork(item, t('fileBeingRead', { name: file.name }), (waiting) => postCsv(address, file, waiting));
      setText(item, t('fileIs', { name: file.name, outcome: outcome(entry) }));
      item.dataset.state = entry.quarantined > 0 ? 'quarantined' : 'read';
      const way = entry.new > 0 ? await wayToChart() : null;
      item.append(...(way ? [' ', way] : []));
      done(entry);
    } catch (error) {
      setText(item, t('fileNotTaken', { name: file.name, error: error.sentence ?? error.message }));
      item.dataset.state = 'refused';
    }
  }
  return el('div', {}, node, asked);
}

/** Why files are brought in, where somebody wants to say so. */
function reason(why) {
  return el('details', { class: 'upload-who' }, el('summary', {}, t('whyKept')),
    el('div', { class: 'upload-sender' }, el('div', {}, el('label', { for: 'upload-why' }, t('why')), why)));
}

function outcome({ readings, new: fresh, known, corrected, quarantined }) {
  return t(quarantined > 0 ? 'outcomeHeld' : 'outcome', { n: readings, fresh, known, corrected, quarantined });
}
