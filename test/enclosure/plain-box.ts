import type { BankPlace } from '../../src/enclosure/enclosure.ts';
import type { PassState } from '../../src/enclosure/pass-state.ts';
import { elementFrom } from '../airway/element-pool.ts';
import { type Drawing, elementPlace, fans, fanWith, lossOfForm } from './hand-made.ts';

/** Invented tower. */
export const STACK = { fins: 'tower', face: '92 x 92 mm', depth: '25 mm', pitch: '2 mm', fin: '0.4 mm' };

/** A box with one fan at the intake, a stack behind it and a loss at the exhaust. */
export function plainBox(changes: Partial<Drawing> = {}, power = 1.5): Drawing {
  const stack = elementPlace(elementFrom('fins', STACK), 'stack');
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [fans(fanWith({ power })), stack], recirculation: 0.1 },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(100, 5e4))] },
    ],
    parts: [
      { power: 80, on: stack, resistance: 0.15, slope: 0.004 },
      { power: 15, in: 1, resistance: 0.4, slope: 0.002 },
    ],
    ...changes,
  };
}

/** The plain box without slopes, with another place for its fans. */
export function plainBoxWith(bank: BankPlace): Drawing {
  const stack = elementPlace(elementFrom('fins', STACK), 'stack');
  return {
    inner: 1,
    legs: [
      { from: 0, to: 1, through: [bank, stack] },
      { from: 1, to: 0, through: [elementPlace(lossOfForm(100, 5e4))] },
    ],
    parts: [
      { power: 80, on: stack, resistance: 0.15 },
      { power: 15, in: 1, resistance: 0.4 },
    ],
  };
}

/** Every number of a pass. */
export function numbersOf({
  network,
  chambers,
  stages,
  partTemperatures,
  partAir,
  partPowers,
  fanPowers,
}: PassState) {
  return [
    ...network.flows,
    ...network.pressures,
    ...chambers,
    ...stages.flatMap((leg) => [...leg]),
    ...partTemperatures,
    ...partAir,
    ...partPowers,
    ...fanPowers,
  ];
}
