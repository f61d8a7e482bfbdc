/** The list of causes as a form: words, whether they are there to choose from, and their order. A code never changes. */
import { careForm, textField } from './careForm.js';
import { el, setText } from './elements.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('causes');
const say = await sayings('alarms');

const LONGEST_WORDS = 80;
const LONGEST_CODE = 40;
const LONGEST_REASON = 500;

/** `kept(words)` is called after success. */
export function causeList({ causes, most, version }, kept) {
  const list = el('ol', { class: 'plain cause-rows' });
  const counted = el('p', { class: 'soft', role: 'status' });
  const reason = textField('causes-reason', t('reason'), { rows: 2, maxlength: LONGEST_REASON });
  let rows = causes.map((cause) => causeRow(cause, act));
  const add = el('button', { type: 'button', class: 'quiet', data: { action: 'add-cause' }, on: { click: addRow } }, t('addCause'));
  const form = careForm({
    permission: 'decide',
    prefix: 'causes', fields: [list, add, counted, reason.node], verb: t('keepList'),
    ask: () => {
      const nameless = rows.find((row) => !row.cause().words);
      return nameless ? { wanting: t('needsWords'), focus: nameless }
        : !reason.value() ? { wanting: t('writeReasonList'), focus: reason.input }
        : { path: '/api/v1/causes', body: { version, reason: reason.value(), causes: rows.map((row) => row.cause()) } };
    },
    done: (answer) => kept(t('listKept', { version: answer.version })),
  });

  function addRow() {
    rows = [...rows, causeRow(null, act)];
    draw();
    rows.at(-1).focus();
  }

  /** 'up' and 'down' move a row; anything else only counts anew. */
  function act(row, what) {
    const from = rows.indexOf(row);
    const to = from + (what === 'up' ? -1 : what === 'down' ? 1 : 0);
    if (to !== from && rows[to]) {
      [rows[from], rows[to]] = [rows[to], rows[from]];
      draw();
      row.focusMove(what);
    }
    count();
  }

  function draw() {
    list.replaceChildren(...rows.map(({ node }) => node));
    count();
  }

  function count() {
    const active = rows.filter((row) => row.cause().standing === 'active').length;
    setText(counted, t(active > most ? 'countedMany' : 'counted', { active, most }));
  }
  draw();
  return form.node;
}

let number = 0;

function causeRow(cause, act) {
  const id = `cause-${(number += 1)}`;
  const words = el('input', { id, value: cause?.words ?? '', maxlength: LONGEST_WORDS, autocomplete: 'off', 'aria-label': t('cause') });
  const active = el('input', { type: 'checkbox', checked: cause === null || cause.standing === 'active', on: { change: () => act(row, 'count') } });
  const code = el('span', { class: 'soft verbatim' }, cause?.code ?? t('codeComes'));
  const move = (what, sign) => el('button', { type: 'button', class: 'quiet', data: { move: what }, 'aria-label': t(`move.${what}`, { cause: say(cause?.words) ?? t('newCause') }), on: { click: () => act(row, what) } }, sign);
  const up = move('up', '\u2191');
  const down = move('down', '\u2193');
  const node = el('li', { class: 'cause-row' },
    el('div', { class: 'cause-words' }, words, code),
    el('label', { class: 'tick' }, active, el('span', {}, t('offered'))),
    el('div', { class: 'cause-moves' }, up, down));
  const row = {
    node,
    focus: () => words.focus(),
    focusMove: (what) => (what === 'up' ? up : down).focus(),
    cause: () => ({ code: cause?.code ?? codeOf(words.value), words: words.value.trim(), standing: active.checked ? 'active' : 'retired' }),
  };
  return row;
}

/** "Düse: zu kalt" gives "duse-zu-kalt"; what no letters are left of is "cause". */
function codeOf(words) {
  const plain = words.normalize('NFD').toLowerCase().replace(/[\u0300-\u036f]/g, '').replace(/[^a-z0-9]+/g, '-').slice(0, LONGEST_CODE).replace(/^-+|-+$/g, '');
  return plain || 'cause';
}
