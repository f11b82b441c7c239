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
