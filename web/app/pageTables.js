/** Reads the tables and the drawings of a page for files. Pure but for the page it reads. */
import { decimalSign } from './choices.js';
import { inUnit } from './format.js';
import { shortTest } from './words.js';

const SPACES = /[\u2007\u202f\u2009\u00a0\s]+/g;
const DIGITS = 7;
/** With a unit behind it, which no spreadsheet takes for a formula that does anything. */
const SIGNED = /^[+-]\d+(?:[.,]\d+)?(?: ?%)?$/;
const NUMBER = /^-?\d+(\.\d+)?$/;

/** Tables that are shown and have rows: [{name, heads: [text], rows: [[text | number]]}]. */
export function tablesOf(root) {
  return [...root.querySelectorAll('table')].filter((table) => table.offsetParent !== null && table.rows.length > 1).map((table, i) => {
    const [head, ...rest] = [...table.rows].map((row) => [...row.cells].map(valueOf));
    return { name: nameOf(table) || `${i + 1}`, heads: head.map(String), rows: rest };
  });
}

/** What the nearest words above say it is. */
export function nameOf(node) {
  const own = node.querySelector?.('caption')?.innerText || node.getAttribute('aria-label') || node.closest('[aria-label]:not(main, nav, body)')?.getAttribute('aria-label');
  return (own || headingBefore(node) || '').replaceAll(SPACES, ' ').trim().slice(0, 80);
}

function headingBefore(node) {
  const headings = [...document.querySelectorAll('main h1, main h2, main h3')].filter((one) => one.compareDocumentPosition(node) & Node.DOCUMENT_POSITION_FOLLOWING);
  return headings.at(-1)?.textContent;
}

/** A number where the cell is one as it is written here, else its text. */
export function valueOf(cell) {
  const input = cell.querySelector('input, select, textarea');
  const text = (input ? input.value : cell.innerText).trim();
  return numberOf(text, decimalSign()) ?? text.replaceAll(SPACES, ' ');
}

/** "−1\u202f234,5" with a comma as decimal sign gives -1234.5, "+0.2" 0.2; null where it is no plain number. */
export function numberOf(text, sign) {
  const plain = text.replaceAll(SPACES, '').replace('\u2212', '-').replace(/^\+/, '').replace(sign, '.');
  return NUMBER.test(plain) && !/^-?0\d/.test(plain) ? Number(plain) : null;
}

/** Rows as CSV (RFC 4180, comma, decimal point); a text that a spreadsheet would take for a formula is led by an apostrophe. */
export function csvOf({ heads, rows }) {
  return [heads, ...rows].map((row) => row.map(cellOf).join(',')).join('\r\n') + '\r\n';
}

function cellOf(value) {
  if (typeof value === 'number') {
    return String(value);
  }
  const text = /^[=+\-@\t\r]/.test(value) && !SIGNED.test(value) ? `'${value}` : value;
  return /[",\r\n]/.test(text) ? `"${text.replaceAll('"', '""')}"` : text;
}

/** The columns behind a chart of lengths: time, a value of each of its lines in the unit of this screen, the tests that are ringed. */
export function chartData(chart, timeHead, testsHead) {
  const { datasets } = chart.data;
  const rings = new Map((chart.filmward?.panel.rings ?? []).map(({ x, signals }) => [x, signals.map(shortTest).join(' ')]));
  const times = [...new Set(datasets.flatMap(({ data }) => data.map(({ x }) => x)))].sort((a, b) => a - b);
  const lines = datasets.map(({ data, stepped }) => valuesAt(times, new Map(data.map(({ x, y }) => [x, y])), Boolean(stepped)));
  return { heads: [timeHead, ...datasets.map(({ label }) => label), testsHead], rows: times.map((x, i) => [new Date(x).toISOString(), ...lines.map((line) => line[i]), rings.get(x) ?? '']) };
}

/** A stepped line is drawn by the ends of its stretches; between them it holds. */
function valuesAt(times, known, isStepped) {
  let held = null;
  return times.map((x) => {
    held = known.has(x) ? known.get(x) : isStepped ? held : null;
    return held === null ? '' : Number(inUnit(held).toPrecision(DIGITS));
  });
}

/** A drawing of the page as a file of its own: with the styles that it has here written into it. */
export function standingAlone(drawing) {
  const copy = drawing.cloneNode(true);
  const styled = ['fill', 'stroke', 'stroke-width', 'stroke-dasharray', 'font', 'font-size', 'font-family', 'opacity', 'text-anchor'];
  [drawing, ...drawing.querySelectorAll('*')].forEach((from, i) => {
    const to = i === 0 ? copy : copy.querySelectorAll('*')[i - 1];
    const style = getComputedStyle(from);
    styled.forEach((name) => to.style.setProperty(name, style.getPropertyValue(name)));
  });
  const { width, height } = drawing.getBoundingClientRect();
  copy.setAttribute('xmlns', 'http://www.w3.org/2000/svg');
  copy.setAttribute('width', width);
  copy.setAttribute('height', height);
  return new XMLSerializer().serializeToString(copy);
}
