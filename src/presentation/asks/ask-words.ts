import type { Enclosure } from '../../enclosure/enclosure.ts';
import { count, fixed, prices, quantity } from '../figures.ts';
import { printable } from '../printable.ts';

function depthWords({ asks, legs }: Enclosure): readonly string[] {
  return (asks?.depths ?? []).map(({ leg, most }) => {
    return `fans up to ${fixed(1000 * most, 0)} mm deep in ${printable(legs[leg]?.id ?? '')}`;
  });
}

/**
 * What is asked of builds beside their limits, one demand an item.
 *
 * @param enclosure the scenario
 */
export function askWords(enclosure: Enclosure): readonly string[] {
  const { asks = {} } = enclosure;
  const { price, ratedPower, models, level, tonePoints } = asks;
  return [
    ...(price === undefined ? [] : [`price up to ${prices([price])[0]}`]),
    ...(ratedPower === undefined ? [] : [`fans up to ${quantity('power', ratedPower)} at full speed`]),
    ...(models === undefined ? [] : [`models of fans up to ${count(models)}`]),
    ...depthWords(enclosure),
    ...(level === undefined ? [] : [`level up to ${quantity('level', level)}`]),
    ...(asks.deadFan ? ['any one dead fan survived'] : []),
    ...(asks.noStall ? ['no fan stalled'] : []),
    ...(asks.noBackFlow ? ['no back-flow through fans'] : []),
    ...(tonePoints === undefined ? [] : [`points of tone risk up to ${count(tonePoints)}`]),
  ];
}

/**
 * Headers with what they feed, one an item.
 *
 * @param enclosure the scenario
 */
export function headerWords({ headers = [], places }: Enclosure): readonly string[] {
  return headers.map(({ id, places: fed, current }) => {
    const banks = fed.map((place) => printable(places[place]?.id ?? '')).join(', ');
    const most = current ? `, up to ${fixed(current.most, 2)} A at ${fixed(current.voltage, 1)} V` : '';
    return `${printable(id)} (${banks}${most})`;
  });
}
