/** Names sort as numbers where they are numbers: 2 before 10, and 1L before 1R. */
export function compareNames(a: string, b: string): number {
  const plain = PLAIN.test(a + b) ? comparePlain(a, b) : 0;
  if (plain !== 0 || a === b) return plain;
  collator ??= new Intl.Collator('en', { numeric: true });
  return collator.compare(a, b);
}

/** Made when a name first asks for it: that takes 6 ms, and most names are plain. */
let collator: Intl.Collator | undefined;

/** Letters of one case, digits and spaces stand in the order of their codes; a longer number would be rounded. */
const PLAIN = /^(?!.*\d{16})(?:[a-z\d ]*|[A-Z\d ]*)$/;

/** By the first number or character that is not the same. */
function comparePlain(a: string, b: string): number {
  const [x, y] = [a.match(PARTS) ?? [], b.match(PARTS) ?? []];
  const differing = x.findIndex((part, index) => part !== y[index]);
  const at = differing < 0 ? x.length : differing;
  const [s = '', t = ''] = [x[at], y[at]];
  if (/^\d/.test(s) && /^\d/.test(t)) return Number(s) - Number(t);
  return s === t ? 0 : s < t ? -1 : 1;
}

const PARTS = /\d+|\D/g;
