/** Gauge studies: all of them with a plan for another one, or one of them from its first reading to its verdict. */
import { getJson, postJson } from './api.js';
import { cautions } from './cautions.js';
import { el, setText } from './elements.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import { list } from './format.js';
import { allow, signature } from './person.js';
import { momentOf, synchronise } from './plantClock.js';
import { loadStudy, studyEntry } from './studyEntry.js';
import { extentOf, KINDS } from './studyKinds.js';
import { studyPieceResult } from './studyPieceResult.js';
import { studyPlan } from './studyPlan.js';
import { studyResult } from './studyResult.js';
import { STATES } from './studyWords.js';
import { troubleLine } from './trouble.js';

const LONGEST = 500;
const PIECES = 'Take off the piece and couple anew for each reading. The result is told when all readings are there, so that nobody measures towards it.';
const SPOTS = 'Spots must be marked and found again, and the probe coupled anew each time; all layers are judged by themselves, for the total may be good while a thin layer is not.';

export function mount(root, params) {
  const trouble = troubleLine();
  const id = params.get('id');
  const body = el('div', {});
  root.replaceChildren(gaugeRoomWays('study'), trouble.node, body);
  return id === null ? mountAll(body, trouble) : mountOne(body, trouble, id);
}

function mountAll(body, trouble) {
  async function refresh() {
    try {
      const { now, zone, studies, structures, pieces } = await getJson('/api/v1/gauge-studies');
      synchronise(now, zone);
      body.replaceChildren(
        el('div', { class: 'study-head' }, el('h1', {}, 'Gauge studies'), el('p', { class: 'soft' }, 'How far can each layer\u2019s reading be believed?')),
        el('div', { class: 'study-all' }, el('section', {}, el('h2', {}, 'Studies'), listOf(studies)),
          structures.length === 0 ? el('p', { class: 'soft' }, 'No structure is known yet; a study needs the film that is measured.') : studyPlan(structures, pieces, ({ id }) => location.assign(`/study.html?id=${id}`))));
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }
  refresh();
  return () => {};
}

function listOf(studies) {
  if (studies.length === 0) {
    return el('p', { class: 'soft' }, 'None yet. Plan one beside this.');
  }
  return el('ol', { class: 'plain study-list' }, studies.map((study) => el('li', {},
    el('a', { href: `/study.html?id=${study.id}` }, `${study.gauge}, ${study.structure}`),
    el('span', {}, study.state === 'open' ? `${STATES.open}, ${study.entered} of ${study.readings} entered` : STATES[study.state]),
    el('strong', { class: 'study-kind' }, KINDS[study.kind].name),
    el('span', { class: 'soft' }, `${extentOf(study)}; planned by ${study.by}, ${momentOf(study.at)}`),
    study.ended ? el('q', {}, study.ended.words) : el('span', { class: 'soft' }, study.purpose))));
}

function mountOne(body, trouble, id) {
  const head = el('div', { class: 'study-head' });
  const entry = studyEntry(refresh);
  const result = studyResult();
  const ofPieces = studyPieceResult();
  const caution = el('p', { class: 'study-caution' });
  const end = ending(id, refresh);
  const waiting = el('p', { class: 'soft study-waiting', hidden: true });
  body.replaceChildren(head, caution, result.node, ofPieces.node, waiting, entry.node, end.node, cautions());

  async function refresh() {
    try {
      const study = await loadStudy(id);
      synchronise(study.now, study.zone);
      head.replaceChildren(el('h1', {}, `${study.gauge}, ${study.structure}`), el('p', {}, el('a', { href: '/study.html' }, 'All studies')), aboutOf(study));
      entry.node.hidden = study.state !== 'open';
      end.node.hidden = study.state !== 'open';
      entry.show(study);
      setText(caution, study.kind === 'crossed' ? SPOTS : PIECES);
      result.show(study);
      ofPieces.show(study);
      end.show(study);
      waiting.hidden = study.refused.length === 0 || study.entered === 0;
      setText(waiting, study.kind === 'crossed' ? `Not complete yet: ${list(study.refused.map(({ layer }) => layer))}.` : `Not told yet: ${study.refused.flatMap(({ reasons }) => reasons).join('; ')}.`);
      trouble.clear();
    } catch (error) {
      trouble.show(error);
    }
    document.documentElement.dataset.ready = 'true';
  }
  refresh();
  return () => result.destroy();
}

function aboutOf(study) {
  const { kind, by, at, purpose, seed, state, ended } = study;
  return el('p', { class: 'soft study-about' }, `${KINDS[kind].name}: ${extentOf(study)}. Planned by ${by}, ${momentOf(at)} (order ${seed}): `, el('q', {}, purpose),
    ended ? [` ${state === 'finished' ? 'Finished' : 'Given up'} by ${ended.by}, ${momentOf(ended.at)}: `, el('q', {}, ended.words)] : null);
}

/** A study ends with a conclusion, or is given up with a reason. */
function ending(id, changed) {
  const words = el('textarea', { id: 'study-words', rows: 2, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const finish = allow(el('button', { type: 'button', class: 'decide', data: { action: 'finish-study' }, on: { click: () => send('finish', 'conclusion') } }, 'Finish the study'), 'decide');
  const abandon = allow(el('button', { type: 'button', class: 'quiet', data: { action: 'abandon-study' }, on: { click: () => send('abandon', 'reason') } }, 'Give it up'), 'decide');
  const node = el('section', { class: 'study-end' }, el('h2', {}, 'End it'),
    el('div', { class: 'study-field' }, el('label', { for: 'study-words' }, 'What it means for the use of the gauge, or why it is given up'), words),
    signature('decide'), el('div', { class: 'study-buttons' }, finish, abandon), said);

  async function send(what, name) {
    if (words.value.trim() === '') {
      setText(said, 'Write it down first: the next one to trust the gauge will ask.');
      return words.focus();
    }
    try {
      await postJson(`/api/v1/gauge-studies/${id}/${what}`, { [name]: words.value.trim() });
      await changed();
    } catch (error) {
      setText(said, `Not done. ${error.sentence ?? error.message}`);
    }
  }

  function show(study) {
    finish.disabled = finish.disabled || study.entered < study.readings;
    if (study.entered === study.readings) {
      allow(finish, 'decide');
    }
  }
  return { node, show };
}
