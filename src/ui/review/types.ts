import type { SoundFile } from '../../io/review/index.ts';
import type { Player } from '../attempt/player.svelte.ts';

/** A spoken remark → what plays it; null where it cannot be read. Who asks closes it. */
export type OpenVoice = (voice: SoundFile) => Promise<Player | null>;
