import type { SeriesLeg } from '../airway/series.ts';
import { isStalled } from '../fan/curve.ts';
import type { MachineBank } from './machine.ts';
import { flowShare, levelOfEnergy, newNoiseState, soundEnergy } from './noise.ts';
import type { BankOutcome, SourceOutcome } from './outcome.ts';
import { placeId, type SolvedPass } from './solved-pass.ts';

/** A bank at its working point. */
export function bankOutcome(solved: SolvedPass, entry: MachineBank, index: number): BankOutcome {
  const { machine, ratios, state } = solved;
  const ratio = ratios[index] as number;
  const leg = machine.legs[entry.leg] as SeriesLeg;
  const massFlow = state.network.flows[entry.leg] as number;
  const flow = massFlow / (leg.densities[entry.stage] as number);
  const pressureRise = -leg.stageLoss(entry.stage, massFlow);
  const { fan, count } = entry.bank;
  return {
    place: placeId(machine, entry.place),
    fan: fan.id,
    count,
    ratio,
    speed: ratio * fan.fullSpeed,
    flow,
    pressureRise,
    flowShare: flowShare(machine, entry, ratio, state),
    power: state.fanPowers[index] as number,
    stalled: isStalled(fan.curve, flow / count, ratio),
    overdriven: pressureRise < 0 && flow > 0,
    backflow: flow < 0,
    synthesisedCurve: fan.curve.synthesised,
  };
}

/** All sources, loudest first, and the sound energy of all at the listener [-]. */
export function sourceOutcomes(solved: SolvedPass): { sources: readonly SourceOutcome[]; energy: number } {
  const { machine, ratios, state } = solved;
  const noise = newNoiseState(machine);
  const energy = soundEnergy(machine, ratios, state, noise);
  const distance = machine.plant.enclosure.listener.distance ** 2;
  const source = (place: number, kind: SourceOutcome['kind'], atOneMetre: number): SourceOutcome => ({
    source: placeId(machine, place),
    kind,
    level: levelOfEnergy(atOneMetre / distance),
    share: energy > 0 ? atOneMetre / distance / energy : 0,
  });
  const sources = [
    ...machine.banks.map((bank, index) => source(bank.place, 'fans', noise.banks[index] as number)),
    ...machine.vents.map((vent, index) => source(vent.place, 'opening', noise.vents[index] as number)),
  ].filter(({ share }) => share > 0);
  return { sources: sources.sort((a, b) => b.share - a.share), energy };
}
