import { existsSync, readdirSync, readFileSync } from 'node:fs';
import { join } from 'node:path';

/** The folder of the package that an input of a bundle belongs to; undefined for what is ours. */
const PACKAGE = /^node_modules\/((?:@[^/]+\/)?[^/]+)\//;

/** Names of the packages of which a bundle holds a part, from what esbuild says of its inputs. */
export function bundledPackages(metafiles) {
  const inputs = metafiles.flatMap(({ outputs }) =>
    Object.values(outputs).flatMap((each) => Object.entries(each.inputs)),
  );
  const names = inputs.flatMap(([path, { bytesInOutput }]) => {
    const name = PACKAGE.exec(path)?.[1];
    return name === undefined || bytesInOutput === 0 ? [] : [name];
  });
  return [...new Set(names)].sort();
}

/** What ISC and MIT ask for: the copyright and the permission of every package that is handed on in the bundle. */
export function noticesText(root, names) {
  const notices = names.map((name) => {
    const folder = join(root, 'node_modules', name);
    const { version, license } = JSON.parse(readFileSync(join(folder, 'package.json'), 'utf8'));
    return `${name} ${version} (${license})\n\n${licenceText(folder, name).trim()}\n`;
  });
  return `tenths contains the packages below, or parts of them.\n\n${notices.join(`\n${'-'.repeat(80)}\n\n`)}`;
}

function licenceText(folder, name) {
  const file = readdirSync(folder).find((each) => /^licen[cs]e(\.\w+)?$/i.test(each));
  if (file === undefined || !existsSync(join(folder, file)))
    throw new Error(`${name} has no licence file to hand on`);
  return readFileSync(join(folder, file), 'utf8');
}
