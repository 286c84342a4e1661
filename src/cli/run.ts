import type { Command } from 'commander';
import type { World } from '../shell/world.ts';
import { addBenchCommands } from './benchCommands.ts';
import { addCalc } from './calc/calcCommand.ts';
import { carryOut, programOf } from './carryOut.ts';
import { addExport } from './export/exportCommand.ts';
import { addFilm } from './film/filmCommand.ts';
import { addInstrumentCommands } from './instruments/instrumentCommands.ts';
import { addJudgingCommands } from './judgingCommands.ts';
import { addPart } from './parts/partCommand.ts';
import { addPlan } from './plan/planCommand.ts';
import { addReport } from './report/reportCommand.ts';
import { addTorque } from './torque/torqueCommand.ts';

/** Any call. */
export const run = (words: readonly string[], world: World): Promise<number> =>
  carryOut(addCommands, words, world);

/** Every command, to be carried out or looked at. */
export const commandLine = (world: World, done: (exitCode: number) => void): Command =>
  programOf(addCommands, world, done);

function addCommands(program: Command, world: World, done: (exitCode: number) => void): void {
  addJudgingCommands(program, world, done);
  addPart(program, world, done);
  addInstrumentCommands(program, world, done);
  addTorque(program, world, done);
  addFilm(program, world, done);
  addPlan(program, world, done);
  addReport(program, world, done);
  addCalc(program, world, done);
  addExport(program, world, done);
  addBenchCommands(program, world, done);
}
