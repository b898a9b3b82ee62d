/** Shows one invented report, `?show=together`: for looking at what no fixture has. Served by `vite`, not built. */
import { mount } from 'svelte';
import { Player } from '../../../src/ui/attempt/player.svelte.ts';
import { versionsOf } from '../../../src/ui/attempt/retiming.ts';
import Report from '../../../src/ui/report/Report.svelte';
import '../../../src/ui/kit/tokens.css';
import '../../../src/ui/kit/common.css';
import { invent, INVENTED } from './invent.ts';

const show = new URLSearchParams(location.search).get('show') ?? 'lateThumb';
const made = INVENTED[show as keyof typeof INVENTED];
const { exercise, report } = invent(made);
/** the same exercise another time, without its mistakes and with others */
const other = {
  late: { 2: 40 },
  wrong: [],
  missed: [],
  extra: [],
  unsure: [],
  leftOffsetMs: {},
  tempoBpm: 66,
};
const silent = { play: () => undefined, stop: () => undefined, positionSec: () => null };
const player = new Player(
  { ...silent, onEnd: () => undefined, close: () => undefined },
  () => undefined,
  versionsOf(report, exercise),
);
const at = new URLSearchParams(location.search).get('at');
if (at !== null) player.positionSec = Number(at);

const target = document.getElementById('app')!;
target.style.cssText = 'max-width:1160px;margin:0 auto;padding:20px var(--gutter)';
mount(Report, {
  target,
  props: {
    report,
    exercise,
    sound: { name: 'invented', channels: [], sampleRateHz: 48_000, recordedHere: false, remarks: [] },
    player,
    others: [{ report: invent({ ...made, ...other }).report, name: 'earlier' }],
    onsetup: () => undefined,
    onswitch: () => undefined,
  },
});
