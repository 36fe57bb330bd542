declare module 'psychrolib' {
  /** The part of psychrolib 1.1.1 used as a reference; temperatures in °C, pressures in Pa, heights in m. */
  interface Psychrolib {
    readonly SI: number;
    SetUnitSystem(system: number): void;
    GetSatVapPres(celsius: number): number;
    GetHumRatioFromRelHum(celsius: number, relativeHumidity: number, pressure: number): number;
    GetMoistAirDensity(celsius: number, humidityRatio: number, pressure: number): number;
    GetMoistAirEnthalpy(celsius: number, humidityRatio: number): number;
    GetMoistAirVolume(celsius: number, humidityRatio: number, pressure: number): number;
    GetStandardAtmPressure(altitude: number): number;
  }
  const psychrolib: Psychrolib;

  export = psychrolib;
}
