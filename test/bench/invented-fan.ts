import type { Random } from '../search/random.ts';
import type { FanLine } from './invented-line.ts';

const DENSITY = 1.2;
const ROTOR_SHARE = 0.94;
/** Hub over rotor diameter [-] from a depth [mm] on; common practice, no source. */
const hubRatios: readonly (readonly [depth: number, ratio: number])[] = [
  [28, 0.45],
  [20, 0.42],
  [0, 0.46],
];
const BOX_SHARE = 0.05;
/** Makers do not rate what cannot be measured [dB(A)]; common practice, no source. */
const LEAST_RATED = 8;
const MORE_RATINGS_SHARE = 0.35;

function rounded(value: number): string {
  return String(Number(value.toPrecision(3)));
}

function noiseLines(random: Random, line: FanLine, rpm: number, tipSpeed: number): string[] {
  const level = line.noiseConstant + random.between(-0.5, 0.5) + 55 * Math.log10(tipSpeed / 10);
  const exponent = random.between(52, 58);
  const rating = (share: number): string[] => {
    const speed = Math.round((share * rpm) / 10) * 10;
    const there = level + exponent * Math.log10(speed / rpm);
    if (share < 1 && there < LEAST_RATED) return [];
    return [`      - { level: ${there.toFixed(1)} dB(A), speed: ${speed} rpm, distance: 1 m }`];
  };
  return (random.chance(MORE_RATINGS_SHARE) ? [1, 0.8, 0.63] : [1]).flatMap(rating);
}

/**
 * One fan as an entry of a catalog file.
 *
 * @param random where scatter comes from
 * @param line what it shares with its line
 * @param member which of the line's tip speeds [-]
 * @param id its name
 */
export function fanText(random: Random, line: FanLine, member: number, id: string): string {
  const { size, depth } = line.frame;
  const diameter = (ROTOR_SHARE * size) / 1000;
  const hub = hubRatios.find(([from]) => depth >= from)?.[1] ?? 0;
  const rpm = Math.round(((line.tipSpeeds[member] ?? 0) / (Math.PI * diameter)) * 1.2) * 50;
  const tipSpeed = (Math.PI * diameter * rpm) / 60;
  const delivery = line.flowCoefficient * (Math.PI / 4) * diameter ** 2 * (1 - hub ** 2) * tipSpeed * 3600;
  const shutOff = line.pressureCoefficient * 0.5 * DENSITY * tipSpeed ** 2;
  const airPower = Math.max(...line.curve.map(([flow, pressure]) => flow * pressure)) * delivery * shutOff;
  const hold = random.whole(21, 29);
  const curve = random.chance(BOX_SHARE)
    ? [`    box: { flow: ${rounded(delivery)} m³/h, pressure: ${rounded(shutOff)} Pa }`]
    : [
        '    curve:',
        `      flow: ${line.curve.map(([flow]) => rounded(flow * delivery)).join(' ')} m³/h`,
        `      pressure: ${line.curve.map(([, pressure]) => rounded(pressure * shutOff)).join(' ')} Pa`,
      ];
  return [
    `  - fan: ${id}`,
    `    size: ${size} mm`,
    `    depth: ${depth} mm`,
    `    speed: ${rpm} rpm`,
    `    hold: ${hold} %`,
    `    start: ${hold + random.whole(4, 9)} %`,
    ...curve,
    '    noise:',
    ...noiseLines(random, line, rpm, tipSpeed),
    `    power: ${rounded(airPower / 3600 / line.efficiency)} W`,
    `    price: ${Math.round(2 * (5 + size / 25 + line.dearness + member)) / 2}`,
    `    blades: ${line.blades}`,
  ].join('\n');
}
