/** The page asks for what has not filled a block yet, or hands buffers back to be filled again. */
export type ToRecorder =
  | { readonly kind: 'flush'; readonly id: number }
  | { readonly kind: 'spare'; readonly channels: Float32Array[] };

export type FromRecorder =
  | {
      readonly kind: 'block';
      /** both of one length; of these samples `frames` count */
      readonly channels: Float32Array[];
      readonly frames: number;
      /** frames of silence put in so far where the device gave nothing */
      readonly missing: number;
    }
  | { readonly kind: 'flushed'; readonly id: number };
