import type { Written } from '../../output/escape/language.ts';
import type { World } from '../../shell/world.ts';
import { makeFolder } from '../../shell/write/folders.ts';
import { folderAndName, pathFrom, writeOwnFile } from '../../shell/write/ownFile.ts';
import { orUsage, UsageError } from '../usage.ts';

const FORMS = ['html', 'md', 'pdf'] as const;

/** The file that a sheet goes to; its ending says in which form. */
export interface Target {
  readonly path: string;
  readonly form: (typeof FORMS)[number];
}

export function targetOf(to: string, { workingDirectory }: World): Target {
  const form = FORMS.find((each) => to.toLowerCase().endsWith(`.${each}`));
  if (form === undefined)
    throw new UsageError(`${to} is not the name of a sheet`, 'name a file that ends in .html, .md or .pdf');
  return { path: pathFrom(workingDirectory, to), form };
}

/** What a file of each form has near its head where we wrote it. */
const MARKS: Readonly<Record<Target['form'], RegExp>> = {
  html: /^<!DOCTYPE html>[\s\S]{0,1000}<meta name="generator" content="tenths report"/,
  md: /^<!-- tenths report -->\n/,
  pdf: /^%PDF-/,
};

const HEAD = 2000;

export const writeSheet = ({ path, form }: Target, written: string | Uint8Array): void =>
  orUsage(
    writeOwnFile(path, Buffer.from(written as Uint8Array), (before) =>
      MARKS[form].test(Buffer.from(before.subarray(0, HEAD)).toString('latin1')),
    ),
  );

/** Pages below one folder, each where its engine lies in the shop. */
export class FolderOfSheets {
  readonly root: string;
  readonly #written = new Set<string>();

  constructor(to: string, { workingDirectory }: World) {
    this.root = pathFrom(workingDirectory, to);
    const { folder, name } = folderAndName(this.root);
    orUsage(makeFolder(folder, name));
  }

  /** `page` is its path from the folder. */
  write(page: string, written: Written): void {
    if (this.has(page))
      throw new UsageError(
        `two engines would have the page ${page}`,
        'give the folder of the engine another name',
      );
    this.#written.add(page.toLowerCase());
    orUsage(makeFolder(this.root, page.slice(0, Math.max(0, page.lastIndexOf('/')))));
    writeSheet({ path: `${this.root}/${page}`, form: 'html' }, written);
  }

  /** Some disks tell no capital from a small letter. */
  has(page: string): boolean {
    return this.#written.has(page.toLowerCase());
  }
}
