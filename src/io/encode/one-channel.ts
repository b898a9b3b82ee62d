import type { AudioInput } from '../../engine/index.ts';

/**
 * Channels → the one that travels: the stronger of them, never their sum, in which single partials cancel. That is also
 * what the engine listens to of two channels, so that it hears afterwards what it heard before.
 */
export function oneChannel({ channels }: AudioInput): Float32Array {
  const powers = channels.map((channel) => channel.reduce((sum, value) => sum + value * value, 0));
  return channels[powers.indexOf(Math.max(...powers))] ?? new Float32Array(0);
}
