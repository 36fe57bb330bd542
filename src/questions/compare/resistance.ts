import type { Element } from '../../elements/element.ts';
import type { Enclosure } from '../../enclosure/enclosure.ts';

/** An element whose loss is a multiple of what it is, with the same cooling and the same holes. */
function multiplied(element: Element, factor: number): Element {
  const { law } = element;
  return {
    ...element,
    viscous: factor * element.viscous,
    inertial: factor * element.inertial,
    faint: factor * element.faint,
    ...(law
      ? {
          law: {
            loss: (flow, density, viscosity) => factor * law.loss(flow, density, viscosity),
            slope: (flow, density, viscosity) => factor * law.slope(flow, density, viscosity),
          },
        }
      : {}),
  };
}

/**
 * A scenario in which everything that air passes loses so many times as much; what cools stays as it is. Shows how an
 * answer depends on the resistance of a box.
 *
 * @param enclosure the scenario
 * @param factor on all losses [-], > 0
 */
export function withResistance(enclosure: Enclosure, factor: number): Enclosure {
  if (factor === 1) return enclosure;
  const places = enclosure.places.map((place) =>
    place.kind === 'bank'
      ? place
      : {
          ...place,
          options: place.options.map(({ label, element }) => ({
            label,
            element: multiplied(element, factor),
          })),
        },
  );
  return { ...enclosure, places };
}
