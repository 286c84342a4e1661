import { accessSync, constants, mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { delimiter, join } from 'node:path';
import { pathToFileURL } from 'node:url';
import { done, failed, type Outcome, systemWords } from '../problem.ts';
import type { Environment } from '../world.ts';
import { childProcess } from './lateModules.ts';

export type PrintReason = 'no-browser' | 'browser';

/** As distributions name it. */
const NAMES = ['chromium', 'chromium-browser', 'headless_shell', 'chrome'];

/** Long enough for hundreds of pages on a slow machine. */
const PATIENCE_MS = 120_000;

/** A page as a browser prints it. It is given an empty profile of its own, and the page forbids itself the network. */
export function printPdf(
  html: string,
  browser: string | undefined,
  environment: Environment,
): Outcome<Uint8Array, PrintReason> {
  const program = browser ?? installed(environment);
  if (program === undefined)
    return failed(
      'no-browser',
      'a PDF needs a Chromium, and none is on this machine',
      'install the package chromium, name one with --browser, or write .html and print that',
    );
  const folder = mkdtempSync(join(tmpdir(), 'tenths-print-'));
  try {
    return printIn(folder, html, program, environment);
  } catch (error) {
    return failed('browser', `${program} printed nothing: ${systemWords(error)}`, HELP);
  } finally {
    rmSync(folder, { recursive: true, force: true });
  }
}

const HELP = 'write .html and print that from a browser';

function printIn(
  folder: string,
  html: string,
  program: string,
  environment: Environment,
): Outcome<Uint8Array, PrintReason> {
  const [page, pdf] = [join(folder, 'page.html'), join(folder, 'page.pdf')];
  writeFileSync(page, html);
  const ran = childProcess().spawnSync(
    program,
    [
      '--headless',
      // Root may not start its sandbox; the page can run nothing but our own script.
      ...(process.getuid?.() === 0 ? ['--no-sandbox'] : []),
      '--disable-gpu',
      '--no-pdf-header-footer',
      `--user-data-dir=${join(folder, 'profile')}`,
      `--print-to-pdf=${pdf}`,
      pathToFileURL(page).href,
    ],
    { env: { ...environment, HOME: folder }, timeout: PATIENCE_MS, stdio: 'ignore' },
  );
  if (ran.error !== undefined) throw ran.error;
  if (ran.status !== 0) return failed('browser', `${program} ended with ${ran.status ?? ran.signal}`, HELP);
  return done(readFileSync(pdf));
}

function installed({ PATH = '' }: Environment): string | undefined {
  const places = NAMES.flatMap((name) => PATH.split(delimiter).map((folder) => join(folder, name)));
  return places.find(isProgram);
}

function isProgram(path: string): boolean {
  try {
    accessSync(path, constants.X_OK);
    return true;
  } catch {
    return false;
  }
}
