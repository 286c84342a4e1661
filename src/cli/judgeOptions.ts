import { Option } from 'commander';
import { ENGINE_OPTION } from './helpWords.ts';

// Options of several commands that read a shop.

export const engineOption = (): Option => new Option('--engine <name>', ENGINE_OPTION);

export const ruleOption = (): Option =>
  new Option('--rule <rule>', 'how to decide near a limit').choices(['simple', 'guarded']);

export const judgeByOption = (): Option =>
  new Option('--judge-by <band>', 'the band that decides').choices(['new', 'wear']);
