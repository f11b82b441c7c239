// Drawings of books, in proportion, with the dimension lines that blanks stand beside.
const ns = 'http://www.w3.org/2000/svg';

function part(name, attributes, ...inside) {
  const element = document.createElementNS(ns, name);
  for (const [key, value] of Object.entries(attributes)) element.setAttribute(key, value);
  element.append(...inside);
  return element;
}

const path = (kind, ...points) => part('path', { class: kind, d: points.map(([x, y], i) => `${i ? 'L' : 'M'}${x.toFixed(2)} ${y.toFixed(2)}`).join('') });

// What is not measured yet is drawn as a book often is, dashed.
const usual = { height: 220, width: 150, thickness: 30 };
const slope = Math.PI / 6; // of what recedes, which is drawn at its full length

// drawBook draws a book that stands, its front board towards us and its spine at the left.
// scale is the largest side of all the books, in millimetres.
export function drawBook({ sizes, title }, scale) {
  const h = sizes.height ?? usual.height, w = sizes.width ?? usual.width;
  const t = Math.max(sizes.thickness ?? usual.thickness, sizes.thickness_at_fore_edge ?? 0);
  const known = ['height', 'width', 'thickness'].every((d) => sizes[d]);
  const back = [t * Math.cos(slope), -t * Math.sin(slope)];
  const at = (x, y, deep = 0) => [x + back[0] * deep, y + back[1] * deep];
  const side = Math.max(scale, h, w) * 0.09; // room for dimension lines
  const board = Math.min(0.16, 2.5 / t); // of the thickness
  const square = Math.min(3.2, w / 12);
  const tick = side * 0.28, off = side * 0.62;
  const pages = [];
  for (let i = 1; i < 8; i++) {
    const d = board + (1 - 2 * board) * i / 8;
    pages.push(path('page', at(w - square, square * 0.4, d), at(w - square, h, d)), path('page', at(square, 0, d), at(w - square, 0, d)));
  }
  const faces = [
    path('face pages', at(0, 0, board), at(w, 0, board), at(w, 0, 1 - board), at(0, 0, 1 - board), at(0, 0, board)),
    path('face pages', at(w, 0, board), at(w, h, board), at(w, h, 1 - board), at(w, 0, 1 - board), at(w, 0, board)),
    ...pages,
    path('face board', at(0, 0, 1 - board), at(w, 0, 1 - board), at(w, h, 1 - board), at(w, h, 1), at(w, 0, 1), at(0, 0, 1), at(0, 0, 1 - board)),
    path('face board', at(0, 0), at(w, 0), at(w, h), at(w, h, board), at(w, 0, board), at(0, 0, board), at(0, 0)),
    path('face cloth', at(0, 0), at(w, 0), at(w, h), at(0, h), at(0, 0)),
    path('line', at(w * 0.07, 0), at(w * 0.07, h)),
  ];
  const dimension = (a, b, [dx, dy], [tx, ty]) => [
    path('size', [a[0] + dx, a[1] + dy], [b[0] + dx, b[1] + dy]),
    ...[a, b].map(([x, y]) => path('size', [x + dx - tx, y + dy - ty], [x + dx + tx, y + dy + ty])),
  ];
  const lines = [
    ...dimension(at(0, 0), at(0, h), [-off, 0], [tick, 0]),
    ...dimension(at(0, h), at(w, h), [0, off], [0, tick]),
    ...dimension(at(w, h), at(w, h, 1), [off * 0.8, off * 0.5], [tick * 0.5, tick * 0.87]),
  ];
  const box = [-side, -Math.abs(back[1]) - 2, w + back[0] + 2.1 * side, h + Math.abs(back[1]) + side + 2];
  const says = `${title || 'The book'}, standing, drawn in proportion` + (known ? '' : '; dashed is what is not measured yet');
  const svg = part('svg', { viewBox: box.map((n) => n.toFixed(1)).join(' '), role: 'img', 'aria-label': says, class: known ? '' : 'guess' }, ...faces, ...lines);
  svg.style.setProperty('--part', Math.min(1, (h + side) / (Math.max(scale, 1) * 1.12)).toFixed(3));
  return svg;
}

// drawShelf draws volumes side by side, seen from the spines' far side: the first at the left.
export function drawShelf(books) {
  let x = 0;
  const tallest = Math.max(...books.map((b) => b.sizes.height ?? usual.height));
  const all = books.flatMap(({ sizes }, i) => {
    const h = sizes.height ?? usual.height;
    const t = Math.max(sizes.thickness ?? usual.thickness, sizes.thickness_at_fore_edge ?? 0);
    const from = x;
    x += t;
    const words = part('text', { x: from + t / 2, y: tallest + tallest * 0.1, 'text-anchor': 'middle', 'font-size': tallest * 0.08 }, String(i + 1));
    return [path('face ' + (sizes.height && sizes.thickness ? 'cloth' : 'cloth guess'), [from, tallest], [from, tallest - h], [x, tallest - h], [x, tallest], [from, tallest]), words];
  });
  return part('svg', { viewBox: `-2 -2 ${x + 4} ${tallest * 1.14}`, role: 'img', 'aria-label': `${books.length} volumes side by side, the first at the left` }, ...all);
}
