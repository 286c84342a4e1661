// Every command that is loaded only when it is called, but `check`, which hooks run, and `complete`, which each press
// of Tab runs. Imported one by one they make the bundler cut what they share into some thirty files, and a check would
// have to open most of them: as one module it opens six.
export { completion } from './completion.ts';
export { diff } from './diff.ts';
export { explain } from './explain.ts';
export { importCsv } from './import.ts';
export { init } from './init.ts';
export { newEngine, newSession, newTorque } from './new.ts';
export { record } from './record.ts';
export { study } from './study.ts';
export { torque } from './torque.ts';
export { trend } from './trend.ts';
