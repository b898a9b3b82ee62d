import { median } from '../../base/statistics.ts';
import { justNoticeableMs } from '../criteria/index.ts';
import { isMeasured, shareOver, surelyOver } from '../measures/index.ts';
import type { Togetherness } from '../types.ts';
import { taskOf, wayUp } from './place.ts';
import type { Advice } from './said/index.ts';
import type { Scene, Situation, Situations } from './scene.ts';
import { timesBefore, turnAbout } from './variety.ts';

/** Hands not together. */

const TWO_THIRDS = 2 / 3;

const oneLeads: Situation = (scene) => {
  const together = scene.measured.measures.togetherness;
  if (together === undefined || !isMeasured(together.leadMs)) return null;
  const lead = together.leadMs;
  const bound = scene.criteria.handsLeadMs;
  const ofItself = { ...lead, value: Math.abs(lead.value) - leadOfLoudness(scene, together) };
  if (!surelyOver(ofItself, bound, scene.criteria)) return null;
  const [first, other] = lead.value < 0 ? (['left', 'right'] as const) : (['right', 'left'] as const);
  const practice = wayUp(scene, TWO_THIRDS);
  return {
    statement: {
      situation: 'one-hand-leads',
      steps: apartSteps(together, bound),
      faults: 1,
      sure: shareOver(ofItself, bound),
      first,
      byMs: Math.round(Math.abs(lead.value)),
    },
    gravity: ofItself.value / bound,
    advice: turnAbout<Advice>(timesBefore(scene, 'one-hand-leads'), [
      { step: 'listen-to-the-other', task: taskOf(scene, practice), hand: other },
      { step: 'stop-on-each-beat', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

/** How much of the lead is there because the hand that leads is the louder one: its keys simply arrive earlier (Goebl 2001), ms. */
function leadOfLoudness({ criteria }: Scene, { leadMs, leftLouderDb }: Togetherness): number {
  if (!isMeasured(leadMs)) return 0;
  // Where nobody knows which is the louder, it may be the one that leads.
  if (!isMeasured(leftLouderDb)) return criteria.leadOfLouderMs;
  const leaderLouderDb = leadMs.value < 0 ? leftLouderDb.value : -leftLouderDb.value;
  return leaderLouderDb > criteria.louderHandDb ? criteria.leadOfLouderMs : 0;
}

const apart: Situation = (scene) => {
  const together = scene.measured.measures.togetherness;
  const bound = mostScatterMs(scene);
  if (together === undefined || !isMeasured(together.apartSdMs)) return null;
  const { apartSdMs } = together;
  if (!surelyOver(apartSdMs, bound, scene.criteria)) return null;
  const practice = wayUp(scene, TWO_THIRDS);
  return {
    statement: {
      situation: 'hands-apart',
      steps: apartSteps(together, bound),
      faults: 1,
      sure: shareOver(apartSdMs, bound),
    },
    gravity: apartSdMs.value / bound,
    advice: turnAbout<Advice>(timesBefore(scene, 'hands-apart'), [
      { step: 'stop-on-each-beat', task: taskOf(scene, practice) },
      { step: 'each-hand-alone', task: taskOf(scene, practice) },
    ]),
    practice,
  };
};

/** In slow steps a hand strays by as much as is just noticed of the interval, and nobody plays closer than they hear. */
function mostScatterMs({ measured, criteria }: Scene): number {
  const stepMs = median(measured.intervals.map(({ ioiMs }) => ioiMs)) ?? 0;
  return Math.max(criteria.handsScatterMs, justNoticeableMs(stepMs));
}

function apartSteps({ steps }: Togetherness, bound: number): readonly number[] {
  return steps.filter((step) => Math.abs(step.leftMinusRightMs) > bound).map((step) => step.step);
}

export const HANDS: Situations = { 'one-hand-leads': oneLeads, 'hands-apart': apart };
