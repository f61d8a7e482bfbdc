/**
 * The one sentence on top of the board: who is needed, where, and where to tap. Pure.
 * Gives {need, sentence, detail, action: {href, words} | null}, and isTaken where somebody has it already.
 */
import { age, list, plural } from './format.js';
import { isActive, isWaiting } from './alarmWords.js';
import { raisesAlarms } from './words.js';

const RANK = { high: 0, medium: 1, low: 2 };

export function headline(board, alarms) {
  const waiting = [...alarms].filter(isWaiting).sort(byNeed);
  if (board.lines.length === 0) {
    return { need: 'calm', sentence: 'No film here yet.', detail: 'Readings from the gauge turn this page into the section of your film.', action: { href: '/intake.html', words: 'Bring in a file' } };
  }
  const urgent = waiting.length > 0 ? somebodyNeeded(waiting) : unusualNow(board, alarms);
  if (urgent) {
    return { ...urgent, detail: [urgent.detail, ...silences(board)].join(' ') };
  }
  return silent(board) ?? quiet(board, alarms);
}

function somebodyNeeded([first, ...others]) {
  const more = others.length > 0 ? ` ${others.length} more ${others.length === 1 ? 'waits' : 'wait'} too.` : '';
  const gone = !isActive(first) ? ' It went back to usual by itself.' : '';
  return {
    need: isActive(first) ? 'act' : 'watch',
    sentence: `${first.line}. ${first.title}`,
    detail: `Nobody has taken this alarm yet.${gone}${more}`,
    action: { href: `/alarms.html#${first.id}`, words: 'See the alarm' },
  };
}

function unusualNow(board, alarms) {
  const acting = board.lines.filter((line) => line.state === 'act').map((line) => line.line);
  const [first, ...others] = alarms.filter((alarm) => acting.includes(alarm.line)).sort(byNeed);
  if (first) {
    const more = others.length > 0 ? ` ${plural(others.length, 'other alarm')} taken too.` : '';
    return {
      need: 'act',
      isTaken: true,
      sentence: `${first.line}. ${first.title}`,
      detail: `${first.acknowledged.by} has it.${more}`,
      action: { href: `/alarms.html#${first.id}`, words: 'See the alarm' },
    };
  }
  return acting.length === 0 ? null : { need: 'act', sentence: `${list(acting)}: something needs somebody.`, detail: 'See the marked layers below.', action: null };
}

function silences({ lines }) {
  return lines.filter((line) => line.stale).map((line) => `${line.line} has sent nothing for ${age(line.ageSeconds)}.`);
}

function silent(board) {
  const sentence = silences(board).join(' ');
  if (sentence === '') {
    return null;
  }
  return { need: 'stale', sentence, detail: 'What is drawn below for it is old. Look at the gauge and its export folder.', action: { href: '/intake.html', words: 'Files that came' } };
}

function quiet({ lines }, alarms) {
  const misread = lines.filter((line) => line.state === 'gauge');
  if (misread.length > 0) {
    const [{ heldOut }] = misread;
    return { need: 'gauge', sentence: `${list(misread.map((line) => line.line))}: the last sample looks misread.`, detail: `${heldOut.words.join(', ')}. It is held out of charts; measure again.`, action: { href: '/screening.html', words: 'See why' } };
  }
  const watching = lines.filter((line) => line.state === 'watch');
  if (watching.length > 0) {
    return { need: 'watch', sentence: `Keep an eye on ${list(watching.map((line) => line.line))}.`, detail: 'Advice only; no alarm.', action: null };
  }
  const unfrozen = lines.filter((line) => !raisesAlarms(line.limits));
  if (unfrozen.length > 0) {
    return { need: 'calm', sentence: `${list(unfrozen.map((line) => line.line))}: no alarms yet.`, detail: 'No limits are in force there, so nothing raises an alarm.', action: null };
  }
  const open = alarms.length > 0 ? ` ${plural(alarms.length, 'alarm')} still open, all taken.` : '';
  return { need: 'calm', sentence: 'All calm.', detail: `Nobody is needed.${open}`, action: null };
}

/** What is still unusual comes first, then priority, then the newest. */
function byNeed(a, b) {
  return Number(isActive(b)) - Number(isActive(a))
    || (RANK[a.priority] ?? 3) - (RANK[b.priority] ?? 3)
    || Date.parse(b.openedAt) - Date.parse(a.openedAt);
}
