/** Bringing a file in: chosen or dropped, sent one after the other, each with its own line of what became of it. */
import { postCsv } from './api.js';
import { el, setText } from './elements.js';
import { plural } from './format.js';
import { mappingFor, propose } from './mapping.js';
import { may, whyNot } from './person.js';

export function uploadPlace(done) {
  const input = el('input', { id: 'upload-file', type: 'file', accept: '.csv,.txt,.tsv,text/csv', multiple: true, disabled: !may('send-files'), on: { change: chosen } });
  const why = el('input', { id: 'upload-why', maxlength: 500, autocomplete: 'off' });
  const said = el('ul', { class: 'plain uploads', 'aria-live': 'polite' });
  const node = el('div', { class: 'upload', data: { action: 'upload' }, on: { dragover: over, dragleave: leave, drop: dropped } },
    el('label', { for: 'upload-file' }, 'Bring in a file'),
    el('p', { class: 'soft' }, 'Drop CSV files here, or choose them. The same file twice changes nothing.'),
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
      const item = el('li', {}, `${file.name}: waiting`);
      said.prepend(item);
      line = line.then(() => send(file, item));
    }
  }

  async function send(file, item) {
    setText(item, `${file.name}: being read\u2026`);
    try {
      const proposal = await propose(file);
      if (proposal.needs !== 'nothing') {
        setText(item, `${file.name}: has headings of its own, see below`);
        if (!(await mappingFor(file, proposal, asked))) {
          setText(item, `${file.name} was left; nothing of it is kept.`);
          return;
        }
      }
      const entry = await postCsv(`/api/v1/files?${new URLSearchParams({ name: file.name, why: why.value.trim() })}`, file);
      setText(item, `${file.name}: ${outcome(entry)}`);
      item.dataset.state = entry.quarantined > 0 ? 'quarantined' : 'read';
      done(entry);
    } catch (error) {
      setText(item, `${file.name} was not taken. ${error.sentence ?? error.message}`);
      item.dataset.state = 'refused';
    }
  }
  return el('div', {}, node, asked);
}

/** Why files are brought in, where somebody wants to say so. */
function reason(why) {
  return el('details', { class: 'upload-who' }, el('summary', {}, 'Why, kept with what it corrects'),
    el('div', { class: 'upload-sender' }, el('div', {}, el('label', { for: 'upload-why' }, 'Why'), why)));
}

function outcome({ readings, new: fresh, known, corrected, quarantined }) {
  const parts = `${plural(readings, 'reading')}, ${fresh} new, ${known} known already, ${corrected} corrected`;
  return quarantined > 0 ? `${parts}, ${quarantined} in quarantine: see below` : `${parts}.`;
}
