// Node's own modules that take milliseconds to load and that a plain check never asks for: with each import of theirs
// at the top of a file, every start would pay for git and for locks.

export const childProcess = () => process.getBuiltinModule('node:child_process');

export const crypto = () => process.getBuiltinModule('node:crypto');

export const workerThreads = () => process.getBuiltinModule('node:worker_threads');

export const zlib = () => process.getBuiltinModule('node:zlib');
