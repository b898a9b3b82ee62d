/** Decoding as the page does it, for the test beside this file. */
import { decodeInBrowser, readsAac } from '../../../src/io/decode/browser.ts';

/** What a file holds, or why it is not read. */
export type Decoded =
  | {
      readonly kind: 'sound';
      readonly sampleRateHz: number;
      readonly channels: readonly (readonly number[])[];
    }
  | { readonly kind: 'refused'; readonly why: string };

const door = {
  readsAac,
  decode: async (bytes: readonly number[], name: string): Promise<Decoded> => {
    try {
      const { channels, sampleRateHz } = await decodeInBrowser(Uint8Array.from(bytes).buffer, name);
      return { kind: 'sound', sampleRateHz, channels: channels.map((channel) => Array.from(channel)) };
    } catch (error) {
      return { kind: 'refused', why: String(error) };
    }
  },
};
declare global {
  interface Window {
    decoding: typeof door;
  }
}
window.decoding = door;
