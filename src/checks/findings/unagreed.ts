import type { Engine } from '../../documents/assemble.ts';
import { agreedOf } from '../../documents/planning/namedWork.ts';
import type { SessionDocument } from '../../documents/session/session.ts';
import { type Finding, type FindingKind, finding } from '../finding.ts';

const UNAGREED: FindingKind = {
  code: 'plan/unagreed',
  severity: 'remark',
  means:
    'Work was ordered from a machine shop, and no document says that the customer agreed to it, or to all of it.',
  matters: 'The shop may have to pay for work that the customer did not agree to.',
  usually:
    'Ask, then write it down: `agreed: { by: …, date: …, items: [grind main journals] }` in a session or in the engine document.',
  example: 'grind crankpins was ordered from North grinding, and no document says that the customer agreed',
};

export const unagreedKinds: readonly FindingKind[] = [UNAGREED];

/** Of what a session says was sent: each job to which nobody agreed, in any document of the engine. */
export function unagreedFindings(engine: Engine, session: SessionDocument): readonly Finding[] {
  const agreed = [engine.document, ...engine.sessions].flatMap(({ handedOver }) =>
    handedOver.agreed.flatMap(({ items }) => items),
  );
  const known = { parts: engine.parts, layout: engine.document.layout };
  return session.handedOver.sent.flatMap(({ to, work }) =>
    work.flatMap((each) => {
      const { isAll, items } = agreedOf(each, agreed, known);
      if (isAll) return [];
      const names = [...new Set(items.map(({ name }) => name))].join(', ');
      const said =
        names === ''
          ? 'no document says that the customer agreed'
          : `the customer agreed to ${names} alone: order that, or ask`;
      return [finding(UNAGREED, each.place, `${each.name} was ordered from ${to}, and ${said}`)];
    }),
  );
}
