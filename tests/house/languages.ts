import { learn } from '../../src/ui/language/index.ts';

/** A page fetches a language when it is spoken; tests of what it says speak all of them at once. */
await learn('de');
