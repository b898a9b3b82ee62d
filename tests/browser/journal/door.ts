/** Hands the stores of the page to the tests that drive a browser. Served by `vite`, not built. */
import { openDB } from 'idb';
import { MIGRATIONS } from '../../../src/io/history/database.ts';
import { createHistory, nameFor } from '../../../src/io/history/index.ts';
import { tarEnd, tarParts } from '../../../src/io/history/tar.ts';
import { createShelf } from '../../../src/io/shelf/index.ts';
import { createTeachingStore } from '../../../src/io/teaching/index.ts';
import { createUnfinished } from '../../../src/io/unfinished/index.ts';
import { invent, INVENTED } from '../../ui/support/invent.ts';

const stores = { createShelf, createTeachingStore, createUnfinished };
const door = { createHistory, nameFor, ...stores, MIGRATIONS, openDB, tarParts, tarEnd, invent, INVENTED };
export type Door = typeof door;
Object.assign(window, { door });
