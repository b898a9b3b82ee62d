import { isMeasured } from '../measures/index.ts';
import type { Togetherness } from '../types.ts';
import type { Scene, Situation } from './scene.ts';
import { practiceAround, surelyOver } from './scene.ts';

/** 8. Hands not together. */

const oneLeads: Situation = {
  name: 'one-hand-leads',
  takesSecond: true,
  tell: (scene) => {
    const together = scene.measured.measures.togetherness;
    if (together === undefined || !isMeasured(together.leadMs)) return null;
    const lead = together.leadMs;
    const bound = scene.criteria.handsLeadMs;
    const ofItself = Math.abs(lead.value) - leadOfLoudness(scene, together);
    if (!surelyOver({ ...lead, value: ofItself }, bound, scene.criteria)) return null;
    const [first, other] = lead.value < 0 ? (['left', 'right'] as const) : (['right', 'left'] as const);
    return {
      ...scene.wording.oneHandLeads(first, other, Math.round(Math.abs(lead.value))),
      steps: together.steps
        .filter((step) => Math.abs(step.leftMinusRightMs) > bound)
        .map((step) => step.step),
    };
  },
};

/** How much of the lead is there because the hand that leads is the louder one: its keys simply arrive earlier (Goebl 2001), ms. */
function leadOfLoudness({ criteria }: Scene, { leadMs, leftLouderDb }: Togetherness): number {
  if (!isMeasured(leadMs) || !isMeasured(leftLouderDb)) return 0;
  const leaderLouderDb = leadMs.value < 0 ? leftLouderDb.value : -leftLouderDb.value;
  return leaderLouderDb > criteria.louderHandDb ? criteria.leadOfLouderMs : 0;
}

const apart: Situation = {
  name: 'hands-apart',
  takesSecond: true,
  tell: (scene) => {
    const together = scene.measured.measures.togetherness;
    const bound = scene.criteria.handsLeadMs;
    if (together === undefined || !surelyOver(together.apartSdMs, bound, scene.criteria)) return null;
    const practice = practiceAround(scene, 0, scene.exercise.steps.length - 1, 2 / 3);
    return {
      ...scene.wording.handsApart(practice.tempoBpm),
      steps: together.steps
        .filter((step) => Math.abs(step.leftMinusRightMs) > bound)
        .map((step) => step.step),
      practice,
    };
  },
};

export const HANDS: readonly Situation[] = [oneLeads, apart];
