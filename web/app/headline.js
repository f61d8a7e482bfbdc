/**
 * The one sentence on top of the board: who is needed, where, and where to tap. Pure.
 * Gives {need, sentence, detail, action: {href, words} | null}, and isTaken where somebody has it already.
 */
import { age, list } from './format.js';
import { isActive, isWaiting } from './alarmWords.js';
import { raisesAlarms } from './words.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('board');
const say = await sayings('alarms');
const RANK = { high: 0, medium: 1, low: 2 };

export function headline(board, alarms) {
  const waiting = [...alarms].filter(isWaiting).sort(byNeed);
  if (board.lines.length === 0) {
    return { need: 'calm', sentence: t('noFilm'), detail: t('noFilmDetail'), action: { href: '/intake.html', words: t('bringFile') } };
  }
  const urgent = waiting.length > 0 ? somebodyNeeded(waiting) : unusualNow(board, alarms);
  if (urgent) {
    return { ...urgent, detail: [urgent.detail, ...silences(board)].join(' ') };
  }
  return silent(board) ?? quiet(board, alarms);
}

function somebodyNeeded([first, ...others]) {
  const more = others.length > 0 ? ` ${t('moreWait', { n: others.length })}` : '';
  const gone = !isActive(first) ? ` ${t('wentBack')}` : '';
  return {
    need: isActive(first) ? 'act' : 'watch',
    sentence: t('about', { line: first.line, title: say(first.title) }),
    detail: `${t('nobodyTook')}${gone}${more}`,
    action: { href: `/alarms.html#${first.id}`, words: t('seeAlarm') },
  };
}

function unusualNow(board, alarms) {
  const acting = board.lines.filter((line) => line.state === 'act').map((line) => line.line);
  const [first, ...others] = alarms.filter((alarm) => acting.includes(alarm.line)).sort(byNeed);
  if (first) {
    const more = others.length > 0 ? ` ${t('othersTaken', { n: others.length })}` : '';
    return {
      need: 'act',
      isTaken: true,
      sentence: t('about', { line: first.line, title: say(first.title) }),
      detail: `${t('hasIt', { name: first.acknowledged.by })}${more}`,
      action: { href: `/alarms.html#${first.id}`, words: t('seeAlarm') },
    };
  }
  return acting.length === 0 ? null : { need: 'act', sentence: t('needsSomebody', { lines: list(acting) }), detail: t('seeBelow'), action: null };
}

function silences({ lines }) {
  return lines.filter((line) => line.stale).map((line) => t('silent', { line: line.line, age: age(line.ageSeconds) }));
}

function silent(board) {
  const sentence = silences(board).join(' ');
  if (sentence === '') {
    return null;
  }
  return { need: 'stale', sentence, detail: t('silentDetail'), action: { href: '/intake.html', words: t('files') } };
}

function quiet({ lines }, alarms) {
  const misread = lines.filter((line) => line.state === 'gauge');
  if (misread.length > 0) {
    const [{ heldOut }] = misread;
    return { need: 'gauge', sentence: t('misread', { lines: list(misread.map((line) => line.line)) }), detail: t('misreadDetail', { kinds: heldOut.words.join(', ') }), action: { href: '/screening.html', words: t('seeWhy') } };
  }
  const watching = lines.filter((line) => line.state === 'watch');
  if (watching.length > 0) {
    return { need: 'watch', sentence: t('keepEye', { lines: list(watching.map((line) => line.line)) }), detail: t('adviceOnly'), action: null };
  }
  const unfrozen = lines.filter((line) => !raisesAlarms(line.limits));
  if (unfrozen.length > 0) {
    return { need: 'calm', sentence: t('noAlarmsYet', { lines: list(unfrozen.map((line) => line.line)) }), detail: t('noLimitsThere'), action: null };
  }
  const open = alarms.length > 0 ? ` ${t('stillOpen', { n: alarms.length })}` : '';
  return { need: 'calm', sentence: t('allCalm'), detail: `${t('nobodyNeeded')}${open}`, action: null };
}

/** What is still unusual comes first, then priority, then the newest. */
function byNeed(a, b) {
  return Number(isActive(b)) - Number(isActive(a))
    || (RANK[a.priority] ?? 3) - (RANK[b.priority] ?? 3)
    || Date.parse(b.openedAt) - Date.parse(a.openedAt);
}
