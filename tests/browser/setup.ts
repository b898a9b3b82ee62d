import { afterAll } from 'vitest';
import { closeVisits } from './visit.ts';

/** What a failed test left open would go on working beside the next file. */
afterAll(closeVisits);
