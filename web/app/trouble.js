/** The line that says what went wrong on a page. A fault of the page itself also goes to the console. */
import { ApiError } from './api.js';
import { el, setText } from './elements.js';

export function troubleLine() {
  const node = el('p', { class: 'trouble', role: 'status', hidden: true });

  function say(text) {
    setText(node, text);
    node.hidden = text === '';
  }

  function show(error, before = '') {
    if (!(error instanceof ApiError)) {
      console.error(error);
    }
    say(`${before} ${error.sentence ?? error.message}`.trim());
  }
  return { node, say, show, clear: () => say('') };
}
