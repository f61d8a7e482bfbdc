/** What happened to an alarm, oldest first: when, who, what. What people wrote stands out from what Filmward noted. */
import { careForm, folded, textField } from './careForm.js';
import { el } from './elements.js';
import { momentOf } from './plantClock.js';

const SYSTEM = 'Filmward';
const COMMENT = 'comment: ';
const LONGEST = 2_000;
const MOVED = /^now ([a-z-]+)/;
const STATES = {
  unacknowledged: 'unusual, not taken', acknowledged: 'unusual, taken',
  'returned-unacknowledged': 'usual again, not taken', normal: 'usual again',
  shelved: 'on the shelf', 'out-of-service': 'out of service', suppressed: 'held back, the line is not running',
};

export function timeline(alarm, { changed, refused }) {
  const list = el('ol', { class: 'plain history' });
  const comment = textField('comment-words', 'Comment', { rows: 2, maxlength: LONGEST });
  const form = careForm({
    prefix: 'comment', fields: [comment.node], verb: 'Keep the comment',
    ask: () => (comment.value()
      ? { path: `/api/v1/alarms/${alarm.id}/comments`, body: { words: comment.value() } }
      : { wanting: 'Write something first.', focus: comment.input }),
    done: (answer) => ((comment.input.value = ''), (fold.open = false), changed(answer)),
    refused,
  });
  const fold = folded('Write a comment', form.node, { fold: 'comment' });

  function update(now) {
    list.replaceChildren(...now.history.map(entryOf));
  }
  update(alarm);
  return { node: el('div', {}, list, fold), update };
}

function entryOf({ at, by, what }) {
  const isComment = what.startsWith(COMMENT);
  const words = isComment ? el('q', {}, what.slice(COMMENT.length)) : movedInWords(what);
  return el('li', { data: { by: by === SYSTEM ? 'system' : 'person' } },
    el('time', { class: 'soft', datetime: at }, momentOf(at)),
    el('span', {}, el('strong', {}, by), isComment ? ' ' : ': ', words));
}

/** Changes of state are kept as words of the interface; a move of the line may have no reason. */
function movedInWords(what) {
  const moved = MOVED.exec(what);
  return moved ? what.replace(MOVED, (all, state) => STATES[state] ?? all).replace(/: not given$/, '') : what;
}
