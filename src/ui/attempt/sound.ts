import type { AudioInput, KeptNotice } from '../../engine/index.ts';

/** Sound that somebody opened or recorded, with what is known about how it came. */
export interface Sound extends AudioInput {
  readonly name: string;
  /** its name in the journal from its first moment on, where it was laid aside while it sounded */
  readonly id?: string;
  /** recorded on this page: attempts of one player, one after the other */
  readonly recordedHere: boolean;
  /** what the microphone calls itself, where it was one of this page */
  readonly device?: string;
  /** what was left out or changed on the way */
  readonly remarks: readonly KeptNotice[];
}

/** How much of it was lost on the way from the microphone, as far as was noticed, seconds. */
export function soundLostSec({ remarks }: Pick<Sound, 'remarks'>): number {
  return remarks.reduce(
    (sum, remark) =>
      typeof remark === 'object' && remark.notice === 'sound-lost' ? sum + remark.lostSec : sum,
    0,
  );
}
