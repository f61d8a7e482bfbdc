/** The words of the handover page: what each part is called, and what it says when there is nothing in it. */
const PARTS = {
  lines: ['Lines', 'No line has any sample yet.'],
  'open-alarms': ['Open alarms', 'No open alarms.'],
  'set-aside': ['Shelved or out of service', 'Nothing is set aside.', 'Shelving is not recorded here yet: ask.'],
  'no-cause': ['Taken, cause not found', 'Every alarm that was taken has its cause.'],
  'carried-over': ['Still to do from earlier shifts', 'Nothing is left over.'],
  notes: ['Notes of this shift', 'Nobody has written anything.'],
  nearing: ['Moving towards a limit', 'No layer is two thirds of the way to an alarm.'],
  rolls: ['Rolls held', 'No roll is held.', 'Rolls held are not recorded here yet: ask.'],
  gaps: ['Times without samples', 'Samples came all the time.'],
  files: ['Files refused, rows in quarantine (of all lines)', 'Every file was read.'],
  settings: ['Limits, tests and other settings', 'Nobody changed a setting.'],
  calibrations: ['Calibrations and check standards', 'None in this shift.', 'Calibrations are not recorded here yet: ask.'],
  closed: ['Alarms closed in this shift', 'None was closed.'],
};

export const titleOf = (part) => PARTS[part]?.[0] ?? part;

export function nothingIn({ part, kept }) {
  const [, none = 'Nothing.', notKept = 'This is not recorded yet.'] = PARTS[part] ?? [];
  return kept ? none : notKept;
}

const OF_GAUGES = ['calibrate', 'rescale', 'gauge', 'check', 'doubt'];

/** Where a thing can be looked at; null where it has no page. */
export function linkOf(item) {
  const [kind, id] = item.key.split(' ');
  return kind === 'alarm' ? `/alarms.html#${id}` : kind === 'file' ? '/intake.html' : kind === 'line' ? '/' : OF_GAUGES.includes(kind) ? '/gauge.html' : null;
}

const STATES = {
  act: 'act', watch: 'watch', stale: 'stale', unacknowledged: 'act', 'returned-unacknowledged': 'act',
  refused: 'act', 'in quarantine': 'watch', 'to do': 'watch', failed: 'gauge', 'to decide': 'gauge',
};

/** Which mark a state has; null where nobody is needed. */
export const markOf = (state) => STATES[state] ?? null;

export const stateWords = (state) =>
  ({ unacknowledged: 'nobody has taken it', 'returned-unacknowledged': 'over, nobody has taken it', acknowledged: 'taken', normal: 'over', collecting: 'collecting', calm: 'calm' })[state] ?? state;
