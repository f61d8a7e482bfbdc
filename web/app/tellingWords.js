/** Who is told of what, how, and what became of it, in sentences. Pure. */
import { list, plural } from './format.js';

export const EVENTS = [
  ['opened', 'it opens or signals again'],
  ['escalated', 'nobody takes it in time'],
  ['returned', 'it is as usual again'],
  ['closed', 'it is closed'],
];
export const ROLES = [
  ['', 'none of these'],
  ['shift-lead', 'shift lead'],
  ['engineer', 'engineer'],
  ['quality', 'quality'],
  ['administrator', 'administrator'],
  ['viewer', 'viewer'],
];
export const SECURITY = [
  ['starttls', 'STARTTLS, usually port 587'],
  ['tls', 'TLS, usually port 465'],
  ['none', 'none, usually port 25'],
];

/** Kim (engineer) is told by e-mail to ... when an alarm of medium or high priority on Blown 1 opens ... */
export function ruleSentence(rule) {
  const role = rule.role ? ` (${wordOf(ROLES, rule.role)})` : '';
  const way = rule.channel === 'email' ? `by e-mail to ${rule.address}` : `by a ${rule.signed ? 'signed' : 'not signed'} webhook at ${rule.address}`;
  return `${rule.name}${role} is told ${way} of ${PRIORITIES[rule.priority]} on ${linesWords(rule.lines)} when ${list(rule.events.map((event) => wordOf(EVENTS, event))).replace(/ and ([^,]*)$/, ', or $1')}.`;
}

const PRIORITIES = { low: 'every alarm', medium: 'each alarm of medium or high priority', high: 'each alarm of high priority' };

function linesWords(lines) {
  return lines.length === 0 ? 'all lines' : list(lines);
}

export function quietSentence({ quiet }) {
  const parts = [
    quiet.from ? `left alone from ${quiet.from} to ${quiet.to}${quiet.highGoesThrough ? ', but not by high priority' : ''}` : '',
    quiet.mostAnHour > 0 ? `at most ${plural(quiet.mostAnHour, 'message')} an hour, the rest in one summary` : '',
    quiet.sameAgainAfterMinutes > 0 ? `the same of the same alarm not again within ${minutes(quiet.sameAgainAfterMinutes)}` : '',
  ].filter(Boolean);
  return parts.length === 0 ? 'At any hour, as often as it happens.' : `${sentence(parts.join('; '))}.`;
}

export function mailSentence({ mail, password }) {
  if (!mail) {
    return 'No mail server is set up, so no e-mail can go out.';
  }
  const secured = { none: 'without encryption', starttls: 'with STARTTLS', tls: 'with TLS' }[mail.security];
  const user = mail.user ? ` as ${mail.user}` : '';
  return `E-mail goes out through ${mail.host}, port ${mail.port}, ${secured}${user}, from ${mail.from}. ${passwordWords(mail, password)}`.trim();
}

function passwordWords(mail, password) {
  if (!mail.user) {
    return '';
  }
  const clear = mail.security === 'none' && password !== 'none' ? ' It crosses the network where others may read it.' : '';
  return { none: 'Its password is missing.', set: `Its password is kept.${clear}`, environment: `Its password comes from the environment.${clear}` }[password];
}

export function linkSentence({ publicAddress }) {
  return publicAddress ? `Messages link to ${publicAddress}.` : 'Messages carry no link, because nobody has said where people reach these pages.';
}

export function escalationSentence({ escalation }) {
  const at = (name) => escalation[`${name}Minutes`];
  const parts = ['high', 'medium', 'low'].filter((name) => at(name)).map((name) => `${name} priority after ${minutes(at(name))}`);
  if (parts.length === 0) {
    return 'An alarm that nobody takes is not escalated.';
  }
  const again = escalation.againMinutes ? `and again every ${minutes(escalation.againMinutes).replace(/^one /, '')} after that` : 'and only once';
  return `An alarm that nobody takes is escalated: ${list(parts)}, ${again}. The time counts from when the server raised it.`;
}

function minutes(n) {
  if (n >= 1440 && n % 1440 === 0) {
    return plural(n / 1440, 'day');
  }
  return n >= 60 && n % 60 === 0 ? plural(n / 60, 'hour') : `${n} minutes`.replace(/^1 minutes/, 'one minute');
}

/** What became of a message; `at` puts a time into words. */
export function messageState(message, at) {
  switch (message.state) {
    case 'sent':
      return `sent ${at(message.triedAt)}`;
    case 'given-up':
      return `given up ${at(message.triedAt)}`;
    case 'summed-up':
      return 'told in a summary';
    case 'withdrawn':
      return 'withdrawn: the alarm is there no more';
    default:
      return message.held ? `held back until ${at(message.dueAt)}` : message.attempts > 0 ? `${plural(message.attempts, 'attempt')} failed, again ${at(message.dueAt)}` : 'about to go';
  }
}

function wordOf(words, name) {
  return words.find(([word]) => word === name)?.[1] ?? name;
}

function sentence(words) {
  return words.charAt(0).toUpperCase() + words.slice(1);
}
