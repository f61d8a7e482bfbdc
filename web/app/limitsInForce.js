/** The limits that are in force: their state in words, who decided it, when and why, and what a person may do with them. */
import { el } from './elements.js';
import { count } from './format.js';
import { MEANINGS, moves, REMEDIES, SCALED_OTHERWISE, stateWord } from './limitsWords.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';
import { room } from './text.js';

const t = await room('limits');

/**
 * The versions of all characteristics, newest first, one each. A layer that was not measured enough for
 * the newest version may still have an older one in force.
 */
export function versionsOf(limits) {
  const byNumber = new Map();
  for (const one of limits) {
    const kept = byNumber.get(one.version);
    if (!kept || kept.state === 'retired' || one.subgroups > kept.subgroups) {
      byNumber.set(one.version, { ...one, state: kept && kept.state !== 'retired' ? kept.state : one.state, scaledOtherwise: Boolean(kept?.scaledOtherwise) || one.scaledOtherwise });
    } else {
      kept.scaledOtherwise ||= one.scaledOtherwise;
    }
  }
  return [...byNumber.values()].sort((a, b) => b.version - a.version);
}

/** `state` counts where there is no version yet: collecting or trial. `move(version, step)` asks for name and reason. */
export function inForce(versions, { state, stored }, move) {
  const [newest, ...older] = versions;
  if (!newest) {
    return el('div', { class: 'limits-now', data: { limitsState: state } },
      el('div', { class: 'limits-verdict' },
        el('p', { class: 'limits-state' }, t(state === 'trial' ? 'onTrial' : 'collecting')),
        el('p', {}, MEANINGS[state])),
      el('dl', { class: 'limits-facts' },
        fact(t('decided'), t('nobodyYet')),
        fact(t('samples'), t('soFar', { stored: count(stored) }))));
  }
  return el('div', { class: 'limits-now', data: { limitsState: newest.state } },
    el('div', { class: 'limits-verdict' },
      el('p', { class: 'limits-state' }, versionIs(newest)),
      el('p', {}, MEANINGS[newest.state]),
      newest.scaledOtherwise ? el('p', { class: 'caution', data: { scaledOtherwise: 'true' } }, SCALED_OTHERWISE) : null,
      buttons(newest, move)),
    facts(newest),
    older.length > 0 ? earlier(older, move) : null);
}

function buttons(version, move) {
  const steps = may('decide') ? moves(version.state) : [];
  return steps.length === 0 ? null : el('div', { class: 'limits-moves' }, steps.map((step) =>
    el('button', { type: 'button', class: 'quiet', data: { action: 'move-limits', state: step.to }, on: { click: () => move(version, step) } }, step.verb)));
}

function facts(version) {
  const { holdsFrom, baselineFrom, baselineTo, subgroups, excluded, changes } = version;
  const [first, ...later] = [...changes].reverse();
  return el('dl', { class: 'limits-facts' },
    fact(t('decided'), first ? changeWords(first) : decided(version)),
    fact(t('baseline'), t('baselineIs', { n: subgroups, from: momentOf(baselineFrom), to: momentOf(baselineTo) })),
    excluded > 0 ? fact(t('leftOut'), leftOut(version)) : null,
    version.autocorrelation ? fact(t('alike'), REMEDIES[version.autocorrelation]) : null,
    fact(t(version.state === 'retired' ? 'heldFrom' : 'holdsFrom'), momentOf(holdsFrom)),
    later.length > 0 ? fact(t('beforeThat'), el('ol', { class: 'plain' }, later.map((change) => el('li', {}, changeWords(change))))) : null);
}

function leftOut({ excluded, exclusions }) {
  const named = exclusions.map(({ roll, sample, cause }) => el('li', {}, t.nodes(roll ? 'rollSampleCause' : 'sampleCause', { roll, sample, cause: el('q', {}, cause) })));
  return named.length > 0 ? el('ol', { class: 'plain' }, named) : t('samplesLeft', { n: excluded });
}

function decided({ author, reason }) {
  return t.nodes('decidedBy', { by: author, reason: el('q', {}, reason) });
}

function changeWords({ state, by, reason, at }) {
  return t.nodes('changedBy', { state: stateWord(state), by, at: momentOf(at), reason: el('q', {}, reason) });
}

function versionIs({ version, state }) {
  return t('versionIs', { version, state: stateWord(state) });
}

function fact(word, value) {
  return el('div', {}, el('dt', {}, word), el('dd', {}, value));
}

function earlier(older, move) {
  return el('details', { class: 'limits-earlier' },
    el('summary', {}, t('earlier', { n: older.length })),
    older.map((version) => el('div', { data: { version: version.version } },
      el('h3', {}, versionIs(version)), facts(version), buttons(version, move))));
}
