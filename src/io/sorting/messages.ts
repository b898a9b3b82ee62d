import type { DecodedAudio } from '../decode/index.ts';
import type { Trouble } from '../troubles/index.ts';
import type { SortingFailure } from './errors.ts';
import type { SortedFile, SortOptions } from './types.ts';

/** What the page asks of a worker: one file, and then perhaps what the page's own decoder made of it. */
export type SortRequest =
  | {
      readonly kind: 'sort';
      readonly file: Blob;
      readonly name: string;
      readonly options: Partial<SortOptions>;
    }
  | { readonly kind: 'decoded'; readonly audio: DecodedAudio | null };

/** What a worker answers. */
export type SortReply<File = SortedFile> =
  | { readonly kind: 'progress'; readonly share: number }
  /** the worker has no decoder for this file; the page may have one */
  | { readonly kind: 'decode' }
  | { readonly kind: 'done'; readonly file: File }
  | { readonly kind: 'failed'; readonly reason: SortingFailure; readonly trouble: Trouble };
