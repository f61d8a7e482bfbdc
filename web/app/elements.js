/**
 * Makes elements. Text is always set as text, never parsed as HTML, because names come from files.
 * Attributes: `class`, `data` (object of data-*), `on` (object of listeners), the rest by name;
 * null, undefined and false leave an attribute out.
 */
const SVG = 'http://www.w3.org/2000/svg';

export function el(tag, attributes = {}, ...children) {
  return fill(document.createElement(tag), attributes, children);
}

export function svg(tag, attributes = {}, ...children) {
  return fill(document.createElementNS(SVG, tag), attributes, children);
}

/** Sets text only where it differs, so that a screen reader hears changes and nothing else. */
export function setText(node, text) {
  if (node.textContent !== text) {
    node.textContent = text;
  }
}

function fill(node, { data = {}, on = {}, ...attributes }, children) {
  for (const [name, value] of Object.entries(attributes)) {
    if (value === true) {
      node.setAttribute(name, '');
    } else if (value !== null && value !== undefined && value !== false) {
      node.setAttribute(name, value);
    }
  }
  for (const [name, value] of Object.entries(data)) {
    node.dataset[name] = value;
  }
  for (const [name, listener] of Object.entries(on)) {
    node.addEventListener(name, listener);
  }
  node.append(...children.flat(Infinity).filter((child) => child !== null && child !== undefined));
  return node;
}
