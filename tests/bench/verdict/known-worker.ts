/** Plays and listens to the sittings that the bench sends, one by one. */
import type { PianoName } from '../../support/render.ts';
import { loudnessAtOnePiano } from './known-piano.ts';

export interface KnownTask {
  readonly piano: PianoName;
  readonly seed: number;
}

process.on('message', ({ piano, seed }: KnownTask) => {
  void loudnessAtOnePiano(piano, seed).then((errors) => process.send?.(errors));
});
