import { airAt, humidityRatio, pressureAtAltitude } from '../air/air.ts';
import type {
  CubicMetresPerSecond,
  Fraction,
  KelvinDifference,
  Kelvins,
  KilogramsPerSecond,
  Metres,
  Watts,
} from '../quantities/dimensions.ts';

/** The room in which air is to carry heat away. */
export interface RoomAir {
  /** Room temperature [K]. */
  readonly room: Kelvins;
  /** [m] */
  readonly altitude: Metres;
  readonly relativeHumidity: Fraction;
}

/** A room of which nothing is said: 26 °C, half saturated, at sea level. Common practice, no source. */
export const USUAL_AROUND: RoomAir = { room: 299.15, altitude: 0, relativeHumidity: 0.5 };

/** Air that carries a heat away. */
export interface AirNeed {
  readonly power: Watts;
  readonly rise: KelvinDifference;
  /** Volume flow of room air, as it enters [m³/s]. */
  readonly flow: CubicMetresPerSecond;
  /** [kg/s] */
  readonly massFlow: KilogramsPerSecond;
}

/**
 * Air that carries heat away if it may get warmer by so much: P = ṁ·cp·ΔT. Neither the size of the box nor the fan has
 * a say in it: the size only sets how long it takes to get warm.
 *
 * Source: energy balance.
 *
 * @param power heat to carry away [W], ≥ 0
 * @param rise of the air from inlet to outlet [K], > 0
 * @param around the room, from −40 °C up, below 11 km
 */
export function airNeed(power: Watts, rise: KelvinDifference, around: RoomAir): AirNeed {
  const pressure = pressureAtAltitude(around.altitude);
  const moisture = humidityRatio(around.relativeHumidity, around.room, pressure);
  const { density, specificHeat } = airAt({ pressure, humidityRatio: moisture }, around.room);
  const massFlow = power / (specificHeat * rise);
  return { power, rise, massFlow, flow: massFlow / density };
}

/** Rises that the table shows beside the one that was asked for [K]. */
const USUAL_RISES: readonly KelvinDifference[] = [5, 8, 10, 15, 20];
/** Loads that the table shows, as shares of the one that was asked for [-]. */
const LOAD_SHARES: readonly Fraction[] = [0.5, 1, 1.5, 2];

/** Needs by load, row by row, and by rise. */
export interface AirNeedTable {
  readonly rises: readonly KelvinDifference[];
  readonly loads: readonly Watts[];
  /** One row a load, one entry a rise. */
  readonly needs: readonly (readonly AirNeed[])[];
}

/**
 * Air needed at the usual rises and at half to twice a load, those asked for among them.
 *
 * @param power heat to carry away [W], > 0
 * @param rise allowed to the air [K], > 0
 * @param around the room
 */
export function airNeedTable(power: Watts, rise: KelvinDifference, around: RoomAir): AirNeedTable {
  const rises = [...new Set([...USUAL_RISES, rise])].sort((one, other) => one - other);
  const loads = LOAD_SHARES.map((share) => share * power);
  return {
    rises,
    loads,
    needs: loads.map((load) => rises.map((each) => airNeed(load, each, around))),
  };
}
