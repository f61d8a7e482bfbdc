/**
 * What a person chose at this screen: language, unit of length, decimal sign, light or dark. Kept in this browser only;
 * a change loads the page anew, so that nothing needs to follow it.
 */
const PREFIX = 'filmward.';

/** Each language with how it writes itself, its dates and its decimals. `early.js` knows the same codes. */
export const LANGUAGES = {
  en: { name: 'English', locale: 'en-GB', decimal: '.' },
  de: { name: 'Deutsch', locale: 'de-DE', decimal: ',' },
};

export const UNITS = { um: { sign: 'µm', perUm: 1, moreDecimals: 0 }, mil: { sign: 'mil', perUm: 1 / 25.4, moreDecimals: 1 } };

const inForce = LANGUAGES[document.documentElement.lang] ? document.documentElement.lang : 'en';

export const language = () => inForce;
export const locale = () => LANGUAGES[inForce].locale;
export const unitOf = () => UNITS[chosen('unit')] ?? UNITS.um;
export const decimalSign = () => ({ point: '.', comma: ',' })[chosen('decimal')] ?? LANGUAGES[inForce].decimal;

/** What was chosen, or null where it follows the language or the browser. */
export function chosen(name) {
  try {
    return localStorage.getItem(PREFIX + name);
  } catch {
    return null;
  }
}

/** Keeps a choice; null gives it back to the language or the browser. */
export function choose(name, value) {
  try {
    if (value === null) {
      localStorage.removeItem(PREFIX + name);
    } else {
      localStorage.setItem(PREFIX + name, value);
    }
  } catch {
    // a browser that keeps nothing shows what the language asks for
  }
  location.reload();
}
