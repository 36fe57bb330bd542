/** A unit of one kind of quantity: SI value = (number + shift) · times / over. */
export interface Unit {
  /** The name shown to people. */
  readonly name: string;
  /** Further spellings, in plain letters: no spaces, no dots, "2" for a square. */
  readonly also?: readonly string[];
  /** True if upper and lower case mean the same in every spelling. */
  readonly anyCase?: boolean;
  readonly times?: number;
  /** Divisor, so that "35 mm" becomes the same number as 0.035. */
  readonly over?: number;
  readonly shift?: number;
}

/** A kind of quantity and the units it may be written in, the usual one first. */
export interface Kind {
  /** What to call one of it, with the article. */
  readonly noun: string;
  /** A typical number in the usual unit, for examples. */
  readonly typical: string;
  readonly units: readonly Unit[];
  /** Units of other kinds people write by mistake, with the unit they may have meant. */
  readonly mistaken?: Readonly<Record<string, string>>;
}

/** Inch in metres: exact, international yard and pound agreement of 1959. */
const INCH = 0.0254;
/** Cubic foot in cubic metres: exact, from the inch. */
const CUBIC_FOOT = 0.028316846592;
/** Conventional millimetre of water in pascals: 1 kgf/m², NIST SP 811 (2008), appendix B.8 (from memory). */
const MILLIMETRE_OF_WATER = 9.80665;
/** Conventional inch of water in pascals: NIST SP 811 (2008), appendix B.8 (from memory). */
const INCH_OF_WATER = 249.0889;
/** Pound-force per square inch in pascals: NIST SP 811 (2008), appendix B.8 (from memory). */
const PSI = 6894.757;
/** Conventional millimetre of mercury in pascals: NIST SP 811 (2008), appendix B.8 (from memory). */
const MILLIMETRE_OF_MERCURY = 133.3224;

/** All kinds of quantities that are written with a unit. */
export const kinds = {
  length: {
    noun: 'a length',
    typical: '120',
    units: [
      { name: 'mm', over: 1000 },
      { name: 'cm', over: 100 },
      { name: 'm' },
      { name: 'km', times: 1000 },
      { name: 'µm', also: ['um'], over: 1e6 },
      { name: 'in', also: ['inch', 'inches', '"'], times: INCH },
      { name: 'ft', also: ['foot', 'feet'], times: 12 * INCH },
    ],
  },
  area: {
    noun: 'an area',
    typical: '12',
    units: [
      { name: 'cm²', over: 1e4 },
      { name: 'mm²', over: 1e6 },
      { name: 'dm²', over: 100 },
      { name: 'm²' },
      { name: 'in²', also: ['sqin'], times: INCH * INCH },
    ],
  },
  flow: {
    noun: 'a flow',
    typical: '40',
    units: [
      { name: 'm³/h', also: ['m3/hr'], over: 3600 },
      { name: 'm³/s' },
      { name: 'm³/min', over: 60 },
      { name: 'l/s', anyCase: true, over: 1000 },
      { name: 'l/min', anyCase: true, over: 60_000 },
      { name: 'CFM', also: ['ft3/min'], anyCase: true, times: CUBIC_FOOT, over: 60 },
    ],
  },
  pressure: {
    noun: 'a pressure',
    typical: '20',
    units: [
      { name: 'Pa' },
      { name: 'hPa', times: 100 },
      { name: 'kPa', times: 1000 },
      { name: 'mbar', times: 100 },
      { name: 'bar', times: 1e5 },
      { name: 'mmH2O', also: ['mmAq', 'mmwg'], anyCase: true, times: MILLIMETRE_OF_WATER },
      { name: 'inH2O', also: ['inAq', 'inwg', 'inchH2O'], anyCase: true, times: INCH_OF_WATER },
      { name: 'psi', anyCase: true, times: PSI },
      { name: 'mmHg', times: MILLIMETRE_OF_MERCURY },
    ],
  },
  power: {
    noun: 'a power',
    typical: '95',
    units: [{ name: 'W' }, { name: 'mW', over: 1000 }, { name: 'kW', times: 1000 }],
  },
  temperature: {
    noun: 'a temperature',
    typical: '26',
    units: [
      { name: '°C', also: ['degC'], shift: 273.15 },
      { name: '°F', also: ['degF'], shift: 459.67, times: 5, over: 9 },
      { name: 'K' },
    ],
  },
  temperatureDifference: {
    noun: 'a temperature difference',
    typical: '2',
    units: [{ name: 'K' }, { name: '°C', also: ['degC'] }, { name: '°F', also: ['degF'], times: 5, over: 9 }],
  },
  speed: {
    noun: 'a speed of rotation',
    typical: '1800',
    units: [
      { name: 'rpm', also: ['1/min', 'r/min', 'min-1', 'min^-1'], anyCase: true, over: 60 },
      { name: '1/s', also: ['rps', 's-1', 's^-1'] },
    ],
  },
  level: {
    noun: 'a sound level',
    typical: '25',
    units: [
      { name: 'dB(A)', also: ['dBA'], anyCase: true },
      { name: 'B', also: ['bel', 'bels', 'B(A)', 'BA'], times: 10 },
    ],
    mistaken: { dB: 'dB(A)' },
  },
  decibel: { noun: 'a level difference', typical: '2', units: [{ name: 'dB' }], mistaken: { 'dB(A)': 'dB' } },
  percent: { noun: 'a percentage', typical: '30', units: [{ name: '%', also: ['percent'], over: 100 }] },
  thermalResistance: {
    noun: 'a thermal resistance',
    typical: '0.16',
    units: [{ name: 'K/W', also: ['°C/W', 'degC/W'] }],
  },
  perKelvin: {
    noun: 'a relative change per kelvin',
    typical: '0.4',
    units: [
      { name: '%/K', also: ['%/°C'], over: 100 },
      { name: '1/K', also: ['/K', '1/°C'] },
    ],
  },
  conductivity: {
    noun: 'a thermal conductivity',
    typical: '200',
    units: [{ name: 'W/(m K)', also: ['W/mK', 'W/m/K'] }],
  },
  conductance: { noun: 'a thermal conductance', typical: '0.5', units: [{ name: 'W/K', also: ['W/°C'] }] },
  linearLoss: {
    noun: 'a linear loss coefficient',
    typical: '200',
    units: [{ name: 'Pa/(m³/s)', also: ['Pas/m3'] }],
  },
  quadraticLoss: {
    noun: 'a quadratic loss coefficient',
    typical: '90000',
    units: [{ name: 'Pa/(m³/s)²', also: ['Pas2/m6'] }],
  },
  velocity: {
    noun: 'a velocity',
    typical: '1.5',
    units: [
      { name: 'm/s' },
      { name: 'km/h', over: 3.6 },
      { name: 'ft/min', also: ['fpm'], times: 12 * INCH, over: 60 },
    ],
  },
  angle: {
    noun: 'an angle',
    typical: '45',
    units: [{ name: '°', also: ['deg'], times: Math.PI, over: 180 }, { name: 'rad' }],
  },
  porosity: {
    noun: 'a number of pores per inch',
    typical: '20',
    units: [{ name: 'ppi', anyCase: true, over: INCH }],
  },
  current: { noun: 'a current', typical: '0.12', units: [{ name: 'A' }, { name: 'mA', over: 1000 }] },
  voltage: { noun: 'a voltage', typical: '12', units: [{ name: 'V' }, { name: 'mV', over: 1000 }] },
} as const satisfies Record<string, Kind>;

/** Name of a kind of quantity that is written with a unit. */
export type KindName = keyof typeof kinds;
