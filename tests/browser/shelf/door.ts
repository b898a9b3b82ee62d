/** Hands the shelf of reviews to the tests that drive a browser. Served by `vite`, not built. */
import { openDB } from 'idb';
import { createShelf } from '../../../src/io/shelf/index.ts';
import { review } from '../student/made.ts';

Object.assign(window, { door: { createShelf, review, openDB } });
