import { describe, expect, it } from 'vitest';
import { channelFriction } from '../../src/elements/channel-friction.ts';
import { laminarNusselt } from '../../src/elements/fin-heat.ts';
import { finHeat } from '../../src/elements/fins.ts';
import { entranceGrowth } from '../../src/elements/laminar-friction.ts';
import { developingChannel } from './developing-channel.ts';
import { AIR_AT_25, off } from './loss-of.ts';
import { teertstraNusselt } from './other-heat-routes.ts';
import { flowInto, heatAt, tower } from './sample-stacks.ts';

const PRANDTL = 0.71;
const solved = [100, 10, 1].map((channel) => ({ channel, ...developingChannel(PRANDTL, 1 / channel) }));
const units = (effectiveness: number) => -Math.log(1 - effectiveness);

describe('a finite-volume solution of the flow between two plates', () => {
  it('reaches the exact developed values', () => {
    // From memory: Shah & London (1978): Nu 7.541 and Fanning f·Re 24 between isothermal plates.
    const half = developingChannel(PRANDTL, 0.5);
    const whole = developingChannel(PRANDTL, 1);
    const nusselt = (PRANDTL * (units(whole.effectiveness) - units(half.effectiveness))) / 0.5;
    expect(off(nusselt, 7.541)).toBeLessThan(3e-3);
    expect(off((2 * (whole.loss - half.loss)) / 0.5, 24)).toBeLessThan(1e-3);
  });

  it('bears out the heat transfer in use within 7 %, and that of the other route within 4 %', () => {
    for (const { channel, effectiveness } of solved) {
      const nusselt = units(effectiveness) * channel * PRANDTL;
      expect(off(laminarNusselt(1 / (4 * channel * PRANDTL), PRANDTL), nusselt)).toBeLessThan(0.07);
      const entering = (effectiveness * channel * PRANDTL) / 2;
      expect(off(teertstraNusselt(channel, PRANDTL), entering)).toBeLessThan(0.04);
    }
  });

  it('bears out the friction in use, which lies up to 6 % above', () => {
    for (const { channel, loss } of solved) {
      // f·Re on 2b and x/2b·(1/Re) = 1/(4·Re*), all Darcy; at Re 1 the length is that distance itself.
      const { value } = channelFriction(entranceGrowth(1 / (4 * channel)), 96);
      const ratio = value(1) / (8 * loss * channel);
      expect(ratio).toBeGreaterThan(1);
      expect(ratio).toBeLessThan(1.06);
    }
  });

  it('bears out the resistance of a tower within 2.5 %', () => {
    const stack = tower(0.025);
    for (const velocity of [0.5, 1, 4]) {
      const { reynolds } = heatAt(stack, velocity);
      const channel = ((reynolds / 2) * 0.0016) / stack.depth;
      const prandtl = (AIR_AT_25.viscosity * AIR_AT_25.specificHeat) / AIR_AT_25.conductivity;
      const nusselt = units(developingChannel(prandtl, 1 / channel).effectiveness) * channel * prandtl;
      const transfer = (nusselt * AIR_AT_25.conductivity) / 0.0032;
      const { efficiency } = finHeat(stack);
      const capacity = AIR_AT_25.density * flowInto(stack, velocity) * AIR_AT_25.specificHeat;
      const area = 2 * 60 * 0.12 * stack.depth;
      const resistance = 1 / (capacity * -Math.expm1((-transfer * efficiency(transfer) * area) / capacity));
      expect(off(heatAt(stack, velocity).resistance, resistance)).toBeLessThan(0.025);
    }
  });
});
