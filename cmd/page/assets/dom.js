// make returns an element with attributes and what stands in it. Text is only ever text.
export function make(name, attributes = {}, ...inside) {
  const element = document.createElement(name);
  for (const [key, value] of Object.entries(attributes)) {
    if (typeof value === 'function') element.addEventListener(key, value);
    else if (value === true) element.setAttribute(key, '');
    else if (value !== false && value !== undefined) element.setAttribute(key, value);
  }
  element.append(...inside);
  return element;
}

export const $ = (id) => document.getElementById(id);

// button returns a button that does something; its words say what.
export const button = (words, does, attributes = {}) => make('button', { type: 'button', click: does, ...attributes }, words);

// idOf returns the id of a key's blank.
export const idOf = (key) => 'blank-' + key.replace(/[^a-z0-9]+/g, '-');
