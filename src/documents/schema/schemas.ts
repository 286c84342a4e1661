import { engineSchema } from './engine.ts';
import { instrumentsSchema } from './instruments.ts';
import type { Kind } from './kinds.ts';
import { limitsSchema } from './limits.ts';
import { partSchema } from './planning/part.ts';
import { stockSchema } from './planning/stock.ts';
import type { Schema } from './scalars.ts';
import { sessionSchema } from './session.ts';
import type { Offered } from './shared.ts';
import { shopSchema } from './shop.ts';
import { torqueSchema } from './torque.ts';

/** The schema of every kind of document, offering the characteristics of the registry by name. */
export function buildSchemas(characteristics: readonly Offered[]): Readonly<Record<Kind, Schema>> {
  return {
    shop: shopSchema(characteristics),
    engine: engineSchema(characteristics),
    limits: limitsSchema(characteristics),
    instruments: instrumentsSchema(),
    session: sessionSchema(characteristics),
    torque: torqueSchema(),
    stock: stockSchema(),
    part: partSchema(characteristics),
  };
}
