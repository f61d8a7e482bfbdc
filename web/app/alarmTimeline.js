/** What happened to an alarm, oldest first: when, who, what. What people wrote stands out from what Filmward noted. */
import { careForm, folded, textField } from './careForm.js';
import { el } from './elements.js';
import { momentOf } from './plantClock.js';
import { sayings } from './said.js';
import { room } from './text.js';

const t = await room('alarms');
const say = await sayings('alarms');

const SYSTEM = 'Filmward';
const COMMENT = 'comment: ';
const LONGEST = 2_000;
const MOVED = /^now ([a-z-]+)(?: at sample (.+)|: (.+))?$/s;
const NOT_GIVEN = 'not given';

export function timeline(alarm, { changed, refused }) {
  const list = el('ol', { class: 'plain history' });
  const comment = textField('comment-words', t('comment'), { rows: 2, maxlength: LONGEST });
  const form = careForm({
    prefix: 'comment', fields: [comment.node], verb: t('keepComment'),
    ask: () => (comment.value()
      ? { path: `/api/v1/alarms/${alarm.id}/comments`, body: { words: comment.value() } }
      : { wanting: t('writeFirst'), focus: comment.input }),
    done: (answer) => ((comment.input.value = ''), (fold.open = false), changed(answer)),
    refused,
  });
  const fold = folded(t('writeComment'), form.node, { fold: 'comment' });

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
  if (moved === null) {
    return say(what);
  }
  const [, word, sample, why] = moved;
  const state = t.maybe(`state.${word}`) ?? word;
  return sample ? t('movedAtSample', { state, sample }) : why && why !== NOT_GIVEN ? t('movedWhy', { state, why: say(why) }) : state;
}
