import fc from 'fast-check';
import { SEED } from './propertyRuns.ts';

fc.configureGlobal({ seed: SEED });
