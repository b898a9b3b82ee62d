/** Hands the store of the journal to the tests that drive a browser. Served by `vite`, not built. */
import { openDB } from 'idb';
import { MIGRATIONS } from '../../../src/io/history/database.ts';
import { createHistory } from '../../../src/io/history/index.ts';
import { tarEnd, tarParts } from '../../../src/io/history/tar.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

const door = { createHistory, MIGRATIONS, openDB, tarParts, tarEnd, invent, INVENTED };
export type Door = typeof door;
Object.assign(window, { door });
