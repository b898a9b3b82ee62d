import { isMeasured } from '../measures/index.ts';
import type { Situation } from './scene.ts';
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
    if (!surelyOver({ ...lead, value: Math.abs(lead.value) }, bound, scene.criteria)) return null;
    const [first, other] = lead.value < 0 ? (['left', 'right'] as const) : (['right', 'left'] as const);
    return {
      ...scene.wording.oneHandLeads(first, other, Math.round(Math.abs(lead.value))),
      steps: together.steps
        .filter((step) => Math.abs(step.leftMinusRightMs) > bound)
        .map((step) => step.step),
    };
  },
};

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
