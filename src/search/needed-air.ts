import { type Air, airAt } from '../air/air.ts';
import { elementLoss } from '../airway/series.ts';
import type { Element } from '../elements/element.ts';
import { partLimits } from '../enclosure/asked-limits.ts';
import { isChimney } from '../enclosure/chimney.ts';
import type { Build, Duty, Enclosure, Leg, Part } from '../enclosure/enclosure.ts';
import { conditionsOf } from '../enclosure/pass-state.ts';
import { occupant } from '../enclosure/stages.ts';
import { pathResistance } from '../heat/heat-path.ts';
import { partPower } from '../heat/part-power.ts';
import { bracketedRoot } from '../numerics/roots.ts';
import type { CubicMetresPerSecond, Kelvins, KelvinsPerWatt, Watts } from '../quantities/dimensions.ts';

/** Range of flows a part may need [m³/s]. */
const LEAST_FLOW: CubicMetresPerSecond = 1e-6;
const MOST_FLOW: CubicMetresPerSecond = 1;
/** A part whose power falls with temperature is taken no hotter than this [K]. */
const HOTTEST_PART: Kelvins = 423.15;

/** Least power a part can have in the bound, whatever its temperature turns out to be [W]. */
function leastPower(part: Part, factor: number, room: Kelvins): Watts {
  return partPower(part, factor, part.slope >= 0 || part.leakage ? room : HOTTEST_PART);
}

/** Greatest fin resistance with which a part's limit can hold above air as cool as the room [K/W]. */
function allowedResistance(enclosure: Enclosure, duty: Duty, index: number, limit: Kelvins): KelvinsPerWatt {
  const part = enclosure.parts[index] as Part;
  const factor = duty.heat[index] as number;
  const hottest = limit - enclosure.margin;
  // A leaking part may be above the boundary of running away at its limit, yet settle below it.
  const own = part.leakage ? leastPower(part, factor, duty.room) : partPower(part, factor, hottest);
  let base = own;
  enclosure.parts.forEach((other, at) => {
    const shares =
      other.seat.kind === 'fins' && part.seat.kind === 'fins' && other.seat.place === part.seat.place;
    if (at !== index && shares) base += leastPower(other, duty.heat[at] as number, duty.room);
  });
  if (base <= 0) return Number.POSITIVE_INFINITY;
  // A base spreads least against fins of no resistance.
  return (hottest - duty.room - own * pathResistance(part, 0)) / base;
}

/** Least flow through fins at which their resistance is no more than allowed; infinite if none will do. */
function leastFlow(element: Element, allowed: KelvinsPerWatt, air: Air): CubicMetresPerSecond {
  const law = element.finResistance;
  if (!law || allowed === Number.POSITIVE_INFINITY) return 0;
  const over = (logFlow: number) => Math.log(law(Math.exp(logFlow), air) / allowed);
  if (allowed <= 0 || over(Math.log(MOST_FLOW)) > 0) return Number.POSITIVE_INFINITY;
  if (over(Math.log(LEAST_FLOW)) <= 0) return 0;
  const found = bracketedRoot(over, Math.log(LEAST_FLOW), Math.log(MOST_FLOW), { tolerance: 1e-7 });
  // The bound must not exceed the true need by the tolerance of the root.
  return found.ok ? Math.exp(found.root) * (1 - 1e-6) : 0;
}

function passiveLoss(enclosure: Enclosure, build: Build, leg: Leg, flow: number, air: Air): number {
  let loss = 0;
  for (const place of leg.through) {
    const there = enclosure.places[place];
    if (there?.kind !== 'element') continue;
    loss += elementLoss(occupant(there, build[place] ?? -1) as Element, flow, air.density, air.viscosity);
  }
  return loss;
}

/**
 * Air power [W] that the fans of a build must at least give in a duty, whatever fans they are.
 *
 * Each limited part on fins needs a least flow through them even with inlet air as cool as the room; the fans
 * must cover what the passive elements of that leg dissipate at that flow. The sum of all fans' air power equals
 * the sum of all losses (Tellegen, with mass flows and pressures), none of which is negative. Where legs rise or fall
 * the weight of the air may do the same, and nothing is asked of the fans.
 * Source: derived.
 *
 * @param enclosure the scenario
 * @param build assignment of which only the elements matter
 * @param duty the state of use
 * @returns 0 if nothing is asked of the fans, infinite if no flow meets some limit
 */
export function neededAirPower(enclosure: Enclosure, build: Build, duty: Duty): Watts {
  const air = airAt(conditionsOf(enclosure, duty).site, duty.room);
  const flows = new Float64Array(enclosure.legs.length);
  enclosure.parts.forEach((part, index) => {
    const { seat } = part;
    if (seat.kind !== 'fins') return;
    const place = enclosure.places[seat.place];
    if (place?.kind !== 'element') return;
    const element = occupant(place, build[seat.place] ?? -1) as Element;
    const leg = enclosure.legs.findIndex((candidate) => candidate.through.includes(seat.place));
    for (const { of, limit } of partLimits(part, index, duty)) {
      if (of !== 'part') continue;
      const allowed = allowedResistance(enclosure, duty, index, limit);
      flows[leg] = Math.max(flows[leg] as number, leastFlow(element, allowed, air));
    }
  });
  let power = 0;
  enclosure.legs.forEach((leg, index) => {
    const flow = flows[index] as number;
    if (flow === Number.POSITIVE_INFINITY) power = flow;
    else if (flow > 0) power += flow * passiveLoss(enclosure, build, leg, flow, air);
  });
  return Number.isFinite(power) && isChimney(enclosure.legs) ? 0 : power;
}
