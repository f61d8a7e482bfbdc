/** Who is told of what, how, and what became of it, in sentences. Pure. */
import { list, oneOf } from './format.js';
import { room } from './text.js';

const t = await room('telling');

export const EVENTS = ['opened', 'escalated', 'returned', 'closed'].map((word) => [word, t(`event.${word}`)]);
export const ROLES = [['', t('role.none')], ...['shift-lead', 'engineer', 'quality', 'administrator', 'viewer'].map((word) => [word, t(`role.${word}`)])];
export const SECURITY = ['starttls', 'tls', 'none'].map((word) => [word, t(`security.${word}`)]);

/** Kim (engineer) is told by e-mail to ... when an alarm of medium or high priority on Blown 1 opens ... */
export function ruleSentence(rule) {
  const { name, role, channel, signed, address, priority, lines, events } = rule;
  return t('rule', {
    who: role ? t('whoRole', { name, role: wordOf(ROLES, role) }) : name,
    way: t(channel === 'email' ? 'way.email' : signed ? 'way.signed' : 'way.plain', { address }),
    what: t(`what.${priority}`),
    lines: lines.length === 0 ? t('allLines') : list(lines),
    events: oneOf(events.map((event) => wordOf(EVENTS, event))),
  });
}

export function quietSentence({ quiet }) {
  const parts = [
    quiet.from ? t(quiet.highGoesThrough ? 'quiet.fromNotHigh' : 'quiet.from', quiet) : '',
    quiet.mostAnHour > 0 ? t('quiet.most', { n: quiet.mostAnHour }) : '',
    quiet.sameAgainAfterMinutes > 0 ? t('quiet.again', { time: lasting(quiet.sameAgainAfterMinutes) }) : '',
  ].filter(Boolean);
  return parts.length === 0 ? t('quiet.none') : parts.map((words) => t('sentence', { words })).join(' ');
}

export function mailSentence({ mail, password }) {
  if (!mail) {
    return t('noMail');
  }
  const way = t(mail.user ? 'mailAs' : 'mail', { host: mail.host, port: String(mail.port), secured: t(`secured.${mail.security}`), user: mail.user, from: mail.from });
  return [way, ...passwordWords(mail, password)].join(' ');
}

function passwordWords(mail, password) {
  if (!mail.user) {
    return [];
  }
  return [t(`password.${password}`), ...(mail.security === 'none' && password !== 'none' ? [t('clear')] : [])];
}

export function linkSentence({ publicAddress }) {
  return publicAddress ? t('linkTo', { address: publicAddress }) : t('noLink');
}

export function escalationSentence({ escalation }) {
  const at = (name) => escalation[`${name}Minutes`];
  const parts = ['high', 'medium', 'low'].filter((name) => at(name)).map((name) => t(`after.${name}`, { time: lasting(at(name)) }));
  if (parts.length === 0) {
    return t('notEscalated');
  }
  const times = list(parts);
  return escalation.againMinutes ? t('escalatedEvery', { times, again: lasting(escalation.againMinutes, 'every') }) : t('escalatedOnce', { times });
}

const LASTING = [['days', 1440], ['hours', 60], ['minutes', 1]];

/** So many minutes, in days or hours where they are whole ones. */
function lasting(minutes, how = 'within') {
  const [unit, each] = LASTING.find(([, one]) => minutes >= one && minutes % one === 0) ?? LASTING.at(-1);
  return t(how === 'every' ? `every.${unit}` : `within.${unit}`, { n: minutes / each });
}

/** What became of a message; `at` puts a time into words. */
export function messageState(message, at) {
  switch (message.state) {
    case 'sent':
    case 'given-up':
      return t(`state.${message.state}`, { at: at(message.triedAt) });
    case 'summed-up':
    case 'withdrawn':
      return t(`state.${message.state}`);
    default:
      return message.held ? t('heldUntil', { at: at(message.dueAt) }) : message.attempts > 0 ? t('failedAgain', { n: message.attempts, at: at(message.dueAt) }) : t('aboutToGo');
  }
}

function wordOf(words, name) {
  return words.find(([word]) => word === name)?.[1] ?? name;
}
