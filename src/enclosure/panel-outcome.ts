import { type AskedLimit, panelLimits, skinTemperature } from './asked-limits.ts';
import type { LimitOutcome, PanelOutcome } from './outcome.ts';
import type { PassState } from './pass-state.ts';
import { chamberTemperature, type SolvedPass } from './solved-pass.ts';

/** How a limit is met. */
export function limitOutcome({ of, limit, found }: AskedLimit, state: PassState): LimitOutcome {
  const temperature = found(state);
  return { of, limit, found: temperature, margin: limit - temperature };
}

/** Walls that let heat through: how much, how warm they get and how their limits are met. */
export function panelOutcomes(solved: SolvedPass): readonly PanelOutcome[] {
  const { machine, state, conditions } = solved;
  const { enclosure } = machine.plant;
  return (enclosure.skins ?? []).map((skin) => ({
    chamber: enclosure.chambers[skin.chamber] ?? '',
    heat: skin.conductance * (chamberTemperature(solved, skin.chamber) - conditions.room),
    temperature: skinTemperature(skin, state),
    limits: panelLimits(enclosure, skin).map((limit) => limitOutcome(limit, state)),
  }));
}
