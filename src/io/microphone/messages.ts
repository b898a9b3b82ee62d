/** The page asks for what has not filled a block yet. */
export interface ToRecorder {
  readonly id: number;
}

export type FromRecorder =
  | { readonly kind: 'block'; readonly channels: Float32Array[] }
  | { readonly kind: 'flushed'; readonly id: number };
