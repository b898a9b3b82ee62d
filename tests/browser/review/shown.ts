/** One attempt of a made-up review as the student sees it, `?attempt=1&language=de`. Served by `vite`, not built. */
import { mount } from 'svelte';
import { Player } from '../../../src/ui/attempt/player.svelte.ts';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import '../../../src/ui/kit/tokens.css';
import '../../../src/ui/kit/common.css';
import { speaking } from '../../../src/ui/language/index.ts';
import { drawnOf } from '../../../src/ui/review/marks/drawn.ts';
import { reviewPageInBrowser } from '../../../src/ui/review/page/in-browser.ts';
import Reviewed from '../../../src/ui/review/Reviewed.svelte';
import { madeUp } from '../../io/review/made-up.ts';

const asked = new URLSearchParams(location.search);
if (asked.get('language') === 'de') speaking.speak('de');
const attempt = madeUp().attempts[Number(asked.get('attempt') ?? 0)]!;

/** What was asked to be played, for the tests: from and to, seconds. */
const played: { readonly what: string; readonly fromSec: number; readonly toSec: number | undefined }[] = [];
const playerFor = (what: string, versions: ConstructorParameters<typeof Player>[2]): Player =>
  new Player(
    {
      play: (fromSec, toSec) => void played.push({ what, fromSec, toSec }),
      stop: () => undefined,
      positionSec: () => null,
      onEnd: () => undefined,
      close: () => undefined,
    },
    () => undefined,
    versions,
  );

const target = document.getElementById('app')!;
target.style.cssText = 'max-width:1160px;margin:0 auto;padding:20px var(--gutter)';
mount(Reviewed, {
  target,
  props: {
    attempt,
    player: playerFor('attempt', versionsOf(attempt.report, drawnOf(attempt).exercise)),
    openVoice: (voice) => Promise.resolve(voice.bytes.length > 0 ? playerFor('voice', null) : null),
  },
});
Object.assign(window, { played, pageOf: () => reviewPageInBrowser(madeUp()) });
