/**
 * What the page does beyond being read: it sorts a table by a column, opens and folds all at once, and opens all before it is
 * printed. Without it everything can still be read and unfolded.
 */
export const SCRIPT = `(() => {
  'use strict';
  const all = (of, what) => [...of.querySelectorAll(what)];
  const folds = all(document, 'details');
  const number = (text) => { const found = /-?\\d+(\\.\\d+)?/.exec(text); return found ? Number(found[0]) : NaN; };
  const compare = (a, b) => {
    const [x, y] = [number(a), number(b)];
    return Number.isNaN(x) || Number.isNaN(y) ? a.localeCompare(b) : x - y;
  };
  const sort = (table, column, heading) => {
    const down = heading.getAttribute('aria-sort') === 'ascending';
    for (const each of all(table, 'th[aria-sort]')) each.removeAttribute('aria-sort');
    heading.setAttribute('aria-sort', down ? 'descending' : 'ascending');
    const text = (row) => (row.cells[column] ? row.cells[column].textContent : '');
    const body = table.tBodies[0];
    body.append(...[...body.rows].sort((a, b) => (down ? -1 : 1) * compare(text(a), text(b))));
  };
  for (const table of all(document, 'table.sorts')) {
    all(table, 'thead th').forEach((heading, column) => {
      if (heading.textContent === '') return;
      const button = document.createElement('button');
      button.type = 'button';
      button.append(...heading.childNodes);
      button.addEventListener('click', () => sort(table, column, heading));
      heading.append(button);
    });
  }
  const bar = document.querySelector('.tools');
  if (bar && folds.length > 0) {
    const button = document.createElement('button');
    button.type = 'button';
    const say = () => { button.textContent = folds.every((each) => each.open) ? 'fold all' : 'open all'; };
    button.addEventListener('click', () => {
      const open = !folds.every((each) => each.open);
      for (const each of folds) each.open = open;
      say();
    });
    say();
    bar.append(button);
  }
  let shut = [];
  addEventListener('beforeprint', () => { shut = folds.filter((each) => !each.open); for (const each of shut) each.open = true; });
  addEventListener('afterprint', () => { for (const each of shut) each.open = false; });
})();
`;
