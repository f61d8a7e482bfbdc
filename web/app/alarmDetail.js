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
import { plural } from './format.js';
import { holdControl } from './holds.js';
import { shape } from './marks.js';
import { momentOf } from './plantClock.js';
import { explain } from './words.js';

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
    el('a', { class: 'button quiet back', href: `${location.pathname}${location.search}` }, 'All alarms'),
    marks, title, place, state, control.node, ahead,
    el('div', { class: 'alarm-acts' }, holds.node, owner.node),
    el('div', { class: 'alarm-parts' },
      part('Check first', checks.node, cautions()),
      part('What may have caused it', hints.node),
      part('Why it was raised', why),
      part('Cause and action', finding),
      part('History', history.node)),
    part('Rolls since the last good sample', rolls.node));
  let keptFinding;
  let takenBy;
  finding.addEventListener('input', () => (finding.dataset.touched = 'true'));

  function update(now) {
    node.dataset.state = now.state;
    node.dataset.taken = now.acknowledged !== null;
    marks.replaceChildren(...marksOf(now));
    setText(title, now.title);
    setText(place, `${now.line}, ${now.structure}, ${now.group}. Since ${momentOf(now.openedAt)}, last signal ${momentOf(now.lastSignalAt)}, roll ${now.roll}, sample ${now.sample}.`);
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
    ? `If it goes on like this, the mean meets a specification limit about ${momentOf(outOfSpecAt)}; single readings earlier.`
    : '';
}

function signalsOf(alarm) {
  const groups = groupedSignals(alarm).map((group) =>
    el('li', {},
      shape('unusual'),
      el('div', {},
        el('a', { href: chartAddress(alarm, group) }, `${group.name || `layer ${group.position}`}: ${group.words}`),
        el('span', { class: 'soft' }, ` ${plural(group.count, 'sample')}, last at ${momentOf(group.last.takenAt)}, roll ${group.last.roll}, sample ${group.last.sample}`),
        el('p', { class: 'explained' }, explain(group)))));
  const spec = alarm.outOfSpec ? [el('li', {}, shape('spec'), el('div', {}, el('strong', {}, 'out of spec'), el('p', { class: 'explained' }, 'At least one reading lies outside what the customer allows. Decide below what becomes of the rolls since the last good sample.')))] : [];
  const left = alarm.signalCount - alarm.signals.length;
  return [...spec, ...groups, ...(left > 0 ? [el('li', {}, el('span', {}), `and ${plural(left, 'more signal')}`)] : [])];
}

function chartAddress({ line, structure }, { kind, position }) {
  return `/layer.html?${new URLSearchParams({ line, structure, kind, position })}`;
}

function findingWords({ cause, note, action, by, at }) {
  return el('dl', { class: 'found' },
    el('div', {}, el('dt', {}, 'Cause'), el('dd', {}, note ? `${cause} (${note})` : cause)),
    el('div', {}, el('dt', {}, 'Action'), el('dd', {}, action || 'still to come')),
    el('div', {}, el('dt', {}, 'By'), el('dd', {}, `${by}, ${momentOf(at)}`)));
}

function part(title, ...body) {
  return el('section', {}, el('h3', {}, title), body);
}
