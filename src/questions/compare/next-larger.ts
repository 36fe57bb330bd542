import type { FanModel } from '../../fan/fan-model.ts';

/**
 * The next larger fan of a catalog: of the next size the one nearest in depth, then in the speed of its blade tips.
 *
 * @param fan to be replaced
 * @param fans of the catalog
 * @returns undefined if there is none
 */
export function nextLarger(fan: FanModel, fans: readonly FanModel[]): FanModel | undefined {
  const larger = fans.filter(({ size }) => size > fan.size + 1e-3);
  const size = Math.min(...larger.map((each) => each.size));
  const tip = (each: FanModel): number => Math.abs(each.size * each.fullSpeed - fan.size * fan.fullSpeed);
  return larger
    .filter((each) => each.size === size)
    .sort(
      (one, other) =>
        Math.abs(one.depth - fan.depth) - Math.abs(other.depth - fan.depth) ||
        tip(one) - tip(other) ||
        (one.id < other.id ? -1 : 1),
    )[0];
}
