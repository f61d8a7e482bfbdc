/** What the movement of a level means, in words and for the axis. Pure but for the plant's clock. */
import { length } from './format.js';
import { moment } from './plantClock.js';
import { room } from './text.js';

const t = await room('look');
const HOUR_MS = 3_600_000;

/** The limit that is met first, or null. */
export function onward({ meetings = [] }) {
  const ahead = meetings.filter(({ verdict }) => verdict === 'meets');
  return ahead.sort((a, b) => a.expected - b.expected)[0] ?? null;
}

/** Room to the right of the newest sample that a forecast may take: a third of what is shown at most. */
export function axisWith({ min, max }, movement) {
  const meeting = movement ? onward(movement) : null;
  if (!meeting) {
    return { min, max };
  }
  const most = max + (max - min) / 3;
  const wanted = (meeting.notAfter ?? meeting.expected + HOUR_MS / 2) + (max - min) * 0.03;
  return { min, max: meeting.expected > most ? max : Math.min(most, Math.max(max, wanted)) };
}

/** A sentence or three; `unusual` says whether there are signals in the same time. */
export function movementInWords({ samples, change, meetings }, unusual) {
  if (change === null) {
    return t(samples < 40 ? 'tooFewForMovement' : unusual ? 'severalMovements' : 'noMovement', { n: samples });
  }
  const { kind, size, at, notBefore, notAfter } = change;
  const params = { by: length(Math.abs(size.value), 2), at: moment(at), from: notBefore === null ? '' : moment(notBefore), to: moment(notAfter) };
  const since = notBefore === null ? t('notAfter', params) : notBefore === notAfter ? '' : t('between', params);
  const what = t(`${kind}.${size.value > 0 ? 'up' : 'down'}`, params);
  return [what, since, leading({ kind, meetings })].filter(Boolean).join(' ');
}

function leading({ kind, meetings }) {
  if (kind !== 'ramp') {
    return '';
  }
  const there = meetings.find(({ verdict }) => verdict === 'already-there');
  const meeting = onward({ meetings });
  const words = [there ? t('isThere', { limit: t(`limit.${there.limit}`) }) : ''];
  if (meeting) {
    words.push(t('meets', { limit: t(`limit.${meeting.limit}`), at: moment(meeting.expected) }));
    words.push(meeting.notBefore !== null && meeting.notAfter !== null ? t('meetsBetween', { from: moment(meeting.notBefore), to: moment(meeting.notAfter) }) : t('meetsUnsure'));
  } else if (!there) {
    words.push(t('meetsNothing'));
  }
  return words.filter(Boolean).join(' ');
}
