/** Hands the rooms of the review to the tests that drive a browser. Served by `vite`, not built. */
import { assess } from '../../../src/engine/index.ts';
import { decodeFile } from '../../../src/io/decode/index.ts';
import { encodeSound } from '../../../src/io/encode/index.ts';
import { readReview, writeReview } from '../../../src/io/review/index.ts';
import { madeUp } from '../../io/review/made-up.ts';

const door = { assess, decodeFile, encodeSound, readReview, writeReview, madeUp };
Object.assign(window, { door });
