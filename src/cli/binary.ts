import { load } from '../shell/process/compiled.ts';
import { unpacked } from '../shell/process/unpacked.ts';

/** Said by `bin/binary.js`, which makes the executable. */
declare const PACKED: { readonly names: readonly string[]; readonly folder: string };

/** A single executable begins here: with the program that it holds. */
load(`${unpacked(PACKED.names, PACKED.folder, process.env)}/dist/main.cjs`);
