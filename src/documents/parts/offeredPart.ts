import type { Place } from '../../diagnostic/place.ts';
import type { Part } from '../../layout/part.ts';
import type { SizeStatement } from '../grades/statements.ts';
import type { SessionDocument } from '../session/session.ts';

/** A part with a document of its own that lies ready for an engine, in that engine's layout. */
export interface OfferedPart {
  readonly part: Part;
  readonly mark: string;
  /** Where it is, as its document says. */
  readonly lies: string | undefined;
  /** Where it ran before, by the name of the engine and, of a piston, of its bore; undefined of one that never ran. */
  readonly ranIn: { readonly folder: string; readonly at: string | undefined } | undefined;
  /** The sizes that it was made to, as all documents said until it came to lie here. */
  readonly sizes: readonly SizeStatement[];
  /** What was read of it since. */
  readonly inspections: readonly SessionDocument[];
  readonly place: Place;
}

/** A part that lies on a shelf and is not for this engine, and why. */
export interface NotOffered {
  /** As people call it: `crankshaft K4471`. */
  readonly called: string;
  readonly why: string;
}

/** What of the parts with documents of their own an engine may have. */
export interface OfferedParts {
  readonly offered: readonly OfferedPart[];
  readonly notOffered: readonly NotOffered[];
}

export const NO_OFFERS: OfferedParts = { offered: [], notOffered: [] };
