import { describe, expect, it } from 'vitest';
import type { PlayOptions } from '../../../src/io/playback/index.ts';
import { Player } from '../../../src/ui/attempt/player.svelte.ts';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import { invent, INVENTED } from '../support/invent.ts';

const { report, exercise } = invent(INVENTED.lateThumb);
const versions = versionsOf(report, exercise);

function rig() {
  const played: { from: number; to: number | undefined; options: Partial<PlayOptions> }[] = [];
  let end = (): void => undefined;
  let position: number | null = null;
  const player = new Player(
    {
      play: (from, to, options = {}) => {
        played.push({ from, to, options });
        position = from;
      },
      stop: () => (position = null),
      positionSec: () => position,
      onEnd: (callback) => (end = callback),
      close: () => undefined,
    },
    () => undefined,
    versions,
  );
  const finish = (): void => {
    position = null;
    end();
  };
  return { player, played, finish };
}

describe('a player', () => {
  it('plays the recording as it is at first', () => {
    const { player, played } = rig();
    player.play(1, 2);
    expect(played).toEqual([{ from: 1, to: 2, options: { speed: 1, loop: false, attacks: [] } }]);
  });

  it('plays slower with every attack kept whole, and takes up the stretch anew when the speed changes', () => {
    const { player, played } = rig();
    player.play(1, 2);
    player.speedPercent = 60;
    expect(played).toHaveLength(2);
    expect(played[1]).toMatchObject({ from: 1, to: 2, options: { speed: 0.6 } });
    expect(played[1]!.options.attacks).toHaveLength(13);
    player.speedPercent = 20;
    expect(player.speedPercent).toBe(50);
  });

  it('plays the original and then the even one beside it, once', () => {
    const { player, played, finish } = rig();
    player.way = 'beside';
    player.play(0, 5);
    expect(player.retimed).toBe(false);
    finish();
    expect(player.retimed).toBe(true);
    expect(played.map(({ options }) => options.attacks)).toEqual([[], versions.even!.attacks]);
    finish();
    expect(played).toHaveLength(2);
    expect(player.positionSec).toBeNull();
  });

  it('loops until it is stopped', () => {
    const { player, played } = rig();
    player.looping = true;
    player.play(1, 2);
    expect(played[0]!.options.loop).toBe(true);
    player.stop();
    player.looping = false;
    expect(played).toHaveLength(1);
  });

  it('offers only the ways that there are', () => {
    expect(rig().player.ways).toEqual(['played', 'even', 'beside', 'crossings']);
  });
});
