// seen returns a drawing, given as bytes, as text to be looked at: the hairlines of one
// that is for a machine are as wide as a screen can show.
export const seen = (data) => new TextDecoder().decode(data)
  .replace(/stroke-width="0\.0\d*"/g, 'stroke-width="1" vector-effect="non-scaling-stroke"');

// draw returns an SVG, given as text, as an element of the page. Nothing in it is run: the
// page's policy allows no script but its own.
export function draw(svg) {
  const root = new DOMParser().parseFromString(svg, 'image/svg+xml').documentElement;
  root.removeAttribute('width');
  root.removeAttribute('height');
  root.setAttribute('role', 'img');
  for (const part of root.querySelectorAll('[id]')) part.removeAttribute('id'); // they are there in each drawing
  return document.importNode(root, true);
}
