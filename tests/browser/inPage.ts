/** What is asked of a page: each runs there, and gives a line for whatever is wrong. */
const QUESTIONS = {
  /** Cells and pictures that reach beyond the paper. */
  cutOff: `(width) => [...document.querySelectorAll('td, th, caption, li, p, dd, svg, h1, h2')]
    .filter((each) => each.getBoundingClientRect().right > width + 1 || each.scrollWidth > each.clientWidth + 1 && getComputedStyle(each).display !== 'inline')
    .map((each) => each.tagName + ' ' + each.textContent.slice(0, 60))`,
  /** Rows that a page may break. */
  breakable: `() => [...document.querySelectorAll('tr, figure')]
    .filter((each) => getComputedStyle(each).breakInside !== 'avoid')
    .map((each) => each.textContent.slice(0, 60))`,
  /** Words that the edge of their picture cuts. */
  outsidePictures: `() => [...document.querySelectorAll('svg text')].flatMap((each) => {
    const [box, view] = [each.getBBox(), each.ownerSVGElement.viewBox.baseVal];
    const out = box.x < -0.5 || box.y < -0.5 || box.x + box.width > view.width + 0.5 || box.y + box.height > view.height + 0.5;
    return out ? [each.ownerSVGElement.querySelector('title').textContent + ': ' + each.textContent] : [];
  })`,
  /** Where links lead, as the page says it. */
  addresses: `() => [...document.querySelectorAll('[href]')].map((each) => each.getAttribute('href'))`,
  /** Every element but a link with the names of its attributes, in their order. */
  shape: `() => [...document.querySelectorAll('*')].filter((each) => each.tagName !== 'A').map((each) => each.tagName + ' ' + each.getAttributeNames().join(' '))`,
} as const;

export const readInBrowser = (question: keyof typeof QUESTIONS, given?: number): string =>
  `(${QUESTIONS[question]})(${given ?? ''})`;
