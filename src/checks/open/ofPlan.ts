import type { FindingKind } from '../finding.ts';

/** What there is to say of a plan of work: made on the floor of plans, and listed with all others. */

export const RELEASED_OPEN: FindingKind = {
  code: 'plan/released-open',
  severity: 'warning',
  means:
    'A session or the engine document says `confirmed: released`, and something that the documents state is open.',
  matters: 'Whoever reads that line alone takes the engine for finished. Sheets and board say NOT RELEASED.',
  usually:
    'Close what is named, or concede it, and let whoever is answerable release it again. `tenths plan --closing` lists all of it.',
  example:
    'released by RK, and 1 is open: crankpin diameter 1: 2.7455 in, small by 2.5 thou (new min 2.7480): out',
};

export const UNKNOWN_WORK: FindingKind = {
  code: 'plan/unknown-work',
  severity: 'warning',
  means:
    'Something stands under `agreed:` that no line of the plan asks for. Or work is done on a part of the engine, and `sent:` calls that part something else. Or `confirmed:` names a box that the page before closing up does not have, or `required:` in shop.yaml one that is nearly a usual box.',
  matters:
    'A yes that is taken for nothing leaves its work unagreed, and the part at the machine shop undone; a box that is ticked in other words stays open.',
  usually:
    'Write the line as `tenths plan --for customer` prints it, such as `bore cylinders 1 to 4`. Any name of the part will do (`grind mains`), and a size may stand behind it (`to 0.010 under`). Write boxes in the words of `tenths plan --closing`.',
  example: 'agreed to bananas: no line of the plan, which has grind crankpin 1',
};

export const OTHER_WORK: FindingKind = {
  code: 'plan/other-work',
  severity: 'warning',
  means:
    'The customer agreed to another size, to some journals of a set or to other work on the same part than the plan has now, or in one yes to two sizes of one place. Or a part came back of another size than was agreed.',
  matters: 'A yes to one size or one job is no yes to another: its price and its risk are others.',
  usually: 'Print `tenths plan --for customer` again, ask, and write down the new yes with its date.',
  example:
    'the yes of 2026-02-05 is to 0.010 under, and the plan is to grind crankpin 1 to 0.020 under: ask again',
};

export const planKinds: readonly FindingKind[] = [UNKNOWN_WORK, OTHER_WORK, RELEASED_OPEN];
