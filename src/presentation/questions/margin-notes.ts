import type { MarginMatrix } from '../../questions/margin/margin.ts';
import { fixed, quantity } from '../figures.ts';

/** How much air flows back through dead fans. */
export function backWords({ cells }: MarginMatrix): readonly string[] {
  const backs = cells.filter(({ back }) => back !== undefined && back > 0);
  const places = [...new Set(backs.map(({ dead }) => dead))];
  return places.map((dead) => {
    const most = Math.max(...backs.filter((cell) => cell.dead === dead).map(({ back }) => back ?? 0));
    return `With one of ${dead} dead, up to ${quantity('flow', most)} flow back through it.`;
  });
}

/** What thin air asks for. */
export function factorWords({ flowFactors }: MarginMatrix): readonly string[] {
  return flowFactors.flatMap(({ altitude, factor }) =>
    altitude === undefined
      ? []
      : [
          `At ${fixed(altitude, 0)} m the same heat takes ${fixed(factor, 3)} times the volume of air it takes at sea level, at the same room temperature.`,
        ],
  );
}
