declare const dimension: unique symbol;

/**
 * A number in an SI unit. The brand is optional, so plain numbers and results of arithmetic are
 * accepted without a cast, but a flow where a pressure is wanted does not compile.
 */
type Quantity<D extends string> = number & { readonly [dimension]?: D };

/** Length [m]. */
export type Metres = Quantity<'length'>;
/** Area [m²]. */
export type SquareMetres = Quantity<'area'>;
/** Volume flow [m³/s]. */
export type CubicMetresPerSecond = Quantity<'volume flow'>;
/** Mass flow [kg/s]. */
export type KilogramsPerSecond = Quantity<'mass flow'>;
/** Pressure or pressure difference [Pa]. */
export type Pascals = Quantity<'pressure'>;
/** Velocity [m/s]. */
export type MetresPerSecond = Quantity<'velocity'>;
/** Heat or electrical power [W]. */
export type Watts = Quantity<'power'>;
/** Thermodynamic temperature [K]. */
export type Kelvins = Quantity<'temperature'>;
/** Temperature difference [K]. */
export type KelvinDifference = Quantity<'temperature difference'>;
/** Thermal resistance [K/W]. */
export type KelvinsPerWatt = Quantity<'thermal resistance'>;
/** Relative change per kelvin [1/K]. */
export type PerKelvin = Quantity<'per kelvin'>;
/** Rotational speed in revolutions per second [1/s]. */
export type RevolutionsPerSecond = Quantity<'rotation'>;
/** Sound level [dB], A-weighted unless a name says otherwise. */
export type Decibels = Quantity<'level'>;
/** Electric current [A]. */
export type Amperes = Quantity<'current'>;
/** Voltage [V]. */
export type Volts = Quantity<'voltage'>;
/** Density [kg/m³]. */
export type KilogramsPerCubicMetre = Quantity<'density'>;
/** Dynamic viscosity [Pa·s]. */
export type PascalSeconds = Quantity<'dynamic viscosity'>;
/** Thermal conductivity [W/(m·K)]. */
export type WattsPerMetreKelvin = Quantity<'conductivity'>;
/** Specific heat capacity [J/(kg·K)]. */
export type JoulesPerKilogramKelvin = Quantity<'specific heat'>;
/** Dimensionless share or ratio, 1 = 100 % [-]. */
export type Fraction = Quantity<'fraction'>;
