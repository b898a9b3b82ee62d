/** Hands the store of recordings to the tests that drive a browser. Served by `vite`, not built. */
import { createTeachingStore } from '../../../src/io/teaching/index.ts';

Object.assign(window, { door: { createTeachingStore } });
