import type { Registry } from '../../characteristics/registry.ts';
import { reportEngine } from '../../checks/judge/report.ts';
import { oncePer } from '../../checks/once.ts';
import type { Engine } from '../../documents/assemble.ts';

/** An engine judged by its own rules: a plan of an earlier day asks for what was judged already. */
export const judgedOnce = oncePer((engine: Engine) =>
  oncePer((registry: Registry) => reportEngine(engine, registry, {})),
);
