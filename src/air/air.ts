import type {
  Fraction,
  JoulesPerKilogramKelvin,
  Kelvins,
  KilogramsPerCubicMetre,
  Metres,
  PascalSeconds,
  Pascals,
  WattsPerMetreKelvin,
} from '../quantities/dimensions.ts';

/** Where the enclosure stands, as far as its air is concerned. */
export interface Site {
  /** Absolute pressure of the room air [Pa]. */
  readonly pressure: Pascals;
  /** Water vapour per dry air, by mass [kg/kg]. */
  readonly humidityRatio: number;
}

/** Properties of moist air in one state. */
export interface Air {
  readonly temperature: Kelvins;
  readonly density: KilogramsPerCubicMetre;
  readonly viscosity: PascalSeconds;
  readonly conductivity: WattsPerMetreKelvin;
  /** Per kilogram of moist air. */
  readonly specificHeat: JoulesPerKilogramKelvin;
  readonly pressure: Pascals;
}

/** Standard acceleration of free fall [m/s²]. Source: definition (CGPM 1901). */
export const G = 9.80665;

/** Gas constant of dry air [J/(kg·K)]. Source: US Standard Atmosphere 1976, rounded. */
export const DRY_AIR_GAS_CONSTANT = 287.053;

const EARTH_RADIUS = 6_356_766;
const SEA_LEVEL_PRESSURE = 101_325;
const SEA_LEVEL_TEMPERATURE = 288.15;
const LAPSE_RATE = 0.0065;
const MOLAR_MASS = 28.9644;
const MOLAR_GAS_CONSTANT = 8314.32;
const TROPOSPHERE = 11_000;
const LOWEST_ALTITUDE = -5_000;

const VAPOUR_MASS_RATIO = 0.621945;
const VAPOUR_VOLUME_RATIO = 1.607858;
const TRIPLE_POINT = 273.16;

/**
 * Pressure of the standard atmosphere [Pa].
 *
 * @param altitude geometric height above sea level [m], −5 000 … 11 019 (11 000 m geopotential)
 * @throws RangeError outside that range
 *
 * Source: US Standard Atmosphere 1976, lowest layer (published: opened library fluids 1.0.22, atmosphere.py).
 */
export function pressureAtAltitude(altitude: Metres): Pascals {
  const geopotential = (EARTH_RADIUS * altitude) / (EARTH_RADIUS + altitude);
  if (!(altitude >= LOWEST_ALTITUDE && geopotential <= TROPOSPHERE)) {
    throw new RangeError(`altitude ${altitude} m is outside the lowest layer of the standard atmosphere`);
  }
  const temperature = SEA_LEVEL_TEMPERATURE - LAPSE_RATE * geopotential;
  const exponent = (G * MOLAR_MASS) / (MOLAR_GAS_CONSTANT * LAPSE_RATE);
  return SEA_LEVEL_PRESSURE * (temperature / SEA_LEVEL_TEMPERATURE) ** exponent;
}

function logarithmOverWater(t: Kelvins): number {
  const polynomial = 1.3914993 + t * (-0.048640239 + t * (4.1764768e-5 - t * 1.4452093e-8));
  return -5800.2206 / t + polynomial + 6.5459673 * Math.log(t);
}

function logarithmOverIce(t: Kelvins): number {
  const cubic = 6.2215701e-7 + t * (2.0747825e-9 - t * 9.484024e-13);
  return -5674.5359 / t + 6.3925247 + t * (-9.677843e-3 + t * cubic) + 4.1635019 * Math.log(t);
}

/**
 * Saturation pressure of water vapour [Pa], over water from 0.01 °C up and over ice below.
 *
 * @param temperature air temperature [K], 173.15 … 473.15
 * @throws RangeError outside that range
 *
 * Source: Hyland and Wexler 1983, as in ASHRAE Handbook Fundamentals 2017, chapter 1, equations 5 and 6
 * (published: opened library psychrolib 1.1.1).
 */
export function saturationPressure(temperature: Kelvins): Pascals {
  if (!(temperature >= 173.15 && temperature <= 473.15)) {
    throw new RangeError(`no saturation pressure at ${temperature} K`);
  }
  const overIce = temperature <= TRIPLE_POINT;
  return Math.exp(overIce ? logarithmOverIce(temperature) : logarithmOverWater(temperature));
}

/**
 * Water vapour per dry air, by mass [kg/kg].
 *
 * @param relativeHumidity share of saturation [-], 0 … 1
 * @param temperature air temperature [K], 173.15 … 473.15
 * @param pressure absolute pressure [Pa], greater than that of the vapour
 * @throws RangeError outside those ranges
 *
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 20 (published: opened library psychrolib 1.1.1).
 */
export function humidityRatio(relativeHumidity: Fraction, temperature: Kelvins, pressure: Pascals): number {
  if (!(relativeHumidity >= 0 && relativeHumidity <= 1)) {
    throw new RangeError(`relative humidity ${relativeHumidity} is not between 0 and 1`);
  }
  const vapour = relativeHumidity * saturationPressure(temperature);
  if (!(pressure > vapour))
    throw new RangeError(`vapour at ${vapour} Pa does not fit in air at ${pressure} Pa`);
  return (VAPOUR_MASS_RATIO * vapour) / (pressure - vapour);
}

/**
 * Density of moist air as an ideal gas [kg/m³].
 *
 * @param site pressure and humidity ratio
 * @param temperature air temperature [K], > 0
 *
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equations 26 and 28 (published: opened library
 * psychrolib 1.1.1), with the gas constant of the US Standard Atmosphere 1976.
 */
export function densityAt(site: Site, temperature: Kelvins): KilogramsPerCubicMetre {
  const dry = site.pressure / (DRY_AIR_GAS_CONSTANT * temperature);
  return (dry * (1 + site.humidityRatio)) / (1 + VAPOUR_VOLUME_RATIO * site.humidityRatio);
}

/**
 * Dynamic viscosity of dry air [Pa·s].
 *
 * @param temperature air temperature [K], about 100 … 1 900
 *
 * Source: US Standard Atmosphere 1976, Sutherland's formula (published: opened library fluids 1.0.22).
 */
export function viscosityAt(temperature: Kelvins): PascalSeconds {
  return (1.458e-6 * temperature * Math.sqrt(temperature)) / (temperature + 110.4);
}

/**
 * Thermal conductivity of dry air [W/(m·K)].
 *
 * @param temperature air temperature [K], about 100 … 1 900
 *
 * Source: US Standard Atmosphere 1976 (published: opened library fluids 1.0.22).
 */
export function conductivityAt(temperature: Kelvins): WattsPerMetreKelvin {
  return (
    (2.64638e-3 * temperature * Math.sqrt(temperature)) / (temperature + 245.4 * 10 ** (-12 / temperature))
  );
}

/**
 * Specific heat capacity per kilogram of moist air [J/(kg·K)].
 *
 * @param humidity water vapour per dry air, by mass [kg/kg], ≥ 0
 *
 * Source: ASHRAE Handbook Fundamentals 2017, chapter 1, equation 30 (published: opened library psychrolib
 * 1.1.1), divided by 1 + humidity because it is stated there per kilogram of dry air.
 */
export function specificHeat(humidity: number): JoulesPerKilogramKelvin {
  return (1006 + 1860 * humidity) / (1 + humidity);
}

/**
 * All properties of the site's air at one temperature.
 *
 * @param site pressure and humidity ratio
 * @param temperature air temperature [K], > 0
 *
 * Source: as the single properties above; viscosity and conductivity are those of dry air.
 */
export function airAt(site: Site, temperature: Kelvins): Air {
  return {
    temperature,
    density: densityAt(site, temperature),
    viscosity: viscosityAt(temperature),
    conductivity: conductivityAt(temperature),
    specificHeat: specificHeat(site.humidityRatio),
    pressure: site.pressure,
  };
}
