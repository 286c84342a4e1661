import { expect, it } from 'vitest';
import { addressFrom, photoAddress } from '../../../src/output/report/links.ts';

it.each([
  ['index.html', 'engines/pump.html', 'engines/pump.html'],
  ['engines/pump.html', 'index.html', '../index.html'],
  ['engines/pump.html', 'parts/crankshaft-K1.html', '../parts/crankshaft-K1.html'],
  ['engines/pump.html', 'engines/six.html', 'six.html'],
  ['a/b/c.html', 'a', '../../a'],
  ['sheet.html', 'javascript:alert(1).html', 'javascript%3Aalert%281%29.html'],
  ['sheet.html', 'a b/"><b>.html', 'a%20b/%22%3E%3Cb%3E.html'],
  ['sheet.html', '\u202e\ud800.html', '%E2%80%AE%EF%BF%BD.html'],
])('from %j to %j leads %j', (from, to, address) => expect(addressFrom(from, to)).toBe(address));

it.each([
  ['photos/main 3.jpg', 'sheet.html', 'engines/pump/photos/main%203.jpg'],
  ['photos/main-3.JPEG', 'public/engines/pump.html', '../../engines/pump/photos/main-3.JPEG'],
  ['https://a.example/x.jpg', 'sheet.html', undefined],
  ['//a.example/x.jpg', 'sheet.html', undefined],
  ['/etc/x.jpg', 'sheet.html', undefined],
  ['../../x.jpg', 'sheet.html', undefined],
  ['a\\..\\x.jpg', 'sheet.html', undefined],
  ['photos/x.svg', 'sheet.html', undefined],
  ['photos/x.html', 'sheet.html', undefined],
  ['photos/main-3.jpg', '../elsewhere/sheet.html', undefined],
])('photograph %j of a sheet at %j leads to %j', (path, sheet, address) =>
  expect(photoAddress(path, 'engines/pump', sheet)).toBe(address),
);
