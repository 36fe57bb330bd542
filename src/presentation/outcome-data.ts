import type { BuildDescription } from '../enclosure/describe.ts';
import type {
  BankOutcome,
  BudgetLine,
  BuildOutcome,
  DutyOutcome,
  FinsOutcome,
  LegOutcome,
  LimitOutcome,
  PanelOutcome,
  PartOutcome,
} from '../enclosure/outcome.ts';
import type { CurveShape, ShapePoint } from '../fan/curve-shape.ts';
import { HOPELESS } from '../heat/part-temperature.ts';
import type { Json } from './document.ts';
import { soundData } from './sound-data.ts';
import { kelvinData, temperatureData } from './tellable.ts';

/**
 * A build in all duties as data: SI, the unit in each key. What does not exist is null.
 *
 * @param outcome the build, solved
 */
export function outcomeData(outcome: BuildOutcome): Json {
  return {
    build: buildData(outcome.build),
    adequate: outcome.adequate,
    level_dBA: outcome.level,
    loudest_dBA: outcome.loudest,
    fanPower_W: outcome.fanPower,
    reserve_K: kelvinData(outcome.reserve),
    duties: outcome.duties.map(dutyData),
  };
}

function buildData({ options, arrangement, places, fanCount, depth, price }: BuildDescription): Json {
  return {
    options,
    arrangement,
    places: places.map(({ place, holds }) => ({ place, holds })),
    fanCount,
    depth_m: depth,
    price: price ?? null,
  };
}

function dutyData(outcome: DutyOutcome): Json {
  const { tightest } = outcome;
  return {
    duty: outcome.duty,
    share: outcome.share,
    room_K: outcome.room,
    adequate: outcome.adequate,
    level_dBA: outcome.level,
    fanPower_W: outcome.fanPower,
    throughFlow_kg_s: outcome.throughFlow,
    exhaustTemperature_K: temperatureData(outcome.exhaustTemperature),
    heatCarried_W: outcome.heatCarried,
    tightest: tightest ? { part: tightest.part, ...limitData(tightest) } : null,
    banks: outcome.banks.map(bankData),
    legs: outcome.legs.map(legData),
    chambers: outcome.chambers.map(({ chamber, pressure, temperature }) => ({
      chamber,
      pressure_Pa: pressure,
      temperature_K: temperatureData(temperature),
    })),
    parts: outcome.parts.map(partData),
    panels: outcome.panels.map(panelData),
    failures: outcome.failures.map(({ part, reason }) => ({ part, reason })),
    sources: outcome.sources.map(({ source, kind, distance, directivity, level, share }) => ({
      source,
      kind,
      distance_m: distance,
      directivity_dB: directivity,
      level_dBA: level,
      share,
    })),
    sound: soundData(outcome.sound),
    heat: budgetData(outcome.heat, 'amount_W'),
    remarks: outcome.remarks,
  };
}

function bankData(bank: BankOutcome): Json {
  return {
    place: bank.place,
    header: bank.header ?? null,
    fan: bank.fan,
    count: bank.count,
    ratio: bank.ratio,
    speed_1_s: bank.speed,
    flow_m3_s: bank.flow,
    pressureRise_Pa: bank.pressureRise,
    rawPressureRise_Pa: bank.rawPressureRise ?? null,
    flowShare: bank.flowShare,
    power_W: bank.power,
    stalled: bank.stalled,
    shape: bank.shape ? shapeData(bank.shape) : null,
    overdriven: bank.overdriven,
    backflow: bank.backflow,
    synthesisedCurve: bank.synthesisedCurve,
    dead: bank.lost?.dead ?? 0,
    missing: bank.lost?.missing ?? 0,
    lostFlow_m3_s: bank.lost?.flow ?? 0,
  };
}

function shapeData({ points, working, peakFlow }: CurveShape): Json {
  const point = ({ flow, counted, raw }: ShapePoint): Json => ({
    flow_m3_s: flow,
    counted_Pa: counted,
    raw_Pa: raw ?? null,
  });
  return { working: point(working), peakFlow_m3_s: peakFlow, points: points.map(point) };
}

function legData(leg: LegOutcome): Json {
  return {
    leg: leg.leg,
    from: leg.from,
    to: leg.to,
    massFlow_kg_s: leg.massFlow,
    flow_m3_s: leg.flow,
    pressureDifference_Pa: leg.pressureDifference,
    reversed: leg.reversed,
    pressures: budgetData(leg.pressures, 'amount_Pa'),
  };
}

function partData(part: PartOutcome): Json {
  return {
    part: part.part,
    power_W: part.power,
    temperature_K: temperatureData(part.temperature),
    probe_K: temperatureData(part.probe),
    fins: part.fins ? finsData(part.fins) : null,
    loopGain: part.loopGain < HOPELESS ? part.loopGain : null,
    wholeLoopGain: part.wholeLoopGain ?? null,
    rise: part.rise.map(({ label, amount }) => ({ label, amount_K: kelvinData(amount) })),
    limits: part.limits.map(limitData),
  };
}

function finsData({ place, resistance, band }: FinsOutcome): Json {
  return {
    place,
    resistance_K_W: resistance,
    low_K_W: band?.low ?? null,
    high_K_W: band?.high ?? null,
  };
}

function panelData({ chamber, heat, temperature, limits }: PanelOutcome): Json {
  return {
    chamber,
    heat_W: heat,
    temperature_K: temperatureData(temperature),
    limits: limits.map(limitData),
  };
}

function limitData({ of, limit, found, margin }: LimitOutcome): { readonly [key: string]: Json } {
  return { of, limit_K: limit, found_K: temperatureData(found), margin_K: kelvinData(margin) };
}

function budgetData(lines: readonly BudgetLine[], key: string): Json {
  return lines.map(({ label, amount }) => ({ label, [key]: amount }));
}
