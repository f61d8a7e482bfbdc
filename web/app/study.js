/** Gauge studies: all of them with a plan for another one, or one of them from its first reading to its verdict. */
import { getJson, postJson } from './api.js';
import { cautions } from './cautions.js';
import { el, setText } from './elements.js';
import { gaugeRoomWays } from './gaugeRoom.js';
import { list } from './format.js';
import { allow, signature } from './person.js';
import { momentOf, synchronise } from './plantClock.js';
import { loadStudy, studyEntry } from './studyEntry.js';
import { extentOf } from './studyKinds.js';
import { studyPieceResult } from './studyPieceResult.js';
import { studyPlan } from './studyPlan.js';
import { studyResult } from './studyResult.js';
import { layerWord } from './studyWords.js';
import { nothingYet } from './nothingYet.js';
import { troubleLine } from './trouble.js';
import { room } from './text.js';

const t = await room('study');
const LONGEST = 500;

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
        el('div', { class: 'study-head' }, el('h1', {}, t('title')), el('p', { class: 'soft' }, t('question'))),
        el('div', { class: 'study-all' }, el('section', {}, el('h2', {}, t('studies')), listOf(studies)),
          structures.length === 0 ? await nothingYet(t('noStructure')) : studyPlan(structures, pieces, ({ id }) => location.assign(`/study.html?id=${id}`))));
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
    return el('p', { class: 'soft' }, t('noneYet'));
  }
  return el('ol', { class: 'plain study-list' }, studies.map((study) => el('li', {},
    el('a', { href: `/study.html?id=${study.id}` }, t('of', study)),
    el('span', {}, study.state === 'open' ? t('openEntered', { state: t('state.open'), entered: String(study.entered), readings: String(study.readings) }) : t(`state.${study.state}`)),
    el('strong', { class: 'study-kind' }, t(`kind.${study.kind}`)),
    el('span', { class: 'soft' }, t('plannedBy', { extent: extentOf(study), by: study.by, at: momentOf(study.at) })),
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
      head.replaceChildren(el('h1', {}, t('of', study)), el('p', {}, el('a', { href: '/study.html' }, t('all'))), aboutOf(study));
      entry.node.hidden = study.state !== 'open';
      end.node.hidden = study.state !== 'open';
      entry.show(study);
      setText(caution, t(study.kind === 'crossed' ? 'spots' : 'pieces'));
      result.show(study);
      ofPieces.show(study);
      end.show(study);
      waiting.hidden = study.refused.length === 0 || study.entered === 0;
      setText(waiting, study.kind === 'crossed' ? t('notComplete', { what: list(study.refused.map(({ layer }) => layerWord(layer))) }) : t('notTold', { what: study.refused.flatMap(({ reasons }) => reasons).join('; ') }));
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
  return el('p', { class: 'soft study-about' }, t('about', { kind: t(`kind.${kind}`), extent: extentOf(study), by, at: momentOf(at), seed: String(seed) }), el('q', {}, purpose),
    ended ? [t(state === 'finished' ? 'finishedBy' : 'givenUpBy', { by: ended.by, at: momentOf(ended.at) }), el('q', {}, ended.words)] : null);
}

/** A study ends with a conclusion, or is given up with a reason. */
function ending(id, changed) {
  const words = el('textarea', { id: 'study-words', rows: 2, maxlength: LONGEST });
  const said = el('p', { class: 'said', role: 'status' });
  const finish = allow(el('button', { type: 'button', class: 'decide', data: { action: 'finish-study' }, on: { click: () => send('finish', 'conclusion') } }, t('finish')), 'decide');
  const abandon = allow(el('button', { type: 'button', class: 'quiet', data: { action: 'abandon-study' }, on: { click: () => send('abandon', 'reason') } }, t('giveUp')), 'decide');
  const node = el('section', { class: 'study-end' }, el('h2', {}, t('endIt')),
    el('div', { class: 'study-field' }, el('label', { for: 'study-words' }, t('whatItMeans')), words),
    signature('decide'), el('div', { class: 'study-buttons' }, finish, abandon), said);

  async function send(what, name) {
    if (words.value.trim() === '') {
      setText(said, t('writeFirst'));
      return words.focus();
    }
    try {
      await postJson(`/api/v1/gauge-studies/${id}/${what}`, { [name]: words.value.trim() });
      await changed();
    } catch (error) {
      setText(said, t('notDone', { why: error.sentence ?? error.message }));
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
