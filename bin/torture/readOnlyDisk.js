import { join } from 'node:path';
import { onDisk, remount } from './disk.js';
import { isTrace, makeShop, tenths } from './shop.js';

/** Every command that writes. */
const WRITING = [
  ['record', '--session', 'teardown'],
  ['record', '--stage', 'trial'],
  ['new', 'engine', 'Crane'],
  ['new', 'session', '--stage', 'trial'],
  ['new', 'torque', 'caps', '--passes', '40'],
  ['init', '--hook', '--ci'],
  ['import', 'mains.csv', '--stage', 'machined'],
  ['import', 'mains.csv', '--new-map', 'more'],
  ['report', '--to', 'sheet.html'],
  ['export', '--to', 'table.csv'],
];

export function readOnlyDisk(part) {
  const folder = join(part.folder, 'disk');
  onDisk(part, folder, 'size=2M', () => {
    makeShop(folder);
    remount(folder, 'ro');
    for (const words of WRITING) {
      const { status, said, stderr } = tenths(folder, words, '3.2478\n');
      part.tried++;
      part.met += /EROFS/.test(stderr) ? 1 : 0;
      if (status !== 2 || !/read-only \(EROFS\)/.test(stderr) || isTrace(said))
        part.wrong.push(`${words.join(' ')}: exit ${status}\n${said.slice(-400)}`);
    }
    const { status } = tenths(folder, ['check']);
    if (status !== 0) part.wrong.push(`check, which writes nothing: exit ${status}`);
  });
}
