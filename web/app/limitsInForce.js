/** The limits that are in force: their state in words, who decided it, when and why, and what a person may do with them. */
import { el } from './elements.js';
import { count, plural } from './format.js';
import { MEANINGS, moves, REMEDIES, SCALED_OTHERWISE } from './limitsWords.js';
import { may } from './person.js';
import { momentOf } from './plantClock.js';

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
        el('p', { class: 'limits-state' }, state === 'trial' ? 'On trial' : 'Collecting'),
        el('p', {}, MEANINGS[state])),
      el('dl', { class: 'limits-facts' },
        fact('Decided', 'nothing yet: nobody has put limits in force for this film on this line'),
        fact('Samples', `${count(stored)} so far`)));
  }
  return el('div', { class: 'limits-now', data: { limitsState: newest.state } },
    el('div', { class: 'limits-verdict' },
      el('p', { class: 'limits-state' }, `Version ${newest.version}, ${newest.state}`),
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
    fact('Decided', first ? changeWords(first) : decided(version)),
    fact('Baseline', `${plural(subgroups, 'sample')}, ${momentOf(baselineFrom)} to ${momentOf(baselineTo)}`),
    excluded > 0 ? fact('Left out', leftOut(version)) : null,
    version.autocorrelation ? fact('Alike', REMEDIES[version.autocorrelation]) : null,
    fact(version.state === 'retired' ? 'Held from' : 'Holds from', momentOf(holdsFrom)),
    later.length > 0 ? fact('Before that', el('ol', { class: 'plain' }, later.map((change) => el('li', {}, changeWords(change))))) : null);
}

function leftOut({ excluded, exclusions }) {
  const named = exclusions.map(({ roll, sample, cause }) => el('li', {}, `${roll ? `roll ${roll}, ` : ''}sample ${sample}: `, el('q', {}, cause)));
  return named.length > 0 ? el('ol', { class: 'plain' }, named) : plural(excluded, 'sample');
}

function decided({ author, reason }) {
  return [`by ${author}: `, el('q', {}, reason)];
}

function changeWords({ state, by, reason, at }) {
  return [`${state} by ${by}, ${momentOf(at)}: `, el('q', {}, reason)];
}

function fact(word, value) {
  return el('div', {}, el('dt', {}, word), el('dd', {}, value));
}

function earlier(older, move) {
  return el('details', { class: 'limits-earlier' },
    el('summary', {}, `Earlier: ${plural(older.length, 'version')}`),
    older.map((version) => el('div', { data: { version: version.version } },
      el('h3', {}, `Version ${version.version}, ${version.state}`), facts(version), buttons(version, move))));
}
