import type { SeriesLeg } from '../airway/series.ts';
import { fanFlow } from '../airway/stage-flow.ts';
import { isStalled, REFERENCE_DENSITY } from '../fan/curve.ts';
import { curveShape } from '../fan/curve-shape.ts';
import { rawRise } from '../fan/raw-curve.ts';
import { directivityOf, distanceOf } from './hearing.ts';
import type { Machine, MachineBank } from './machine.ts';
import { flowShare, levelOfEnergy } from './noise.ts';
import type { BankOutcome, SourceOutcome } from './outcome.ts';
import { placeId, type SolvedPass } from './solved-pass.ts';
import type { SoundSource } from './sound-sources.ts';

/** A bank at its working point. */
export function bankOutcome(solved: SolvedPass, entry: MachineBank, index: number): BankOutcome {
  const { machine, ratios, state } = solved;
  const ratio = ratios[index] as number;
  const leg = machine.legs[entry.leg] as SeriesLeg;
  const massFlow = state.network.flows[entry.leg] as number;
  const density = leg.densities[entry.stage] as number;
  const flow = massFlow / density;
  const perFan = fanFlow(leg, entry.stage, massFlow);
  const pressureRise = -leg.stageLoss(entry.stage, massFlow);
  const { fan, count, lost } = entry.bank;
  const rawPressureRise = rawRise(fan.curve, perFan, ratio, density / REFERENCE_DENSITY);
  const header = machine.plant.enclosure.headers?.find(({ places }) => places.includes(entry.place));
  const stalled = count > 0 && isStalled(fan.curve, perFan, ratio);
  return {
    place: placeId(machine, entry.place),
    ...(header ? { header: header.id } : {}),
    fan: fan.id,
    count,
    ratio,
    speed: ratio * fan.fullSpeed,
    flow,
    pressureRise,
    ...(rawPressureRise === undefined ? {} : { rawPressureRise }),
    flowShare: flowShare(machine, entry, ratio, state),
    power: state.fanPowers[index] as number,
    stalled,
    ...(stalled ? { shape: curveShape(fan.curve, perFan, ratio, density / REFERENCE_DENSITY) } : {}),
    overdriven: pressureRise < 0 && flow > 0,
    backflow: flow < 0,
    synthesisedCurve: fan.curve.synthesised,
    ...(lost ? { lost: { ...lost, flow: flow - count * perFan } } : {}),
  };
}

/**
 * All sources that are heard, loudest first.
 *
 * @param machine the build
 * @param sources all its sources
 */
export function sourceOutcomes(machine: Machine, sources: readonly SoundSource[]): readonly SourceOutcome[] {
  const { enclosure } = machine.plant;
  const total = sources.reduce((sum, { energy }) => sum + energy, 0);
  return sources
    .filter(({ energy }) => energy > 0)
    .map(
      ({ place, kind, energy }): SourceOutcome => ({
        source: placeId(machine, place),
        kind,
        distance: distanceOf(enclosure, place),
        directivity: directivityOf(enclosure, place),
        level: levelOfEnergy(energy),
        share: energy / total,
      }),
    )
    .sort((a, b) => b.share - a.share);
}
