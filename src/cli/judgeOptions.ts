import { Option } from 'commander';
import { ENGINE_OPTION } from './helpWords.ts';

// Options of several commands that read a shop.

export const engineOption = (): Option => new Option('--engine <name>', ENGINE_OPTION);

export const ruleOption = (): Option =>
  new Option('--rule <rule>', 'how a value near a limit is decided').choices(['simple', 'guarded']);

export const judgeByOption = (): Option =>
  new Option('--judge-by <band>', 'the limits that decide: those of new parts, or of worn parts').choices([
    'new',
    'wear',
  ]);
