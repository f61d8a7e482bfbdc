/** One alarm in full: why it was raised, what to check first, cause and action, the rolls, what people did. */
import { el, setText } from './elements.js';
import { acknowledgeControl } from './acknowledge.js';
import { alarmChecks } from './alarmChecks.js';
import { alarmHints } from './alarmHints.js';
import { ownerPart } from './alarmOwner.js';
import { alarmRolls } from './alarmRolls.js';
import { timeline } from './alarmTimeline.js';
import { marksOf } from './alarmCard.js';
import { groupedSignals, stateInWords } from './alarmWords.js';
import { cautions } from './cautions.js';
import { findingForm } from './finding.js';
import { holdControl } from './holds.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { explain, layerName } from './words.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms');
const OTHER = 'other';

export function alarmDetail(alarm, causes, hooks) {
  const marks = el('div', { class: 'alarm-marks' });
  const title = el('h2', {});
  const state = el('p', { class: 'lead' });
  const place = el('p', { class: 'soft' });
  const ahead = el('p', { class: 'ahead' });
  const why = el('ul', { class: 'plain signals' });
  const checks = alarmChecks(alarm, hooks);
  const hints = alarmHints(alarm);
  const history = timeline(alarm, hooks);
  const owner = ownerPart(alarm, hooks);
  const rolls = alarmRolls(alarm, hooks);
  const finding = el('div', {});
  const control = acknowledgeControl(alarm.id, hooks);
  const holds = holdControl(alarm, hooks);
  const node = el('div', { class: 'alarm-detail', data: { detail: alarm.id } },
    el('a', { class: 'button quiet back', href: `${location.pathname}${location.search}` }, t('allAlarms')),
    marks, title, place, state, control.node, ahead,
    el('div', { class: 'alarm-acts' }, holds.node, owner.node),
    el('div', { class: 'alarm-parts' },
      part(t('checkFirst'), checks.node, cautions()),
      part(t('mayHaveCaused'), hints.node),
      part(t('whyRaised'), why),
      part(t('causeAndAction'), finding),
      part(t('history'), history.node)),
    part(t('rollsSince'), rolls.node));
  let keptFinding;
  let takenBy;
  finding.addEventListener('input', () => (finding.dataset.touched = 'true'));

  function update(now) {
    node.dataset.state = now.state;
    node.dataset.taken = now.acknowledged !== null;
    marks.replaceChildren(...marksOf(now));
    setText(title, say(now.title));
    setText(place, t('detailPlace', { line: now.line, structure: now.structure, group: now.group, since: momentOf(now.openedAt), last: momentOf(now.lastSignalAt), roll: now.roll, sample: now.sample }));
    setText(state, stateInWords(now));
    control.update(now);
    why.replaceChildren(...signalsOf(now));
    setText(ahead, aheadInWords(now));
    holds.update(now);
    [checks, hints, history, owner, rolls].forEach((one) => one.update(now));
    showFinding(now);
  }

  /** A form that somebody is filling in stays as it is until what is kept has changed. */
  function showFinding(now) {
    const kept = JSON.stringify([now.finding, now.closed]);
    const isSame = kept === keptFinding && (finding.dataset.touched === 'true' || now.acknowledged?.by === takenBy);
    if (isSame) {
      return;
    }
    keptFinding = kept;
    takenBy = now.acknowledged?.by;
    finding.dataset.touched = 'false';
    const written = now.finding ? findingWords(now.finding) : null;
    const form = now.closed ? null : findingForm(now, causes, hooks.changed);
    finding.replaceChildren(...[written, form].filter(Boolean));
  }
  update(alarm);
  return { node, update, id: alarm.id };
}

/** When film would be out of specification, while it is still going there. */
function aheadInWords({ outOfSpecAt, state }) {
  return outOfSpecAt && (state === 'unacknowledged' || state === 'acknowledged')
    ? t('ahead', { at: momentOf(outOfSpecAt) })
    : '';
}

function signalsOf(alarm) {
  const groups = groupedSignals(alarm).map((group) =>
    el('li', {},
      shape('unusual'),
      el('div', {},
        el('a', { href: chartAddress(alarm, group) }, t('layersWhy', { layers: layerName(group), words: group.words })),
        el('span', { class: 'soft' }, t('signalsOf', { n: group.count, at: momentOf(group.last.takenAt), roll: group.last.roll, sample: group.last.sample })),
        el('p', { class: 'explained' }, explain(group)))));
  const spec = alarm.outOfSpec ? [el('li', {}, shape('spec'), el('div', {}, el('strong', {}, t('outOfSpec')), el('p', { class: 'explained' }, t('outOfSpecWhy'))))] : [];
  const left = alarm.signalCount - alarm.signals.length;
  return [...spec, ...groups, ...(left > 0 ? [el('li', {}, el('span', {}), t('moreSignals', { n: left }))] : [])];
}

function chartAddress({ line, structure }, { kind, position }) {
  return `/layer.html?${new URLSearchParams({ line, structure, kind, position })}`;
}

function findingWords({ code, cause: given, note, action, by, at }) {
  const cause = code === OTHER ? given : say(given);
  return el('dl', { class: 'found' },
    el('div', {}, el('dt', {}, t('cause')), el('dd', {}, note ? t('causeNote', { cause, note }) : cause)),
    el('div', {}, el('dt', {}, t('action')), el('dd', {}, action || t('stillToCome'))),
    el('div', {}, el('dt', {}, t('by')), el('dd', {}, t('byAt', { by, at: momentOf(at) }))));
}

function part(title, ...body) {
  return el('section', {}, el('h3', {}, title), body);
}
