/** Reads a file of texts. Where that fails the page says so, in the only words that a module has of its own: those of the files are out of reach. */
import { language } from './choices.js';
import { el } from './elements.js';

const UNREAD = {
  en: 'The words of this page could not be read: parts of it are missing, or in English. Load it again; if that does not help, tell whoever looks after Filmward. Missing: ',
  de: 'Die Texte dieser Seite konnten nicht gelesen werden: Teile fehlen oder sind englisch. Bitte neu laden; hilft das nicht, bitte melden, wo Filmward betreut wird. Es fehlt: ',
};

/** The object of keys or forms in a file. What fails is said on the page and thrown. */
export async function textFile(path) {
  try {
    const response = await fetch(path);
    if (!response.ok) {
      throw new Error(`${response.status}`);
    }
    return await response.json();
  } catch (error) {
    console.error(`no texts from ${path}: ${error.message}`);
    sayUnread(path);
    throw error;
  }
}

/** Above the page, where no view replaces it. */
function sayUnread(path) {
  const told = document.querySelector('.unread') ?? el('p', { class: 'trouble unread', role: 'alert' }, UNREAD[language()]);
  told.append(el('code', {}, path), ' ');
  document.getElementById('main').before(told);
}
